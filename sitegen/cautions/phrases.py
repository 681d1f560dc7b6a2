"""How a vocabulary writes what it looks for: phrases in lower case, with ` | ` between them.

| sign | stands for |
|---|---|
| `*` | any letters, or none: `point*` is also 'pointed', `*leiter` also 'Stehleiter' |
| a blank | a blank or a hyphen |
| `(a\\|the)` | one of these |
| `the?` | this word, or nothing |
| `#` | a number |
| `…` | up to six words; first or last in a phrase, the rest of the sentence |

A phrase becomes a regular expression when a text first holds its longest certain letters: compiling all of them takes as
long as a small rebuild.
"""

import re
from collections.abc import Sequence
from functools import cache
from typing import TypeAlias

Phrases: TypeAlias = str

_SIGNS = {"*": r"\w*", "#": r"\d+(?:[.,]\d+)?", "(": "(?:", ")": ")", "|": "|"}
_BETWEEN = r"(?:\S+ ){0,6}"
_BLANK = "[ -]"


def has_stem(stems: str, sentences: Sequence[str]) -> bool:
    """By plain search, which is quicker than any expression."""
    return any(stem in sentence for stem in _parts(stems) for sentence in sentences)


def stands_in(phrases: Phrases, sentence: str) -> bool:
    return any(core in sentence and _expression(phrase).search(sentence) for phrase, core in _with_cores(phrases))


def without(phrases: Phrases, sentence: str) -> str:
    for phrase, core in _with_cores(phrases) if phrases else ():
        if core in sentence:
            sentence = _expression(phrase).sub(" ", sentence)
    return sentence


@cache
def _expression(phrase: str) -> re.Pattern[str]:
    return re.compile(rf"(?:^|(?<=\W))(?:{_phrase(phrase.split())})(?!\w)")


@cache
def _with_cores(phrases: Phrases) -> tuple[tuple[str, str], ...]:
    """Each phrase beside its longest run of letters that no reading of it lacks: only where that stands is it compiled."""
    return tuple((phrase, _core(phrase)) for phrase in _parts(phrases))


def _core(phrase: str) -> str:
    certain = re.sub(r"\([^)]*\)\??|\S+\?(?=\s|$)", " ", phrase)
    return max(re.findall(r"[^\W\d_]+", certain), key=len, default="")


@cache
def _parts(phrases: str) -> tuple[str, ...]:
    return tuple(phrases.split(" | "))


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
