"""What a marker in an author's text stands for, as plain values: the theme's `text.html` draws it."""

from msgspec import Struct

from sitegen.diary.rig import CautionKind
from sitegen.pages.fact_formatter import Shown
from sitegen.pages.picture_element import PictureView


class NumberInText(Struct, frozen=True):
    """A computed number: in place of the marker, or beside the author's words where there are any."""

    number: Shown
    words: str
    kind: str = "number"


class FigureLink(Struct, frozen=True):
    """The way to a section of the entry's page that draws something; `name` is the section's id."""

    name: str
    words: str
    kind: str = "figure"


class PictureInText(Struct, frozen=True):
    """One of the entry's pictures, small."""

    picture: PictureView
    caption: str
    kind: str = "picture"


class CautionInText(Struct, frozen=True):
    """What could hurt somebody who does what stands behind it; `is_again` where the text has said it in full before."""

    caution: CautionKind
    is_again: bool = False
    kind: str = "caution"


Marked = NumberInText | FigureLink | PictureInText | CautionInText
TextParts = tuple[str | Marked, ...]
"""A text in order: HTML, and between it what markers stand for."""
