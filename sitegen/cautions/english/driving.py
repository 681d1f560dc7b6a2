"""English: see `cautions/driving.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.phrases import any_of

NODDING = (
    "asleep | nodd* | dozed | dozing | eyelid* | "
    "eyes (kept|were|fell|shut|closed|half|closing|crossed|rolled|burning|gritty)* | shut my eyes | close my eyes | "
    "closed my eyes | micro sleep* | microsleep* | matchsticks | yawn* | "
    "head (dropped|kept|went|fell|nodded|bobbed|snapped)* | jerked (awake|upright)* | jolted awake | woke (me|up|with) | "
    "awoke | came to (with|on|in|myself|as|when|at) | startled awake | snooz* | drows* | dropping off | "
    "dropped off | swerv* | heavy eyed | heavy eyes | "
    "sleepy | half asleep | on autopilot | autopilot | dead to the world | head on the (wheel|horn) | lights out for a | "
    "opened my eyes | chin … my chest | lids | resting (my|the) * | kip | forty winks | two of (every|each)* | saw double | "
    "seeing double | double vision | everything twice | dreamt | dreaming | long blink* | blinks | lost a second | "
    "gone for a (second|moment) | forehead on * | bobb* | sandman | eyes like * | (shut|closed) for (just)? (a|one) * | "
    "trance | zoned out | miles away | fought (to|with) * | struggl* to (keep|stay) | couldn't keep | could not keep | "
    "stay awake | keep awake | staying awake | wide awake now | drifted off | drifting off | (i|we|car|van) drifted | "
    "weaving | (i|eyes) blinked | stared at the | snor(ed|ing) | head on the | nothing in between | second time | "
    "was not there one moment | not there one moment | braked late | brake for a | lost the (road|thread) | "
    "road had started to * | started to breathe | swam before"
)
NO_SLEEP = (
    "no sleep | without sleep | not slept | hadn't slept | had not slept | didn't sleep | "
    "(#|one|two|three|four|five) hours (of|')? sleep | (#|one|two|three|four|five) hours' sleep | hours of sleep | "
    "nights running | nights in a row | nights without | sleepless | awake (since|for|all) | been up | up since | up for | "
    "hours up | (#|twenty|twenty four|thirty|thirty six|forty) hours (awake|on my feet|straight) | "
    "straight (to|into|from) (work|the office|the road|my desk) | knackered | exhaust* | shattered | worn out | "
    "dead tired | dog tired | dead on my feet | bleary* | overtired | tired | fatigue* | wrecked | zombie* | all nighter* | "
    "pulled an all | skipped sleep | bed at | third night | second night | fourth night | not a wink | wink of sleep | "
    "catnap | power nap | last lay down | last slept | since i slept | since my last | double shift | early shift | "
    "night shift | living on naps | on the go since | not been to bed | not seen a bed | never went to bed | no bed | "
    "clear night of the week | clear night in a row | running on (coffee|caffeine|empty|adrenaline) | punch drunk | "
    "cross eyed | dead beat | zonked | done in | sleep debt | slept (two|three|four|#) hours | hours since * | "
    "sleep can wait | lack of sleep | short of sleep | barely slept | hardly slept | little sleep | hours' kip | bleary | "
    "skip bed | skipped bed | skip the bed | no naps | no nap | without a nap | image till dawn | "
    "nights of (perseids|geminids|leonids|meteors|imaging) | (third|fourth|fifth|second) night (out|this|in|running) | "
    "night out this week"
)
PROPPED = (
    "window* down | windows open | window open | window wide | music up | radio (up|on|loud|blaring) | slapp* | "
    "pinch* myself | pinching | energy drink* | caffeine | espresso* | coffee* | red bulls | cold water in | chewing gum | "
    "bit my (lip|tongue|hand)* | open window | heating off | air con* | ice down | toothpick* | talk* to myself | cans of | "
    "flask | thermos | mints | sang | sung | singing | cold air | head out of the * | recit* | count* out loud | "
    "audiobook | chewed | guarana | pro plus | caffeine tablets | ice cubes | frozen peas | wet flannel | heater off | "
    "talk radio | slapp* (my|myself)* | shouting | shouted at myself | my own face | my face | radio on full | radio on"
)
STRAYED = (
    "rumble strip* | rumble | cat's eyes | crash barrier | guard rail* | guardrail* | wrong lane | honk* | drifted | "
    "don't remember | do not remember | no memory | cannot recall | can't recall | couldn't tell you | could not say how | "
    "missed (my|the|our) (exit|turn|turning|junction)* | saw (things|trees|people|animals|sheep|deer)* … not there | "
    "hallucinat* | seeing things | tyres on | wing mirror | sheep on the road that | hubcap | wheel trim | rumbl* | "
    "no idea how (i|we) | how (i|we) got (home|here|back|past|there) | don't recall | jumped at | turned out to be a | "
    "overshot | sailed (past|through) | stop sign | stop line | missed the turn* | grabbed the wheel | took the wheel | "
    "oncoming | grass verge | on the grass | clipped | past my (exit|turn|turning|house|street)* | "
    "past the (exit|turning|turn|house) | flashed me | cones | "
    "(on|onto|on to|in|into|in to|against|touched|kissed|hit|over|clipped|across|off) (to)? (the|a) (gravel|verge|kerb|"
    "ditch|hedge|barrier|hard shoulder|rumble*|white line|centre line|crash barrier|other lane|grass) | "
    "(kerb|hedge|gravel|verge) (woke|got|was|came) | hedge … wrong side | my own horn | with (its|his|a) horn | "
    "sounded (its|his) * horn | through a red light | at the red light | drift* over | drifted across | mind was blank | "
    "all blank | went blank | nod* at | red light | wrong side of the road | on two wheels | i recall is | "
    "(last|next) thing i (recall|remember|knew|know) | done by the car | drove itself | by the car itself | "
    "road had (started|begun) | road (breath*|swam|bent|wobbl*|rippl*) | autopilot | "
    "kept seeing (a|an|the|things|people|dogs) | was always a | turned into a bush | nothing of the road | "
    "nothing of the * between"
)
UNLIT = (
    "headlights off | without (headlights|lights) | no headlights | lights off | by moonlight | by starlight | "
    "with the lights off | parking lights only | on sidelights | red headlamp | red torch"
)
DEPARTURE = (
    "packed up | packed | pack* at | broke camp | off we went | set off | hit the road | straight home | drove | drive | "
    "driving | headed home | started the engine | on the road"
)
SMALL_HOURS = (
    "(two|three|four|five|six|half past *|quarter *|#) (in the morning|am) | at (two|three|four|five|six|half past *|#) | "
    "dawn | sunrise | first light | by (six|seven|eight|nine) | milkman | rush hour"
)
DRUNK = "beer | beers | wine | a few drinks | pint | pints | glass of"
WHEELS = (
    "wheel | drove | driving | drive home | drive back | motorway | highway | freeway | interstate | autobahn | "
    "dual carriageway | a road | b road | hard shoulder | verge | lay by | layby | lorry | truck | kerb | centre line | "
    "white line | lane | junction* | roundabout* | exit | crash barrier | guard rail* | steering | gravel | ditch | hedge | "
    "tyres | traffic | red light | bypass | windscreen | gear | handbrake | seat belt | services | tarmac | bend | bends | "
    "way home | way back | going home | going back | cat's eyes | engine | toll* | lamp post* | hubcap | trailer | "
    "cruise control | parked | pulled (over|in|up) | passenger | satnav | sat nav | mph | kph | petrol station | "
    "filling station | indicator | the van | the car | the bike | car park | slip road | level crossing | bus lane | "
    "miles | car"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "sergeant | policeman | police | officer | constable | patrol",
            "knocked | window | lane | hard shoulder | stopped | tapped", "lane | window | asleep | wheel | car | road",
            NEARBY,
        ),
        ("slept (one|two|three|four|#) hours | none on (friday|saturday|sunday|monday) | no sleep", WHEELS, NEARBY),
        ("indicating since | indicator (was)? still | braking for nothing | brak* for (nothing|shadows) | wipers on",),
        (
            "ring road | bypass | motorway | dual carriageway",
            "found that i | noticed that i | realised i | braking for | indicating", NEARBY,
        ),
        (
            "kept seeing | saw a | seeing",
            "always a bush | turned out to be | was a bush | was a bin | was a post | not there | no dog | never there",
            any_of(WHEELS, "roadside | the pass | road"), NEARBY,
        ),
        ("nothing of the (road|drive|way|journey) | not a yard of | no picture of the road",),
        (
            "last thing i (recall|remember|knew) | next thing i (knew|know|remember|recall) | drove itself | "
            "by the car itself | the car (knew|knows) the way | road had (started|begun) to * | "
            "the road (swam|wobbled|breathed|moved|bent)",
            any_of(WHEELS, "gate | drive | home | garage | way down | town | petrol | station | bed"), NEARBY,
        ),
        (
            "work at | office at | desk at", "hill at | work at eight again | again",
            "commute | drove | drive | car | road | miles | km", NEARBY,
        ),
        (
            "skip bed | skip sleep | no bed | till dawn | until dawn | all night | no naps | no sleep",
            "do the (#|two|three|four|five|six) hours | "
            "(two|three|four|five|six|#) hours (to|of road|on the road|back|home|north|south|east|west) | traffic lights | "
            "lights | the drive | long drive",
            NEARBY,
        ),
        ("snor(ed|ing)", "traffic lights | lights | wheel | car | drive | motorway | junction", NEARBY),
        (
            "brake* | braked | brakes", "bend | corner | junction | deer | tractor",
            "not there | late | known for | out of nowhere | suddenly | woke | last moment", NEARBY,
        ),
        (
            "energy drink* | espresso* | caffeine | cans of",
            "home by | straight home | drove | road | on full | off we went | miles | km | kilomet* | wheel", NEARBY,
        ),
        (
            "window down | windows down | window open",
            "mints | at (eighty|seventy|ninety|sixty) | kip | nap | radio | music | awake",
            "kip | nap | sleep | mints | slept | awake | eyes | tired", NEARBY,
        ),
        (
            "double shift | night shift | early shift | late shift",
            "miles | kilomet* | km | drive | drove | straight (from|to|into) | straight back", NEARBY,
        ),
        (NODDING, WHEELS, NEARBY),
        (STRAYED, WHEELS, any_of(NO_SLEEP, NODDING, PROPPED, SMALL_HOURS), NEARBY),
        (
            NO_SLEEP, "(#|hundred|hundreds|fifty|eighty|ninety|sixty) (miles|kilomet*|km)* | miles | kilomet* | km",
            any_of(WHEELS, "home | back | shift | work | desk"), NEARBY,
        ),
        ("(no idea|cannot say|could not say|couldn't say|couldn't tell you) how | how (i|we) got", WHEELS, NEARBY),
        (
            "passenger | wife | husband | friend | mate | co driver",
            "grabbed the wheel | took the wheel | yelled | screamed | elbow* me | poked me | nudged me", WHEELS, NEARBY,
        ),
        (
            PROPPED, WHEELS,
            "awake | chin | lids | eyes | asleep | sleep | nod* | at (eighty|seventy|ninety) | tired | yawn* | in one piece",
            NEARBY,
        ),
        ("rumble strip* | microsleep* | micro sleep* | asleep at the wheel | matchsticks",),
        (
            NODDING,
            "wheel | drove | driving | drive | motorway | highway | freeway | dual carriageway | a road | hard shoulder | "
            "verge | lay by | layby | lorry | truck | kerb | centre line | white line | lane | junction* | exit | "
            "crash barrier | guard rail* | steering | roundabout | gravel | ditch | hedge | tyres | traffic | horn | "
            "red light | bypass | windscreen | in third gear | handbrake | seat belt | services | tarmac | bend | bends | "
            "way home | way back | cat's eyes | engine",
            NEARBY,
        ),
        (
            NO_SLEEP,
            "wheel | drove | driving | drive | motorway | highway | freeway | dual carriageway | the road | miles | "
            "kilomet* | # km | junction* | exit | lay by | layby | office by | my desk | at my desk | desk by | way home | "
            "way back | commute | behind the | car keys | services | in one go | sat nav | at work by | for work | to work",
            "home | drove | driving | drive | road | miles | kilomet* | # km | motorway | wheel | desk | work | office | "
            "in one go | car",
            NEARBY,
        ),
        (
            PROPPED,
            "drove | driving | drive home | motorway | the wheel | junction* | miles | kilomet* | way home | way back | "
            "home by | slapp* | highway | exit | the road | # km | behind the wheel | off we went | car | lay by | tank",
            any_of(
                NO_SLEEP, NODDING,
                "at (three|four|five|half past *) | (three|four|five|#) in the morning | dawn | sunrise | slap* | "
                "every junction | stay awake | keep awake | kept me awake | awake | and i was home | home by",
            ),
            NEARBY,
        ),
        (
            STRAYED,
            "drove | driving | way back | way home | home | exit | junction* | motorway | kilomet* | miles | lane | lorry | "
            "tyres | woke | came to with | wheel | road | could not say | couldn't say | horn | the car",
            "remember | memory | recall | woke | came to with | drifted | missed | could not say | couldn't say | not there | "
            "hallucinat* | seeing things | blank | horn | honk* | rumble | close | twice | tired | night | wrong | ditch | "
            "hedge",
            NEARBY,
        ),
        (
            "(last|final) (#|ten|twenty|thirty|forty|fifty|few|half) * (kilomet*|miles|minutes|km|hour)",
            "remember | memory | recall | blank | blur | gone | know",
        ),
        (
            "(do|did|could|can) (not|n't) remember | don't remember | no memory of | can't remember | cannot remember",
            "drive | driving | road | kilomet* | miles | way home | way back | getting home | motorway", NEARBY,
        ),
        (
            UNLIT, "drove | drive | driving | rolled | crept | track | lane | road | car",
            "car | drove | drive | driving | night vision | dark adapt* | rolled", NEARBY,
        ),
        (
            DEPARTURE,
            "desk by | office by | at my desk | work by | at work | meeting at | shift | school run | lecture at | "
            "first lesson",
            SMALL_HOURS, NEARBY,
        ),
        (DRUNK, "drove | driving | drive home | behind the wheel | car keys | drive back", NEARBY),
        ("(who|whoever) … drive", "flip* a coin | toss* | drew straws | least tired | awake", NEARBY),
        (
            "motorway | highway | at the wheel | behind the wheel | the road home | long way home",
            "eyes | tired | sleep* | asleep | awake | nodd* | exhaust* | no sleep | yawn*",
        ),
        ("asleep | nodd* off | dozed | dozing | eyes (fell|closed|shut) | microsleep*", "wheel | drove | driv* | motorway"),
        (
            "drove | drive | drives | driving", "home | back | kilomet* | miles | km | hours",
            "tired | awake | sleep | slept | sleepless | sleepy | asleep | exhaust* | yawn* | eyes | window down | "
            "all night | dawn | at (two|three|four|five) | half past (one|two|three|four) | sunrise | straight (to|on) | "
            "without a (break|stop) | coffee",
            NEXT,
        ),
        ("(who is|is|was|who's) driving", "awake | tired | slept"),
    ),
    harmless="nodded through the (talk|lecture|meeting|sermon) | drive behind the (mount|telescope|axis)* | "
    "(direct|belt|friction|harmonic|strain wave) drive | (drive|drives) … (is|are) direct | woke up for | "
    "(comet|image|star|stars|field|software|guider) … lane | software lost * | lie in | lane keeping | drove us | "
    "drove me | mount … nodded | driven by * | after breakfast | after a (good|long|short) (sleep|nap|rest) | "
    "second time (round|around|this|in) | car park | slept (late|in|well|soundly|first|until|it off|through|a few hours) | "
    "after (a|some|eight|seven) * sleep | drive (belt|motor|gear|train|shaft|letter|in)* | (thumb|usb|flash|ssd) drive* | "
    "focus* (home|drive) | home position | drove the (focuser|motor|dome)* | (light|dust) lane* | dust lane | star lane* | "
    "spiral lane* | (exit|entrance) pupil | exit window | lane of (dust|stars) | road map | sleep mode | went to sleep | "
    "put to sleep | "
    "(camera|mount|computer|laptop|guider|autofocus|focuser|dome|driver|screen|monitor|phone) … (awake|woke|asleep|sleep|"
    "drifted) | (stars|star|image|focus|target|field|galaxy|polaris|frame|subs|mount|guiding) … drifted | "
    "drifted (in|through|by|out of the) (the)? (field|frame|view|focus|sky|clouds|cloud)* | drive (was|ran|failed) | "
    "(mount|drive|motor|clock|hard|disk|direct|belt|worm|focuser) (drove|drive|drives|driving|motor) | "
    "drive home of the story | tired of | (day's|hour's|hours'|long) drive",
)
