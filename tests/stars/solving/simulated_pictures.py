"""Pictures of the real sky that never were taken: real star places (as the catalogue has them, to
its end), everything else that befalls a picture drawn by lot from a seed.

A picture is rendered in linear counts (stars, gaps, decoys, fainter stars, a nebula, a sky gradient, noise, a full
well), bent by a lens, cropped off its axis, mirrored half of the time, stretched, and saved and read as a real JPEG.
"""

from dataclasses import dataclass, replace
from io import BytesIO

import numpy as np
import numpy.typing as npt
from PIL import Image

from sitegen.catalogue.star_field import GAIA_FAINTEST, StarField, stars_to_solve
from sitegen.stars.solving.scene import SolvePrior
from sitegen.stars.solving.tangent_plane import to_plane, to_sky

FULL_WELL = 50_000.0
FAINTER_MAGNITUDES = 3.5
COUNTS_PER_MAGNITUDE = 10**0.38
WIDE_FROM_DEG = 24.0
WIDE_BEND = 0.02
"""Photographic lenses are sold with distortions of 1 to 2 % in the corner: common practice, no source."""

PIXELS_A_STAR = 400
"""In wide pictures, of the catalogue: 20 times the area of a star of 4 px, about what fields of 14 to 20 degrees show."""

RADIUS = {"gnomonic": np.tan, "stereographic": lambda angle: 2 * np.tan(angle / 2), "equidistant": lambda angle: angle,
          "equal-area": lambda angle: 2 * np.sin(angle / 2)}
"""Of the zenithal projections, for an angle from the axis, both in radians (Calabretta & Greisen 2002, section 5.1)."""


@dataclass(frozen=True)
class Lens:
    """Truth of one picture: the pixel it shows any place at."""

    axis_ra_deg: float
    axis_dec_deg: float
    axis_x_px: float
    axis_y_px: float
    scale_deg: float
    up_deg: float
    mirrored: bool
    bend: float
    projection: str = "gnomonic"

    def pixel(self, ra_deg: npt.ArrayLike, dec_deg: npt.ArrayLike) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
        """Projected about the axis, turned, bent in proportion to the squared distance, mirrored last."""
        xi, eta = self._projected(*to_plane(ra_deg, dec_deg, self.axis_ra_deg, self.axis_dec_deg))
        up = np.radians(self.up_deg)
        right = -xi * np.cos(up) + eta * np.sin(up)
        down = -xi * np.sin(up) - eta * np.cos(up)
        x, y = right / self.scale_deg, down / self.scale_deg
        bend = 1 + self.bend * (x**2 + y**2)
        return self.axis_x_px + x * bend * (-1 if self.mirrored else 1), self.axis_y_px + y * bend

    def _projected(self, xi_deg: npt.NDArray[np.float64],
                   eta_deg: npt.NDArray[np.float64]) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
        if self.projection == "gnomonic":
            return xi_deg, eta_deg
        gnomonic = np.radians(np.maximum(np.hypot(xi_deg, eta_deg), 1e-9))
        share = RADIUS[self.projection](np.arctan(gnomonic)) / gnomonic
        return xi_deg * share, eta_deg * share


@dataclass(frozen=True)
class Picture:
    """A finished picture, the truth about it, and what its diary would say."""

    pixels: npt.NDArray[np.uint8]
    lens: Lens
    prior: SolvePrior
    field_deg: float
    in_frame: int

    @property
    def frame(self) -> tuple[int, int]:
        """Width and height in pixels."""
        return self.pixels.shape[1], self.pixels.shape[0]

    def error_px(self, solution: object, margin: float = 0.1) -> float:
        """Largest distance, over the middle and four places so near the corners, between solution and truth, pixels."""
        width, height = self.frame
        x = np.array([0.5, margin, 1 - margin, margin, 1 - margin]) * width
        y = np.array([0.5, margin, margin, 1 - margin, 1 - margin]) * height
        true_x, true_y = self.lens.pixel(*solution.to_sky(x, y))
        return float(np.max(np.hypot(true_x - x, true_y - y)))


def simulated_picture(seed: int, field_deg: float, knots: bool = False) -> Picture:
    """The picture of a seed: longer side field_deg after cropping. `knots`: with 40 to 120 compact bright knots of a nebula."""
    luck = np.random.default_rng(seed)
    width, height = int(luck.integers(1000, 1500)), int(luck.integers(700, 1000))
    lens = _lens(luck, width, height, field_deg / width)
    lens = _wide(np.random.default_rng(seed + 2_000_000), lens, width, height, field_deg) if field_deg >= WIDE_FROM_DEG else lens
    ra, dec = _middle(lens, width, height)
    near = stars_to_solve(ra, dec, 0.8 * field_deg)
    near = _as_deep(near, width * height * np.pi * 0.8**2 * width / height) if field_deg >= WIDE_FROM_DEG else near
    stars = _stars(luck, lens, near, width, height)
    nebula = _knots(np.random.default_rng(seed + 1_000_000), width, height) if knots else 0.0
    linear = _rendered(luck, *stars, depth(near), width, height, nebula)
    return Picture(_finished(luck, linear), lens, _prior(luck, ra, dec, lens, field_deg), field_deg,
                   _count_in_frame(lens, near, width, height))


