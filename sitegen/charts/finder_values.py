"""What a finder map shows: a target, and the fields of cameras or the panels of a mosaic around it."""

from collections.abc import Sequence
from math import hypot

from msgspec import Struct

from sitegen.sky.separation import separation_deg


class CameraField(Struct, frozen=True):
    """The field around a pointing. `rotation_deg` is the position angle of the picture's up, from north through east, None
    where it is not known. `ra_deg` and `dec_deg` its middle, None for the target's own place. `is_simulated`: a simulated picture
    tells it."""

    label: str
    width_deg: float
    height_deg: float
    rotation_deg: float | None = None
    ra_deg: float | None = None
    dec_deg: float | None = None
    is_simulated: bool = False

    @property
    def diagonal_deg(self) -> float:
        return hypot(self.width_deg, self.height_deg)


class FinderValues(Struct, frozen=True):
    """`size_arcmin` is (longer, shorter), None where not known. `position_angle_deg` that of the longer axis, from north through
    east; without it the target is drawn as a circle as wide as it is long. `panels` of a mosaic, each with a place of its own,
    and `whole_deg`, the field of all of them where that is known."""

    name: str
    ra_deg: float
    dec_deg: float
    size_arcmin: tuple[float, float] | None
    fields: Sequence[CameraField]
    position_angle_deg: float | None = None
    panels: Sequence[CameraField] = ()
    whole_deg: tuple[float, float] | None = None

    @property
    def is_turned(self) -> bool:
        """Whether it is longer one way than the other, in a direction that is known."""
        return self.position_angle_deg is not None and self.size_arcmin is not None and self.size_arcmin[0] > self.size_arcmin[1]

    @property
    def reach_deg(self) -> float:
        """From the target to the farthest corner of a field."""
        corners = (field.diagonal_deg / 2 for field in self.fields)
        of_panels = (_apart_deg(self, panel) + panel.diagonal_deg / 2 for panel in self.panels)
        return max((*corners, *of_panels), default=0.0)


def _apart_deg(values: "FinderValues", panel: CameraField) -> float:
    assert panel.ra_deg is not None and panel.dec_deg is not None
    return float(separation_deg(values.ra_deg, values.dec_deg, panel.ra_deg, panel.dec_deg))
