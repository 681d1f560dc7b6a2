"""Nobody who would notice."""

from sitegen.cautions.caution import COMMON_PRACTICE, Caution
from sitegen.cautions.english import alone as english
from sitegen.cautions.german import alone as german

CAUTION = Caution(
    "alone",
    (COMMON_PRACTICE,),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
)
