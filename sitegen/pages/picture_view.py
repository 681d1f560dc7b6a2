"""A made picture as the template's <picture> element needs it."""

from collections.abc import Sequence

from msgspec import Struct

from sitegen.diary.entry import Picture
from sitegen.markdown.marks import without_marks
from sitegen.pages.markdown_text import to_inline_html
from sitegen.pages.overlay import Overlay
from sitegen.pages.picture_element import PictureView, Source
from sitegen.pictures.pointing_records import Pointing
from sitegen.pictures.records import MadePicture

MIMES = ("image/avif", "image/webp", "image/jpeg")


class PreparedPicture(Struct, frozen=True):
    """A picture of the entry and what was made of it. `folder` is its address; `tiles` that of theirs, if any. `pointing`
    None: nobody asked where it points. `pair`: earlier and this one brought to one size, where they are compared."""

    picture: Picture
    made: MadePicture
    folder: str
    tiles: str | None = None
    pointing: Pointing | None = None
    overlay: Overlay | None = None
    steps: "tuple[PreparedStep, ...]" = ()
    pair: "tuple[PreparedPicture, PreparedPicture] | None" = None


class PreparedStep(Struct, frozen=True):
    """A step of processing in words, with its picture where there is one."""

    what: str
    picture: PreparedPicture | None = None


def picture_view(prepared: PreparedPicture) -> PictureView:
    sizes, picture = prepared.made, prepared.picture
    jpegs = sizes.of_type("image/jpeg")
    middle = next((file for file in jpegs if file.width_px >= 900), jpegs[-1])
    small = jpegs[0]
    return PictureView(
        alt=without_marks(picture.alt),
        caption_html=to_inline_html(picture.caption) if picture.caption else None,
        role=picture.role,
        width_px=sizes.width_px,
        height_px=sizes.height_px,
        sources=tuple(source for mime in MIMES if (source := _source(prepared, mime)).candidates),
        fallback=prepared.folder + middle.name,
        full=prepared.folder + sizes.full.name,
        placeholder=sizes.placeholder,
        colour=sizes.colour,
        tiles=prepared.tiles,
        thumb=prepared.folder + small.name,
        thumb_size=(small.width_px, small.height_px),
        type=picture.type,
    )


def _source(prepared: PreparedPicture, mime: str) -> Source:
    files = [file for file in prepared.made.of_type(mime) if mime != "image/jpeg" or file.width_px <= 2600]
    return Source(mime, tuple((prepared.folder + file.name, file.width_px) for file in files))


def main_picture(pictures: Sequence[PreparedPicture]) -> PreparedPicture | None:
    """The one an entry is known by: its first result, else its first picture."""
    results = [prepared for prepared in pictures if prepared.picture.role == "result"]
    return next(iter([*results, *pictures]), None)
