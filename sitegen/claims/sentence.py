"""A passage cut into sentences, and a sentence into words."""

import re
from collections.abc import Iterator

from msgspec import Struct

from sitegen.claims.passage import EntryLink, NightMark, Passage

_WORD = re.compile(r"\d+(?:[.,:]\d+)*|[^\W\d_]+(?:[-'’][^\W\d_]+)*|[^\w\s]")
_END = re.compile(r"[.!?…]+[)\]”\"'’»“]*(?=\s|$)")
_NO_END = frozenset(
    [
        "ca",
        "z",
        "b",
        "d",
        "h",
        "u",
        "a",
        "bzw",
        "etc",
        "e",
        "g",
        "i",
        "vs",
        "st",
        "dr",
        "nr",
        "no",
        "approx",
        "jan",
        "feb",
        "mar",
        "apr",
        "jun",
        "jul",
        "aug",
        "sep",
        "sept",
        "oct",
        "okt",
        "nov",
        "dec",
        "dez",
        "min",
        "sec",
        "std",
    ]
)
"""What stands before a full stop that ends no sentence, beside numbers ('12. Juni')."""


class Word(Struct, frozen=True):
    """A word, a number or one sign, folded; its place in the passage."""

    text: str
    start: int
    end: int


class Sentence(Struct, frozen=True):
    """`words` hold signs too; `folded` is the text in lower case, as long as the text where that keeps its length."""

    passage: Passage
    start: int
    end: int
    words: tuple[Word, ...]

    @property
    def text(self) -> str:
        return self.passage.text[self.start : self.end]

    @property
    def vocabulary(self) -> frozenset[str]:
        return frozenset(word.text for word in self.words)

    @property
    def links(self) -> list[EntryLink]:
        return [link for link in self.passage.links if self.start <= link.start < self.end]

    @property
    def nights(self) -> list[NightMark]:
        return [mark for mark in self.passage.nights if self.start <= mark.start < self.end]

    def holds(self, *phrases: str) -> bool:
        """Whether one of the phrases stands in it, as whole words: 'in all'."""
        spaced = f" {' '.join(word.text for word in self.words)} "
        return any(f" {phrase} " in spaced for phrase in phrases)


def sentences_of(passage: Passage) -> Iterator[Sentence]:
    start = 0
    for end in _ends(passage.text):
        words = tuple(Word(match[0].casefold(), match.start(), match.end()) for match in _WORD.finditer(passage.text, start, end))
        if words:
            yield Sentence(passage, words[0].start, end, words)
        start = end


def _ends(text: str) -> Iterator[int]:
    for match in _END.finditer(text):
        before = re.search(r"\w+$", text[max(0, match.start() - 12) : match.start()])
        is_short = before is not None and (before[0].isdigit() or before[0].casefold() in _NO_END)
        follows = text[match.end() :].lstrip()
        if match[0] == "." and is_short and not _begins(before[0] if before else "", follows):
            continue
        yield match.end()
    yield len(text)


def _begins(before: str, follows: str) -> bool:
    """After a number a sentence ends where a word with a capital follows that is no month: '… in 2025. The …'."""
    return before.isdigit() and len(before) > 2 and follows[:1].isupper()
