"""Strong magnets beside glass, fingers and pacemakers."""

from sitegen.cautions.caution import COMMON_PRACTICE, Caution
from sitegen.cautions.english import magnet as english
from sitegen.cautions.german import magnet as german

CAUTION = Caution(
    "magnet",
    (COMMON_PRACTICE,),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
)
