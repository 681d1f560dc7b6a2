"""What is said about a picture: the author's file, the wishes for it, what was made. No pixels, no heavy import."""

from collections.abc import Mapping
from typing import Literal

from msgspec import Struct, field

Format = Literal["jpeg", "png", "tiff", "webp", "avif", "fits"]
Colour = Literal["grey", "rgb", "cmyk", "bayer"]

LARGEST_PX = 150_000_000
LONGEST_SIDE_PX = 65_500  # a JPEG holds 65,535; libvips stops a little earlier


class PictureProblem(Exception):
    """A picture that cannot be used; `sentence` says what is wrong, in the author's words, without the path."""

    def __init__(self, sentence: str) -> None:
        super().__init__(sentence)
        self.sentence = sentence


class PictureSource(Struct, frozen=True):
    """The author's file. Width and height are those of the upright picture; `bits` per sample as stored.

    `is_linear`: the values are still proportional to light, so that the picture needs a stretch.
    `is_flipped`: the first stored row is the lowest of the picture (FITS, unless ROWORDER says TOP-DOWN).
    `orientation`: EXIF 1 to 8, already allowed for in width and height.
    """

    width_px: int
    height_px: int
    format: Format
    bits: int
    colour: Colour
    is_linear: bool = False
    has_alpha: bool = False
    is_flipped: bool = False
    orientation: int = 1


class PictureSettings(Struct, frozen=True):
    """Every wish that changes a published byte. Qualities are 0 to 100 on each encoder's own scale.

    `stretch` takes the keys of `stretch.Stretch`; empty means automatic for linear data and none for the rest.
    `avif_effort` 0 to 9: 1 makes a file 3 % smaller than 0 and takes half as long again, 2 another 1 % and three times as long.
    """

    widths_px: tuple[int, ...] = (480, 1200, 2560)
    jpeg_quality: int = 82
    webp_quality: int = 85
    avif_quality: int = 60
    avif_effort: int = 0
    full_quality: int = 90
    tile_px: int = 1024
    tile_quality: int = 85
    stretch: Mapping[str, float] = field(default_factory=dict)


class MadeFile(Struct, frozen=True):
    """A published picture file; `name` is relative to the folder it was made in, POSIX."""

    name: str
    width_px: int
    height_px: int
    size_bytes: int
    mime: str


class MadePicture(Struct, frozen=True):
    """`files` by type, then by width; `placeholder` a data URI of a few hundred bytes to show at once;
    `colour` the mean colour as #rrggbb."""

    width_px: int
    height_px: int
    files: tuple[MadeFile, ...]
    placeholder: str
    colour: str

    def of_type(self, mime: str) -> tuple[MadeFile, ...]:
        """The candidates of one `srcset`, narrowest first."""
        return tuple(file for file in self.files if file.mime == mime)

    @property
    def full(self) -> MadeFile:
        """The JPEG in the picture's own size."""
        return self.of_type("image/jpeg")[-1]


class MadeTiles(Struct, frozen=True):
    """A pyramid of tiles; `names` of every file, relative to its folder, sorted; `info.json` among them."""

    width_px: int
    height_px: int
    tile_px: int
    scale_factors: tuple[int, ...]
    names: tuple[str, ...]
