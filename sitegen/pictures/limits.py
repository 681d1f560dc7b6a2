"""The size limits of a picture, and the one place where a library's errors become a sentence about it."""

from collections.abc import Iterator
from contextlib import contextmanager

import pyvips

from sitegen.pictures.records import LARGEST_PX, LONGEST_SIDE_PX, PictureProblem

# what the decoders say, and what it means to the author; the first that fits is taken
MEANINGS = (
    ("no space left", "there is no room on the disk to make its sizes"),
    ("write error", "its sizes cannot be written (is the disk full?)"),
    ("out of memory", "it needs more memory than there is"),
    ("premature end", "it is cut short: the pixels end early"),
    ("truncat", "it is cut short: the pixels end early"),
    ("end of file", "it is cut short: the pixels end early"),
    ("read error", "it is cut short: the pixels end early"),
    ("not enough data", "it is cut short: the pixels end early"),
    ("profile", "its colour profile cannot be read"),
)


@contextmanager
def as_picture_problems(done: str = "read") -> Iterator[None]:
    """Everything that goes wrong inside becomes a PictureProblem: "it cannot be `done`: …" where the system refuses."""
    try:
        yield
    except pyvips.Error as error:
        raise PictureProblem(_sentence(str(error))) from error
    except OSError as error:
        raise PictureProblem(f"it cannot be {done}: {error.strerror or error}") from error


def _sentence(said: str) -> str:
    lowered = said.casefold()
    for word, meaning in MEANINGS:
        if word in lowered:
            return meaning
    return "its pixels are damaged and cannot be decoded"


def refuse_outsize(width_px: int, height_px: int) -> None:
    if width_px < 1 or height_px < 1:
        raise PictureProblem(f"it has no pixels ({width_px} × {height_px})")
    if width_px * height_px > LARGEST_PX:
        seen = f"{width_px * height_px / 1e6:,.0f} megapixels ({width_px} × {height_px})"
        raise PictureProblem(f"it has {seen}; at most {LARGEST_PX // 10**6} are taken")
    if max(width_px, height_px) > LONGEST_SIDE_PX:
        raise PictureProblem(f"its longer side has {max(width_px, height_px)} pixels; at most {LONGEST_SIDE_PX} are taken")
