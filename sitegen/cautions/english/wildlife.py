"""English: see `cautions/wildlife.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.english.circumstances import HERE
from sitegen.cautions.english.wildlife_bites import DANGERS as BITES
from sitegen.cautions.english.wildlife_tables import ANIMAL, ANIMAL_ACTS, ATTACKED, BEAST, FOOD, LURKING, SIGNS
from sitegen.cautions.phrases import any_of

VOCABULARY = Vocabulary(
    dangers=(
        (
            "swan | swans | goose | geese | cob | gander",
            "reach | forearm | arm | wing | hissed | did not like | didn't like | chased | peck* | my side | his side | nest",
            NEARBY,
        ),
        (
            "hooves | hoofs | hoofbeats | stampede | herd",
            "dark | behind the pier | gone by | low | both sides | past us | past me | ran | close | ground shook", NEARBY,
        ),
        (
            "lambs | calves | foals | cubs | young | kids | fawns | chicks",
            "mother* | husband | father | ram | bull | stallion | mum | parents",
            "dent | looked at me | looked at us | head down | pawed | charg* | butt* | stared | stamp* | horns | snort*",
            NEARBY,
        ),
        (
            "hand | arm | finger | thumb | leg | foot",
            "like a (rubber glove|balloon|sausage|boxing glove|football|melon|loaf)* | creeping (past|up|towards) | "
            "past the (elbow|wrist|knee|ankle)",
            NEARBY,
        ),
        (
            "cub | cubs | calf | calves | foal | piglet* | fawn | young | little ones | babies | kitten* | pups",
            "mother | mum | mama | sow | cow | parent",
            "stood | standing | behind | watched us | look* at us | between | closer | came | near | photo | flash | nearer",
            HERE, NEARBY,
        ),
        (ANIMAL, ATTACKED, HERE, NEXT),
        (
            "lip | eyelid* | hand | thumb | finger* | ear | nose | ankle | foot",
            "size of a (plum|egg|golf ball|grapefruit|tennis ball|balloon|sausage|potato)* | "
            "colour of (an aubergine|a plum|beetroot)* | up to the (wrist|elbow|armpit|knee|shoulder)",
            NEARBY,
        ),
        (
            "head | mouthparts | jaws | rest of it | the rest",
            "stayed in | still in | broke off | came off | snapped off | remain*",
            "tweezers | pulled | twist* | skin | leg | knee | scraped | calf | thigh | picked", NEARBY,
        ),
        (
            any_of(LURKING, SIGNS, ANIMAL_ACTS),
            any_of(
                FOOD,
                "threw | chucked | tossed | clapped | shouted | shooed | shoo* | banged | fed | selfie | flash | torch | "
                "stood still | sat still | froze | ran | backed | charged | closer | nearer | towards | metres | yards | "
                "between | cute | sweet",
            ),
            any_of(
                ANIMAL_ACTS, SIGNS,
                "bristl* | snout* | tusk* | cubs | piglets | stripy | stripes | striped | paws | claws | hind legs | "
                "size of a | hooves | antlers | horns | herd | sounder | babies | litter | mother | mum | young | acorn* | "
                "maize | corn | teeth | fur | bins",
            ),
            HERE, NEARBY,
        ),
        (
            FOOD,
            "paw print* | claw* | grooves | teeth marks | tooth marks | chewed | shredded | torn | ripped | licked clean | "
            "dragged | droppings | scat | tracks | prints | raided | ransacked | tipped over | "
            "over the (field|grass|clearing)* | gone",
            "left | leave | tent | car | outside | open | again | bait | forgot* | overnight | unpacked | unlocked | "
            "hang* | camp",
            "big | large | huge | claw* | paw* | prints | dragged | woof* | huff* | growl* | bear | teeth | grooves | "
            "size | night | morning",
            NEARBY,
        ),
        (
            "(black|dark|little|tiny|brown|new|small) (dot|speck|point|spot|thing|freckle|mole|pinhead|seed|bead|lump)",
            "legs | moved | walk* | wouldn't come off | would not come off | stuck | grown | grew | fat | crawl* | dug | "
            "head | itch*",
            "skin | knee | leg | thigh | arm | waist | neck | groin | armpit | ankle | calf | sock | belly | back | scalp | "
            "hair",
            NEARBY,
        ),
        (
            ANIMAL_ACTS,
            "tent | tripod legs | tripod | car door | shoe | shoes | boot | boots | grass | bins | food | pan | fence | "
            "sleeping bag | little ones | family | big one | torch | photograph | glass | bag",
            "i | we | me | us | my | our",
            "fence | big one | little ones | family | pan | porridge | car door | catch it | glass | tail | at two | "
            "came through | close | towards | round | between | shoe | boot | teeth | hand",
            NEARBY,
        ),
        (
            "between the big one and | between her and (her|the) | between mother and | between the mother and | "
            "between a mother and | between cow and calf",
        ),
        (
            "pan | pot | plate | leftovers | porridge | bin bag | rubbish | cool box",
            "outside the tent | outside | left out | in the awning",
            "grooves | claw* | gone | no pan | prints | torn | shredded | scratch*", NEARBY,
        ),
        (
            LURKING,
            "closer look | went over | between me and | blowing | snort* | flash going | torch | stile | gate | mother | "
            "fed | rinds | nearer | behind the",
            "i | me | my | we | us", NEARBY,
        ),
        (
            "rinds | scraps | bacon | crusts | biscuit* | dog food | cat food | leftovers | sandwich*",
            "every night | a little nearer | nearer | comes | came | nose | tame | takes",
            "nearer | shoulders | nose | growl* | tusks | fox | bear | boar | he comes | it comes | closer", NEARBY,
        ),
        (
            "behind my knee | in my groin | armpit | hairline | behind my ear | waistband | in the shower",
            "black | legs | tiny | scraped | waving | dug in | fat | grey | pulled | picked",
            "scraped | legs | dug in | pulled | picked | fat | head | waving | burn* | twist*", NEARBY,
        ),
        (
            "foot | hand | finger | ankle | wrist | leg | arm",
            "colour of a plum | like a balloon | like a sausage | twice the size | twice as thick | up to the elbow | "
            "swollen to | red streak*",
            "boot | reached | lifted | something | log | stone | sock | grass | case", NEARBY,
        ),
        (
            "farmer's | shepherd's | guard | neighbour's",
            "loose | hold of my | whistled | called (them|it|him) off | teeth | trouser leg | barking",
            "dog* | pair | trouser leg | teeth | alsatian* | hold of my", NEARBY,
        ),
        ("trouser leg | my sleeve | my calf | my heel*", "had hold of | sank its | teeth | nipped | hung on", NEARBY),
        (
            any_of(BEAST, "dog | cat | horse"),
            "bit | bitten | nipped | bite | rabies | rabid | drool* | charged | gored | trampled | mauled | scratched me",
            "me | my | i | us | we | hand | leg | arm | finger* | him | her", NEXT,
        ),
        (
            SIGNS,
            "cool box | coolbox | food | sausages | biscuit* | threw | tent | bins | lid open | bacon | closer | edge of | "
            "red light | nudged | poked | boot | under the rock | reeds | bank | water | kept imaging | carried on | "
            "went back | set up",
            "i | we | us | me | my | our", NEARBY,
        ),
        (
            "fox | raccoon* | badger* | coyote* | bear | possum* | dingo*",
            "from my (hand|hands|fingers) | fed | feed | hand feed* | tame | ham | sandwich* | stroke* | pat | "
            "left * out for",
            NEARBY,
        ),
        (
            "bat | bats", "picked | bare hands | nipped | bit | hand | hands | gloves | held | cupped",
            "bare | nipped | bit | picked | my hand | my hands | cupped | tarpaulin | floor | lively | tube | dome", NEARBY,
        ),
        (
            "sausages | bacon | food | cool box | coolbox | rubbish | sandwiches",
            "bear | bears | paw print* | boar* | claw mark* | gone | dragged",
            "left | open | tent | again | night | prints | tracks",
            "paw print* | claw mark* | bear | bears | boar* | tooth marks | teeth marks | prints", NEARBY,
        ),
        (
            "wild dog* | coyote* | puma* | jaguar* | skunk* | centipede* | rabid | bear | bears",
            "bins | car | tent | metres | came | mount | hut | camp | waited | cub* | growl* | food", HERE, NEXT,
        ),
        *BITES,
    ),
    harmless="sleeping (cat|dog) | like a (cat|dog|lion|lamb|sheep|wolf|bear) | "
    "(of|in) (the)? (scorpion|bull|lion|wolf|serpent|crab|bear|ram|goat|swan|eagle) | "
    "scorpion … (hedge|roof|horizon|trees|south|meridian|hill) | scorpius | "
    "(great|little|big|polar|koala) bear constellation | bear cub nebula | bat nebula | tadpole* | elephant's trunk* | "
    "elephant trunk* | "
    "(horse|wolf|fox|bear|bat|seagull|owl|swan|pelican|spider|crab|butterfly|ant|snake|tarantula|lobster|cat's paw|"
    "cat's eye|running chicken|flying bat|fighting dragons) nebula | "
    "(fox|bull|wolf|goose|swan|ram|crab|bear|fly|bee|beehive) (constellation|cluster) | (fox fur|foxfur) | the swarm of * | "
    "swarm of (galaxies|stars|satellites) | bear (fruit|the|this|that|it|up|no) | bull market | cat's * | tick box* | "
    "ticks (over|by|along)* | (clock|second|mount|motor|relay|encoder) tick* | seal of | seal on | seals on | sealed | "
    "(rubber|lens|door|roof|dome) seal* | snake* (through|across|along) | spider (leg|legs|bracket)* | sow the | "
    "wolf rayet | horned owl nebula | ram (memory|usage) | gigabytes of ram | bat file | "
    "bit (of|more|less|late|too|longer|further|deeper|soft|to|noisy|low|high|better|depth) | a bit | every bit | # bit | "
    "sixteen bit | bears (a|the|its|his|her) * | "
    "(constellation|cluster|nebula|galaxy|heart|tail|claw|claws|head|back) of the * | "
    "(great|little|lesser|water|wild duck) (bear|snake|cluster) | bear* (in mind|with|out|witness) | "
    "(scorpion|bull|wolf|serpent|bear|scorpion's|bull's) (rise|stand|set|climb|hang|tail|sting|heart|claw|eye|horn)* … | "
    "spider (diffraction|vane|arm|nebula|web)* | (mirror|secondary|vane|tube) spider",
)
