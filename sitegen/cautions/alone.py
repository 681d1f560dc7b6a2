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
            stems="alone | myself | on my own | nobody knew | no one knew | nobody who knew | no one who knew",
            dangers=(
                ("(i|we|he|she) … (alone|by myself|on my own|by himself|by herself)", PLACES),
                ("(alone|by myself|on my own) … (i|we)", PLACES),
                ("(nobody|no one) (who)? knew where (i|we)",),
            ),
            harmless="(leave|left|leaving|let|stands|stand|stood|lies|lay|focus|stars|that) (it|them|him|her)? alone | "
            "not alone | alone in (a|an|the|its) (empty)? (field|sky|frame|picture) | nobody … alone | "
            "never (come|go|walk|work|observe)? alone",
        ),
        "de": Vocabulary(
            stems="allein | niemand wusste | keiner wusste",
            dangers=(
                ("(ich|wir|er|sie|war|bin|stand|saß) … (allein|alleine) | (allein|alleine) … (ich|wir)", ORTE),
                ("(niemand|keiner) wusste wo (ich|wir) | (niemand|keiner) wusste, wo (ich|wir)",),
            ),
            harmless="(nicht|nie|niemand|keiner|von|schon|liegt|steht) (allein|alleine) | lass* … (allein|alleine) | "
            "(allein|alleine) (schon|durch|mit) | (allein|alleine) in (einem|dem|ihrem|seinem) *? (feld|bild)*",
        ),
    },
)
