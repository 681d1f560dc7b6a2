"""What cuts, grinds and turns, in the hand and on the bench. The standard is that of motor-driven hand tools; of knives there is
none."""

from sitegen.cautions.caution import COMMON_PRACTICE, Caution
from sitegen.cautions.english import machine as english
from sitegen.cautions.german import machine as german

CAUTION = Caution(
    "machine",
    ("IEC 62841-1", COMMON_PRACTICE),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
    from_memory=("IEC 62841-1",),
)
