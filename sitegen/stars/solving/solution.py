"""Solution: where a picture points, as the field's standard terms have it, and the two ways through it.

Picture pixels are counted as the array of the picture is: x is the column and y the row, both from 0 at
the centre of the first pixel, y downwards. "Up" is towards row 0. (FITS and AVM count from 1, and AVM
upwards: headers.py and avm.py convert.)
"""

from typing import TypeAlias

import numpy as np
import numpy.typing as npt
from msgspec import Struct
from msgspec.structs import replace

from sitegen.sky.separation import separation_deg
from sitegen.stars.digits import rounded
from sitegen.stars.solving import tangent_plane
from sitegen.stars.solving.distortion import Distortion
from sitegen.stars.solving.evidence import Evidence
from sitegen.stars.solving.tangent_plane import FloatArray

Matrix: TypeAlias = tuple[tuple[float, float], tuple[float, float]]

# What a solution tells of itself is rounded well beyond what is published, so that a number which was given with few digits comes
# back with them: 161.264985 is a tie to five decimals, and one bit less of it would be published as another number.
_ANGLE_DECIMALS = 9
_SCALE_DECIMALS, _TURN_DECIMALS = 8, 6
"""Scale and rotation are differences between neighbouring pixels: good to 2e-10 arcsec and 1e-8 degrees."""


LOOKED_AT_PX = 2400
"""Longest side in which stars are looked for; a picture of more pixels has more stars than the catalogue."""

NARROW_DEG, NARROW_CORNER_PX, WIDE_CORNER_PX = 5.0, 1.0, 3.0


class NotSolved(Struct, frozen=True):
    """No place on the sky can be vouched for; reason is a sentence for the author, without a full stop."""

    reason: str


