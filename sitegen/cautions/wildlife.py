"""Animals that defend themselves."""

from sitegen.cautions.caution import COMMON_PRACTICE, Caution, Vocabulary

CAUTION = Caution(
    "wildlife",
    (COMMON_PRACTICE,),
    {
        "en": Vocabulary(
            stems="wild dog | coyote | puma | jaguar | skunk | centipede | fox | snake | boar | bear | scorpion | "
            "spider | wolf | wolves | crocodile | moose | elk | bull | dingo | hornet | wasp | bees | tick | adder | "
            "viper | cattle | cow | redback | cougar",
            dangers=(
                (
                    "wild dog* | coyote* | puma* | jaguar* | skunk* | centipede* | rabid | bear | bears",
                    "at the | bins | car | tent | metres | came | mount | hut | camp | waited | cub* | growl* | food",
                ),
                (
                    "*snake* | adder* | viper* | scorpion* | spider* | boar | boars | wolf | wolves | crocodile* | "
                    "moose | elk | bull | bulls | dingo* | hornet* | wasp* | bees | cow | cows | cattle | redback* | "
                    "cougar* | (a|an|the|two|black|brown|polar|grizzly) (bear|bears)",
                    "metres | meters | yards | under the | chased | threw | hand | hands | bit | bite* | bitten | "
                    "stung | sting* | nest* | curled | growl* | hiss* | young | cubs | calf | calves | tent | shed | "
                    "box | boot | boots | shoe* | tripod | mount | charged | stick | broom | stone | leg | legs | "
                    "ankle* | hut | case | came (close|near|within|up)",
                ),
                ("tick (bite|check)* | tick* (in|on) (my|our|the) (leg|legs|skin|grass|trousers|neck)",),
            ),
            harmless="bears (a|the|its|his|her) * | "
            "(constellation|cluster|nebula|galaxy|heart|tail|claw|claws|head|back) of the * | "
            "(great|little|lesser|water|wild duck) (bear|snake|cluster) | bear* (in mind|with|out|witness) | "
            "(scorpion|bull|wolf|serpent|bear|scorpion's|bull's) (rise|stand|set|climb|hang|tail|sting|heart|claw|eye|horn)* … | "
            "spider (diffraction|vane|arm|nebula|web)* | (mirror|secondary|vane|tube) spider",
        ),
        "de": Vocabulary(
            stems="bienen | wildschwein | bache | keiler | schlange | otter | viper | skorpion | spinne | bär | wolf | "
            "wölf | zecke | hornisse | wespe | bulle | kühe | elch | rotte | stier",
            dangers=(
                ("(hornissen|wespen|bienen)nest* | bienenschwarm*",),
                (
                    "wildschwein* | bache | bachen | keiler | *schlange | *schlangen | kreuzotter* | viper* | "
                    "skorpion* | spinne | spinnen | bär | bären | wolf | wölfe* | hornisse* | wespe* | bulle | bullen | "
                    "kühe | elch | elche | stier | rotte",
                    "meter | unter (der|dem) | verjagt | stein | mit der hand | bloße* hand | gebissen | biss | "
                    "gestochen | stich | nest | knurr* | fauch* | jungen | kalb | kälber | zelt | hütte | schuppen | "
                    "*koffer | *kiste | stiefel | schuh | stativ* | montierung | angegriffen | angriff | wühl* | weide",
                ),
                ("zecke | zecken | zecken(biss|stich|kontrolle)*",),
            ),
            harmless="(sternbild|haufen|nebel|galaxie|kopf|schwanz|stachel|herz) (der|des|im|in)? * | wasserschlange* | "
            "(große|kleine|grosse)* (bär|bären|wagen|hund) | "
            "(skorpion|stier|wolf) (geht|steht|stand|ging|hängt|klettert) … | fangspiegelspinne* | netz der spinnen | "
            "spinnen(netz|nebel|arm)*",
        ),
    },
)
