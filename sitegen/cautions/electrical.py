"""Mains voltage, above all outdoors."""

from sitegen.cautions.caution import Caution
from sitegen.cautions.english import electrical as english
from sitegen.cautions.german import electrical as german

CAUTION = Caution(
    "electrical",
    ("IEC 60364-4-41",),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
)
