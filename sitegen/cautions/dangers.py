"""The dangers of all cautions in one language, looked for in a text."""

from collections.abc import Sequence, Set
from functools import cache

from msgspec import Struct

from sitegen.cautions.caution import needs_of
from sitegen.cautions.index import PhraseIndex
from sitegen.cautions.phrases import Phrases
from sitegen.cautions.registry import CAUTIONS
from sitegen.diary.rig import CautionKind


class Danger(Struct, frozen=True):
    """`tables` are the numbers of those that must be met, in `reach` sentences in a row."""

    kind: CautionKind
    tables: tuple[int, ...]
    reach: int


class Text:
    """Sentences and the tables that each meets."""

    def __init__(self, sentences: Sequence[str], index: PhraseIndex) -> None:
        self.sentences = sentences
        self.met = [index.tables_met(sentence) for sentence in sentences]
        self._index = index
        self._words: dict[int, dict[int, list[str]]] = {}

    def holds(self, danger: Danger, place: int) -> bool:
        """Whether a row of sentences, that of `place` among them, meets every table, each by words of its own."""
        starts = range(max(0, place - danger.reach + 1), place + 1)
        return any(self._is_met(danger, range(start, min(start + danger.reach, len(self.met)))) for start in starts)

    def _is_met(self, danger: Danger, places: range) -> bool:
        for table in danger.tables[1:]:
            if not any(table in self.met[place] for place in places):
                return False
        choices = (self._choices(table, places) for table in danger.tables)
        return len(danger.tables) == 1 or _each_has_its_own(sorted(choices, key=len))

    def _choices(self, table: int, places: range) -> set[frozenset[str]]:
        return {frozenset(words.split()) for place in places for words in self._words_of(place).get(table, ())}

    def _words_of(self, place: int) -> dict[int, list[str]]:
        if place not in self._words:
            self._words[place] = self._index.words_met(self.sentences[place])
        return self._words[place]


def _each_has_its_own(choices: Sequence[Set[frozenset[str]]], taken: frozenset[str] = frozenset()) -> bool:
    """Whether words can be taken from each so that none is taken twice. Those with the fewest choices come first, which keeps the
    search short."""
    if not choices:
        return True
    return any(taken.isdisjoint(words) and _each_has_its_own(choices[1:], taken | words) for words in choices[0])


class Dangers:
    """The tables of every vocabulary are numbered, each once however many dangers name it."""

    def __init__(self, language: str) -> None:
        self._numbers: dict[Phrases, int] = {}
        self._harmless: dict[CautionKind, int] = {}
        self._beginning: dict[int, list[Danger]] = {}
        for caution in CAUTIONS:
            if vocabulary := caution.languages.get(language):
                self._harmless[caution.name] = self._number(vocabulary.harmless)
                for needs, reach in map(needs_of, vocabulary.dangers):
                    tables = tuple(map(self._number, needs))
                    self._beginning.setdefault(tables[0], []).append(Danger(caution.name, tables, reach))
        self._firsts = frozenset(self._beginning)
        self._index = PhraseIndex(tuple(self._numbers))

    def _number(self, table: Phrases) -> int:
        return self._numbers.setdefault(table, len(self._numbers))

    def kinds_in(self, sentences: Sequence[str]) -> set[CautionKind]:
        """Those that are also met without what is harmless."""
        text = Text(sentences, self._index)
        return {kind for kind in self._kinds_met(text) if self._is_meant(kind, text)}

    def _kinds_met(self, text: Text) -> set[CautionKind]:
        kinds: set[CautionKind] = set()
        for place, tables in enumerate(text.met):
            for first in tables & self._firsts:
                kinds.update(
                    danger.kind for danger in self._beginning[first] if danger.kind not in kinds and text.holds(danger, place)
                )
        return kinds

    def _is_meant(self, kind: CautionKind, text: Text) -> bool:
        harmless = self._harmless[kind]
        if not any(harmless in tables for tables in text.met):
            return True
        pairs = zip(text.sentences, text.met, strict=True)
        left = [self._index.without(harmless, sentence) if harmless in tables else sentence for sentence, tables in pairs]
        return kind in self._kinds_met(Text(left, self._index))


@cache
def dangers_in(language: str) -> Dangers:
    return Dangers(language)
