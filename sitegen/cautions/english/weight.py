"""English: see `cautions/weight.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.english.circumstances import HARM
from sitegen.cautions.phrases import any_of

HEAVY = (
    "mount | mount head | equatorial head | the head | tube | ota | telescope | scope | fork | dob | dobsonian | # inch | "
    "pier | mirror | counterweight* | weights | the weight | shaft | truss | dome | shutter | wedge | rig | refractor | "
    "reflector | newtonian | sct | tripod | mirror cell | mirror box | rocker box | pier plate | slab | dovetail | "
    "the beast | the monster | trunk | concrete | "
    "(#|ten|fifteen|twenty|twenty five|thirty|thirty five|forty|fifty|sixty|seventy|eighty|ninety|hundred|thirty *|forty *|"
    "twenty *) (kilo|kilos|kg|pounds|lbs|stone)* | hundredweight | base | batter* | flight case | roof | panel | "
    "fourteen inch | sixteen inch | twelve inch | eighteen inch | lump | the big lump | wheelie bin | brute | the whale | "
    "elephant | trolley | bar of weights | top end | bottom end | crates | centre of gravity | ramp | stairs | landing"
)
HEAVED = (
    "carr* | lug | lugged | lugging | heav* | haul* | hoist* | lift* | drag | dragg* | hump* | manhandl* | bear hug* | "
    "wrestl* | shoulder* | swung the | swung it | man handled | muscl* | wriggl* | got the * | hefted | heft | roll* | "
    "slid it | lower* | winch* | jack* | walked it | in my arms | hug | pivot* | cradl*"
)
BY_ONESELF = (
    "by myself | on my own | alone | single handed* | one handed | everyone asleep | nobody (to help|about|awake)* | "
    "no help | backwards | one arm | without help | up the (stairs|steps|cellar)* | down the (stairs|steps|cellar)* | "
    "(cellar|attic|loft) (steps|stairs|ladder) | stair* | steps | stile | over the fence | over the wall | "
    "couldn't wait for | could not wait for | too proud | too impatient | solo | rope | pulley | broom handles | "
    "in the dark | up the ladder | knee"
)
STRAIN = (
    "my back | back went | back gave | twang* | slipped disc | hernia | rupture* | pulled (a|something|my)* | "
    "something (went|popped|gave|tore)* | ripped | painkiller* | ibuprofen | physio* | can't stand up straight | lumbago | "
    "popped | groin | put my back out | sore back | shoulder (went|popped)* | spine | crick*"
)
STRUCK = (
    "hit me | hit my | struck | clout* | whack* | clonk* | bonk* | thump* | "
    "on the (ear|head|nose|chin|jaw|temple|shin|foot|toe|shoulder)* | "
    "my (toe|toes|foot|shin|ear|nose|chin|head|jaw|temple|skull|chest|hand|ribs|thumb|finger|fingers|forearm|arm|wrist|"
    "knuckles) | black eye | stitches | bruis* | crater | dent in the | flip flop* | inch from | a hair's breadth | "
    "a hand's width | thumb's width | beside my foot | missed (me|my)* | bump on | knuckles | skin off | squash* | trapp* | "
    "pinch* | crush* | lump on | flat toenail | toenail* | swollen (foot|hand|thumb)* | guillotine* | just missed | "
    "narrowly | blood | my brow | on my brow | forehead | my (back|neck|elbow|knee|hip) | printed | clicking"
)
MOVED = (
    "slid | slip* | fell | fall* | drop* | crash* | whoosh* | toppl* | tipp* | pitched | swung | swing* | swept round | "
    "dived | dive | dove | nose dived | came down | folded | let go | gave way | collaps* | plummet* | came off | "
    "rolled off | shot (off|out|down|up)* | spun | flew | flipp* | lurch* | keel* | landed | thud | clang* | "
    "parted company | snapped shut | bang | round went | went everything | everything went"
)
UNFASTENED = (
    "undid | undo* | slacken* | loosen* | unclamp* | unlock* | releas* | clutch* | clamp* | without locking | unlocked | "
    "balanc* | rebalanc* | took off the | took the * off | camera off | removed the | end screw | "
    "safety (screw|bolt|stop|nut)* | toe (saver|stop|screw|guard)* | end (stop|nut|cap|bolt) | bolt was not | no bolt | "
    "missing (bolt|screw|stop)* | one bolt | last bolt | finger tight | never missed it | saddle (knob|screw|bolt)* | "
    "forgot to (tighten|lock)* | not tightened | set screw | retaining | top heavy | out of balance"
)
PERCH = (
    "stool* | chair* | bucket* | crate* | beer crate* | box | cool box | coolbox | table | barrel | tailgate | bonnet | "
    "parapet | trestle | wheelie bin | water butt | oil drum | drum | pallet* | bench | sawhorse | tow bar | roof rack | "
    "gate | milk crate | tower of | swivel chair | office chair | deckchair | bin | arm rest | window sill | railing | "
    "crates | two crates | picnic bench | barrels | tyres | tyre | cable drum | beer crates | steps of the van | bumper | "
    "mudguard | fence post | tree stump | log pile | woodpile | compost heap | climbing frame | swing | trampoline | "
    "slide | on the wall | garden wall | low wall | pile of (books|bricks|tyres|crates|logs|boxes)* | "
    "stack of (books|bricks|tyres|crates|logs|boxes|pallets)*"
)
PERCHED = (
    "stand* | stood | climb* | perch* | balanc* | tiptoe* | tip toe* | teeter* | wobbl* | stepped up | one foot | "
    "on one leg | stretch* | lean* | reach* | hopped up | hop up | stack* | clamber* | scrambl* | sway* | upturned | "
    "upside down | pile | piled | piling | stacked | one arm round | hanging on | hang on | cling*"
)
UP_THERE = (
    "eyepiece | zenith | finder | focus* | reach | dew cap | dark | no moon | shutter | polaris | tube | lens cap | "
    "observe | top | camera | cap | above (#|forty|fifty|sixty|seventy|eighty) * | degrees | high up | overhead | truss"
)
LADDER = "ladder* | stepladder* | step ladder* | steps | rung | rungs | top step | step stool"
ON_LADDER = (
    "climb* | lean* | leant | stand* | stood | top | up | wobbl* | bricks | plank | gravel | wet | mud* | soft | tied | "
    "one hand | both hands | no hands | fell | fall* | slip* | in the dark | lash* | van roof | tilt* | level | foot | "
    "tape* | rotten | cracked | missing rung | extended | dew | icy | frost* | rolled | castors"
)
ROOF = (
    "roof | roofs | gutter | gutters | eaves | ridge tiles | tiles | slates | skylight | dormer | flat roof | dome | "
    "chimney | parapet | carport | garage roof | rooftop*"
)
ON_ROOF = (
    "climb* | clamber* | scrambl* | up on the | out of the (skylight|window|dormer)* | slid | slipp* | crawl* | shuffl* | "
    "straddl* | brush* | snow | ice | icy | wet | edge | no railing | astride | hauled up | fell | fall* | drop | moss* | "
    "kick* | bare feet | socks | sat on the ridge | shinned up | drainpipe"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "steps | step | tread | stair | rung | ladder | stool",
            "turns | loose | wobbl* | cracked | rotten | missing | painter left | outside edge | gives | bends | rocks | "
            "tied with | taped",
            "eyepiece | use | dark | zenith | focus* | reach | third | top | edge | dome", NEARBY,
        ),
        (
            "rolling it | rolled it | up my back | on my back | against my (chest|hip|stomach)",
            "mount | tube | mirror | scope | pier | roof rack | boot | head | base", NEARBY,
        ),
        (
            "washing line | clothes line | clothesline | string | rope | baling twine | bungee | dog lead | ratchet strap | "
            "old strap",
            "mirror | mount | tube | scope | dome | pier | head | beam",
            "carried | hoist | lift* | creak* | hang* | held | over a beam | pull* | lower* | hold* | snap*", NEARBY,
        ),
        (
            "hundredweight | kilos | kilo | kg | pounds | stone | slab | plate | pier | concrete",
            "down the (steps|stairs|slope|bank|ramp) | up the (steps|stairs|slope|ramp|bank) | rollers | broom handles | "
            "crowbar | lever* | rolled | skidd* | planks",
            NEXT,
        ),
        (
            "underneath | under it | beneath | below it", "pushed | lifted | held | propped | legs | back | shoulder*",
            "base | pier | mount | mirror | tube | dome | block | slab | fork | rocker", NEARBY,
        ),
        (
            "saddle | knob | clamp | dovetail | bolt | rings",
            "worn | gone | missing | cracked | stripped | creeps | one knob | loose | slips | bent",
            "tube | scope | ota | refractor | points low | mount | listen | weight", NEARBY,
        ),
        (
            "mount | mirror | mirror box | tube | scope | pier | counterweight* | weights | bar of weights | trolley | "
            "crate | trunk | wedge | tripod | dome | shutter | truss | slab | stairs | steps | ladder | ramp | kilos | "
            "fork | base plate | dob | roof",
            HARM,
            any_of(
                MOVED, HEAVED, UNFASTENED,
                "came off | rolled | stopped it | sneezed | learned | learnt | missed | dropped | landed | took the | "
                "let go | ran away | got away | slid",
            ),
            NEARBY,
        ),
        (
            "centre of gravity | out of balance | top heavy | unbalanced",
            any_of(HARM, "swung | learned | tube | mount | weights | tipped"), NEARBY,
        ),
        (
            "top end | bottom end | he took | she took | the other end",
            "landing | stairs | steps | sneezed | corner | banister*", NEARBY,
        ),
        (
            "lump | mount | head | mirror | beast | brute | pier | tube",
            "on your shoulder | on my shoulder | up on (my|your|one) * | hug | knee",
            "clicking | click* | twinge | since | pain | crunch* | popp*", NEARBY,
        ),
        (
            "camera | weights | counterweight*", "off came | came off | took off | took the",
            "round went | brow | forehead | nose | chin | swung | whirl*", NEARBY,
        ),
        (
            "wheelie bin | bin | barrow | trolley | skateboard | office chair | swivel chair | gas bottle",
            "height | stood | stand* | climb* | held the lid | reach* | step*", "focuser | eyepiece | finder | zenith | lid",
            NEARBY,
        ),
        (
            "along the ridge | on the ridge | astride | on my backside | backside",
            "slit | roof | broom | tiles | shutter | dome", NEARBY,
        ),
        (HEAVY, HEAVED, any_of(BY_ONESELF, STRAIN, STRUCK), NEXT),
        (
            "mount | tube | head | scope | # inch | tripod | pier | weights | counterweight* | boot | mirror", STRAIN,
            "lift* | swung | carr* | heav* | hug | haul* | boot | stair* | steps | kilo* | went | base | moved", NEARBY,
        ),
        (
            "mount | mount head | tube | ota | scope | fork | # inch | pier | mirror | counterweight* | weights | shaft | "
            "truss | shutter | wedge | tripod | slab | dovetail | bar | roof | panel | dome | base | rig | kilos | kilo | "
            "pounds",
            MOVED, STRUCK, NEXT,
        ),
        (
            any_of(
                "counterweight* | weights | shaft | weight | kilo | kilos | "
                "(ten|fifteen|twenty|five|#) (kilo|kilos|kg|pounds)*",
                "tube | scope | fork | ota | refractor | dovetail | mount",
            ),
            UNFASTENED,
            any_of(
                "whoosh* | swung | swept round | dived | dive | nose dived | came down | crash* | pitched | plummet* | "
                "toppl* | let go | thud | landed | flipp* | spun | shot * | flew",
                STRUCK,
            ),
            NEARBY,
        ),
        (
            "end screw | toe (saver|stop|screw|guard) | safety (screw|bolt|stop|nut) | end (stop|nut|bolt) | "
            "retaining (bolt|screw)",
            "lost | never | missing | without | no | left off | forgot* | gone | missed", NEXT,
        ),
        (
            PERCH, PERCHED, UP_THERE,
            "i | me | my | we | you | us | our | he | she | her | his | one foot | one leg | on tiptoe | someone | "
            "somebody | whoever | one hand | one arm | up on",
            NEXT,
        ),
        (
            "on (tiptoe|tiptoes) | tiptoe | teetering | balancing act",
            any_of(PERCH, "eyepiece | ladder* | rung | step | steps"), NEARBY,
        ),
        ("(stool|chair|crate|box|bucket|steps|ladder) (on|upon|on top of) (the|a|an|another|two|my) *",),
        (
            LADDER, ON_LADDER,
            "eyepiece | dome | roof | shutter | tube | branch* | zenith | night | dark | finder | gutter | pole | wall | "
            "level | feet | metres | pier | camera | observatory | truss | van",
            NEARBY,
        ),
        (
            ROOF, ON_ROOF,
            "i | we | me | shutter | telescope | tripod | mount | snow | horizon | set up | observ* | camera | night | "
            "eyepiece",
            "climb* | clamber* | scrambl* | slid | slipp* | crawl* | shuffl* | straddl* | astride | shinned | "
            "out of the * | kick* | fell | hauled",
            NEARBY,
        ),
        (
            "under | underneath | beneath | below",
            "mirror cell | mirror | tube | fork | pier | dome | counterweight* | roof | mount",
            "last bolt | held (it|the thing)* up | my (knees|feet|chest|back|head|shoulder) | undid | lying | jack* | "
            "propped | car jack",
            NEARBY,
        ),
        (
            "shutter | dome | roof | hatch | lid | trapdoor | gate",
            "fell shut | slammed | fell on | dropped on | came down on | guillotine* | snapped shut | blew shut", NEXT,
        ),
        (
            "rope* | pulley | block and tackle | winch* | crane | chain hoist | strap*",
            "mount | tube | pier | mirror | dome | # inch | head | slab | fork | concrete | base",
            "snap* | gave | slip* | hoist* | lower* | hung | dangl* | swing* | swung | let go | underneath | "
            "over the (wall|parapet|balcony) | up to the | haul*",
            NEARBY,
        ),
        (
            "(#|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred) *? (kg|kilo|kilos|pound|pounds)",
            "wrestl* | slipped | slip* | drop* | fell | manhandl* | wedge | shoulder*",
        ),
        (
            "tube | telescope | counterweight* | bar | axis",
            "(swing|swings|swung|swinging) … (hit|head|face|ear|up|down|free) | hit (me|you|him|her) | without locking | "
            "unlocked",
        ),
        ("stairs | staircase | attic | cellar", "carried | carry* | lugged | hauled | heaved | dragged"),
        ("rung | rungs", "stand* | stood | third | top | dark | hand"),
        ("(stand|standing|stood|climb|climbed) on (a|the|an) (chair|stool|crate|table|box|barrel|bucket|wall)",),
        ("dovetail | saddle | rings | bolt | bolts", "undid | loosen* | slid out | slipped | let go | landed | released"),
        (
            "tube | mount | telescope | refractor | reflector | # inch | dobsonian | pier | mirror",
            "one person | single handed* | good back | my back | bad back | two of us | three of us | slid out | "
            "landed on | weighs | raised | on to its base",
        ),
        (
            "ladder*",
            "climb* | lean* | leant | rung* | stand* | stood | step* | up | top | foot | eyepiece | zenith | hold* | held | "
            "fell | fall* | metre* | meter* | feet",
            NEXT,
        ),
        ("step (stool|ladder)* | stepladder*",),
        (
            "tube | mount | telescope | scope | pier | mirror | truss | counterweight* | cell | fork | dome | saddle",
            "hoist* | heav(e|ed|ing) | winch* | "
            "(lift|lifted|lifting|carry|carried) … (pier|saddle|alone|myself|stairs|off|on|onto|into|back)",
        ),
        (
            "lift* | carr* | hold* | held | heav* | hoist* | drag*",
            "(#|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred) *? "
            "(kg|kilo|kilos|kilogram|kilograms|pounds|lbs)",
            NEXT,
        ),
        ("clutch* | clamp*", "open* | loosen* | releas* | undid | undo* | slip* | swung | swing* | counterweight* | drop*"),
        (
            "tube | counterweight* | mount | telescope | mirror",
            "(swung|swings|swing) (down|round|out) | fell | crashed | slipped out | dropped | toppled | tipped over",
        ),
        ("counterweight*", "off | remov* | shift* | slid* | foot | toe* | drop*"),
        ("on the (tube|clamp)", "two | three | nobody", "under | clamp | lift*"),
    ),
    harmless="ladder of * | long as my arm | length of my arm | stepladder of * | "
    "(tail|comet|star|moon|orion|planet|galaxy|nebula|sun) … (climbs|climb|stands|tiptoe|rises) | skin of | the flap of | "
    "rib of (the|a) | hurt the (data|picture|image|seeing|signal) | does not hurt | doesn't hurt | pain in the | "
    "thumb drive | rule of thumb | rules of thumb | thumbnail (image|picture|view|of)* | toe the | ankle of | elbow room | "
    "heel of hercules | (dark|cooled|test|clear) tube | took pictures | pictures of * | "
    "roof (rolled|slid|opened|rolls|slides) * | (roll off|sliding|run off) roof | stepped | first step* | next step* | "
    "step by step | steps of | (focus|processing|following|two|three) steps | top of the (list|page|hour|frame|picture) | "
    "fell (asleep|short|silent|below|behind|to|apart into|off the|in love) | fell by * | "
    "dropped (out|frames|below|to|by|off|a) | dropped … (frames|subs) | drop* in | slipped (focus|behind|by) | "
    "focus* slip* | star* (fell|fall*) | shooting star* | falling star* | night* fell | night* fall* | dew fell | "
    "temperature (fell|dropped|fall*) | "
    "(fwhm|guiding|rms|error|seeing|count|counts|wind|moon|magnitude) (fell|dropped|swung|slid) | meridian flip* | "
    "flip* (of the|the|at|went|was|came)* | wind dropped | box (of|around|in) | bounding box | stacked | "
    "stack of (frames|subs|images|pictures|exposures|#|*) | reach* (the|its|a) (meridian|zenith|top|horizon|limit) | "
    "carried (on|out|through) | carry (on|out) | cold weather front | (distance|cosmic|parallax) ladder* | "
    "ladder of distances | weight of (the)? (evidence|proof|numbers) | weighted | (its|their) own (weight|noise) | heavy dew",
)
