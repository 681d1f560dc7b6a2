"""What a log calls a filter -> the rig's short name for it."""

from collections.abc import Mapping, Sequence
from functools import lru_cache

from msgspec import Struct

from sitegen.diary.rig import Filter, Rig
from sitegen.diary.sub import FrameKind
from sitegen.problems import hint_for
from sitegen.reading.capture_logs.filter_words import FilterWords, filter_key, filter_words
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.capture_logs.unknown_filters import unknown_filter
from sitegen.reading.nodes import quoted

NO_FILTER_WORDS = frozenset({"", "-", "–", "none", "no filter", "nofilter", "n/a", "na", "null", "open", "empty"})
# A wheel has one of them as a rule, and people call it by either name.
_WHOLE_LIGHT = frozenset({"l", "clear"})
# Widths are printed rounded: 6.5 nm as 7, 3 nm as 3.0.
WIDTH_TOLERANCE_NM = 0.55


class _Names(Struct, frozen=True):
    """`by_key`: short name by each spelling, None where two filters share it; `by_passband`: the filters of each."""

    by_key: Mapping[str, str | None]
    by_passband: Mapping[str, tuple[Filter, ...]]


def match_filter(words: str, rig: Rig) -> str | None:
    """By short name, full name or a spelling that the rig lists; else by the passband that the words name, where one filter has
    it, or one of the width they name. None where none or several fit: nothing is guessed."""
    if words in rig.filters:
        return words
    names = _known_names(tuple(rig.filters.values()))
    key = filter_key(words)
    if key in names.by_key:
        return names.by_key[key]
    fitting = _of_width(filter_words(words), names)
    return fitting[0].short if len(fitting) == 1 else None


def width_disagrees(words: str, short: str | None, rig: Rig) -> tuple[str, str] | None:
    """The warning and its cure where the words name another width than the filter has that they were taken for."""
    if short is None or short == words or _is_listed(words, rig.filters[short]):
        return None
    parts, width_nm = filter_words(words), rig.filters[short].width_nm
    if not parts.in_nm or parts.width_nm is None or width_nm is None or _same_width(parts.width_nm, width_nm):
        return None
    wrong = f"{quoted(words)} names a width of {parts.width_nm:g} nm, and the rig's filter '{short}' has {width_nm:g} nm"
    new = f"'width_nm: {parts.width_nm:g}'"
    return wrong, f"write {new} in the filter '{short}' in rigs/{rig.slug}.yaml, or add another filter there with {new}"


def _is_listed(words: str, rig_filter: Filter) -> bool:
    return filter_key(words) in {filter_key(spelling) for spelling in (*rig_filter.spelt, rig_filter.name)}


@lru_cache(maxsize=64)
def _known_names(filters: tuple[Filter, ...]) -> _Names:
    by_key: dict[str, str | None] = {}
    by_passband: dict[str, list[Filter]] = {}
    for rig_filter in filters:
        spellings = (rig_filter.short, rig_filter.name, *rig_filter.spelt)
        for key in {filter_key(words) for words in spellings} - {""}:
            by_key[key] = rig_filter.short if by_key.get(key, rig_filter.short) == rig_filter.short else None
        for passband in {filter_words(words).passband for words in spellings} - {""}:
            by_passband.setdefault(passband, []).append(rig_filter)
    return _Names(by_key, {passband: tuple(group) for passband, group in by_passband.items()})


def _of_width(parts: FilterWords, names: _Names) -> Sequence[Filter]:
    """The filters that the words may mean."""
    fitting = names.by_passband.get(parts.passband, ())
    if not fitting and parts.passband in _WHOLE_LIGHT:
        fitting = tuple(rig_filter for passband in sorted(_WHOLE_LIGHT) for rig_filter in names.by_passband.get(passband, ()))
    if parts.width_nm is None or (parts.in_nm and len(fitting) == 1):
        return fitting
    widths = ((rig_filter, _width_of(rig_filter)) for rig_filter in fitting)
    return [rig_filter for rig_filter, width_nm in widths if width_nm is not None and _same_width(parts.width_nm, width_nm)]


def _width_of(rig_filter: Filter) -> float | None:
    """As the rig has it, else as the filter's own names do."""
    named = (filter_words(words).width_nm for words in (rig_filter.short, rig_filter.name, *rig_filter.spelt))
    return rig_filter.width_nm if rig_filter.width_nm is not None else next((width for width in named if width is not None), None)


def _same_width(told_nm: float, width_nm: float) -> bool:
    return abs(told_nm - width_nm) <= WIDTH_TOLERANCE_NM


def needs_filter(kind: FrameKind) -> bool:
    """Light never reaches a dark or a bias frame, so whatever filter stood before them says nothing."""
    return kind in ("light", "flat")


def frame_filter(words: str, kind: FrameKind, request: LogRequest, problems: LogProblems, keyword: str) -> str | None:
    """The filter that a picture names, or its log item does. An unknown name is a warning, none at all an error."""
    rig = request.rig
    if rig is None:
        return words or request.filter
    if words in rig.filters:
        return words
    short = None if words.casefold() in NO_FILTER_WORDS else match_filter(words, rig)
    if short is None:
        return _filter_of_item(words, kind, rig, request, problems, keyword)
    if needs_filter(kind) and (disagreement := width_disagrees(words, short, rig)):
        problems.warn(*disagreement)
    return short


def _filter_of_item(
    words: str, kind: FrameKind, rig: Rig, request: LogRequest, problems: LogProblems, keyword: str
) -> str | None:
    if request.filter is not None:
        short = match_filter(request.filter, rig)
        if short is None:
            wrong, _ = unknown_filter(request.filter, rig)
            problems.in_entry(request.item_place, wrong, hint_for(request.filter, rig.filters))
        return short
    if not needs_filter(kind):
        return None
    if words.casefold() not in NO_FILTER_WORDS:
        _, remedy = unknown_filter(words, rig)
        problems.warn(f"{keyword} is {quoted(words)}, no filter of the rig '{rig.slug}': counted without one", remedy)
    elif rig.filters and kind == "light":
        wrong = f"frames of this log name no filter, and the rig '{rig.slug}' has some"
        problems.in_entry(request.item_place, wrong, f"write 'filter' in the log item: {', '.join(sorted(rig.filters))}")
    return None
