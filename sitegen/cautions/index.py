"""From the words of a sentence to the phrases that stand in it, without trying each phrase: the vocabularies hold thousands."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec import Struct

from sitegen.cautions.phrases import Phrases, expression, is_one_word, letters_of, parts

_COMMON_WORDS = (
    "the and of to my with it we i at for from were had is are was on in off up out down no not by one two three four five six "
    "a an half without this that here there still all again over under into back me us our der die das und ist nicht ich wir "
    "ein eine einen mit auf im den dem von zu für es am aus nach war hat noch mir mich zwei drei vier fünf"
)
_EVERYWHERE = frozenset(_COMMON_WORDS.split())
"""Words that would be keys of no use, since most sentences hold some of them."""
_APART = re.compile(r"[^\w ]")
_SIGNS = re.compile(r"[(#…?]")
_LONGEST_WORD = 60
"""Of more letters than this no part is looked up: common practice, no source; the work grows with their square."""


class _Longer(Struct, frozen=True):
    """A phrase of several words. `letters`: of each of its words or groups, as far as it cannot lack them, what stands in each
    reading. `plain`: the phrase between blanks, if it is looked for as it stands."""

    phrase: str
    tables: frozenset[int]
    letters: tuple[tuple[str, ...], ...]
    plain: str

    def stands_in(self, sentence: str, apart: str) -> bool:
        """By plain search as far as possible, which is quicker than any expression; `apart` is the sentence word by word."""
        if self.plain:
            return self.plain in apart
        for choices in self.letters:
            for choice in choices:
                if choice in sentence:
                    break
            else:
                return False
        return expression(self.phrase).search(sentence) is not None

    def ends(self, sentence: str) -> str:
        """The first and the last of the words that stand there."""
        match = None if self.plain else expression(self.phrase).search(sentence)
        words = (match.group() if match else self.plain).split()
        return f"{words[0]} {words[-1]}"


class PhraseIndex:
    """Phrases by the rarest of their words. Which phrases a word may belong to is looked up once a process."""

    def __init__(self, tables: Sequence[Phrases]) -> None:
        self._tables_of: dict[str, list[int]] = {}
        for number, table in enumerate(tables):
            for phrase in parts(table):
                self._tables_of.setdefault(phrase, []).append(number)
        self._whole: dict[str, list[str]] = {}
        self._beginnings: dict[str, list[str]] = {}
        self._ends: dict[str, list[str]] = {}
        self._middles: dict[str, list[str]] = {}
        self._letters: dict[str, list[list[str]]] = {}
        self._always: list[_Longer] = []
        self._seen: dict[str, tuple[frozenset[int], Sequence[_Longer]]] = {}
        for phrase in self._tables_of:
            self._enter(phrase)

    def tables_met(self, sentence: str) -> set[int]:
        """The numbers of the tables of which a phrase stands in the sentence."""
        met: set[int] = set()
        doubtful = list(self._always)
        apart = _word_by_word(sentence)
        for word in set(apart.split()):
            certain, more = self._seen.get(word) or self._look_up(word)
            met |= certain
            doubtful += more
        for longer in doubtful:
            if not longer.tables <= met and longer.stands_in(sentence, apart):
                met |= longer.tables
        return met

    def words_met(self, sentence: str) -> dict[int, list[str]]:
        """The same with the words by which each table is met, of several the first and the last."""
        met: dict[int, list[str]] = {}
        apart = _word_by_word(sentence)
        looked_up = [(word, *self._look_up(word)) for word in set(apart.split())]
        for word, certain, _ in looked_up:
            for table in certain:
                met.setdefault(table, []).append(word)
        for longer in (*self._always, *(longer for _, _, more in looked_up for longer in more)):
            if longer.stands_in(sentence, apart):
                for table in longer.tables:
                    met.setdefault(table, []).append(longer.ends(sentence))
        return met

    def without(self, table: int, sentence: str) -> str:
        """What is left of a sentence without the phrases of a table."""
        apart = _word_by_word(sentence)
        words = sorted(set(apart.split()))
        longer = {phrase for word in words for phrase in self._look_up(word)[1] if table in phrase.tables}
        phrases = sorted(phrase.phrase for phrase in longer if phrase.stands_in(sentence, apart))
        for phrase in (*phrases, *(word for word in words if table in self._look_up(word)[0])):
            sentence = expression(phrase).sub(" ", sentence)
        return sentence

    def _enter(self, phrase: str) -> None:
        if is_one_word(phrase):
            self._dictionary(phrase).setdefault(phrase.strip("*"), []).append(phrase)
            return
        letters = self._letters[phrase] = letters_of(phrase)
        for key in max(letters, key=_weight, default=()):
            self._dictionary(key).setdefault(key.strip("*"), []).append(phrase)
        if not letters:
            self._always.append(self._longer(phrase))

    def _dictionary(self, key: str) -> dict[str, list[str]]:
        if key.startswith("*"):
            return self._middles if key.endswith("*") else self._ends
        return self._beginnings if key.endswith("*") else self._whole

    def _look_up(self, word: str) -> tuple[frozenset[int], Sequence[_Longer]]:
        """The tables that the word meets by itself, and the longer phrases of which it is the key."""
        if word not in self._seen:
            phrases = sorted(set(self._holding(word)))
            certain = frozenset(number for phrase in phrases if phrase not in self._letters for number in self._tables_of[phrase])
            self._seen[word] = certain, [self._longer(phrase) for phrase in phrases if phrase in self._letters]
        return self._seen[word]

    def _longer(self, phrase: str) -> _Longer:
        sure = sorted(self._letters[phrase], key=len) or [[phrase[0].strip("#*(")]]
        letters = tuple(tuple(key.strip("*") for key in keys) for keys in sure)
        return _Longer(phrase, frozenset(self._tables_of[phrase]), letters, _plain(phrase))

    def _holding(self, word: str) -> Iterator[str]:
        yield from self._whole.get(word, ())
        if len(word) > _LONGEST_WORD:
            return
        places = range(len(word) + 1)
        yield from _listed(self._beginnings, (word[:end] for end in places))
        yield from _listed(self._ends, (word[start:] for start in places))
        yield from _listed(self._middles, (word[start:end] for start in places for end in places[start + 1 :]))


def _listed(phrases: Mapping[str, Sequence[str]], keys: Iterable[str]) -> Iterator[str]:
    for key in keys:
        yield from phrases.get(key, ())


def _word_by_word(sentence: str) -> str:
    """With one blank before and behind each word and sign; a hyphen counts as a blank."""
    return f" {' '.join(_APART.sub(_between_blanks, sentence.replace('-', ' ')).split())} "


def _between_blanks(sign: re.Match[str]) -> str:
    return f" {sign.group()} "


def _plain(phrase: str) -> str:
    if "*" in phrase.strip("*") or _SIGNS.search(phrase):
        return ""
    words = _word_by_word(phrase.strip("*"))
    return words[phrase.startswith("*") : len(words) - phrase.endswith("*")]


def _weight(keys: Sequence[str]) -> int:
    return min(0 if key in _EVERYWHERE else len(key) for key in keys)
