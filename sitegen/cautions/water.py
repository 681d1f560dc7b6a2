"""Water, ice and their edges in the dark."""

from sitegen.cautions.caution import Caution
from sitegen.cautions.english import water as english
from sitegen.cautions.german import water as german

CAUTION = Caution(
    "water",
    ("ISO 12402-10",),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
)