def _lens(luck: np.random.Generator, width: int, height: int, scale_deg: float) -> Lens:
    ra, dec = luck.uniform(0, 360), np.degrees(np.arcsin(luck.uniform(-1, 1)))
    axis_x, axis_y = luck.uniform(0.35, 0.65) * width, luck.uniform(0.35, 0.65) * height
    corner = np.hypot(width, height) / 2
    return Lens(float(ra), float(dec), float(axis_x), float(axis_y), scale_deg, float(luck.uniform(0, 360)),
                bool(luck.random() < 0.5), float(luck.uniform(-0.002, 0.002) / corner**2))


def _as_deep(near: StarField, circle_px: float) -> StarField:
    """The brightest stars: as many as a wide picture's short exposure shows apart, one in so many pixels."""
    count = int(circle_px / PIXELS_A_STAR)
    return StarField(*(getattr(near, name)[:count] for name in StarField.__struct_fields__))


def _wide(luck: np.random.Generator, lens: Lens, width: int, height: int, field_deg: float) -> Lens:
    """The same camera behind a lens of any zenithal projection, bent by up to WIDE_BEND in the corner."""
    projection = str(luck.choice(list(RADIUS)))
    scale_deg = float(np.degrees(2 * RADIUS[projection](np.radians(field_deg / 2)) / width))
    bend = float(luck.uniform(-WIDE_BEND, WIDE_BEND) / (np.hypot(width, height) / 2) ** 2)
    return replace(lens, projection=projection, scale_deg=scale_deg, bend=bend)


def _middle(lens: Lens, width: int, height: int) -> tuple[float, float]:
    """Sky place of the frame's middle; the bend left out."""
    x, y = (width / 2 - lens.axis_x_px) * (-1 if lens.mirrored else 1), height / 2 - lens.axis_y_px
    up = np.radians(lens.up_deg)
    xi = (-x * np.cos(up) - y * np.sin(up)) * lens.scale_deg
    eta = (x * np.sin(up) - y * np.cos(up)) * lens.scale_deg
    unbent = _gnomonic(lens, float(np.radians(np.hypot(xi, eta))))
    ra, dec = to_sky(xi * unbent, eta * unbent, lens.axis_ra_deg, lens.axis_dec_deg)
    return float(ra), float(dec)


def _gnomonic(lens: Lens, radius: float) -> float:
    """By how much the radius of the lens's projection, radians, has to grow for the gnomonic one."""
    if lens.projection == "gnomonic" or radius == 0:
        return 1.0
    angles = np.linspace(0, 1.2, 100_001)
    return float(np.tan(np.interp(radius, RADIUS[lens.projection](angles), angles)) / radius)


def _prior(luck: np.random.Generator, ra: float, dec: float, lens: Lens, field_deg: float) -> SolvePrior:
    """A place off by up to half a field in any direction, and a focal length off by up to 3 %."""
    off, towards = field_deg / 2 * luck.random(), luck.uniform(0, 2 * np.pi)
    said_ra, said_dec = to_sky(off * np.cos(towards), off * np.sin(towards), ra, dec)
    wrong_focal_length = luck.uniform(0.97, 1.03)
    return SolvePrior(float(said_ra), float(said_dec), lens.scale_deg * 3600 * wrong_focal_length,
                      centre_tolerance_deg=0.55 * field_deg)


def _count_in_frame(lens: Lens, near: StarField, width: int, height: int) -> int:
    x, y = lens.pixel(near.ra_deg, near.dec_deg)
    return int(np.sum((x >= 0) & (x < width) & (y >= 0) & (y < height)))


def depth(near: StarField) -> float:
    """Where the catalogue of a field ends: a picture goes on for FAINTER_MAGNITUDES from there."""
    if len(near) == 0:
        return GAIA_FAINTEST
    deepest = float(np.percentile(near.magnitude, 90))
    return deepest if near.magnitude[-1] < GAIA_FAINTEST - 0.5 else max(deepest, GAIA_FAINTEST)


def _stars(luck: np.random.Generator, lens: Lens, near: StarField, width: int,
           height: int) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64], npt.NDArray[np.float64]]:
    """x, y, magnitude of what shines: catalogue stars but for the missing, decoys as bright as they, and fainter stars."""
    x, y = lens.pixel(near.ra_deg, near.dec_deg)
    there = luck.random(len(x)) >= luck.uniform(0.05, 0.60)
    seen = near.magnitude[there] + luck.normal(0, 0.4, there.sum())
    decoys = int(luck.uniform(0.05, 0.6) * len(x)) + 1
    end = depth(near)
    decoy_magnitudes = luck.choice(near.magnitude, decoys) if len(x) else np.full(decoys, end - 0.5)
    fainter = COUNTS_PER_MAGNITUDE**FAINTER_MAGNITUDES
    faint = min(int(max(len(x), 5) * fainter), 4000)
    faint_magnitudes = end + np.log(luck.uniform(1, fainter, faint)) / np.log(COUNTS_PER_MAGNITUDE)
    others = decoys + faint
    return (np.concatenate([x[there], luck.uniform(0, width, others)]),
            np.concatenate([y[there], luck.uniform(0, height, others)]),
            np.concatenate([seen, decoy_magnitudes, faint_magnitudes]))


