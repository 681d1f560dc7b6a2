"""What a line of a text log looks like, in the syntax of the library `parse`; and how long a line may keep it busy."""

import re
from collections import Counter
from collections.abc import Iterable, Mapping, Set
from math import comb
from string import Formatter
from typing import Any, Literal

import parse
from msgspec import Struct

from sitegen.problems import DiaryProblems, Problem, hint_for

TIMES = ("start", "end", "discarded", "date")
VALUES = ("exposure_s", "filter", "kind", "kept", "reason", "binning", "gain", "sensor_c", "fwhm_arcsec", "elongation",
          "guiding_rms_arcsec", "object", "file", "panel", "note")  # fmt: skip
FIELDS = (*TIMES, *VALUES)
LONGEST_LINE, LONGEST_PATTERN = 2_000, 500
MOST_WAYS, MOST_WAYS_OF_FILE = 100_000, 20_000_000
_VERDICT = ("discarded", "kept", "reason", "file")
_EXAMPLE = "write it as in --lines '{start:%H:%M:%S} … {exposure_s} s … {filter}'"
Kind = Literal["start", "end", "verdict", "setting"]


class LinePattern(Struct, frozen=True):
    """`kind` follows from its fields: one with {start} begins a frame, one with {end} ends it, one that tells of a {file}, or
    that and why something was {discarded}, throws a frame away; any other holds for the frames that follow."""

    text: str
    kind: Kind
    forms: Mapping[str, str]
    literals: Mapping[str, int]
    parser: Any

    def ways(self, line: str) -> int:
        """In how many ways its words could be laid over the line, the most that the library may have to try; 0 where one of them
        is not there at all."""
        ways = 1
        for literal, times in self.literals.items():
            ways *= comb(line.count(literal), times)
        return ways

    def values(self, line: str) -> dict[str, str] | None:
        match = self.parser.parse(line, evaluate_result=False)
        if match is None:
            return None
        return {name: text.strip() for name, text in match.match.groupdict().items() if name in self.forms}


def line_pattern(text: str) -> LinePattern:
    """Raises DiaryProblems for one that cannot be used."""
    if len(text) > LONGEST_PATTERN:
        raise _refuse("a pattern is longer than 500 characters", _EXAMPLE)
    plain = text.replace("…", "{}")
    try:
        parts = list(Formatter().parse(plain))
        parser = parse.compile(plain)
        parser.parse("")
    except (ValueError, KeyError, NotImplementedError, AttributeError, IndexError, TypeError, re.error) as trouble:
        raise _refuse(f"'{text}' is no pattern ({str(trouble) or 'fields are {name} or {name:format}'})", _EXAMPLE) from None
    forms = {name: form or "" for _, name, form, _ in parts if name}
    for name in forms:
        if name not in FIELDS:
            raise _refuse(f"'{{{name}}}' is no field of a line", hint_for(name, FIELDS))
    if not forms:
        raise _refuse(f"'{text}' names no field", _EXAMPLE)
    _refuse_unread(text, forms.keys() - set(parser.named_fields))
    named_before = [part for part in parts if part[1] is not None]
    if any(not literal and number for number, (literal, *_) in enumerate(named_before)):
        raise _refuse(f"in '{text}' two fields follow each other with nothing between", "write what stands between them")
    literals = Counter(literal.casefold() for literal, *_ in parts if literal)
    return LinePattern(text, _kind_of(forms), forms, literals, parser)


def _refuse_unread(text: str, names: Set[str]) -> None:
    """The library takes a field with nothing behind its colon, or with '!', for words of the line."""
    if names:
        name = min(names)
        form = f" or {{{name}:%H:%M:%S}}" if name in TIMES else ""
        raise _refuse(f"in '{text}' the field '{name}' has no format behind its colon", f"write {{{name}}}{form}")


def line_patterns(texts: Iterable[str]) -> tuple[LinePattern, ...]:
    return tuple(map(line_pattern, texts))


def _kind_of(forms: Mapping[str, str]) -> Kind:
    if "start" in forms:
        return "start"
    if "end" in forms:
        return "end"
    return "verdict" if any(name in forms for name in _VERDICT) else "setting"


def _refuse(wrong: str, remedy: str) -> DiaryProblems:
    return DiaryProblems([Problem("--lines", 1, 1, wrong, remedy)])
