"""English: see `cautions/cold.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.english.circumstances import FREEZING, HARM
from sitegen.cautions.phrases import any_of

BODY = (
    "finger* | fingertip* | thumb* | hand | hands | toe | toes | feet | foot | ear | ears | earlobe* | nose | lip | lips | "
    "skin | palm | cheek* | eyelash* | eyelid* | eyebrow* | knuckle* | chin | face | legs | knees | tongue | the tips | tips"
)
NUMBED = (
    "numb* | white | whitish | waxy | like wood | wooden | blocks of * | block of ice | blue | black | stuck | froze | "
    "frozen | stiff | useless | would not (bend|close|grip|work|obey)* | wouldn't (bend|close|grip|work|obey)* | "
    "no feeling | no longer mine | dead | like (clubs|paws|stumps|sausages|lead|stone|claws|bricks) | "
    "lost (all|the)? feeling | blister* | peel* | burnt | burned | burning | stung | could not feel | couldn't feel | "
    "can't feel | cannot feel | clumsy | claws | stayed on the | pins and needles | throb* | tingl* | came back with | "
    "thaw* | frost nip* | frostnip* | hold the pen | could not hold | couldn't hold | could not write | rang like | "
    "like glass | brittle | stop working | stopped working | stopped obeying | give up | colour of candles | "
    "candle colour* | wax | like wax"
)
SHIVERS = (
    "teeth chatter* | chattering teeth | chattering | shiver* | shak* | shook | trembl* | chilled to * | to the bone | "
    "slur* | mumbl* | stumbl* | confus* | dozy | drows* | cosy | cozy | quite warm | almost warm | felt warm | warm again | "
    "sleepy | lay down | didn't fancy getting up | did not want to get up | could not think | couldn't think | forgot how | "
    "couldn't speak | didn't care | giggl* | uncontroll* | undress* | took my coat off"
)
STOPPED = "stopped | wore off | ceased | went away | passed | gave up | suddenly | by itself | all at once | no longer"
COLD = (
    "cold | chill | chilled | chilly | bitter | freezing | icy | frost* | minus * | snow | wind chill | windchill | "
    "arctic | siberian | below zero | -#"
)
ILL_CLAD = (
    "t shirt | tee shirt | shorts | thin (jacket|jumper|pullover|sweater|coat|shoes|socks)* | trainers | sneakers | "
    "sandals | slippers | pyjamas | pajamas | dressing gown | no (gloves|hat|jacket|coat|socks|sleeping bag|stove|boots) | "
    "without (gloves|a hat|a jacket|a coat|socks|a sleeping bag|boots) | gloves off | off with the gloves | "
    "took … gloves off | gloves (were|lay|stayed|are) * | bare (hands|fingers|hand|feet|skin)* | barehanded | jeans | "
    "shirt sleeves | in socks | hoodie | thin boots | thin shoes | thin trousers | thin socks | thin gloves | light shoes | "
    "light jacket | wet shirt"
)
WET_THROUGH = (
    "soaked | wet through | sodden | drenched | damp | wet (feet|socks|boots|trousers|gloves|jacket|clothes|jeans|knees) | "
    "soaking | sweat* | dripping"
)
LONG = (
    "hours | all night | whole night | until (dawn|four|five|six|three|two|sunrise|breakfast) | held out | stuck it out | "
    "sat it out | stayed | kept going | carried on | one more | subs | another hour | to the end | till dawn | night | flats"
)
DRINK = (
    "rum | whisky | whiskey | brandy | schnapps | vodka | hip flask | hipflask | gin | liquor | mulled wine | grog | "
    "a dram | drams | slivovitz | spirits | booze"
)
METAL = (
    "metal | tripod leg* | dovetail | handle | aluminium | aluminum | steel | rail | brass | tube ring* | knob | "
    "lock lever | railing | counterweight | zip"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "mittens | gloves | mitts",
            "could not work out | couldn't work out | could not get | couldn't get | how to put | back on | on again", NEARBY,
        ),
        (
            "fell asleep | asleep | dozed | nodded off",
            "deck chair | deckchair | chair | blanket | grass | ground | outside | lounger",
            "frost | ice | minus * | snow | cold | ears | froze*", NEARBY,
        ),
        ("ears | nose | cheeks | fingers | toes | lips", "peeled | peeling | blister* | went black | scabs", NEARBY),
        (
            "tips | fingertips | fingers | hands | toes",
            "stop working | stopped working | quit | gave up | colour of (candles|wax|paper|chalk|milk) | white as | "
            "like candles",
            NEARBY,
        ),
        (
            FREEZING, HARM,
            "boots | shoes | nails | toes | skin | fingers | gloves | feet | hands | ears | nose | since come off | peel*",
            NEARBY,
        ),
        (
            "lips | teeth | tongue | mouth", "knob | screw | brass | metal | steel | clamp | clip",
            "hands (had)? (stopped|gave|would)* | cold | temperature | frost* | froze | minus * | stuck | bad idea", NEARBY,
        ),
        (
            "sweat* | sweaty | wet shirt | damp shirt", "wind | cold | sat | shiver* | chill*",
            "hill | up | until | wind | night | shiver*", NEARBY,
        ),
        (
            "nail | nails | skin", "come off | came off | peel* | fell off",
            "below | boots | shoes | cold | frost* | minus *", NEARBY,
        ),
        (
            "could not hold | couldn't hold | could not turn | couldn't turn | could not write | could not do up | "
            "couldn't do up | could not press",
            "pen | pencil | key | keys | knob | screw | buttons | zip | lace* | fork | log",
            "cold | after one | frost | no log | hands | fingers | ears | minus | gloves | freez* | numb | glass", NEARBY,
        ),
        ("lick* | tongue | lips | kiss*", "dovetail | metal | rail | tripod | tube | ring | railing", NEARBY),
        (
            "take (his|her|my) (jacket|coat) off | took (his|her|my) (jacket|coat) off | took off (his|her|my) * | "
            "undress* | pulled off (his|her|my) (jacket|coat|hat)",
            "fine | warm | hot | brandy | laughed | snow | cold | frost", NEARBY,
        ),
        (
            "teeth chatter* | chattering teeth | teeth (were|are)? chattering | frost nip* | frostnip* | "
            "chilled to the (bone|marrow) | blue lips | lips were blue | blocks of ice | wind chill | windchill | "
            "hypothermic",
        ),
        (
            BODY,
            "numb* | waxy | like wood | wooden | blocks of * | like (clubs|paws|stumps|sausages|lead|stone|claws|bricks) | "
            "no feeling | no longer mine | frostnip* | frost nip* | pins and needles | could not feel | couldn't feel | "
            "can't feel | cannot feel | lost (all|the)? feeling",
            NEXT,
        ),
        (BODY, NUMBED, any_of(COLD, METAL, "gloves | until breakfast | thaw* | warm water"), NEXT),
        (
            "skin", "stayed on | stuck to | left (some|a|of|my)* | peeled | strip of | patch of | tore | behind on",
            any_of(METAL, COLD, "ring | tube | tripod | focuser"), NEARBY,
        ),
        (
            "palm | finger* | hand | tongue | lip | lips",
            "stuck | froze to | welded | burnt like fire | took a strip | came away", METAL, NEARBY,
        ),
        (
            SHIVERS, STOPPED,
            any_of("cosy | cozy | warm | dozy | drows* | sleepy | lay down | groundsheet | snow | getting up", COLD), NEARBY,
        ),
        (
            "shiver* | shaking | chattering | trembl*",
            any_of(LONG, "until | too hard | could not | couldn't | screw* | stopped | wore off"), NEARBY,
        ),
        (
            "mumbl* | slur* | nonsense | stumbl* | confus* | could not think | couldn't think | could not spell",
            any_of(COLD, "recorder | voice memo* | voice notes | at four | around four | notes | hours | by dawn"),
            "cold | frost* | minus * | recorder | voice | freez* | chill* | shiver* | snow | make sense", NEARBY,
        ),
        (ILL_CLAD, any_of(FREEZING, "frost* | bitter* | freezing | arctic | wind chill | snow"), NEARBY),
        (
            WET_THROUGH, "wind | cold | frost* | minus * | hours | all night | freez* | thin | until * | held out | stayed",
            "knees | socks | boots | trousers | jacket | feet | jeans | clothes | gloves | pullover | jumper | shirt | "
            "skin | grass | coat | i",
            "cold | frost* | minus * | freez* | hours | all night | wind | held out | shiver* | chill*", NEARBY,
        ),
        (DRINK, "warm | cold | chill | frost* | freez* | minus *", NEXT),
        (
            "snow | frost | ice | groundsheet",
            "lay down | lay in | lie down | slept | nap | dozed | fell asleep | nodded off | sit down and sleep",
            "i | we | me", NEARBY,
        ),
        (
            "frost* | ice | icicle* | rime",
            "eyebrow* | eyelash* | beard | moustache | hair | sleeping bag | blanket | scarf", NEARBY,
        ),
        (
            "no sleeping bag | without a sleeping bag | no stove | heater (died|failed|gave up|broke) | no heating | "
            "no blanket",
            "frost* | cold | minus * | night | freez*", NEARBY,
        ),
        ("(lost|losing|no) (the)? feeling in",),
        (
            "minus (five|six|seven|eight|nine|ten|eleven|twelve|twenty|thirty|*teen) | -# °c | -#°c | -# (°|degrees)",
            "hours | all night | whole night | stay* | sat | stood | stove | beard | boots | without",
        ),
        ("frostbit* | hypotherm* | (no longer|not|couldn't) (feel|felt) (my|our|his|her|the) (fingers|hands|feet|toes)",),
        ("numb | numbed | numbing", "finger* | hand* | feet | toes | cold | lips"),
        (
            FREEZING,
            "bare | finger* | glove* | feet | toes | hand | hands | socks | skin | shiver* | metal | bones | stayed out | "
            "sat out | boots",
        ),
        (FREEZING, "bare | finger* | glove* | toes | skin | shiver* | hours outside", NEXT),
        ("cold", "glove* | socks | finger* | toes | feet | shiver* | bones | blanket* | hot water | trembl* | shoes", NEXT),
    ),
    harmless="frozen (screen|picture|window|program|software|driver|image|menu) | "
    "(screen|computer|laptop|program|software|driver|app) … (froze|frozen|freezes) | cold fingers of * | thawed by | "
    "frozen up | hot water bottle* … | white (light|balance|torch|torches|tape|dwarf|star|stars) | dark * skin | "
    "stiff (focuser|breeze|wind|joint) | blue (hour|filter|light) | second hand | on the other hand | hand in hand | "
    "at hand | hand (control|controller|box|pad|paddle|set) | by hand | left hand | right hand | face of | hands (of|off) | "
    "skin of | nose of | foot of | cold (pixel|camera|finger) | (red|brown|blue|white) dwarf* | "
    "(sensor|camera|chip|cooler|detector) … (minus *|-#) | cooled (down)? to (minus *|-#) | "
    "cold (front|dust|cloud|gas|case|light)* | absolute zero | sun … (minus *|-#) (degrees|°)",
)
