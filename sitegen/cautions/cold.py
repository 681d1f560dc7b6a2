"""Cold that numbs, and metal that takes the skin along."""

from sitegen.cautions.caution import NEXT, Caution, Vocabulary

FREEZING = (
    "minus * | -# (°|°c|degrees|c) | -#°c | -# °c | below (zero|freezing) | frost* | freez* | frozen | icy | subzero | sub zero"
)
FROST = "minus * | -# (°|°c|grad) | -#°c | -# °c | unter null | frost* | gefroren | frieren | *kälte | kalt* | eisig* | eiskalt*"

CAUTION = Caution(
    "cold",
    ("ISO 13732-3",),
    {
        "en": Vocabulary(
            stems="lost the feeling | lost feeling | feeling in | minus | frost | freez | froze | cold | numb | "
            "below zero | icy | hypotherm | -1 | -2 | -3 | -4 | -5 | -6 | -7 | -8 | -9 | no longer fe | not feel | "
            "n't feel | stopped feeling",
            dangers=(
                ("(lost|losing|no) (the)? feeling in",),
                (
                    "minus (five|six|seven|eight|nine|ten|eleven|twelve|twenty|thirty|*teen) | -# °c | -#°c | -# (°|degrees)",
                    "hours | all night | whole night | stay* | sat | stood | stove | beard | boots | without",
                ),
                ("frostbit* | hypotherm* | (no longer|not|couldn't) (feel|felt) (my|our|his|her|the) (fingers|hands|feet|toes)",),
                ("numb | numbed | numbing", "finger* | hand* | feet | toes | cold | lips"),
                (
                    FREEZING,
                    "bare | finger* | glove* | feet | toes | hand | hands | socks | skin | shiver* | metal | bones | "
                    "stayed out | sat out | boots",
                ),
                (FREEZING, "bare | finger* | glove* | toes | skin | shiver* | hours outside", NEXT),
                (
                    "cold",
                    "glove* | socks | finger* | toes | feet | shiver* | bones | blanket* | hot water | trembl* | shoes",
                    NEXT,
                ),
            ),
            harmless="(sensor|camera|chip|cooler|detector) … (minus *|-#) | cooled (down)? to (minus *|-#) | "
            "cold (front|dust|cloud|gas|case|light)* | absolute zero | sun … (minus *|-#) (degrees|°)",
        ),
        "de": Vocabulary(
            stems="gefühl | minus | frost | kalt | kält | eisig | frier | fror | klamm | unterkühl | unter null | "
            "finger | zehen | füße | füsse | hände | -1 | -2 | -3 | -4 | -5 | -6 | -7 | -8 | -9",
            dangers=(
                ("kein* gefühl (mehr)? in | gefühl … verloren",),
                (
                    "minus * | -# (°c|grad) | -#°c",
                    "ganze* nacht | stunden | gesessen | gestanden | saß | stand | ofen | bart | durchgehalten | ohne",
                ),
                ("erfrier* | erfror* | unterkühl*",),
                ("(zehen|finger|füße|füsse|hände) … (nicht mehr|taub|gefühllos|klamm|klebte*|blau|steif)",),
                ("(nicht mehr|taub*|gefühllos*|klamm*|steif*) … (zehen|finger|füße|füsse|hände)",),
                (
                    FROST,
                    "*finger* | *handschuh* | zehen | füße | füsse | hände | socken | haut | gefühllos* | zitter* | wärmflasche*",
                ),
            ),
            harmless="(kamera|sensor|chip) … -#* | (sensor|kamera|chip|kühlung) … (minus *|-#) | "
            "kalte* (wolke|staub|gas|front)* | kaltfront* | sonne … (minus *|-#) (grad|°)",
        ),
    },
    from_memory=("ISO 13732-3",),
)
