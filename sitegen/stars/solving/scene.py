"""Scene: the stars of one picture and of its catalogue, brightest first, ready to be laid on one another."""

import numpy as np
import numpy.typing as npt
from msgspec import Struct

from sitegen.sky.separation import separation_deg
from sitegen.stars.solving import tangent_plane
from sitegen.stars.solving.detection import DetectedStars
from sitegen.stars.solving.placements import ComplexArray, Limits
from sitegen.stars.solving.tangent_plane import FloatArray

HIT_TOLERANCE = 0.004
"""Of the diagonal: what the scale's curvature, a lens and two centroids can move a star after a two-star fit."""


class SolvePrior(Struct, frozen=True):
    """What the diary knows before the picture is looked at.

    ra_deg, dec_deg: where the target is; scale_arcsec_px: nominal, for the picture as it is (resized, binned);
    scale_tolerance: the share by which it may be wrong; centre_tolerance_deg: how far the picture's middle may be
    from the target, half the diagonal where None.
    """

    ra_deg: float
    dec_deg: float
    scale_arcsec_px: float
    scale_tolerance: float = 0.05
    centre_tolerance_deg: float | None = None

    def middle_tolerance_deg(self, width_px: int, height_px: int) -> float:
        """The centre tolerance in degrees, its default filled in."""
        if self.centre_tolerance_deg is not None:
            return self.centre_tolerance_deg
        return self._half_diagonal_deg(width_px, height_px)

    def search_radius_deg(self, width_px: int, height_px: int) -> float:
        """Around (ra_deg, dec_deg): how far stars of the picture can be. The catalogue has to reach as far."""
        largest = self._half_diagonal_deg(width_px, height_px) * (1 + self.scale_tolerance)
        return self.middle_tolerance_deg(width_px, height_px) + largest

    def _half_diagonal_deg(self, width_px: int, height_px: int) -> float:
        return float(np.hypot(width_px, height_px)) / 2 * self.scale_arcsec_px / 3600


class StarPlaces(Struct, frozen=True):
    """Catalogue stars within reach, brightest first: ICRS degrees."""

    ra_deg: FloatArray
    dec_deg: FloatArray

    def __len__(self) -> int:
        return len(self.ra_deg)


class Scene(Struct, frozen=True):
    """One picture before its catalogue. stars: pixel offsets x + iy from the middle of the frame, brightest first;
    frame: width and height in pixels."""

    stars: ComplexArray
    frame: tuple[int, int]
    catalogue: StarPlaces
    prior: SolvePrior

    @property
    def diagonal_px(self) -> float:
        """Length of the frame's diagonal, pixels."""
        return float(np.hypot(*self.frame))

    @property
    def limits(self) -> Limits:
        """What the prior allows, in radians."""
        pixel = np.radians(self.prior.scale_arcsec_px / 3600)
        return Limits(self.prior.scale_tolerance, float(np.radians(self.prior.middle_tolerance_deg(*self.frame))),
                      float(self.diagonal_px / 2 * pixel), float(HIT_TOLERANCE * self.diagonal_px * pixel))

    @property
    def in_frame_share(self) -> float:
        """The part of the catalogue stars within reach that one frame can be expected to show."""
        width, height = self.frame
        circle = np.pi * (self.prior.search_radius_deg(*self.frame) * 3600 / self.prior.scale_arcsec_px) ** 2
        return float(width * height / circle)

    def stars_on_plane(self, count: int, mirrored: bool) -> ComplexArray:
        """The brightest stars on the stereographic plane about the frame's middle, radians."""
        offsets = as_seen(self.stars[:count], mirrored)
        return _stereographic(offsets * np.radians(self.prior.scale_arcsec_px / 3600))

    def catalogue_on_plane(self, count: int) -> ComplexArray:
        """The brightest catalogue stars on the stereographic plane about the prior's place, radians."""
        places = self.catalogue.ra_deg[:count], self.catalogue.dec_deg[:count]
        xi_deg, eta_deg = tangent_plane.to_plane(*places, self.prior.ra_deg, self.prior.dec_deg)
        return _stereographic(np.radians(xi_deg) + 1j * np.radians(eta_deg))


def _stereographic(gnomonic: ComplexArray) -> ComplexArray:
    """Places on the gnomonic plane as places on the stereographic one about the same point, radians."""
    return np.asarray(gnomonic * 2 / (1 + np.sqrt(1 + np.abs(gnomonic) ** 2)))


def as_seen(offsets: ComplexArray, mirrored: bool) -> ComplexArray:
    """Pixel offsets with a mirrored picture's mirroring undone."""
    return np.conj(offsets) if mirrored else offsets


def scene_of(detected: DetectedStars, frame: tuple[int, int], catalogue: tuple[npt.ArrayLike, npt.ArrayLike, npt.ArrayLike],
             prior: SolvePrior) -> Scene:
    """The scene of detected stars and (ra_deg, dec_deg, magnitude) of a catalogue, both sorted, the latter cut to reach."""
    ra, dec, magnitude = (np.asarray(column, dtype=np.float64) for column in catalogue)
    reach = prior.search_radius_deg(*frame)
    apart = separation_deg(ra, dec, prior.ra_deg, prior.dec_deg)
    order = np.argsort(magnitude, kind="stable")
    order = order[apart[order] <= reach]
    brightness = np.argsort(-np.asarray(detected.flux), kind="stable")
    middle = (frame[0] - 1) / 2 + 1j * (frame[1] - 1) / 2
    stars = (np.asarray(detected.x_px) + 1j * np.asarray(detected.y_px))[brightness] - middle
    return Scene(stars, frame, StarPlaces(ra[order], dec[order]), prior)
