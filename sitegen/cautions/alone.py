"""Nobody who would notice."""

from sitegen.cautions.caution import COMMON_PRACTICE, Caution, Vocabulary

PLACES = (
    "night | dark | signal | phone | telephone | nobody | no one | pass | hill | quarry | mountain* | ridge | forest | "
    "wood | woods | moor | desert | edge | cliff | valley | roof | paddock | coast | village | road | ladder | summit | "
    "lake | ice"
)
ORTE = (
    "*nacht* | dunkel | dunklen | empfang | niemand | keiner | *pass | *wald | *berg | steinbruch | gipfel | moor | "
    "klippe | schlucht | dach | feld | straße | küste | hütte | hügel | kilometer | see"
)

CAUTION = Caution(
    "alone",
    (COMMON_PRACTICE,),
    {
        "en": Vocabulary(
            stems="nobody else | no one else | solo | without telling | told nobody | told no one | not a soul | "
            "alone | myself | on my own | nobody knew | no one knew | nobody who knew | no one who knew",
            dangers=(
                (
                    "alone (in|on|at|by|beside) (the|a|an) *",
                    "night | dark | dawn | signal | phone | telephone | forest | wood* | quarry | hill | mountain* | "
                    "pass | moor | desert | cliff* | coast | summit | ridge | mine",
                ),
                (
                    "nobody else | no one else | not a soul | solo",
                    "mountain* | pass | hill | quarry | ridge | forest | wood | woods | moor | desert | cliff | "
                    "valley | roof | coast | road | summit | ice | island | lake | beach | field | site",
                ),
                (
                    "(without telling|told|telling) (anyone|anybody|nobody|no one)",
                    "went | walk* | drove | ridge | mountain* | night | dark | set up | out | road",
                ),
                ("(i|we|he|she) … (alone|by myself|on my own|by himself|by herself)", PLACES),
                ("(alone|by myself|on my own) … (i|we)", PLACES),
                ("(nobody|no one) (who)? knew (where|that) (i|we)",),
            ),
            harmless="(leave|left|leaving|let|stands|stand|stood|lies|lay|focus|stars|that) (it|them|him|her)? alone | "
            "not alone | alone in (a|an|the|its) (empty)? (field|sky|frame|picture) | nobody … alone | "
            "never (come|go|walk|work|observe)? alone",
        ),
        "de": Vocabulary(
            stems="niemand sonst | keiner sonst | menschenseele | ohne bescheid | kein netz | allein | niemand wusste | "
            "keiner wusste",
            dangers=(
                (
                    "niemand sonst | keiner sonst | keine menschenseele | mutterseelenallein | "
                    "niemandem (bescheid|gesagt) | ohne bescheid",
                    "alm | berg* | *pass | wald | moor | nacht | hütte | gipfel | feld | netz | empfang | straße | "
                    "kilometer | hügel | see | morgen",
                ),
                ("(ich|wir|er|sie|war|bin|stand|saß) … (allein|alleine) | (allein|alleine) … (ich|wir)", ORTE),
                ("(niemand|keiner) wusste (wo|dass) (ich|wir) | (niemand|keiner) wusste, (wo|dass) (ich|wir)",),
            ),
            harmless="(nicht|nie|niemand|keiner|von|schon|liegt|steht) (allein|alleine) | lass* … (allein|alleine) | "
            "(allein|alleine) (schon|durch|mit) | (allein|alleine) in (einem|dem|ihrem|seinem) *? (feld|bild)*",
        ),
    },
)
