"""Vapours, flames, fuels and gases of burning, and coatings that dissolve. The basis is the safety data sheet that each product
has."""

from sitegen.cautions.caution import Caution
from sitegen.cautions.english import solvent as english
from sitegen.cautions.german import solvent as german

CAUTION = Caution(
    "solvent",
    ("UN GHS",),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
    from_memory=("UN GHS",),
)
