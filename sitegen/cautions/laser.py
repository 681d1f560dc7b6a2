"""A beam that meets an eye or a cockpit. Whoever writes of a laser in such a diary mostly holds it, so what is harmless is told
instead; whoever calls it a pointer or a beam is asked where it went."""

from sitegen.cautions.caution import Caution
from sitegen.cautions.english import laser as english
from sitegen.cautions.german import laser as german

CAUTION = Caution(
    "laser",
    ("IEC 60825-1",),
    {"en": english.VOCABULARY, "de": german.VOCABULARY},
)
