"""`--columns KEY=HEADING,…`: what a table calls its columns, and how it writes what stands in them."""

import re
from collections.abc import Iterable, Mapping

from msgspec import Struct

from sitegen.authoring.recorded.vocabulary import ASKED_ALSO, OWN_NAMES, WORDS_ASKED
from sitegen.problems import DiaryProblems, Problem, hint_for

_NEXT_KEY = re.compile(r",\s*(?=[a-z_]+\s*=)")
_FORM = re.compile(r"^(.*?):(%.*|s|min|h|px|arcsec)$", re.S)
KEYS = tuple(dict.fromkeys((*OWN_NAMES, *ASKED_ALSO)))


class Asked(Struct, frozen=True):
    """The heading of a column, and its form: a unit, or a strptime format; '' where the column shows it."""

    heading: str
    form: str = ""


AskedColumns = Mapping[str, Asked]


def read_asked(words: Iterable[str]) -> AskedColumns:
    """Raises DiaryProblems for a key that is none."""
    asked: dict[str, Asked] = {}
    for word in words:
        for part in _NEXT_KEY.split(word):
            key, is_there, heading = part.partition("=")
            key, heading = key.strip(), heading.strip()
            if not is_there or not heading:
                raise _refuse(f"'{part}' names no column", "write --columns KEY=HEADING, as in --columns 'start=Beginn'")
            if key not in KEYS:
                raise _refuse(f"'{key}' is no key of a table", hint_for(key, KEYS))
            if key in WORDS_ASKED and heading not in WORDS_ASKED[key]:
                raise _refuse(f"'{key}' is '{heading}'", f"write {key}={' or '.join(WORDS_ASKED[key])}")
            form = _FORM.match(heading)
            asked["start" if key == "time" else key] = Asked(*form.groups()) if form else Asked(heading)
    return asked


def _refuse(wrong: str, remedy: str) -> DiaryProblems:
    return DiaryProblems([Problem("--columns", 1, 1, wrong, remedy)])
