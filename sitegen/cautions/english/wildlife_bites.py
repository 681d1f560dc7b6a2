"""English: bites, stings and ticks, of `wildlife.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Danger
from sitegen.cautions.english.circumstances import HERE
from sitegen.cautions.english.wildlife_tables import BEAST, BITTEN, BLIND_REACH, CLOSE, CRAWLER, CURLED, MISTAKEN, THORN
from sitegen.cautions.phrases import any_of

DANGERS: tuple[Danger, ...] = (
    (
        "hornet* | wasp* | bees | bee | spider* | scorpion* | snake* | adder* | ants",
        "flick* | swat* | brush* | blow | blew | shoo* | poke* | lift* | bend down | live in | lives in | living in | "
        "moved into | nest*",
        "finder | bracket | eyepiece | focuser | dome | box | case | shed | shutter | boot | glove | tube | hand | "
        "finger",
        NEARBY,
    ),
    (
        "(two|twin|pair) … (dots|marks|holes|punctures|pricks|beads|spots|pinpricks)",
        "wrist | hand | finger* | thumb | ankle | calf | leg | arm | foot | neck | palm | knuckle*", NEARBY,
    ),
    (
        "felt (about|around|for|under|behind|along) | groped | reached | rummag* | "
        "fished (about|around|under|behind|for) | put my hand | stuck my (hand|arm|finger) | patted",
        "under the | behind the | in the (case|box|bag|boot|grass|log|hole|drawer|tube) | into the | tarp | tarpaulin | "
        "cover | stone | rock | log | woodpile",
        any_of(BITTEN, "dots | prick* | jab | elbow | rubber glove | balloon | swoll* | swell* | numb | creep*"), NEARBY,
    ),
    (
        "hundred of them | hundreds of them | dozens of them | cloud of them | swarm of them | "
        "they (came|poured|boiled) out | buzz*",
        any_of(BITTEN, "lip | eyelid* | size of a plum | face | neck | ran | counted"), HERE, NEARBY,
    ),
    (
        THORN, "thumb | finger* | hand | ankle | wrist | foot | calf | leg | arm | heel | palm",
        "swell* | swoll* | numb | tingl* | purple | throb* | two | dots | tight | stiff | black | cold sweat | sick | "
        "dizzy | legs | eight | scuttl* | slid | moved | web | webs | log | stone | tarp* | cover",
        NEARBY,
    ),
    (
        "web | webs | silk | funnel",
        "hand | finger* | thumb | reached | bite | bit | sting | boot | glove | put my | stuck my | cleared | brushed",
        any_of(BITTEN, "hand | reached | bare | legs | fangs | shiny | black"), NEARBY,
    ),
    (
        MISTAKEN,
        "moved | hiss* | warm | slid | uncoil* | hand | bit | bite | tongue | let go | looked at me | head | wriggl* | "
        "curled | rattl* | alive | dropped it | fangs",
        NEARBY,
    ),
    (
        "pinprick* | pin prick* | prick | jab | nip | sting | stung | bit me | bitten | bite",
        "thumb | finger* | hand | ankle | wrist | lip | eyelid | ear | foot | toe | calf | neck | leg | arm",
        "numb | tingl* | purple | black | tight | throb* | puls* | swell* | swoll* | swollen | twice | balloon | two | "
        "hospital | doctor | dizzy | sick | sweat* | fever | burning | stiff | reached | case | log | stone | rock | "
        "glove | boot | grass | tarp* | cover | subs | carried on | kept going | finished",
        NEARBY,
    ),
    (
        "lodger | stowaway | hitchhiker | hitch hiker | souvenir | passenger | freeloader | guest",
        "knee | leg | skin | thigh | armpit | groin | waist | neck | scalp | belly | calf | sock | tweezers | blood | "
        "head",
        "grass | meadow | bracken | field | twist* | pulled | burnt | oil | tweezers | head | legs | dug in | fat | "
        "brought home | scratched | picked",
        NEARBY,
    ),
    (
        "rash | ring | halo | circle | target | patch",
        "calf | thigh | knee | leg | arm | shin | belly | neck | back of my | waist | skin",
        "red | growing | grows | spread* | bigger | pale middle | week* | since the | meadow | bite",
        "growing | grows | spread* | bigger | itch* | week* | since | bite | doctor | ignore* | pretty", NEARBY,
    ),
    (
        "growl* | snarl* | barked | barking | bared | teeth",
        "dog | dogs | farm | sheep | lane | gate | collar | chain | loose | strays | pack", "me | us | my | i",
        "closer | circled | came at | at the tripod | torch | leg | trousers | bit | lunged | round us | threw | "
        "stick | stone | ran",
        NEARBY,
    ),
    (
        "two (dots|marks|holes|pricks|spots|teeth) | puncture*",
        "ankle | leg | wrist | hand | calf | finger* | grass | nip | stiff", NEARBY,
    ),
    (
        "nip | prick | sting | jab | bite",
        "ankle | calf | heel | wrist | in the (long)? grass | under the (log|stone|rock|tarp*)",
        "grass | log | stone | stiff | swell* | swoll* | dots | numb | purple | walk*", NEARBY,
    ),
    (
        CURLED,
        "hand | sleeve | stamp* | rake | broom | moved | step | boot | stick | picked | arm | knee | shower | "
        "took it down | poke* | warm",
        NEARBY,
    ),
    (
        "boot | glove | sleeping bag | sleeve | shoe | case | bag | pocket",
        "objected | moved | wriggl* | protested | something in | bit | stung | something was",
        "foot | hand | finger* | swoll* | plum | purple | balloon | sock | thumb | toe | something", NEARBY,
    ),
    (
        BEAST, CLOSE,
        "metres | meters | yards | closer | nearer | came | within | charg* | chas* | snort* | grunt* | growl* | "
        "snarl* | hiss* | bark* | circled | surround* | shoo* | threw | fed | feed | sausage* | biscuit* | cool box | "
        "stick | broom | kick* | clapp* | stood up | cubs | cub | piglet* | striped | calf | calves | young | mother | "
        "mum | sniff* | between (me|us) and | torch in | nudg* | stroke* | picked up | bare hands | drool* | stagger*",
        "i | me | my | us | we | our | her | his | he | she | they", NEARBY,
    ),
    (
        CRAWLER, any_of(CLOSE, BITTEN, BLIND_REACH),
        "hand | hands | boot | boots | case | glove | sleeping bag | lid | tripod | mount | box | dome | finder | "
        "shutter | under the | curled | stung | bit | bitten | bite | sting | stings | nest | hive | rattl* | hiss* | "
        "poke* | prodd* | kick* | stick | broom | swell* | swoll* | shoe | leg | arm | neck | ankle* | calf | "
        "tweezers | crawl* | metres | swatted | flicked",
        "i | me | my | us | we | our | the dome | the shutter | the case", NEARBY,
    ),
    (
        BLIND_REACH,
        "prick* | bite | bit | stung | sting | swell* | swoll* | balloon | two little | furry | soft | moved | "
        "wriggl* | cold and | pinch* | hairy | legs | crawl*",
        NEARBY,
    ),
    (
        "two (little|small|tiny)? (holes|marks|punctures|dots)",
        "hand | finger* | ankle* | leg | wrist | calf | swell* | swoll* | arm", NEARBY,
    ),
    (
        "red ring | ring shaped | bull's eye | bullseye | round rash | target shaped | red circle | expanding * | "
        "gorged | engorged | head still in | head stayed in | burrowed",
        "calf | leg | knee | thigh | arm | skin | neck | groin | behind | meadow | grass | tweezers | armpit | waist | "
        "belly | shin | back of | rash",
        NEARBY,
    ),
    (
        "ticks | tick (bite|bites) | a tick",
        "leg | legs | skin | neck | picked | pulled | crawl* | grass | bracken | dug | twist* | burn* | found | sock* | "
        "shorts | counted | groin | knee | off me | trousers",
        NEARBY,
    ),
    (
        "hive | nest | swarm",
        "poke* | prodd* | broom | stick | shak* | knock* | spray* | hose | smoke | buzz* | dome | shutter | roof | "
        "angry | stung",
        "dome | shutter | roof | pier | box | observatory | finder | tube | shed | eaves | stung | broom", NEARBY,
    ),
    (
        "*snake* | adder* | viper* | scorpion* | spider* | boar | boars | wolf | wolves | crocodile* | moose | elk | "
        "bull | bulls | dingo* | hornet* | wasp* | bees | cow | cows | cattle | redback* | cougar* | "
        "(a|an|the|two|black|brown|polar|grizzly) (bear|bears)",
        "metres | meters | yards | under the | chased | threw | hand | hands | bit | bite* | bitten | stung | sting* | "
        "nest* | curled | growl* | hiss* | young | cubs | calf | calves | tent | shed | box | boot | boots | shoe* | "
        "tripod | mount | charged | stick | broom | stone | leg | legs | ankle* | hut | case | "
        "came (close|near|within|up)",
        HERE, NEXT,
    ),
    ("tick (bite|check)* | tick* (in|on) (my|our|the) (leg|legs|skin|grass|trousers|neck)",),
)
