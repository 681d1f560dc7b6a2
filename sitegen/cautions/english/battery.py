"""English: see `cautions/battery.py`."""

from sitegen.cautions.caution import NEARBY, NEXT, Vocabulary
from sitegen.cautions.english.circumstances import FREEZING
from sitegen.cautions.phrases import any_of

PACK = (
    "pack | packs | battery | batteries | cell | cells | lipo* | lithium* | li ion | lifepo* | 18650* | 21700* | 14500* | "
    "cr123* | power bank* | powerbank* | power station* | power tank* | jump starter* | jump pack* | e bike | drone | "
    "brick | grey box | black box | power box | drone brick* | jump leads"
)
SWOLLEN = (
    "swoll* | swell* | pillow* | cushion | puff* | bulg* | bloat* | fat as * | gone fat | pregnant | balloon* | paunch | "
    "belly | pot belly | domed | grown (a|fat*|thick*) | round as * | won't (quite)? (go|fit|slide) | "
    "no longer (fits|slides) | thicker than | (has|with) a dent | dented | split | barely fits | squashed it in | "
    "egg shaped | curved | lumpy | bow at the sides | bowed | bowing | round at the corners | rounded | bellied | "
    "ticks when | rocks on the table | won't lie flat | lid won't close | lid no longer closes | went soft | gone soft | "
    "biscuit tin | grew | growing | fatter | parted at the seam | seam has | split at the seam | open at the seam | gaping"
)
CHARGING = (
    "charg* | recharg* | top* up | topp* | balancer | trickle | cooking on | plugged in | solar panel | on the lead | "
    "juice | full for"
)
LOOSE = (
    "loose | pocket* | coat | purse | jeans | trousers | rucksack | backpack | handbag | glove box | rattl* | jingl* | "
    "toolbox | tool box | bag"
)
METAL = (
    "key | keys | coin | coins | change | wrench* | spanner* | hex | allen key* | screws | bolts | foil | tools | "
    "screwdriver* | metal | knife | nuts"
)
HOT = (
    "toasty | got hot | hot enough | too hot | very hot | hot to * | warm* | hiss* | fizz* | sizzl* | smok* | smell* | "
    "smelt | stink* | stank | melt* | nail varnish | nail polish | sweet smell | sweetish | pear drops | fire | flame* | "
    "burn* | burst | pop | popped | vent* | scorch* | glow* | spark* | wisp"
)
ABUSED = (
    "solder* | poke | poked | prod* | stab* | knife | nail through | drill* | puncture* | pierc* | dropp* | fell | crush* | "
    "sat on | ran over | cut open | opened | peel* | shav* | fil(ed|ing) | hammer* | protection board | bms | bypass* | "
    "no fuse | fuse out | without (a|its) fuse | wrong charger | lead charger | old charger | car charger | mixed | "
    "salvaged | laptop | unknown | no name | unbranded | fake | in parallel | crocodile clip* | taped together | "
    "over discharg* | below two volts | revived | jump* it | back to life | airing cupboard | jump leads | kissed | "
    "kitchen foil | tin foil | bare cells"
)
LEFT = (
    "overnight | all night | unattended | while (we|i) (slept|sleep|was asleep) | asleep | in bed | "
    "under (the|my) (bed|bunk|pillow|coats) | went to bed | by the door | out all day | sleeping bag"
)
WARMED = (
    "stove | oven | radiator | camp fire | campfire | hair dryer | hairdryer | heat gun | hot water | kettle | fireplace | "
    "woodburner | microwave | boiling | heater"
)
LEAD = (
    "lead acid | lead battery | car battery | truck battery | leisure battery | deep cycle | starter (battery|block)* | "
    "gel (cell|battery)* | agm | old lead | marine battery | tractor battery | the big battery | # ah | starting battery"
)
GASSING = (
    "egg* | gass* | bubbl* | gurgl* | fizz* | hiss* | bunk | bed | cabin | tent | caravan | windows shut | shut | sleep* | "
    "acid | holes in | tap water | top* up | topped | burn* my | spill* | tipped | slosh* | smell* | sulphur | sulfur | "
    "sealed | cupboard | candle* | cigarette | lighter | stove"
)
TERMINALS = "terminals | terminal | posts | poles | battery clamp* | plus and minus | both lugs"
SHORTED = (
    "spanner* | wrench* | across | short* | flash* | weld* | spark* | screwdriver | ring | bracelet | dropped | slipp* | "
    "arc*"
)

