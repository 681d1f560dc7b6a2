"""Cells that burn, gas or freeze. That lithium cells are not charged below freezing is their makers' common advice."""

from sitegen.cautions.caution import Caution
from sitegen.cautions.english import battery as english
from sitegen.cautions.german import battery as german

CAUTION = Caution(
    "battery",
    ("IEC 62133-2", "IEC 62485-4"),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
    from_memory=("IEC 62133-2",),
)
