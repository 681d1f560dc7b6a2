"""What falls, swings or is climbed on. The standard is that of ladders; of heavy tubes there is none."""

from sitegen.cautions.caution import COMMON_PRACTICE, Caution
from sitegen.cautions.english import weight as english
from sitegen.cautions.german import weight as german

CAUTION = Caution(
    "weight",
    ("EN 131-3", COMMON_PRACTICE),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
)