def _rendered(luck: np.random.Generator, x: npt.NDArray[np.float64], y: npt.NDArray[np.float64],
              magnitude: npt.NDArray[np.float64], end: float, width: int, height: int,
              nebula: npt.NDArray[np.float64] | float) -> npt.NDArray[np.float64]:
    """Linear counts: Moffat stars on a sloping sky with a nebula, shot noise, and a full well."""
    picture = _sky(luck, width, height) + nebula
    fwhm, zero_point = luck.uniform(2.0, 4.0), 10 ** (0.4 * (end + 3.5)) * luck.uniform(150, 600)
    shape = (fwhm / 2) ** 2 / (2 ** (1 / 2.5) - 1)
    for column, row, brightness in zip(x, y, zero_point * 10 ** (-0.4 * magnitude), strict=True):
        half = int(np.clip(6 + 6 * np.log10(max(brightness / 1e4, 1)), 6, 40))
        left, top = round(column) - half, round(row) - half
        columns = np.arange(max(left, 0), min(left + 2 * half + 1, width))
        rows = np.arange(max(top, 0), min(top + 2 * half + 1, height))
        distance = (columns[None, :] - column) ** 2 + (rows[:, None] - row) ** 2
        picture[rows[0] if len(rows) else 0: rows[-1] + 1 if len(rows) else 0,
                columns[0] if len(columns) else 0: columns[-1] + 1 if len(columns) else 0] += (
            brightness * 1.5 / (np.pi * shape) * (1 + distance / shape) ** -2.5)
    return np.clip(picture + luck.normal(0, 1, picture.shape) * np.sqrt(picture), 0, FULL_WELL)


def _sky(luck: np.random.Generator, width: int, height: int) -> npt.NDArray[np.float64]:
    down, across = np.mgrid[0:height, 0:width] / float(max(width, height))
    slope = 1 + luck.uniform(-0.3, 0.3) * across + luck.uniform(-0.3, 0.3) * down
    middle, size = luck.uniform(0.2, 0.6, 2), luck.uniform(0.03, 0.2)
    nebula = luck.uniform(0, 3) * np.exp(-((across - middle[0]) ** 2 + (down - middle[1]) ** 2) / (2 * size**2))
    return 400 * (slope + nebula)


def _knots(luck: np.random.Generator, width: int, height: int) -> npt.NDArray[np.float64]:
    """Gaussian knots about one place: FWHM 6 to 21 px, peaks of 300 to 20,000 counts, up to twice as long as wide."""
    down, across = np.mgrid[0:height, 0:width].astype(np.float32)
    middle = luck.uniform(0.3, 0.7, 2) * [width, height]
    nebula = np.zeros((height, width))
    for _ in range(int(luck.integers(40, 120))):
        x, y = luck.normal(middle, 0.15 * width)
        size, share, turn = luck.uniform(2.5, 9.0), luck.uniform(0.5, 1.0), luck.uniform(0, np.pi)
        half = int(5 * size)
        part = (slice(max(int(y) - half, 0), max(int(y) + half, 0)), slice(max(int(x) - half, 0), max(int(x) + half, 0)))
        u = (across[part] - x) * np.cos(turn) + (down[part] - y) * np.sin(turn)
        v = (down[part] - y) * np.cos(turn) - (across[part] - x) * np.sin(turn)
        nebula[part] += 10 ** luck.uniform(2.5, 4.3) * np.exp(-(u**2 + (v / share) ** 2) / (2 * size**2))
    return nebula


def _finished(luck: np.random.Generator, linear: npt.NDArray[np.float64]) -> npt.NDArray[np.uint8]:
    """Black point, asinh stretch of random strength, three tinted colours, JPEG."""
    black = np.percentile(linear, luck.uniform(0.5, 20))
    strength = 10 ** luck.uniform(1.0, 3.0)
    stretched = np.arcsinh(np.clip(linear - black, 0, None) / FULL_WELL * strength) / np.arcsinh(strength)
    tint = luck.uniform(0.8, 1.0, 3)
    colours = np.rint(255 * np.clip(stretched[:, :, None] * tint, 0, 1)).astype(np.uint8)
    saved = BytesIO()
    Image.fromarray(colours).save(saved, "JPEG", quality=int(luck.integers(75, 95)))
    return np.asarray(Image.open(saved))
