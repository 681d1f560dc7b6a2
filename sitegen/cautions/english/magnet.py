"""English: see `cautions/magnet.py`."""

from sitegen.cautions.caution import NEARBY, Vocabulary
from sitegen.cautions.phrases import any_of

MAGNET = (
    "magnet | magnets | magnetic | neodym* | neo | neos | rare earth* | n52* | n45* | n42* | n35* | pot magnet* | "
    "super magnet* | supermagnet* | samarium cobalt | bucky balls | neodyme*"
)
PIECES = (
    "disc | discs | disk | disks | catch | catches | little (silver)? (balls|cubes|cylinders|discs|beads)* | silver balls | "
    "(steel|shiny|tiny|silver) (balls|beads|cubes) | the pair | two halves | blocks | cylinder* | speaker | hard drive | "
    "hard disk | old drive | cubes | plates | ring | holder | lid | cover | flap | strip | slug | slugs | buttons | latch | "
    "clasp | rod pieces | first block | block | marbles | chrome marbles | spheres"
)
SNAPPED = (
    "snap* | leapt | leap* | jump* | flew | slam* | clack* | clap* | shot (together|across|out)* | pull* | attract* | "
    "grabb* | clicked shut | sprang | spring together | smack* | yank* | clamp* | together | let go of | prise | pry | "
    "wedge | wanted to meet | found each other | met in the middle"
)
HURT = (
    "blood* | blister* | pinch* | bruis* | nail | nails | fingertip* | thumb* | finger* | skin | trapp* | caught | nipp* | "
    "ouch | swear* | swore | crush* | squash* | flat | purple | black and blue | between them | in between | plaster | "
    "went black | black nail | out in time | swollen | numb | plum | sticking plaster | tip of my"
)
SHATTERED = (
    "shatter* | splinter* | chip | chips | chipped | crack* | shards | sliver* | broke | broken | burst | bits | "
    "fragments | scratch* | ding | shell shaped | crumb*"
)
IMPLANT = (
    "pacemaker* | pace maker | icd | defibrillator* | ticker | hearing aid* | insulin pump* | implant* | "
    "chest (began|started|beep*|box)* | box in (his|her|my) chest | heart thing | heart device | cardiologist | "
    "(his|her|my|the) (box|device|pump|heart) (began|started|beep*|bleep*|gave)* | palpitation* | funny turn | "
    "skipped a beat | sit down | all over the place | insulin | dicky heart | dickey heart | in his chest | in her chest | "
    "heart tablets | heart patient | stimulator | hearing aids | cochlear | metal plate in | wires to his heart | "
    "wires to her heart | breast pocket | wires in | heart rhythm"
)
SWALLOWED = (
    "swallow* | toddler* | (the|our|a) (little one|baby|kid|dog|puppy|youngest|infant) | mouth | ate | eaten | gulp* | "
    "nappy | x ray* | missing | one short | count* | chew* | suck* | casualty | emergency room | surgeon | "
    "(in|from) (her|his) (cheek|mouth|throat|nose) | youngest | cat has | dog has | licked | baby's | not in the jar | "
    "needed a doctor | sweets | calls them | have all of them | all of them"
)
DATA = (
    "bank card* | credit card* | card (is)? (dead|wiped)* | wiped | hard disk | hard drive | watch stopped | "
    "phone compass | memory stick | hotel key | tape | compass"
)
GRIPPING = (
    "buttons | grabber* | gripper* | grips by itself | holds by itself | sticks by itself | clip on | coated cubes | "
    "shiny (beads|balls|cubes|discs) | fat (discs|blocks|grabbers) | strong (buttons|discs|catch|catches|holders) | "
    "coupling | self closing | pull disc* | pull force | kilos of pull | kilos each | kilo pull | "
    "(#|two hundred|hundred|fifty|sixty|twenty) (kilo|kilos|kg) (of)? (pull|force|hold)* | retriev* pot | fishing magnet | "
    "recovery magnet | holding force | (brutal|fierce|mighty|strong) (discs|pucks|pots|blocks|catches)"
)
LIDS = "lid | cover | cap | mask | flap | drawer | holder | door | catch | hatch | panel | shield"

