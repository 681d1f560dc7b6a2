"""English: see `cautions/machine.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.english.circumstances import HARM
from sitegen.cautions.phrases import any_of

STRONG_MACHINE = (
    "grinder | angle grinder | bench grinder | lathe | table saw | circular saw | band saw | bandsaw | chop saw | "
    "mitre saw | miter saw | hole saw | holesaw | drill press | pillar drill | bench drill | router | milling machine | "
    "chainsaw | chain saw | belt sander | disc sander | planer | cutting disc | cut off disc | cut off wheel | "
    "grinding wheel | wire wheel | chuck | jigsaw | rotary tool | fly cutter | step drill | drill | saw | blade | "
    "the disc | spindle"
)
UNGUARDED = (
    "guard | guards | goggles | glasses | specs | safety glasses | face shield | visor | gloves | glove | push stick | "
    "clamp* | riving knife | no time to | one handed | one hand | by hand | freehand | free hand | "
    "held (it|the|one|that|down)* | holding | hand held | handheld | "
    "with my (hand|hands|thumb|finger|fingers|knee|foot|left|other|free)* | in my (hand|hands|other|left|lap)* | "
    "on my (knee|knees|lap) | between my (knees|feet|legs) | under my (foot|boot) | "
    "my (thumb|knee|foot|left hand|free hand|palm) | sleeve* | scarf | tie | hair | ponytail | necklace | lanyard | "
    "ring on | long hair | cuff | hoodie | flip flops | sandals | shorts | without | safety switch | dead man* | "
    "interlock | taped the (switch|trigger)* | trigger | locked on | switched on | still (spinning|turning|running) | "
    "while it (was|is|ran|turned)* | running | chuck key | key in | cracked | wobbl* | blunt | too big | "
    "wrong (disc|blade|bit) | no vice | missing | ladder | left handed | off balance | overhead | squint* | "
    "eyes (shut|closed|half) | blew | swarf"
)
GRABBED = (
    "kick* back | kicked | kickback | grab* | snatch* | snag* | jam* | caught | bit (in|into|deep)* | dug in | spun | "
    "spins | whipped | wound | wrapped | tore | ripped | flew | fly past | shot | shatter* | burst | exploded | broke | "
    "snapped | slip* | skid* | jumped | twist* | wrench* | leapt | climb* | went (past|round|through|into)* | helicopter* | "
    "sparks | bounced | took (the|a|my|off)* | nicked | sliced | cut my | gash* | stitches | blood* | bleed* | plaster | "
    "fingertip | thumb | thumbnail | knuckle* | eye | eyes | splinter* | chip | chips | swarf | sliver* | bandage* | "
    "tetanus | casualty | numb | wrist | sleeve | shirt | burn* | scar | red hot"
)
KNIFE = (
    "knife | stanley knife | box cutter | craft knife | scalpel | razor blade | utility knife | chisel | carving knife | "
    "hacksaw | snips | tin snips | file | awl | screwdriver | penknife | blade"
)
CUT_SELF = (
    "stitches | sliced | slipped | gash* | blood* | bleed* | plaster | bandage* | to the bone | tendon | cut my | "
    "cut myself | stabbed | jabbed | into my (hand|thumb|palm|finger|leg|thigh)* | towards (me|my)* | palm | tip of my"
)
WORKED = (
    "cut | cutting | drill* | shav* | polish* | sand | sanded | sanding | trim* | mill* | turn* | bor* | fil(ed|ing) | "
    "saw* | fed | feed | rip* | grind* | ground | deburr* | chamfer* | shorten* | slott* | tapped | rout* | plan(ed|ing) | "
    "whittl* | carv* | engrav* | weld*"
)
WORKSHOP = (
    "bit | bits | wheel | spindle | blade | disc | teeth | tooth | chips | emery | shield | guard | motor | machine | "
    "whizzer | press | bench | vice | clamp | chuck | mandrel | jig | fence | stick | ply | plywood | foam | aluminium | "
    "plate | strip | bar | rod | tube end | pole | poles | dovetail | bracket | adapter | knife"
)
FLESH = (
    "finger* | thumb* | knee* | kneecap | thigh* | sleeve* | eye | eyes | shirt | jumper | jersey | jeans | palm | "
    "knuckle* | glove* | nail | lap | hair | scarf | beard | apron | trousers | forearm | brow | cheek | chin | wrist | "
    "my chin"
)
MISHAP = (
    "sooner than | came through | knelt | tiny holes | in the way | in the drawer | door frame | ting | optician | hook | "
    "paper strips | stitch* | shorter | all of a sudden | suddenly | patched | stopped | blood* | plaster | watered | "
    "between my | round my | across my | towards (me|myself|my)* | slipp* | caught | snatch* | grabb* | spun | flew | "
    "whipp* | tore | pulled in | wound | instead | opened | nick* | gash* | gouge* | skinned | kicked | bounced | jammed | "
    "shattered | splinter*"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "tap | bar | wrench | spanner | vice | clamp | hammer | chisel",
            "let go | slipped | jammed | gave | snapped | broke",
            "chin | knuckle* | teeth | thumb* | nose | bench vice | palm | blood*", NEARBY,
        ),
        (
            "lathe | chuck | drill | spindle | mill | saw",
            "too big | packing | beer can | shim* | folded | make up the rest | not quite | off centre | wobbl* | loose",
            "left through | flew | window | wall | came out | let go | shot | past my | ceiling", NEARBY,
        ),
        (
            "gloves on | with gloves | gloves | glove",
            "turning machine | lathe | drill | spinning | bar | machine | spindle | press | mill",
            "had one | off me | wound | caught | pulled | hot | grabbed | took", NEARBY,
        ),
        (
            "belt | wheel | disc | sander | machine",
            "free hand | freehand | by hand | eyes half shut | eyes shut | no goggles | squint*",
            "dust | sparks | thinned | ground | thinner | sand* | grind*", NEARBY,
        ),
        (
            any_of(
                STRONG_MACHINE, "plane iron | plane | sander | belt sander | punch | hammer | axe | hatchet | shears | press",
            ),
            HARM,
            any_of(
                WORKED, "held | holding | hand | through | took | into | slipp* | leaned | setting up | saves | anodising",
            ),
            NEARBY,
        ),
        (
            "visor | goggles | safety glasses | face shield | mask",
            "without | fogs | fog | off | on the (shelf|hook|nail|bench) | at home | in the drawer",
            "tooth | teeth | cut | sparks | disc | blade | grind* | drill* | saw* | chips", NEARBY,
        ),
        (
            "saves setting up the vice | saves clamping | no time to clamp | without clamping | instead of the vice | "
            "not worth clamping",
        ),
        ("sander | belt | grinder | disc", "fingerprint* | fingertip* | knuckle* | skin | nail", NEARBY),
        (
            "the bit | drill bit | cutter | tooth", "came through | broke through | went through | sooner than",
            "knelt | knee* | thigh | hand | palm | finger* | lap | kneecap", NEARBY,
        ),
        (
            "spindle | chuck | shaft | lathe",
            "sleeve* | sleeved | jumper | jersey | scarf | cuff | hair | tie | apron | cloth", NEARBY,
        ),
        (
            "cutting disc | cutting wheel | grinding wheel | saw blade | blade",
            "cracked | chipped | wobbl* | too big | blunt | missing (a)? (tooth|teeth)",
            "still | lasted | went on | kept | finished | another | last | fine", NEARBY,
        ),
        (WORKED, WORKSHOP, FLESH, MISHAP, NEARBY),
        (
            "spindle | lathe | turning | spinning | still moving | not quite stopped | had quite stopped | before it stopped",
            FLESH, any_of(MISHAP, "chips | brush | reached over | emery | cloth | rag"), NEARBY,
        ),
        (
            "shield | guard | cover | plastic shield", "in the way | drawer | took off | off years ago | never | gets in",
            "tooth | teeth | blade | disc | wheel | sparks | grinder | saw | cutter | eye", NEARBY,
        ),
        (
            "the stick | push stick | pusher", "other room | could not find | couldn't find | never find | across the room",
            "fingertips | fingers | thumb | hand | ply | strip | blade | fed | last", NEARBY,
        ),
        (
            "eye | eyes", "ting | optician | splinter | filing* | grit | speck | hospital | hook | watered",
            "bolt | steel | metal | cut | drill* | grind* | ting | fil* | disc | saw*", NEARBY,
        ),
        (
            STRONG_MACHINE, UNGUARDED,
            any_of(
                GRABBED,
                "held | holding | hand | hands | gloves | guard | goggles | push stick | freehand | thumb | fingers | "
                "knee | sleeve | scarf | hair | chuck key | trigger | running | spinning | turning | cracked | ladder | "
                "no vice | swarf | specs | glasses",
            ),
            NEARBY,
        ),
        (
            STRONG_MACHINE, GRABBED,
            "hand | hands | finger* | thumb | thumbnail | wrist | palm | sleeve | shirt | eye | eyes | face | ear | knee | "
            "leg | knuckle* | blood* | stitches | scarf | hair | plate | bench | piece | work | workpiece | my",
            NEARBY,
        ),
        (
            "turning (part|piece|work) | workpiece | spinning (part|piece|work|disc|bit)",
            "finger* | hand | sleeve | file | cloth | rag | emery | swarf | by hand", NEARBY,
        ),
        (
            "swarf | shavings | turnings | chips | splinter* | sliver* | filings",
            "finger* | bare hand* | eye | eyes | pulled | blew | thumb",
            "lathe | drill* | steel | metal | mill* | turning | grinder | bolt | aluminium | brass | saw | long curl* | "
            "file | hospital",
            NEARBY,
        ),
        (
            KNIFE, CUT_SELF,
            "i | my | me | foam | case | dovetail | tape | tube | foil | plywood | cable | hand | thumb | palm", NEXT,
        ),
        (
            "chainsaw | chain saw | pruning saw | saw", "ladder | branch | bough | tree | limb",
            "ladder | up the tree | one hand | one handed | above my head | polaris | horizon | climb* | reach* | balanc* | "
            "roof",
            NEARBY,
        ),
        (
            "sparks", "shirt | eyes | face | beard | goggles | trousers | sleeve | straw | sawdust | grass",
            "grind* | disc | cut | cutting | weld* | steel | bolt | plate | flat", NEARBY,
        ),
        (
            "past the blade | towards the blade | into the blade | near the blade | blade guard | off the blade | "
            "kickback | chuck key",
        ),
        (
            "weld* | arc weld* | mig | tig",
            "without (a|the)? (mask|shield|helmet|visor|goggles) | no (mask|shield|helmet|visor) | eyes shut | "
            "looked away | sunglasses | sand in my eyes | arc eye | flash burn | gritty",
            NEARBY,
        ),
        ("tap | taps | thread", "snapped | broke | shard*", "eye | hand | palm | hammer | punch", NEARBY),
    ),
    harmless="rule of thumb | rules of thumb | thumb drive | thumbnail (image|picture|view|of)* | plane of (the|our) * | "
    "focal plane | image plane | galactic plane | orbital plane | plane (went|flew|crossed|passed|trail)* | "
    "press (on|the|of|a)* | axe of | does not hurt | doesn't hurt | skin of | hammer* (rain|wind) | filter wheel | "
    "drill hall | filter wheel* | colour wheel | focus wheel | worm wheel | gear wheel | wheel of the filter | "
    "steering wheel | turned (out|to|up|in|off|on|round|back) | turns? (out|to|up) | turn of | in turn | "
    "cut (out|down|short|off by|in half) | short cut | feed the | trim the (edges|frame|picture) | cropped | saw tooth | "
    "bit depth | drill (sergeant|hall|down)* | fire drill* | "
    "the drill (is|was|for|by|now|with)? (is|was|simple|known|same|routine|heart|polar|again)* | usual drill | same drill | "
    "know the drill | knew the drill | (network|wifi|wi fi|internet|wireless|mobile) router* | "
    "router (was|lost|in the|reboot*|restart*) | run of the mill | wind mill | windmill* | water mill | "
    "(grass|shoulder|knife|grass|propeller|turbine) blade* | blades of grass | see saw | seesaw | "
    "saw (the|a|an|it|that|no|nothing|how|them|him|her|two|three|some|what|only|in|us|my|more|at|through|stars|trees) | "
    "(i|we|he|she|they|who|visitors|nobody|everyone|kids|children|people|and|never|first|last|finally|only|barely|"
    "just) saw | vice (versa|chair*|president) | meat grinder | coffee grinder | log file | fits file | "
    "(data|text|image|config|csv|log|yaml|raw|master) file* | "
    "file (name|size|format|system|header|transfer|from|of|was|is)* | knife edge* | knife edge test | foucault knife* | "
    "bahtinov | thread (of|on|in|about)* | round trip",
)
