"""The problem of a filter that the rig does not have, and the very line that mends it."""

import re
from collections.abc import Sequence

from sitegen.diary.rig import Rig
from sitegen.problems import did_you_mean
from sitegen.reading.capture_logs.filter_words import FilterWords, filter_words
from sitegen.reading.nodes import quoted
from sitegen.reading.yaml_word import yaml_word

_NARROW = re.compile(r"\bnb\b|narrow|\d\s*nm\b", re.I)
_DUAL = re.compile(r"dual|duo|tri-?band|quad", re.I)
LONGEST_SPELLING = 100
LONGEST_SHORT = 40
# Centres of the lines, nm (practice of the trade; [S II] halfway between its two).
_LINES_NM = {"ha": 656.3, "hb": 486.1, "oiii": 500.7, "sii": 672.4, "nii": 658.3}


def unknown_filter(words: str, rig: Rig) -> tuple[str, str]:
    """The problem's sentence and its remedy."""
    wrong = f"{quoted(words)} is no filter of the rig '{rig.slug}'" + ("" if rig.filters else ", which has none")
    if len(words) > LONGEST_SPELLING:
        return wrong, "write the filter's short name into the log"
    return wrong, _remedy(words, rig)


def _remedy(words: str, rig: Rig) -> str:
    file, parts = f"rigs/{rig.slug}.yaml", filter_words(words)
    if not rig.filters:
        return f"add 'filters: {{{_new_filter(words, parts)}}}' to {file}"
    spelt, near = f"'spelt: [{yaml_word(words)}]'", _nearest(words, parts, rig)
    if len(near) == 1:
        return f"add {spelt} to the filter '{near[0]}' in {file}"
    if near:
        return f"add {spelt} to one of the filters {', '.join(map(repr, near))} in {file}"
    shorts = ", ".join(sorted(rig.filters)[:12])
    return f"add the line '{_new_filter(words, parts)}' under 'filters' in {file}, or {spelt} to one of its filters: {shorts}"


def _nearest(words: str, parts: FilterWords, rig: Rig) -> Sequence[str]:
    """Short names of the filters of the same passband, else of the one with the nearest name."""
    by_name = {name: short for short, rig_filter in rig.filters.items() for name in (rig_filter.name, *rig_filter.spelt, short)}
    same = {short for name, short in by_name.items() if parts.passband and filter_words(name).passband == parts.passband}
    if same or parts.passband:
        return sorted(same)
    near = did_you_mean(words, by_name) or _beginning_of(words, by_name)
    return [by_name[near]] if near is not None else []


def _beginning_of(words: str, names: dict[str, str]) -> str | None:
    """`Ha wide` begins with `Ha`; the longest such name."""
    first = words.replace("_", " ").replace("-", " ").casefold().split()
    fitting = [name for name in sorted(names) if name.casefold().split() == first[: len(name.split())]]
    return max(fitting, key=len, default=None)


def _new_filter(words: str, parts: FilterWords) -> str:
    centre_nm = _LINES_NM.get(parts.passband)
    width = f", width_nm: {parts.width_nm:g}" if parts.in_nm else ""
    kind = f"narrowband, centre_nm: {centre_nm:g}" if centre_nm else _kind_of(words)
    short = words[:LONGEST_SHORT].strip()
    spelt = "" if short == words else f", spelt: [{yaml_word(words)}]"
    return f"{yaml_word(short)}: {{kind: {kind}{width}{spelt}}}"


def _kind_of(words: str) -> str:
    """By what such names have in common (practice of the trade)."""
    if _DUAL.search(words):
        return "dual-band"
    return "narrowband" if _NARROW.search(words) else "broadband"
