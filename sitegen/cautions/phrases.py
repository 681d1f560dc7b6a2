"""How a vocabulary writes what it looks for: phrases in lower case, with ` | ` between them.

| sign | stands for |
|---|---|
| `*` | any letters, or none: `point*` is also 'pointed', `*leiter` also 'Stehleiter' |
| a blank | a blank or a hyphen |
| `(a\\|the)` | one of these, each of one word or more |
| `the?` | this word or group, or nothing |
| `#` | a number |
| `…` | up to six words; first or last in a phrase, the rest of the sentence |

A phrase becomes a regular expression when a text first holds one of its key words (`index.py`): compiling all of them takes
longer than a small rebuild.
"""

import re
from collections.abc import Iterator
from functools import cache
from typing import TypeAlias

Phrases: TypeAlias = str

_BLANK = "[ -]"
_SIGNS = {"*": r"\w*", "#": r"\d+(?:[.,]\d+)?", "(": "(?:", ")": ")", "|": "|", " ": _BLANK}
_BETWEEN = r"(?:\S+ ){0,6}"
_ELEMENT = re.compile(r"[^\s(]*\([^)]*\)\S*|\S+")
_GROUP = re.compile(r"(.*)\(([^)]*)\)(.*)")
_PIECE = re.compile(r"\w+")


def any_of(*tables: Phrases) -> Phrases:
    return " | ".join(tables)


def parts(phrases: Phrases) -> list[str]:
    return phrases.split(" | ") if phrases else []


def stands_in(phrases: Phrases, sentence: str) -> bool:
    return any(expression(phrase).search(sentence) for phrase in parts(phrases))


@cache
def expression(phrase: str) -> re.Pattern[str]:
    return re.compile(rf"(?:^|(?<=\W))(?:{_phrase(_ELEMENT.findall(phrase))})(?!\w)")


def is_one_word(phrase: str) -> bool:
    return phrase.isalnum() or (phrase.strip("*").isalnum() and phrase != "*")


def letters_of(phrase: str) -> list[list[str]]:
    """For each word or group that the phrase cannot lack, its longest piece such as 'sun' or 'point*', one for each reading; none
    for what may be any word."""
    elements = _ELEMENT.findall(phrase) if "(" in phrase else phrase.split()
    pieces = [[element] if is_one_word(element) else _pieces(element) for element in elements if not element.endswith("?")]
    return [keys for keys in pieces if "*" not in keys]


def _pieces(element: str) -> list[str]:
    group = _GROUP.fullmatch(element)
    readings = [f"{group[1]}{reading}{group[3]}" for reading in group[2].split("|")] if group else [element]
    return [max(_keys_in(reading), key=_length, default="*") for reading in readings]


def _keys_in(reading: str) -> Iterator[str]:
    if words := [word for word in reading.split() if is_one_word(word)]:
        yield from words
        return
    reading = reading.replace("#", "*")
    for piece in _PIECE.finditer(reading):
        before, behind = reading[: piece.start()], reading[piece.end() :]
        yield ("*" if before.endswith("*") else "") + piece.group() + ("*" if behind.startswith("*") else "")


def _length(key: str) -> int:
    return len(key.strip("*"))


def _phrase(words: list[str]) -> str:
    """The words with what stands between them."""
    written = ""
    last = len(words) - 1
    for place, word in enumerate(words):
        if word == "…":
            written += _BETWEEN if 0 < place < last else ".*"
        elif word.endswith("?"):
            written += f"(?:{_word(word[:-1])}{_BLANK})?"
        else:
            written += _word(word) + ("" if place == last else " " if words[place + 1] == "…" else _BLANK)
    return written


def _word(word: str) -> str:
    return "".join(_SIGNS.get(sign) or re.escape(sign) for sign in word)
