"""Sunlight through optics, or on an eye. The standard is that of viewers without optics; nothing of the kind covers filters for
telescopes."""

from sitegen.cautions.caution import Caution
from sitegen.cautions.english import sun as english
from sitegen.cautions.german import sun as german

CAUTION = Caution(
    "sun",
    ("ISO 12312-2",),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
)
