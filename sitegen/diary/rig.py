"""One optical train, its filters and its dated history (content/rigs/NAME.yaml)."""

from collections.abc import Mapping
from datetime import date
from typing import Literal

from msgspec import Struct, field

FilterKind = Literal["broadband", "narrowband", "dual-band"]
CautionKind = Literal[
    "laser", "sun", "electrical", "battery", "weight", "cold", "alone", "driving", "solvent", "magnet", "water", "wildlife",
    "machine",
]


class Telescope(Struct, frozen=True):
    """Lengths in mm; `factor` multiplies the focal length (reducer < 1, Barlow > 1)."""

    design: str | None
    aperture_mm: float | None
    obstruction_mm: float | None
    focal_length_mm: float
    factor: float = 1.0


class Camera(Struct, frozen=True):
    """`pixel_um` is the unbinned pixel; the frame's size in unbinned pixels."""

    name: str | None
    pixel_um: float
    width_px: int
    height_px: int
    colour: Literal["mono", "colour"]


class Filter(Struct, frozen=True):
    """`short` is what logs call it, `spelt` what else they may call it; one passband centre or several, in nm."""

    short: str
    name: str
    kind: FilterKind
    centre_nm: tuple[float, ...] = ()
    width_nm: float | None = None
    spelt: tuple[str, ...] = ()


class Train(Struct, frozen=True):
    """Telescope and camera as they stand from an evening on; `from_evening` is None for the first train."""

    from_evening: date | None
    telescope: Telescope
    camera: Camera
    note: str | None = None


class Work(Struct, frozen=True):
    """Something adjusted on the rig, when, and why."""

    date: date
    part: str
    what: str
    note: str | None = None
    caution: CautionKind | None = None


class Rig(Struct, frozen=True):
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
