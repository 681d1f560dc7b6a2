"""Spellings of catalogue numbers and of common names, each brought to one form."""

import re
import unicodedata
from collections.abc import Callable
from functools import cache, lru_cache

GREEK_LETTERS = (
    "Alpha", "Beta", "Gamma", "Delta", "Epsilon", "Zeta", "Eta", "Theta", "Iota", "Kappa", "Lambda", "Mu",
    "Nu", "Xi", "Omicron", "Pi", "Rho", "Sigma", "Tau", "Upsilon", "Phi", "Chi", "Psi", "Omega",
)  # fmt: skip

Words = Callable[[re.Match[str]], str]


def _numbered(prefix: str, glue: str = " ") -> Words:
    """Prefix, number without leading zeros, and a trailing letter where the catalogue has such."""

    def worded(match: re.Match[str]) -> str:
        letter = match.groupdict().get("letter") or ""
        return f"{prefix}{glue}{int(match['number'])}{letter}"

    return worded


def _abell(match: re.Match[str]) -> str:
    # The list of planetary nebulae ends at 86; beyond it only the list of galaxy clusters can be meant.
    number = int(match["number"])
    return f"Abell {number}" if number <= 86 else f"ACO {number}"


def _perek_kohoutek(match: re.Match[str]) -> str:
    return f"PK {int(match['longitude']):03d}{match['latitude'][0]}{int(match['latitude'][1:]):02d}.{match['number']}"


def _galactic(prefix: str) -> Words:
    def worded(match: re.Match[str]) -> str:
        sign, latitude = match["latitude"][0], float(match["latitude"][1:])
        return f"{prefix}{float(match['longitude']):05.1f}{sign}{latitude:04.1f}"

    return worded


def _field_and_number(match: re.Match[str]) -> str:
    return f"ESO {int(match['field'])}-{int(match['number'])}{match['letter'].upper()}"


def _morphological(match: re.Match[str]) -> str:
    return f"MCG {match['band']}-{match['field']}-{match['number']}"


_NUMBER = r"0*(?P<number>\d+)"
_LETTER = r"(?P<letter>[a-z]?)"
_GALACTIC = r"(?P<longitude>\d+\.\d)(?P<latitude>[+-]\d+\.\d)"

# One row a spelling: what may stand there (case and outer blanks do not count), and the form it takes.
# The first match wins, so the longer prefix stands before the shorter.
_SPELLINGS: tuple[tuple[str, Words], ...] = (
    (rf"m(essier)?[ -]?{_NUMBER}", _numbered("M")),
    (rf"ngc[ -]?{_NUMBER} ?{_LETTER}", lambda match: _numbered("NGC")(match).upper()),
    (rf"ic[ -]?{_NUMBER} ?{_LETTER}", lambda match: _numbered("IC")(match).upper()),
    (rf"c(aldwell)?[ -]?{_NUMBER}", _numbered("Caldwell")),
    (rf"sh(arpless)?[ -]?2[ -]+{_NUMBER}", _numbered("Sh2", "-")),
    (rf"sh2{_NUMBER}", _numbered("Sh2", "-")),
    (rf"sh(arpless)?[ -]{_NUMBER}", _numbered("Sh2", "-")),
    (rf"b(arnard)?[ -]?{_NUMBER}", _numbered("Barnard")),
    (rf"vdbh[ -]?{_NUMBER} ?{_LETTER}", _numbered("vdBH")),
    (rf"(vdb|van den bergh)[ -]?{_NUMBER}", _numbered("vdB")),
    (rf"ldn[ -]?{_NUMBER}", _numbered("LDN")),
    (rf"lbn[ -]?{_NUMBER}", _numbered("LBN")),
    (rf"rcw[ -]?{_NUMBER}", _numbered("RCW")),
    (rf"gum[ -]?{_NUMBER}", _numbered("Gum")),
    (rf"ced(erblad)?[ -]?{_NUMBER} ?{_LETTER}", _numbered("Cederblad")),
    (rf"(cr|col|collinder)[ -]?{_NUMBER}", _numbered("Collinder")),
    (rf"mel(otte)?[ -]?{_NUMBER}", _numbered("Melotte")),
    (r"(pn )?pk[ -]?(?P<longitude>\d+)(?P<latitude>[+-]\d+)[. ]+0*(?P<number>\d+)", _perek_kohoutek),
    (rf"png? ?g? ?{_GALACTIC}", _galactic("PN G")),
    (rf"snrg? ?g? ?{_GALACTIC}", _galactic("SNR G")),
    (rf"(aco|agc|abell)[ -]?s[ -]?{_NUMBER}", _numbered("ACO S", "")),
    (rf"(aco|agc)[ -]?{_NUMBER}", _numbered("ACO")),
    (rf"(pn )?(abell|a66|a)[ -]?{_NUMBER}", _abell),
    (rf"pgc[ -]?{_NUMBER}", _numbered("PGC")),
    (rf"ugca[ -]?{_NUMBER}", _numbered("UGCA")),
    (rf"ugc[ -]?{_NUMBER}", _numbered("UGC")),
    (rf"(hcg|hickson)[ -]?{_NUMBER}", _numbered("HCG")),
    (rf"mwsc[ -]?{_NUMBER}", _numbered("MWSC")),
    (rf"arp[ -]?{_NUMBER}", _numbered("Arp")),
    (rf"vv[ -]?{_NUMBER}", _numbered("VV")),
    (r"eso[ -]?0*(?P<field>\d+)[ -]*g? ?0*(?P<number>\d+) ?(?P<letter>[a-z]?)", _field_and_number),
    (r"mcg ?(?P<band>[+-]\d\d)-(?P<field>\d\d)-(?P<number>\d\d\d)", _morphological),
)


@cache
def _compiled() -> tuple[tuple[re.Pattern[str], Words], ...]:
    """On first use: compiling costs more than all other imports of this room."""
    return tuple((re.compile(spelling), worded) for spelling, worded in _SPELLINGS)


@lru_cache(maxsize=4096)
def read_designation(text: str) -> str | None:
    """The catalogue number in its usual form ('sh 2-132' gives 'Sh2-132'); None for what is no catalogue number.

    Says nothing about whether the catalogue has that number.
    """
    plain = re.sub(r"[\s_]+", " ", text.replace("−", "-").replace("–", "-")).strip().casefold()
    if not any(map(str.isdigit, plain)):
        return None
    for spelling, worded in _compiled():
        match = spelling.fullmatch(plain)
        if match:
            return worded(match)
    return None


def name_key(text: str) -> str:
    """What two spellings of one common name share: no case, accents, blanks, apostrophes or leading 'the'."""
    plain = unicodedata.normalize("NFKD", text).casefold()
    letters = re.sub(r"[^a-z0-9ͱ-Ͽ]", "", re.sub(r"^the\s+", "", plain.strip()))
    return letters or plain