VOCABULARY = Vocabulary(
    dangers=(
        (
            "cells | pack | batteries | lithium*",
            "scooter | laptop* | crashed | e bike | drill packs | old (car|drill|laptop|phone)s* | dump | skip | scrap* | "
            "salvaged | second hand | unknown",
            "tape* | soldered | block | hot | run the | warm | bundled | strapped", NEARBY,
        ),
        (
            "power (tank|bank|station|box) | pack | battery | lithium*",
            "hot on one side | hot | warm on * | purr* | hum* | tick* | buzz*",
            "seam | case | still | but | volts | charge | smell*", NEARBY,
        ),
        ("charge | charging | recharge*", "below (zero|freezing) | frost* | minus * | freezing | icy", NEXT),
        (
            "lid | case | cover | box | sleeve",
            "no longer closes | won't close | will not close | stone on | strap round | tape round | does not close | "
            "doesn't close",
            "cell | cells | lithium* | pack | battery | lipo*", NEARBY,
        ),
        (
            "cut out | cutoff | cut off | sensor | protection | thermistor",
            "fooled | bypass* | resistor | bridg* | tricked | defeated | disabled",
            "charge | charging | cells | pack | battery | lithium* | zero", NEARBY,
        ),
        (
            "fuse", "pulled | took out | removed | left out | without | bridged | bypass* | bigger",
            "lead (one|battery|acid)* | battery | pack | cells | volts | dew bands | blew", NEARBY,
        ),
        (
            "cell | cells | batteries | 18650*", "dropped | fell | spilt | rolled",
            any_of("firework* | flash* | spark* | hot | smoke | glow*", "hex keys | keys | tray | metal | tools"),
            "firework* | flash* | spark* | hot | smoke | glow* | bang", NEARBY,
        ),
        (
            "frost* | minus * | icy | freezing", "charger | charging | on charge", "cell | cells | pack | battery | green",
            NEARBY,
        ),
        (
            "drone (bricks|packs|cells) | cells | packs | lipos",
            "back to life | below (two|three|2|3) volts | revive* | trickle | forced", NEARBY,
        ),
        (
            "jump leads | jumper cables | crocodile clips | clips",
            "kissed | touched | met | spark* | flash | black star | bang | wrong way", NEARBY,
        ),
        ("bare cells | cells | 18650* | batteries", "kitchen foil | tin foil | foil | wire wool | steel wool", NEARBY),
        (
            "box | brick | pack | bank", "bow* at | bowed | bulg* | ticks | ticking | bellied",
            "charge | charging | on charge | volts | last", NEARBY,
        ),
        (
            PACK, SWOLLEN,
            "still | volt* | volts | dew | reads | charge* | strap | tape* | battery | lithium | squash* | works | sleeve | "
            "cell | cells | case | but | fits",
            NEARBY,
        ),
        (
            "pack | packs | power bank* | lipo* | battery",
            "pillow* | puff* | bulg* | bloat* | swoll* | fat as * | belly | cushion | balloon*", NEXT,
        ),
        (
            "drone cells | drone (pack|battery|batteries) | jump (starter|pack)* | power (station|bank|tank)* | pack | "
            "packs | 18650* | cells | battery | lithium*",
            CHARGING, FREEZING, NEARBY,
        ),
        (
            "18650* | cell | cells | spare (battery|batteries|lithium*|aas)* | lithium* | cr123* | 21700* | nine volt* | 9v",
            LOOSE, METAL, NEARBY,
        ),
        ("18650* | cell | cells | spare battery | lithium*", "pocket* | coat | thigh | trousers | jeans", HOT, NEARBY),
        (
            "pack | packs | cells | lipo* | lithium* | 18650* | power bank* | powerbank* | power station* | jump starter* | "
            "e bike",
            HOT, any_of(CHARGING, ABUSED, "pocket* | wrap | bed | smell*"), NEARBY,
        ),
        (
            "pack | packs | lipo* | lithium* | cells | 18650* | battery | batteries | power bank*",
            "solder* | poke* | prod* | stab* | punctur* | pierc* | drill* | protection board | bms | crush* | sat on | "
            "cut open | no fuse | fuse out | laptop (cells|packs) | salvaged | crocodile clip* | over discharg* | "
            "jump* it | lead charger | wrong charger | car charger | hammer*",
            NEXT,
        ),
        ("pack | packs | lipo* | lithium* | drone", "dent* | dropped | fell on", "charge* | still | works", NEARBY),
        (
            "charger", "lithium* | pack | lipo* | li ion",
            "lead (charger|acid) | wrong | old lead | car | warm | hot | any old", NEARBY,
        ),
        (
            "pack | packs | lipo* | lithium* | 18650* | power station* | jump starter* | e bike | drone | cells | battery",
            CHARGING, LEFT, NEARBY,
        ),
        (
            "pack | lipo* | lithium* | power bank* | powerbank* | cells | battery | batteries", WARMED,
            "cold | frozen | wake | warm* | thaw* | start | revive* | lid", NEARBY,
        ),
        (LEAD, GASSING, NEARBY),
        ("charger | charging | charge* | fizz* | gurgl* | bubbl*", "egg* | rotten egg* | sulphur*", NEARBY),
        (TERMINALS, SHORTED, "flash* | weld* | spark* | bang | glow* | red hot | short* | across", NEARBY),
        ("deep cycle | battery | acid", "holes", "jeans | trousers | jumper | shirt | coat | gloves | burn*", NEARBY),
        ("puff* | swoll* | vent* | hiss*", "lipo* | cell | pack | battery", NEARBY),
        (
            "luggage | hold baggage | suitcase | checked (in|bag*) | cargo hold",
            "pack | packs | lithium* | lipo* | power bank* | battery | batteries | cells", NEARBY,
        ),
        (
            "batter(y|ies) | lithium* | cell | cells | power bank* | lipo*",
            "bulg* | bloat* | hot to the touch | smell* | smelt | smok* | caught fire | burn* | melted | exploded | hissing",
        ),
        (
            "lithium* | lipo* | li ion | power bank* | powerbank*",
            "charg* | recharg* | minus | frost* | freez* | snow | below (zero|freezing) | pocket* | swollen | swell* | "
            "puff* | punctur* | solder* | luggage | baggage | suitcase | loose | keys | tent | bed | warm* | heat*",
        ),
        (
            "(lead acid|lead|gel|car|truck|leisure) batter* | lead acid",
            "charg* | cabin | hut | shed | caravan | tent | bunk | bed | indoors | van | acid | lift* | boot of",
        ),
        (
            "batter(y|ies) | cells",
            "solder* | pocket* | swollen | swell* | puffed | leaked | leaking | short circuit* | shorted | bunk | caravan | "
            "opened | spark* | no fuse | fuse out | without a fuse | loose | keys | acid",
        ),
        (
            "(battery|batteries|pack) … charg* | charg* … (battery|batteries|pack)",
            "frost* | freez* | minus | below (zero|freezing) | tent | cabin | sleep* | asleep | overnight | unattended",
        ),
    ),
    harmless="charg* the (camera|phone|laptop|tablet) before * | "
    "(battery|batteries) (chemistry|icon|symbol|indicator|meter|bug|display|report|warning|level|gauge) | "
    "on the (board|slide|slides|screen) | battery of | (mirror|lens|optical|load|storm|guide) (cell|cells) | cell phone* | "
    "cell (tower|network|coverage) | (ice|day|back|film|fanny|six|wolf) pack* | solar cell* | "
    "pack (up|away|the|everything|of) | batter(y|ies) of (tests|test|questions|checks|exams) | cabin bag*",
)
