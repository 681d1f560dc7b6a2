"""Which cautions a text calls for."""

import re
from functools import lru_cache

from sitegen.cautions.registry import CAUTIONS
from sitegen.diary.rig import CautionKind

_LIKE = str.maketrans({"−": "-", "–": "-", "‑": "-", "’": "'", "\u00ad": None})
"""Signs that look alike, as the phrases write them."""
_SENTENCE_END = re.compile(r"(?<=[.!?:])\s+(?=[\"'„“«(]?[A-ZÄÖÜ])|\n")
"""A capital follows, so that 'ca. 230 V' is not cut."""


@lru_cache(maxsize=4096)
def kinds_in(text: str) -> tuple[CautionKind, ...]:
    """In the order of the registry."""
    sentences = _sentences(text)
    return tuple(caution.name for caution in CAUTIONS if caution.is_called_for(sentences))


def _sentences(text: str) -> tuple[str, ...]:
    """In lower case, with single blanks."""
    parts = (" ".join(part.lower().split()) for part in _SENTENCE_END.split(text.translate(_LIKE)))
    return tuple(part for part in parts if part)
