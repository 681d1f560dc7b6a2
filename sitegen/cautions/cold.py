"""Cold that numbs, and metal that takes the skin along."""

from sitegen.cautions.caution import Caution
from sitegen.cautions.english import cold as english
from sitegen.cautions.german import cold as german

CAUTION = Caution(
    "cold",
    ("ISO 13732-3",),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
    from_memory=("ISO 13732-3",),
)