class Solution(Struct, frozen=True):
    """A tangent-plane solution of one picture (ICRS).

    cd: ((dxi/dx, dxi/dy), (deta/dx, deta/dy)) in degrees per picture pixel, y downwards, at the reference.
    distortion: applied to pixel offsets before cd, or None. matched and rms_arcsec: stars that the fit
    rests on and the root mean square of their distances; 0 and None where the solution was read, not
    fitted. corner_arcsec: how far off the solution may be in the farthest corner of the frame (4 standard deviations), None
    where it was read. evidence: what speaks for a solution found here, None for one that was read.
    """

    width_px: int
    height_px: int
    reference_ra_deg: float
    reference_dec_deg: float
    reference_x_px: float
    reference_y_px: float
    cd: Matrix
    distortion: Distortion | None = None
    matched: int = 0
    rms_arcsec: float | None = None
    corner_arcsec: float | None = None
    evidence: Evidence | None = None

    def to_sky(self, x_px: npt.ArrayLike, y_px: npt.ArrayLike) -> tuple[FloatArray, FloatArray]:
        """(ra, dec) in degrees of picture pixels, arrays of one shape or numbers."""
        offsets = self._offsets(x_px, y_px)
        if self.distortion is not None:
            offsets = self.distortion.straightened(*offsets)
        (a, b), (c, d) = self.cd
        xi, eta = a * offsets[0] + b * offsets[1], c * offsets[0] + d * offsets[1]
        return tangent_plane.to_sky(xi, eta, self.reference_ra_deg, self.reference_dec_deg)

    def to_pixel(self, ra_deg: npt.ArrayLike, dec_deg: npt.ArrayLike) -> tuple[FloatArray, FloatArray]:
        """(x, y) in picture pixels of sky positions, inside the frame or not; NaN more than 90 degrees away."""
        xi, eta = tangent_plane.to_plane(ra_deg, dec_deg, self.reference_ra_deg, self.reference_dec_deg)
        (a, b), (c, d) = self.cd
        determinant = a * d - b * c
        u, v = (d * xi - b * eta) / determinant, (a * eta - c * xi) / determinant
        if self.distortion is not None:
            u, v = self.distortion.bent(u, v)
        return u + self.reference_x_px, v + self.reference_y_px

    def _offsets(self, x_px: npt.ArrayLike, y_px: npt.ArrayLike) -> tuple[FloatArray, FloatArray]:
        return (np.asarray(x_px, dtype=np.float64) - self.reference_x_px,
                np.asarray(y_px, dtype=np.float64) - self.reference_y_px)

    @property
    def centre_px(self) -> tuple[float, float]:
        """The middle of the frame in picture pixels."""
        return (self.width_px - 1) / 2, (self.height_px - 1) / 2

    @property
    def ra_deg(self) -> float:
        """Right ascension of the middle of the frame, degrees."""
        return rounded(float(self.to_sky(*self.centre_px)[0]), _ANGLE_DECIMALS) % 360

    @property
    def dec_deg(self) -> float:
        """Declination of the middle of the frame, degrees."""
        return rounded(float(self.to_sky(*self.centre_px)[1]), _ANGLE_DECIMALS)

    @property
    def local_cd(self) -> Matrix:
        """cd at the middle of the frame on the plane that touches the sky there, degrees per pixel."""
        x, y = self.centre_px
        ra, dec = self.to_sky([x - 0.5, x + 0.5, x, x], [y, y, y - 0.5, y + 0.5])
        xi, eta = tangent_plane.to_plane(ra, dec, self.ra_deg, self.dec_deg)
        return ((float(xi[1] - xi[0]), float(xi[3] - xi[2])), (float(eta[1] - eta[0]), float(eta[3] - eta[2])))

    @property
    def scale_arcsec_px(self) -> float:
        """Side of a square pixel that covers the same sky as the one in the middle, arcseconds."""
        return rounded(3600 * float(np.sqrt(abs(np.linalg.det(np.array(self.local_cd))))), _SCALE_DECIMALS)

    @property
    def rotation_deg(self) -> float:
        """Position angle of the picture's up in its middle: degrees from north through east, in [0, 360)."""
        (_, xi_down), (_, eta_down) = self.local_cd
        return rounded(float(np.degrees(np.arctan2(-xi_down, -eta_down))) % 360, _TURN_DECIMALS) % 360

    @property
    def mirrored(self) -> bool:
        """Whether the picture shows the sky as in a mirror: with north up, east is to the right."""
        (a, b), (c, d) = self.cd
        return a * d - b * c < 0

    @property
    def field_deg(self) -> tuple[float, float]:
        """Width and height of the frame through its middle, outer pixel edges included, degrees."""
        middle_x, middle_y = self.centre_px
        return (self._span_deg([-0.5, self.width_px - 0.5], [middle_y] * 2),
                self._span_deg([middle_x] * 2, [-0.5, self.height_px - 0.5]))

    def _span_deg(self, x_px: list[float], y_px: list[float]) -> float:
        ra, dec = self.to_sky(x_px, y_px)
        return rounded(float(separation_deg(ra[1], dec[1], ra[0], dec[0])), _ANGLE_DECIMALS)

    @property
    def is_sure_of_corners(self) -> bool:
        """Whether the corners of the frame may be relied on: to a pixel of the picture as the solver looked at it in fields below
        5 degrees, to three in wider ones. What was read, not fitted, is taken at its word."""
        if self.corner_arcsec is None:
            return True
        return self.corner_arcsec <= self.corner_limit_px * self.scale_arcsec_px

    @property
    def corner_limit_px(self) -> float:
        """How far off a corner may be, picture pixels."""
        looked_at = max(1.0, max(self.width_px, self.height_px) / LOOKED_AT_PX)
        return looked_at * (NARROW_CORNER_PX if max(self.field_deg) < NARROW_DEG else WIDE_CORNER_PX)

    def with_frame(self, width_px: int, height_px: int) -> "Solution":
        """The same plane with another frame size; pixels keep their numbers."""
        return replace(self, width_px=width_px, height_px=height_px)
