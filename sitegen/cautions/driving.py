"""The way home after a night without sleep."""

from sitegen.cautions.caution import COMMON_PRACTICE, Caution
from sitegen.cautions.english import driving as english
from sitegen.cautions.german import driving as german

CAUTION = Caution(
    "driving",
    (COMMON_PRACTICE,),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
)
