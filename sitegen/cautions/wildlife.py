"""Animals that defend themselves, and small ones that carry diseases."""

from sitegen.cautions.caution import COMMON_PRACTICE, Caution
from sitegen.cautions.english import wildlife as english
from sitegen.cautions.german import wildlife as german

CAUTION = Caution(
    "wildlife",
    (COMMON_PRACTICE,),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
)
