"""The words cameras and people use for the kind of a frame."""

import re
from functools import lru_cache

from sitegen.diary.sub import FrameKind

KINDS: tuple[FrameKind, ...] = ("light", "dark", "flat", "bias", "dark-flat")

# In this order: a 'dark flat' is neither a dark nor a flat, a 'sky flat' no picture of the sky.
_WORDS: tuple[tuple[str, FrameKind], ...] = (
    (r"dark.*flat|flat.*dark", "dark-flat"),
    (r"bias|offset|zero", "bias"),
    (r"dark", "dark"),
    (r"flat", "flat"),
    (r"light|object|^obj$|science|^sci$|target|tricolou?r|^sky$", "light"),
)


@lru_cache(maxsize=256)
def frame_kind(words: str) -> FrameKind | None:
    """`Light Frame`, `FLAT`, `dark_flat`, `Bias Frame`, `zero`, … in any case; None for a word that names no kind."""
    folded = re.sub(r"[\W_\d]+", "", words.casefold())
    return next((kind for pattern, kind in _WORDS if re.search(pattern, folded)), None)
