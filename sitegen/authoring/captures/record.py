"""What one frame's header says, whichever file format it is in: all that sorting, recognising and logging a frame needs."""

from datetime import datetime, timedelta
from typing import Literal

from msgspec import Struct

from sitegen.diary.sub import FrameKind, Sub

Source = Literal["fits", "raw", "picture", "table"]
Processed = Literal["", "calibrated", "registered"]


class FrameRecord(Struct, frozen=True, array_like=True, gc=False):
    """None, or '' for words, where the header does not say.

    `kind` is None for a word that names none, which `kind_words` quotes with its keyword. `start` is aware UTC, or bare where the
    header does not tell its clock; `local` where it says that this is a wall clock. Frame and pixel are binned. The place is
    rounded to 0.1°: it is kept no better anywhere. `inputs` counts the frames that were combined into this one; `processed` says
    what was done to it, `sign` by which words of the header. `wrong` and `remedy` say why the file is no frame, `refused` that
    the system did not hand it over, which may be otherwise next time; `warning` and `warning_remedy` what is odd about it;
    `telescope` and `camera` are the names in the header.
    """

    source: Source
    kind: FrameKind | None = "light"
    kind_words: str = ""
    start: datetime | None = None
    local: bool = False
    exposure_s: float | None = None
    filter_words: str = ""
    binning: int | None = None
    gain: float | None = None
    sensor_c: float | None = None
    object: str = ""
    ra_deg: float | None = None
    dec_deg: float | None = None
    focal_length_mm: float | None = None
    pixel_um: float | None = None
    width_px: int | None = None
    height_px: int | None = None
    colour: bool | None = None
    latitude_deg: float | None = None
    longitude_deg: float | None = None
    camera_id: str = ""
    inputs: int | None = None
    processed: Processed = ""
    sign: str = ""
    float_pixels: bool = False
    focuser: float | None = None
    wrong: str = ""
    remedy: str = ""
    warning: str = ""
    warning_remedy: str = ""
    refused: bool = False
    telescope: str = ""
    camera: str = ""

    @property
    def is_readable(self) -> bool:
        return not self.wrong

    @property
    def is_processed(self) -> bool:
        return bool(self.processed) or self.float_pixels


class FrameFile(Struct, frozen=True, gc=False):
    """A file on the author's disk. `path` is as the author would type it, `below` the path below the folder gathered (POSIX),
    `folder` the name of that folder with a short hash of where it lies; `directory` is the real path of the file's own folder."""

    path: str
    below: str
    folder: str
    directory: str
    size: int
    mtime_ns: int
    ctime_ns: int
    inode: int

    @property
    def name(self) -> str:
        return self.below.rpartition("/")[2]

    @property
    def with_folder(self) -> str:
        """The path below, behind the name of the folder gathered: that one, too, may say what lies in it."""
        return f"{self.folder.rpartition('-')[0]}/{self.below}"

    @property
    def stem(self) -> str:
        """The name up to its first ending that a frame file may have."""
        return stem_of(self.name)


class FrameMeasures(Struct, frozen=True, gc=False):
    """What a grading table says of a frame; None where it does not. `kept` is its verdict, `reason` why it was thrown away."""

    fwhm_arcsec: float | None = None
    fwhm_px: float | None = None
    elongation: float | None = None
    stars: int | None = None
    kept: bool | None = None
    reason: str = ""


class Frame(Struct, frozen=True, gc=False):
    """One exposure as its file, or a row of a table, tells it. `start` is aware UTC to the millisecond; `clock` what a bare time
    was read as, None where the record told its clock. `file` is None for a row of a table, which is `listed`. `measures` are None
    where no grading table has the frame."""

    file: FrameFile | None
    record: FrameRecord
    start: datetime
    exposure_s: float
    clock: str | None = None
    listed: Sub | None = None
    measures: FrameMeasures | None = None

    @property
    def kind(self) -> FrameKind:
        return self.record.kind or "light"

    @property
    def end(self) -> datetime:
        return self.start + timedelta(seconds=self.exposure_s)

    @property
    def place_in_order(self) -> tuple[datetime, float, str]:
        """Frames sort the same whatever order the disk lists them in."""
        return self.start, self.exposure_s, self.file.path if self.file else ""


PACKED = (".gz", ".fz")


def stem_of(name: str) -> str:
    """`M_1.fits.fz` -> `M_1`; a dot inside a name stays: `sub_10.5s.fits` -> `sub_10.5s`."""
    plain = name
    if plain.casefold().endswith(PACKED):
        plain = plain[: -len(PACKED[0])]
    head, dot, ending = plain.rpartition(".")
    return head if dot and head and ending.isalnum() and not ending.isdigit() else plain
