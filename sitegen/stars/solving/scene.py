"""Scene: the stars of one picture and of its catalogue, brightest first, ready to be laid on one another."""

import numpy as np
import numpy.typing as npt
from msgspec import Struct
from msgspec.structs import replace
from scipy.spatial import cKDTree

from sitegen.sky.separation import separation_deg
from sitegen.stars.solving import tangent_plane
from sitegen.stars.solving.detection import DetectedStars
from sitegen.stars.solving.placements import ComplexArray, Limits
from sitegen.stars.solving.tangent_plane import FloatArray

HIT_TOLERANCE = 0.004
"""Of the diagonal: what the scale's curvature, a lens and two centroids can move a star after a two-star fit."""

_LEAST_HIT_PX = 1.5

WINDOW_DEG = 12.0
"""Diagonal of the middle part in which a wide picture is searched; what is not much wider is searched as a whole."""

NEARLY_ALL = 0.85
LENS_SCALE = 0.03
"""How much more the scale of the middle part can be off, where a crop has the lens's axis elsewhere."""

_DEEPEST = 140
"""Catalogue stars that one frame can be asked for."""

_IN_WIDE_FRAME = 3000


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
        return self.half_diagonal_deg(width_px, height_px)

    def search_radius_deg(self, width_px: int, height_px: int) -> float:
        """Around (ra_deg, dec_deg): how far stars of the picture can be. The catalogue has to reach as far."""
        largest = self.half_diagonal_deg(width_px, height_px) * (1 + self.scale_tolerance)
        return self.middle_tolerance_deg(width_px, height_px) + largest

    def half_diagonal_deg(self, width_px: int, height_px: int) -> float:
        """Half the frame's diagonal in degrees, taken as if the scale were the same all over it."""
        return float(np.hypot(width_px, height_px)) / 2 * self.scale_arcsec_px / 3600


class StarPlaces(Struct, frozen=True):
    """Catalogue stars within reach, brightest first: ICRS degrees, and how many brighter ones lie around each in an area as large
    as the part of the picture that is searched."""

    ra_deg: FloatArray
    dec_deg: FloatArray
    brighter_around: npt.NDArray[np.intp]

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
                      float(self.diagonal_px / 2 * pixel), float(max(HIT_TOLERANCE * self.diagonal_px, _LEAST_HIT_PX) * pixel))

    def stars_on_plane(self, count: int, mirrored: bool) -> ComplexArray:
        """The brightest stars on the stereographic plane about the frame's middle, radians."""
        offsets = as_seen(self.stars[:count], mirrored)
        return _stereographic(offsets * np.radians(self.prior.scale_arcsec_px / 3600))

    def brightest(self, in_frame: int) -> StarPlaces:
        """The catalogue stars of which fewer than so many brighter ones lie around, within a circle as large as the frame:
        everywhere as many, in the Milky Way and far from it."""
        chosen = self.catalogue.brighter_around < in_frame
        places = self.catalogue
        return StarPlaces(places.ra_deg[chosen], places.dec_deg[chosen], places.brighter_around[chosen])

    def part_searched(self) -> "Scene":
        """The scene itself; of a wide one its middle, where any lens shows the sky nearly in its shape."""
        share = _share_searched(self.frame, self.prior)
        if share == 1.0:
            return self
        width, height = (round(share * side) for side in self.frame)
        stars = self.stars[(np.abs(self.stars.real) <= width / 2) & (np.abs(self.stars.imag) <= height / 2)]
        prior = replace(self.prior, scale_tolerance=self.prior.scale_tolerance + LENS_SCALE,
                        centre_tolerance_deg=self.prior.middle_tolerance_deg(*self.frame))
        return replace(self, stars=stars, frame=(width, height), prior=prior)


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
    order = order[: _enough(frame, prior)]
    brightness = np.argsort(-np.asarray(detected.flux), kind="stable")
    middle = (frame[0] - 1) / 2 + 1j * (frame[1] - 1) / 2
    stars = (np.asarray(detected.x_px) + 1j * np.asarray(detected.y_px))[brightness] - middle
    places = StarPlaces(ra[order], dec[order], _brighter_around(ra[order], dec[order], _searched_sr(frame, prior)))
    return Scene(stars, frame, places, prior)


def _brighter_around(ra_deg: FloatArray, dec_deg: FloatArray, area_sr: float) -> npt.NDArray[np.intp]:
    """For each star of a sorted list, how many of those before it lie in the circle of so large an area about it."""
    if len(ra_deg) == 0:
        return np.empty(0, dtype=np.intp)
    tree = cKDTree(tangent_plane.directions(ra_deg, dec_deg))
    pairs = tree.query_pairs(float(np.sqrt(area_sr / np.pi)), output_type="ndarray")
    return np.asarray(np.bincount(pairs.max(axis=1), minlength=len(ra_deg)), dtype=np.intp)


def _enough(frame: tuple[int, int], prior: SolvePrior) -> int:
    """Catalogue stars, the brightest ones, that are worth looking at: a wide field's search reaches over a quarter of the sky."""
    sky_sr = 2 * np.pi * (1 - np.cos(np.radians(min(prior.search_radius_deg(*frame), 180.0))))
    return int(max(_IN_WIDE_FRAME * sky_sr / _frame_sr(frame, prior), _DEEPEST * sky_sr / _searched_sr(frame, prior)))


def _frame_sr(frame: tuple[int, int], prior: SolvePrior) -> float:
    return float(frame[0] * frame[1] * np.radians(prior.scale_arcsec_px / 3600) ** 2)


def _searched_sr(frame: tuple[int, int], prior: SolvePrior) -> float:
    return float(_frame_sr(frame, prior) * _share_searched(frame, prior) ** 2)


def _share_searched(frame: tuple[int, int], prior: SolvePrior) -> float:
    """Of each side: all of it, but for wide pictures."""
    share = WINDOW_DEG / (2 * prior.half_diagonal_deg(*frame))
    return share if share < NEARLY_ALL else 1.0
