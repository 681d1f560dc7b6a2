"""What a log calls a filter -> the rig's short name for it."""

import re
import unicodedata
from collections.abc import Mapping
from functools import lru_cache

from sitegen.diary.rig import Rig
from sitegen.diary.sub import FrameKind
from sitegen.problems import hint_for
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.nodes import quoted

NO_FILTER_WORDS = frozenset({"", "-", "–", "none", "no filter", "nofilter", "n/a", "na", "null", "open", "empty"})

# Names of the trade for one passband, as `_plain` leaves them.
_SAME = (
    ("l", "lum", "luminance"),
    ("r", "red"),
    ("g", "green"),
    ("b", "blue"),
    ("ha", "halpha", "h"),
    ("hb", "hbeta"),
    ("oiii", "o3", "o"),
    ("sii", "s2", "s"),
    ("nii", "n2", "n"),
)
_PASSBAND = {name: names[0] for names in _SAME for name in names}


def match_filter(words: str, rig: Rig) -> str | None:
    """By short name in any case, by full name, or by another common name of the passband; None where none or several fit."""
    if words in rig.filters:
        return words
    names, passbands = _known_names(tuple((short, each.name) for short, each in rig.filters.items()))
    plain = _plain(words)
    return names.get(plain) or passbands.get(_PASSBAND.get(plain, plain))


@lru_cache(maxsize=64)
def _known_names(filters: tuple[tuple[str, str], ...]) -> tuple[Mapping[str, str | None], Mapping[str, str | None]]:
    """Short name by plain name, and by passband; None where two filters share it."""
    names: dict[str, str | None] = {}
    passbands: dict[str, str | None] = {}
    for short, name in filters:
        for plain in {_plain(short), _plain(name)} - {""}:
            names[plain] = short if names.get(plain, short) == short else None
            passband = _PASSBAND.get(plain, plain)
            passbands[passband] = short if passbands.get(passband, short) == short else None
    return names, passbands


def needs_filter(kind: FrameKind) -> bool:
    """Light never reaches a dark or a bias frame, so whatever filter stood before them says nothing."""
    return kind in ("light", "flat")


def unknown_filter(words: str, rig: Rig) -> tuple[str, str]:
    """The problem's sentence and its remedy."""
    wrong = f"{quoted(words)} is no filter of the rig '{rig.slug}'"
    if not rig.filters:
        return f"{wrong}, which has none", f"define it under 'filters' in rigs/{rig.slug}.yaml"
    return wrong, hint_for(words, rig.filters)


def frame_filter(words: str, kind: FrameKind, request: LogRequest, problems: LogProblems, keyword: str) -> str | None:
    """The filter that a picture names, or its log item does. An unknown name is a warning, none at all an error."""
    rig = request.rig
    if rig is None:
        return words or request.filter
    if words in rig.filters:
        return words
    if words.casefold() in NO_FILTER_WORDS or match_filter(words, rig) is None:
        return _filter_of_item(words, kind, rig, request, problems, keyword)
    return match_filter(words, rig)


def _filter_of_item(
    words: str, kind: FrameKind, rig: Rig, request: LogRequest, problems: LogProblems, keyword: str
) -> str | None:
    if request.filter is not None:
        short = match_filter(request.filter, rig)
        if short is None:
            problems.in_entry(request.item_place, *unknown_filter(request.filter, rig))
        return short
    if not needs_filter(kind):
        return None
    if words.casefold() not in NO_FILTER_WORDS:
        wrong = f"{keyword} is {quoted(words)}, no filter of the rig '{rig.slug}'"
        problems.warn(wrong, f"name it in rigs/{rig.slug}.yaml, or write 'filter' in the entry's log item")
    elif rig.filters and kind == "light":
        wrong = f"frames of this log name no filter, and the rig '{rig.slug}' has some"
        problems.in_entry(request.item_place, wrong, f"write 'filter' in the log item: {', '.join(sorted(rig.filters))}")
    return None


def _plain(words: str) -> str:
    """Letters and digits alone: `H-alpha`, `Hα` and `H_ALPHA` become `halpha`, `ha` and `halpha`."""
    latin = words.replace("α", "a").replace("β", "b")
    letters = unicodedata.normalize("NFKD", latin).casefold()
    return re.sub(r"[^a-z0-9]+|filter", "", letters)