VOCABULARY = Vocabulary(
    dangers=(
        (
            "ear lobe | earlobe | lip | nose | cheek | tongue | nostril",
            "each side | on either side | one inside | one on each | both sides | butter | get them off", NEARBY,
        ),
        (
            "grabbed | stuck to | jumped (at|on|to) | clung to | snatched",
            "jacket | chest | bump | heart | pacemaker* | by itself | zip | watch | belt | hearing aid",
            "panel | cover | lid | hood | holder | itself | cap", NEARBY,
        ),
        (
            "bump | the thing | device | wires",
            "where they put | put the thing in | in his chest | under his collarbone | under the skin", NEARBY,
        ),
        (
            "(silver|chrome|steel|shiny|tiny|little) (beads|balls|discs|pieces|buttons)",
            "lost | missing | gone | cannot find | can't find",
            "puppy | dog | cat | toddler* | baby | little one | kid* | guilty | mouth | swallow* | grandson | granddaughter",
            NEARBY,
        ),
        (
            "hex key* | allen key* | screwdriver* | spanner* | knife | pliers | wrench | tweezers | scissors | nut | bolt | "
            "screw | washer | blade | tool",
            "leapt | jumped | flew | shot | sprang | hopped | snatched | by itself | of its own accord | was gone | "
            "slammed | whipped out of",
            "mirror | lens | corrector | glass | primary | secondary | plate | cover | ring | holder | cap", NEARBY,
        ),
        (
            "catches | latches | clasps | halves | discs | cover", "came together | closed | shut | met",
            "fingers out | finger out | thumb out | danced | hopped | swore | shook my hand", NEARBY,
        ),
        (
            "marbles | balls | beads | spheres | discs",
            "toddler* | little one | baby | sweets | mouth | kid | grandson | granddaughter",
            "tiny | chrome | little | hold* | shroud | shield | cover | cap | mask", NEARBY,
        ),
        (
            "(two|both) (halves|pieces|parts|things|discs|plates|caps|rings|blocks|bars|pucks|buttons|slabs) | the pair | "
            "the other one | its twin | its mate | its partner | each other",
            "slam* | snap* | clack* | crash* | flew | leapt | jumped | shot | smack* | clap* | bang* | together",
            "finger* | fingertip* | thumb | nail | skin | palm | blister* | blood* | knuckle* | tip of my", NEARBY,
        ),
        (
            "block | disc | cube | piece | slab | puck", "left hand | right hand | other hand | forearm apart | apart",
            "skin | between | both in | together | pinch* | blood*", NEARBY,
        ),
        ("neodym* | magnet*", "heart | breast pocket | chest | grandad | father | baby | nappy", NEARBY),
        (
            "pieces | rods | discs | balls | beads", "not in the jar | one short | missing | count*",
            "baby* | toddler* | nappy | dog | doctor | x ray*", NEARBY,
        ),
        (GRIPPING, any_of(SNAPPED, HURT, SHATTERED, IMPLANT, SWALLOWED), NEARBY),
        (
            LIDS, "bang | snap* | slam* | clack* | clap* | shut", "nail | thumb | finger* | skin | knuckle*",
            "black | blood* | blister* | out in time | caught | between | flat | purple | nipp* | pinch* | plaster | "
            "bruis* | swoll*",
            NEARBY,
        ),
        (
            LIDS,
            "(in|from) (her|his) (cheek|mouth|throat) | swallow* | x ray* | ticker | pacemaker* | insulin | in his chest | "
            "in her chest",
            NEARBY,
        ),
        (
            "scissors | hex key* | allen key* | screwdriver* | spanner* | knife | pliers | wrench | needle | tweezers | "
            "nail | screws",
            "by way of my | on the holder | flew | leapt | then they were | then it was | hung on | hanging (on|from) | "
            "stuck to the (cover|ring|holder|lid)",
            NEARBY,
        ),
        (
            "brittle | shatter* | splinter*", "cubes | discs | beads | coated | blocks | halves",
            "bits | cheek | eye | splinter* | shatter* | meet | together", NEARBY,
        ),
        (
            "phone | card | cards | watch | key card",
            "none of them (works|work)* | stopped working | dead | wiped | works any more",
            "flap | cover | lid | holder | catch | disc | discs | panel", NEARBY,
        ),
        (
            "part the | to part | prise | pry | get apart | apart", "stack | pair | discs | blocks | cubes | buttons",
            "vice | spoon | wedge | finger* | glove | nail | skin | blood* | thumb", NEARBY,
        ),
        (MAGNET, any_of(SNAPPED, HURT, SHATTERED, IMPLANT, SWALLOWED, DATA), NEARBY),
        (
            PIECES,
            "leapt | leap* | jumped | slam* | flew | sprang | snapped | shot | smack* | wanted to meet | found each other",
            "blood | blister | blood blister* | fingertip* | my (finger|thumb|nail|skin) | thumb | in between | "
            "between them | splinter* | shatter*",
            NEARBY,
        ),
        (any_of(PIECES, "cover | mask"), IMPLANT, NEARBY),
        (
            "(silver|little|tiny|steel|shiny) (silver|steel|shiny)? (balls|beads|cubes|cylinders|discs|disks|spheres)",
            "swallow* | toddler* | baby | mouth | missing | one short | little one | dog | puppy | ate | x ray* | nappy",
            NEARBY,
        ),
        (
            "hex key | allen key | spanner | screwdriver | wrench | tool | tools | knife | scissors | razor blade",
            "leapt | jumped | flew | pulled out of my hand | snatched | torn from my hand | yanked | sucked",
            any_of("ring | catch | holder | cover | corrector | lens | mirror | glass | primary", SHATTERED), NEARBY,
        ),
        (
            "hard drive | hard disk | speaker | microwave",
            "took apart | from an old | prised | salvag* | plates | dismantl* | scrap*",
            "finger* | thumb | blood* | nail | skin | slam* | mask on | holds | hold | pry | wedge | snap*", NEARBY,
        ),
        (
            "bank card* | credit card* | watch", "dead | wiped | stopped",
            "discs | disks | cover | catch* | cap | holder | lid | mask", NEARBY,
        ),
        ("swallow* | swallowed", "magnet* | silver | balls | beads | disc | discs | cubes | cover", NEARBY),
        ("neodymium",),
        (
            "magnet | magnets",
            "strong | snap* | finger* | thumb* | pinch* | card | pacemaker* | hold* | held | cap | lid | focuser | shield | "
            "cover | glu* | drawer | screw* | compass | skin | mirror | lens | sensor | tool*",
        ),
        ("magnetic (cap|lid|cover|catch|holder|mount|adapter|base|strip|tape|foot|feet|clamp|ring|disc)*",),
    ),
    harmless="magnetic (lines|flux|loop|loops|variable|star|stars|cataclysmic|reconnection) | magnet for * | "
    "magnetic (bearing|north|heading) | neo (object|objects|survey|tracking) | near earth * | "
    "magnetic (field|storm|activity|pole|north|declination|compass)* | (magnet|magnets) for | magnetar* | electromagnet*",
)
