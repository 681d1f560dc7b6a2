"""One optical train, its filters and its dated history (content/rigs/NAME.yaml)."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Literal

FilterKind = Literal["broadband", "narrowband", "dual-band"]
CautionKind = Literal["laser", "sun", "electrical", "weight", "cold"]


@dataclass(frozen=True, slots=True)
class Telescope:
    """Lengths in mm; `factor` multiplies the focal length (reducer < 1, Barlow > 1)."""

    design: str | None
    aperture_mm: float | None
    obstruction_mm: float | None
    focal_length_mm: float
    factor: float = 1.0


@dataclass(frozen=True, slots=True)
class Camera:
    """`pixel_um` is the unbinned pixel; the frame's size in unbinned pixels."""

    name: str | None
    pixel_um: float
    width_px: int
    height_px: int
    colour: Literal["mono", "colour"]


@dataclass(frozen=True, slots=True)
class Filter:
    """`short` is what logs call it; one passband centre or several, in nm."""

    short: str
    name: str
    kind: FilterKind
    centre_nm: tuple[float, ...] = ()
    width_nm: float | None = None


@dataclass(frozen=True, slots=True)
class Train:
    """Telescope and camera as they stand from an evening on; `from_evening` is None for the first train."""

    from_evening: date | None
    telescope: Telescope
    camera: Camera
    note: str | None = None


@dataclass(frozen=True, slots=True)
class Work:
    """Something adjusted on the rig, when, and why."""

    date: date
    part: str
    what: str
    note: str | None = None
    caution: CautionKind | None = None


@dataclass(frozen=True, slots=True)
class Rig:
    """`trains` stand in time order and begin with the undated one."""

    slug: str
    name: str
    trains: tuple[Train, ...]
    filters: Mapping[str, Filter] = field(default_factory=dict)
    mount: str | None = None
    guiding: str | None = None
    other: str | None = None
    work: tuple[Work, ...] = ()

    def train_on(self, evening: date) -> Train:
        """The train that stood on that evening."""
        standing = [train for train in self.trains if train.from_evening is None or train.from_evening <= evening]
        return standing[-1] if standing else self.trains[0]
