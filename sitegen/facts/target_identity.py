"""What was pointed at: the catalogue's record with the author's keys laid over it."""

from sitegen.catalogue.constellation import constellation_of
from sitegen.diary.target import Target
from sitegen.facts.fact import Fact

POSITION = "From the catalogue or as the author gives it, ICRS."
TOTAL = "Total magnitude in V, or in B where the catalogue has no V."
CATALOGUE = "open catalogues, listed on the credits page; the author's own keys win"


def constellation(target: Target) -> str | None:
    """None for what has no place."""
    return None if target.ra_deg is None or target.dec_deg is None else constellation_of(target.ra_deg, target.dec_deg)


NAME: Fact[Target] = Fact("Target", "", lambda target: target.name, "The name the author uses.", "the author")
RA_DEG: Fact[Target] = Fact("Right ascension", "°", lambda target: target.ra_deg, POSITION, CATALOGUE, 5)
DEC_DEG: Fact[Target] = Fact("Declination", "°", lambda target: target.dec_deg, POSITION, CATALOGUE, 5)
CONSTELLATION: Fact[Target] = Fact(
    "Constellation",
    "",
    constellation,
    "The constellation whose boundaries hold the position.",
    "constellation boundaries, N. G. Roman, PASP 99, 695 (1987)",
)
KIND: Fact[Target] = Fact("Kind", "", lambda target: target.kind, "What sort of object it is.", CATALOGUE)
SIZE_ARCMIN: Fact[Target] = Fact(
    "Apparent size",
    "′",
    lambda target: list(target.size_arcmin) if target.size_arcmin else None,
    "Longer and shorter extent on the sky.",
    CATALOGUE,
    2,
)
MAGNITUDE: Fact[Target] = Fact("Magnitude", "mag", lambda target: target.magnitude, TOTAL, CATALOGUE, 2)
