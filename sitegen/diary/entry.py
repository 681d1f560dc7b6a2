"""One entry of the diary (content/entries/NAME.md) with everything its front matter names."""

from collections.abc import Mapping
from datetime import date
from typing import Literal

from msgspec import Struct, field

from sitegen.diary.lesson_done import LessonDone
from sitegen.diary.panel import Panel
from sitegen.diary.recalled import Recalled
from sitegen.diary.sub import Sub
from sitegen.diary.target import Target

Stage = Literal["trial", "gathering", "finished"]
PictureRole = Literal["result", "process", "sub", "setup"]
PictureType = Literal["observation", "simulation", "artwork", "chart", "collage", "photographic", "planetary"]
"""The values of `Type` in Astronomy Visualization Metadata 1.2, in lower case."""
FROM_EXPOSURES: frozenset[PictureType] = frozenset({"observation", "collage", "planetary"})
"""Types of pictures that subs can have gone into; what was simulated or drawn was made from none."""


class ProcessStep(Struct, frozen=True):
    """One step of processing: what was done, and the picture of it where there is one."""

    what: str
    file: str | None = None
    alt: str | None = None


class PointingSolution(Struct, frozen=True):
    """Where a picture points, as its author knows it. Degrees ICRS, arcseconds per pixel of the source file;
    `rotation_deg` is the position angle of the picture's up, from north through east."""

    ra_deg: float
    dec_deg: float
    scale_arcsec_px: float
    rotation_deg: float
    mirrored: bool = False


class Picture(Struct, frozen=True):
    """`file` is relative to content/; `compare_with` the file of another of the entry's pictures, of the same framing and
    earlier, that this one is laid over; `type` says whether it was recorded, and what it is otherwise."""

    file: str
    alt: str
    caption: str | None = None
    role: PictureRole = "result"
    solution: PointingSolution | None = None
    steps: tuple[ProcessStep, ...] = ()
    stretch: Mapping[str, float] = field(default_factory=dict)
    compare_with: str | None = None
    type: PictureType = "observation"


class StarFile(Struct, frozen=True):
    """A frame of stars to measure, or its saved measurement: `file` is relative to content/, `type` as that of a picture."""

    file: str
    type: PictureType = "observation"


class NightNote(Struct, frozen=True):
    """What only the author knows of a night."""

    clouds: str | None = None
    wind: str | None = None
    temperature_c: float | None = None
    humidity_percent: float | None = None
    seeing_arcsec: float | None = None
    polar_error_arcmin: float | None = None
    ended_by: str | None = None
    note: str | None = None


class Link(Struct, frozen=True):
    title: str
    address: str


class Lessons(Struct, frozen=True):
    """Short Markdown sentences. `done` ticks off what earlier entries had under `next`; `subjects` by the lesson as written, of
    those that name one."""

    worked: tuple[str, ...] = ()
    failed: tuple[str, ...] = ()
    next: tuple[str, ...] = ()
    done: tuple[LessonDone, ...] = ()
    subjects: Mapping[str, str] = field(default_factory=dict)

    @property
    def all(self) -> tuple[str, ...]:
        return (*self.worked, *self.failed, *self.next, *(done.what for done in self.done))


class Entry(Struct, frozen=True):
    """`subs` are all frames of its logs, calibration included, in time order; `body` is Markdown.

    `body_line` is the line of the file on which the body begins (for problem lines).
    `rig` and `site` are the defaults named by the front matter; frames may name others. `panels` are None where the author does
    not name any, and the frames are asked; empty where it is no mosaic.
    """

    slug: str
    title: str
    published: date
    body: str
    body_line: int = 1
    updated: date | None = None
    summary: str | None = None
    stage: Stage = "finished"
    targets: tuple[Target, ...] = ()
    rig: str | None = None
    site: str | None = None
    subs: tuple[Sub, ...] = ()
    pictures: tuple[Picture, ...] = ()
    wanted_hours: Mapping[str, float] = field(default_factory=dict)
    night_notes: Mapping[date, NightNote] = field(default_factory=dict)
    links: tuple[Link, ...] = ()
    topics: tuple[str, ...] = ()
    lessons: Lessons = Lessons()
    star_survey: tuple[StarFile, ...] = ()
    star_rings: tuple[StarFile, ...] = ()
    unlisted: bool = False
    recalled: tuple[Recalled, ...] = ()
    panels: tuple[Panel, ...] | None = None

    @property
    def lights(self) -> tuple[Sub, ...]:
        """Light frames, kept and discarded, in time order."""
        return tuple(sub for sub in self.subs if sub.kind == "light")
