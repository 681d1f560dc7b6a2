"""English: see `cautions/laser.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.english.circumstances import AIRCRAFT, EYES, ONLOOKERS, SKY
from sitegen.cautions.phrases import any_of

POINTER = (
    "pointer | star pointer | sky pointer | "
    "(green|violet|purple|blue) (pen|stick|wand|ray|dot|thing|thingy|one|spot|streak) | light (sabre|saber|sword) | "
    "lightsab* | (#|five|ten|twenty|fifty|hundred|hundreds) (mw|milliwatt*) | #mw | 532 | presentation stick | magic wand | "
    "beam finder | green finger | the pen | big green | green fellow | green one | green monster | collimation gadget | "
    "burner (drive|diode) | writing names | tickl* (jupiter|saturn|the moon|the stars) | dvd burner | green ones | "
    "two green | gun sight | line module | laser module | pointing stick | (#|five|thirty|fifty|hundred) mw module | "
    "green torch | pencil of light | pencil beam | red gadget | little red (gadget|thing|one) | pointers on | "
    "three pointers | two pointers"
)
BEAM = "beam | beams | (green|violet|purple|blue) (line|light|streak)"
STRONG = (
    "milliwatt* | # mw | #mw | # watt* | one watt | (pop|pops|popped) (a|the)? (balloon|balloons) | "
    "(light|lights|lit) (a|the)? match* | burn* (paper|holes|wood|black) | infrared filter | ir filter | 532 nm | 405 nm | "
    "450 nm | class (iv|4|iiib|3b) | market stall | auction | label says | strongest | star pointer | church tower | "
    "two villages | villages away | the far hill | haze | guts of | construction site* | water tower | church spire | "
    "steeple | # km | kilometres away | miles away | far side | cliff opposite | low clouds | the clouds | on the clouds | "
    "rated for | module"
)
COLLIMATOR = (
    "collimator* | collimation (dot|beam|tool|spot) | collimation gadget | collimation thing | collimation device | "
    "alignment gadget"
)
AT_THE_BEAM = (
    "dot | beam | beams | switched on | still on | turned on | battery | bounced | return* | front end | "
    "front of the tube | down the (tube|front|drawtube) | into the (tube|drawtube) | red patch | red glow | straight down | "
    "blinks at | the hole"
)
SWUNG = (
    "swung | swept | sweep* | waved | waving | chas* | followed | traced | trac* | shone | shine* | shining | aimed | "
    "pointed at | pointing | lit up | played | drew | drawing | circled | flash* | dazzl* | writing | tickle | "
    "fought over | lights up | reach* | chasing | drew circles | wagged | wag | wiggled | drawn | outlined | went along | "
    "ran along"
)

VOCABULARY = Vocabulary(
    dangers=(
        ("pointers", "from the road | drivers | tripod head | mounted | lawn | disco | plane* | kids | visitors", NEARBY),
        (
            COLLIMATOR,
            "looked into (its|the) (end|front|hole|window) | into its | looked in | green spot | red spot | "
            "spot in (it|my) | bedroom | until bedtime",
            NEARBY,
        ),
        (
            "gadget | collimat* | the spot | return spot | red spot", "focuser | drawtube | secondary",
            "over the front | leans over | leaned over | down the tube | head in | face | eye | peer* | look* in", NEARBY,
        ),
        (
            "green … (line|light|beam|ray|pointer) | thin green | green beam",
            "visitors | cars | field | follow | plane* | faces | guests", NEARBY,
        ),
        (
            "reflection | return | bounce", "on my (cheek|face|eye|forehead|shirt|hand) | my eye | my cheek",
            "secondary | tilt | collimat* | gadget | target | focuser", NEARBY,
        ),
        (
            "drop the beam in | the beam | beam", "drawtube | focuser | down the tube | collimat*",
            "look | peer | eye | face | straight down | front", NEARBY,
        ),
        (
            "pointer", "on the man | on a man | on the * tower | put a spot | on the wall of | on the road | on passing",
            NEARBY,
        ),
        ("laser | lasers | laserpointer* | lasered",),
        (POINTER, any_of(AIRCRAFT, EYES, SKY, STRONG, SWUNG), NEARBY),
        (BEAM, any_of(AIRCRAFT, EYES), NEARBY),
        (BEAM, SWUNG, any_of(ONLOOKERS, SKY), NEARBY),
        (BEAM, STRONG, NEARBY),
        (
            "green line | violet line | blue line | green light", any_of(AIRCRAFT, ONLOOKERS, SKY),
            any_of(SWUNG, "goes | all the way | reaches | up to the | straight | came to look | catch"), NEARBY,
        ),
        ("green beam | violet beam | blue beam", any_of(ONLOOKERS, SKY, SWUNG), NEARBY),
        ("(green|violet|blue|purple) (pen|stick|wand|dot|pointer|thing|one|ray|light sabre)", ONLOOKERS, NEARBY),
        (COLLIMATOR, any_of(EYES, AT_THE_BEAM), NEXT),
        (
            "red dot | green dot | red spot | green spot",
            "forehead* | face | faces | dog | cat | kids | wall of | chest | back of",
        ),
        (STRONG, "tracing | pointing out | show* the (stars|constellations) | trace the | for the constellations", NEARBY),
        ("diode", "burner | brass | barrel | pointer | heat sink", NEARBY),
    ),
    harmless="neighbour's boy | torch of the | red torch | pointer of (the|a|an|my|our) | pointer on the (dial|gauge|scale) | "
    "(menu|dial|gauge|scale) pointer | "
    "laser (print|cut|engrav|sinter|weld|disc|jet|show|thermomet|range|level|eye|physic|medic)* | "
    "laser(print|cut|engrav|jet)* | laser … guide star* | laser … sodium* | (sodium|guide star) … laser* | "
    "(cd|dvd|disc|player) … laser* | reading … needs a laser | (no|without) (a|any)? laser* | instead of (a|the) laser | "
    "laser ranging | mouse pointer | pointer (in|on) (the|a) (menu|screen|window|map|chart) | "
    "(torch|head|lamp|light|lighthouse|moon|main|dipped|full|car|roof|steel|wooden|cross|balance|headlight) beam* | "
    "beam* of (moonlight|sunlight|starlight|light|dust|stars|hope|electrons) | "
    "beam* of (the|a|my|his|her|our|red|white) (torch*|lamp*|lighthouse*|car*|headl*|head*|light)* | beam splitter* | "
    "(radio|telescope|antenna|dish) (beam|pointer) | ray of (hope|light|moonlight|sunlight) | beam me up | "
    "(dear|each|every|the) (face|faces) beam* | beam* (with|face*) | pointer to | "
    "(hubble|space telescope|laboratory|lab) … beam",
)
