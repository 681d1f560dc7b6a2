"""English: see `cautions/alone.py`."""

from sitegen.cautions.caution import NEARBY, Vocabulary
from sitegen.cautions.english.circumstances import DARK, NO_LAMP
from sitegen.cautions.phrases import any_of

PLACES = (
    "night | dark | signal | phone | telephone | nobody | no one | pass | hill | quarry | mountain* | ridge | forest | "
    "wood | woods | moor | desert | edge | cliff | valley | roof | paddock | coast | village | road | ladder | summit | "
    "lake | ice"
)
UNTOLD = (
    "told (no one|nobody|noone) | not told (anyone|anybody) | didn't tell (anyone|anybody)* | "
    "without (telling|a word|a note) | no note | left no note | no one knew | nobody knew | nobody knows | no one knows | "
    "(she|he|they|wife|husband|mother|parents|family|everyone|everybody) (thinks|think|thought|believes|believed|assumes|"
    "reckons) | as far as (she|he|they|anyone) * | never mentioned | kept quiet about | sneaked | snuck | crept out | "
    "supposed to be (at|in) | meant to be (at|in) | nobody (was|is)? expect* | no one (was|is)? expect* | nobody due | "
    "no one (was|is)? due | not (be)? missed (until|before) | nobody would (miss|look)* | "
    "changed (my|the) (plan|mind|site)* on the way | told * (somewhere|another|the wrong)* | didn't say where | "
    "did not say where | fibbed | said i was | told (her|him|them) i was | off to the shops | gate code but me | "
    "only i have | (i|we|he|she) slipped (out|away|off) | slipped out (of|without|while|before|past) | my plan said | "
    "on a whim | changed my mind | another ridge | the other valley | not where i said | different (hill|site|ridge|valley)"
)
BY_ONESELF = (
    "alone | by myself | on my own | on my tod | only me | just me | solo | all by my lonesome | lonesome | not a soul | "
    "nobody about | nobody around | no one about | no one around | nobody else | no one else | nobody for | no one for | "
    "miles from (anyone|anywhere|the nearest)* | nearest (house|farm|village|road|neighbour|hut|person|light|hospital)* | "
    "nobody within | no one within | just the * and me | me and the | by my lonesome | single handed | "
    "the only (one|person|car|soul)* | nobody came | nobody passes | deserted | hermit | nobody to hear"
)
CUT_OFF = (
    "no (signal|bars|bar|reception|coverage|service|network|phone|mobile) | zero bars | not (a|one) bar | "
    "without (signal|coverage|a phone|reception) | out of (range|coverage|signal) | dead (spot|zone) | "
    "(phone|mobile|telephone|cell phone|battery|radio|handset) (was|is|had|went|at|on|in)? (dead|flat|empty|died|out|home|"
    "off|gone|drowned|broken|the car|the kitchen|its charger|charging) | "
    "phone … (at home|in the car|in the kitchen|in the van|on the kitchen*|on its charger|on the charger|dead|died|flat|"
    "drowned) | left (my|the) phone | forgot (my|the) phone | cattle grid | last house | two hours on foot | "
    "an hour's walk | hours' walk | hour on foot | miles of track | end of the track | getting a call out | no call | "
    "dead handset | handset | no line | at home on its charger | phone was at home | phone mast | no mast | mast within | "
    "cell tower | nearest mast | nearest signal | emergency calls only | sos only | no service"
)
ROUGH = (
    "edge | edges | brink | drop | drops | cliff* | crag* | gully | ravine | gorge | scree | ledge | precipice | quarry | "
    "mine | mineshaft | shaft | pit | bunker | ruin | ruins | derelict | abandoned | disused | sheer | overhang | ridge | "
    "summit | mountain* | plateau | moor | bog | marsh | desert | forest | woods | canyon | caldera | crater rim | lava | "
    "glacier | dune* | rotten floor | floor is rotten | goat (path|track) | sheep track | "
    "old (works|mill|silo|airfield|railway) | viaduct | dam | trig point | hilltop | outback | badlands | salt flat | "
    "wilderness | backcountry | gravel gave | ground gave | nothing (there|below|but air)* | thin air | bivouac | bivvy | "
    "the fells | up the hill | bushland | mountain pass | the pass | steep slope | watch tower"
)
MISHAP = (
    "ankle | twist* | sprain* | tripped | stumbled | knee | slipped | slid | fell | fall | tumbled | broke my | "
    "cracked my | bleeding | blood | gravel gave way | crumbl* | gave way | rolled away under | sank | stuck | bogged | "
    "lost (my|the) (way|path|track|bearings) | got lost | turned round in circles | went over on | concuss* | "
    "knocked myself | couldn't stand | limp* | hobbl* | crawled | under that boulder | found me at | would have found me | "
    "one shoelace | boulder"
)
GROPING = (
    "felt (my)? way | by feel | followed | groped | groping | feeling (my)? way | on all fours | hands and knees | crept | "
    "edged | shuffl* | picked (my)? way | climbed | walked | scrambl* | stepped | stepping | one hand on | down"
)
TRESPASS = (
    "no entry | keep out | danger sign | do not enter | no trespassing | warning sign | blasting | over the fence | "
    "through the fence | hole in the fence | hopped the | climbed the (fence|gate) | past the (sign|barrier|tape) | "
    "under the (tape|barrier) | padlock* | private property | barbed wire | range | red flag"
)
REMOTE_NIGHT = (
    "night | dark | dawn | until (five|four|three|two|six) | midnight | summit | set up | subs | stars | sky | imaging | "
    "tripod | scope | telescope"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "crag | crags | cliff* | gully | scree | tops | summit | ridge",
            "cloud | fog | mist | white out | whiteout | short cut | shortcut | off the path | lost",
            "phone | nowhere to go | no path | alone | dark | night | back | drop", NEARBY,
        ),
        (
            "roof | floor | beams | boards | stairs | ladder | gallery",
            "old mill | ruin | barn | derelict | abandoned | tower | church | bunker | silo | factory",
            "hold | nails | rotten | gaps | joists | only one | hole | missing | creak* | walk where | gave", NEARBY,
        ),
        (
            "gate | fence | warden | ranger | watchman | guard | keeper",
            "gap | hole | locks | locked | climbed | over | "
            "until (monday|tuesday|wednesday|thursday|friday|saturday|sunday|morning) | padlock*",
            "shaft | pit | quarry | mine | edge | drop | nobody knows | no one knows | well | cliff* | tunnel", NEARBY,
        ),
        (
            "without a word | no note | nobody awake | while the * slept | tiptoed out | out of the window",
            "climbed | summit | trig point | hill | ridge | moor | wood* | quarry | cliff* | path | walked | peak", NEARBY,
        ),
        (
            "no one (has|had) any idea | nobody (has|had) any idea | no one knows where | nobody knows where | "
            "no idea where i am | nobody can find me | unreachable",
            "i | me", NEARBY,
        ),
        (NO_LAMP, "ladder | rungs | adit | shaft | mine | stretch | climb* | steps | descent | path | down", NEARBY),
        (
            "stepped back | step back | stepping back | backed up | heel | one heel | my foot | next step",
            "no rock | nothing under | found nothing | found no * | found air | no ground | thin air | met nothing | "
            "not there",
            NEARBY,
        ),
        (
            "phone mast | mast | signal | coverage", "(#|ten|twenty|thirty|five|fifteen) miles | within | nearest",
            "ridge | valley | whim | moor | canyon | hill | track | plan | nobody", NEARBY,
        ),
        (
            "pit | quarry | shaft | drop | edge | cliff | sinkhole | crater | mine",
            "no fence | no rail | no railing | fence (is|has)? gone | counted my (paces|steps) | paces | "
            "where it (starts|begins|ends) | unfenced",
            "set up | starlight | dark | night | tripod | paces", NEARBY,
        ),
        (
            "nothing at all | nothing there | only air | a long way down | far below | nothing but air | black below",
            "path | left | right | step | rock | edge | track",
            "hand on | rock | feel* | cannot see | can't see | dark | night | no light", NEARBY,
        ),
        (
            "found me | find me | missed me | look* for me",
            "lambing | spring | days | weeks | monday | nobody | boulder | if i had",
            "call | signal | phone | alone | gate | bowl | nobody | handset | boulder", NEARBY,
        ),
        (
            "said i was | told them i was | told her i was | told him i was",
            "hours later | dead handset | phone | summit | tops | ridge | moor | quarry | wood* | dawn", NEARBY,
        ),
        (UNTOLD, any_of(CUT_OFF, ROUGH, BY_ONESELF), any_of(REMOTE_NIGHT, CUT_OFF, ROUGH), NEARBY),
        (
            BY_ONESELF,
            any_of(
                CUT_OFF, MISHAP,
                "drop | brink | cliff* | crag* | gully | ravine | gorge | scree | ledge | precipice | quarry | mine | "
                "shaft | disused | abandoned | derelict | rotten",
            ),
            NEARBY,
        ),
        (
            CUT_OFF,
            "edge | brink | drop | cliff* | crag* | gully | ravine | gorge | scree | ledge | quarry | mine | ridge | "
            "summit | mountain* | pass | plateau | moor | bog | marsh | desert | forest | woods | goat (path|track) | "
            "track was | outback | bush | wilderness | hilltop | on foot",
            any_of(MISHAP, DARK, BY_ONESELF, UNTOLD, "night | until (dawn|five|four|three) | set up | glass | ice | storm"),
            NEARBY,
        ),
        (
            NO_LAMP,
            "edge | brink | drop | cliff* | gully | ravine | gorge | scree | ledge | quarry | ridge | path | track | "
            "slope | descent | way down | summit | woods | forest | steps | rocks | trail | hill",
            any_of(GROPING, MISHAP), NEARBY,
        ),
        (
            "brink | precipice | sheer drop | the drop | cliff edge | cliff* | quarry edge | "
            "edge of (the|a) (quarry|cliff|pit|drop|canyon|gorge|rim)* | rim",
            "steps from | step from | metre from | metres from | feet from | arm's length | behind the tripod | behind me | "
            "legs over | dangl* | right (at|on) | backed | stepped back | stepping back | crumbl* | gravel | gave way | "
            "inches | only noticed | set up | loose | toes",
            any_of(
                DARK,
                "night | horizon | tripod | mount | scope | telescope | set up | southern | stepped back | eyepiece | subs",
            ),
            NEARBY,
        ),
        (
            TRESPASS,
            "mine | quarry | bunker | airfield | brink | edge | shaft | tower | works | ruin* | reservoir | rotten | dam | "
            "silo | cliff* | crater | tunnel | range | blasting | pit",
            "i | we | set up | dark | night | horizon | tripod | darkest", NEARBY,
        ),
        (
            "stuck | bogged | sank | sunk | axles | beached | broke down | flat (tyre|tire) | wouldn't start | "
            "battery was dead",
            "nobody (due|about|around|came|passes|for miles|within|knew|would) | "
            "no one (due|about|around|came|passes|for miles|within|was due) | no signal | no bars | alone | before monday | "
            "until monday | next (car|day) | miles | no water | walk* out | on foot",
            "track | sand | mud | desert | dune* | car | van | truck | road | phone | snow | night", NEARBY,
        ),
        (
            "lights off | without lights | followed me | pickup | strangers | a man | three men | drunk | torches",
            "alone | by myself | on my own | nobody else | lay by | car park | remote",
            "night | dark | circled | twice | waited | watch*", NEARBY,
        ),
        ("thinks i'm at | thinks i am at | think i am at | believes i was | thought i was at | thinks i was",),
        (
            "alone (in|on|at|by|beside) (the|a|an) *",
            "night | dark | dawn | signal | phone | telephone | forest | wood* | quarry | hill | mountain* | pass | moor | "
            "desert | cliff* | coast | summit | ridge | mine",
        ),
        (
            "nobody else | no one else | not a soul | solo",
            "mountain* | pass | hill | quarry | ridge | forest | wood | woods | moor | desert | cliff | valley | roof | "
            "coast | road | summit | ice | island | lake | beach | field | site",
        ),
        (
            "(without telling|told|telling) (anyone|anybody|nobody|no one)",
            "went | walk* | drove | ridge | mountain* | night | dark | set up | out | road",
        ),
        ("(i|we|he|she) … (alone|by myself|on my own|by himself|by herself)", PLACES),
        ("(alone|by myself|on my own) … (i|we)", PLACES),
        ("(nobody|no one) (who)? knew (where|that) (i|we)",),
    ),
    harmless="on (my|our) own (lawn|garden|terrace|balcony|patio|roof|drive|doorstep|land) | "
    "in (my|our) own (garden|yard|back yard) | told (no one|nobody|anyone) (that|about|of|which|how|the) | "
    "(they|everyone|people|everybody|nobody) thought it | nobody noticed | no one noticed | nobody minded | "
    "edge of (the|a)? (field|frame|picture|image|chip|sensor|mirror|disc|disk|cluster|nebula|galaxy|detector|cloud|moon|"
    "shadow|arm|halo|lens|shed|table|lawn|garden|village|town) | "
    "(lower|upper|left|right|outer|eastern|western|northern|southern|inner|leading|sharp|bright|dark|filter|knife|dust|"
    "cloud) edge | edge on | drop* frames | drop in | pass band | passband | high pass | low pass | first pass | "
    "second pass | drop out | dropped out | "
    "(leave|left|leaving|let|stands|stand|stood|lies|lay|focus|stars|that) (it|them|him|her)? alone | not alone | "
    "alone in (a|an|the|its) (empty)? (field|sky|frame|picture) | nobody … alone | never (come|go|walk|work|observe)? alone",
)
