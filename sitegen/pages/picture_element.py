"""What the template's <picture> element needs."""

from msgspec import Struct

from sitegen.diary.entry import PictureType


class Source(Struct, frozen=True):
    """One type: candidates as (address, width in px), narrowest first."""

    mime: str
    candidates: tuple[tuple[str, int], ...]


class PictureView(Struct, frozen=True):
    alt: str
    caption_html: str | None
    role: str
    width_px: int
    height_px: int
    sources: tuple[Source, ...]
    fallback: str
    full: str
    placeholder: str
    colour: str
    tiles: str | None
    thumb: str
    thumb_size: tuple[int, int]
    type: PictureType = "observation"
