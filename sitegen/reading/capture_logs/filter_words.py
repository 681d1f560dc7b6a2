"""The words of a filter: what makes two spellings one, and the passband and width they name.

Names of the trade for one passband: common practice, no source.
"""

import re
import unicodedata
from functools import lru_cache

from msgspec import Struct

# As `filter_key` leaves them; the first of each line stands for the passband.
_SAME = (
    ("l", "lum", "luma", "luminance", "luminanz", "luminosity", "uvircut", "iruvcut"),
    ("clear", "clr", "c", "klar", "clearglass"),
    ("r", "red", "rot"),
    ("g", "green", "grun", "gruen"),
    ("b", "blue", "blau"),
    ("ha", "halpha", "h", "hydrogenalpha"),
    ("hb", "hbeta", "hydrogenbeta"),
    ("oiii", "o3", "o", "oxygeniii", "oxygen3"),
    ("sii", "s2", "s", "sulfurii", "sulphurii", "sulfur2", "sulphur2"),
    ("nii", "n2", "n", "nitrogenii", "nitrogen2"),
)
_PASSBAND = {name: names[0] for names in _SAME for name in names}
# Greek letters, and the German sharp s that a keyboard has in place of a beta.
_LATIN = str.maketrans({"α": "a", "Α": "a", "β": "b", "Β": "b", "ß": "b"})
_NUMBER = r"\d+(?:[.,]\d+)?"
_WIDTH_FIRST = re.compile(rf"({_NUMBER})\s*nm[\W_]*(.+)")
_WIDTH_LAST = re.compile(rf"(.+?)[\W_]*?({_NUMBER})\s*(nm)?[\W_]*")


class FilterWords(Struct, frozen=True):
    """`passband` is '' where the words name none known here; `in_nm` where the width has its unit (a bare number: a slot?)."""

    passband: str
    width_nm: float | None = None
    in_nm: bool = False


def filter_key(words: str) -> str:
    """Letters and digits alone, equal for spellings that differ in case, blanks, hyphens or accents: `H-alpha`, `Hα` and
    `H_ALPHA` become `halpha`, `ha` and `halpha`."""
    letters = unicodedata.normalize("NFKD", words.translate(_LATIN)).casefold()
    return re.sub(r"[\W_]+|filter", "", letters)


@lru_cache(maxsize=512)
def filter_words(words: str) -> FilterWords:
    """`Ha 3nm`, `OIII-6.5 nm`, `3 nm Hα`, `SII_3nm`, `[O III]`, …"""
    if (passband := _PASSBAND.get(filter_key(words))) is not None:
        return FilterWords(passband)
    plain = words.translate(_LATIN).strip().casefold().replace("filter", "").strip()
    if match := _WIDTH_FIRST.fullmatch(plain):
        return _named(match[2], match[1], in_nm=True)
    if match := _WIDTH_LAST.fullmatch(plain):
        return _with_own_digit(match[1], match[2], in_nm=match[3] is not None)
    return FilterWords("")


def may_be_one_filter(words: str, other: str) -> bool:
    """Whether two programs may have written these of one filter: one spelling, or one passband and no two widths."""
    if words == other or filter_key(words) == filter_key(other):
        return True
    first, second = filter_words(words), filter_words(other)
    widths = {first.width_nm, second.width_nm} - {None}
    return bool(first.passband) and first.passband == second.passband and len(widths) < 2


def _with_own_digit(name: str, number: str, in_nm: bool) -> FilterWords:
    """`S26nm` is S2 and 6 nm."""
    for length in (1, 0):
        parts = _named(name + number[:length], number[length:], in_nm)
        if parts.passband and parts.width_nm is not None:
            return parts
    return FilterWords("")


def _named(name: str, width: str, in_nm: bool) -> FilterWords:
    passband = _PASSBAND.get(filter_key(name), "")
    try:
        width_nm = float(width.replace(",", "."))
    except ValueError:
        return FilterWords("")
    return FilterWords(passband, width_nm, in_nm) if passband else FilterWords("")
