"""Which cautions a text calls for."""

import re
from collections.abc import Iterator
from functools import lru_cache

from sitegen.cautions.dangers import dangers_in
from sitegen.cautions.registry import CAUTIONS
from sitegen.cautions.spoken import may_be
from sitegen.diary.rig import CautionKind

_LIKE = str.maketrans({"−": "-", "–": "-", "‑": "-", "’": "'", "\u00ad": None})
"""Signs that look alike, as the phrases write them."""
_SENTENCE_END = re.compile(r"(?<=[.!?:])\s+(?=[\"'„“«(]?[A-ZÄÖÜ])|\n")
"""A capital follows, so that 'ca. 230 V' is not cut."""
_LONGEST_SENTENCE = 120
"""In words: common practice, no source. Longer ones are cut, since the work grows with their square."""
_WORD = re.compile(r"\w+")


@lru_cache(maxsize=4096)
def kinds_in(text: str) -> tuple[CautionKind, ...]:
    """In the order of the registry. A text may be in any language that nothing speaks against."""
    sentences = tuple(_sentences(text))
    words = {word for sentence in sentences for word in _WORD.findall(sentence)}
    languages = dict.fromkeys(language for caution in CAUTIONS for language in caution.languages)
    kinds = {kind for language in languages if may_be(language, words) for kind in dangers_in(language).kinds_in(sentences)}
    return tuple(caution.name for caution in CAUTIONS if caution.name in kinds)


def _sentences(text: str) -> Iterator[str]:
    """In lower case, with single blanks."""
    for part in _SENTENCE_END.split(text.translate(_LIKE)):
        words = part.lower().split()
        for start in range(0, len(words), _LONGEST_SENTENCE):
            yield " ".join(words[start : start + _LONGEST_SENTENCE])
