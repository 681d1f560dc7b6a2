"""Light in proportion -> light as the eye likes it: the asinh curve of Lupton et al. 2004 (PASP 116, 133).

Faint light is drawn in proportion, bright light by its logarithm, with no step between the two. Two values set it:

1. `black_share`: so much of the sky is drawn black. The sky is what remains of the values when stars and objects are masked: all
   that lie farther above the median than four times the way from the median down to the lower quartile, round after round. (The
   four is our own: in Gaussian noise it masks 4 in 1000 of the sky.)
2. `sky_brightness`: the sky's median is drawn with it, 0 black to 1 white, as the screen counts (sRGB).

White is the value above which a 5000th of the pixels lie, the inner parts of bright stars. Where even a straight line from black
to white would draw the sky too bright (a nebula from edge to edge), the curve is bent the other way: the inverse of an asinh.

`colours_together` is the paper's way with colours: one curve, for the mean of the three, and the pixel's colours keep their
proportions; where one would exceed white, all three are divided by it, so that bright stars keep their colour. Otherwise each
colour has a curve of its own, which makes the sky grey: what colours of unknown balance need, above all a sensor's raw ones.

Statistics are taken over at most some 2 million pixels, every n-th column and row; of a Bayer mosaic over the samples as taken.
They are values of the picture, picked and not interpolated; what is computed from them is rounded, and pixels are drawn by a
table with sums, products, quotients and roots alone, which every processor gives alike (its own asinh differs in the last bit).
"""

from collections.abc import Mapping
from functools import lru_cache
from math import asinh, exp, log, sinh

import numpy as np
from msgspec import Struct
from msgspec.structs import fields
from numpy.typing import NDArray

from sitegen.pictures.records import PictureProblem
from sitegen.stars.digits import significant

SAMPLED_PIXELS = 2_000_000
MASKED_ABOVE = 4  # times the way from median to lower quartile
MASKING_ROUNDS = 10
SHARE_ABOVE_WHITE = 1 / 5000
KNOTS = 16_384  # of the table, evenly spaced in the root of light, as the curve is steep near black
SOFTENING = (1e-9, 1e3)  # from next to a logarithm to next to a straight line
DIGITS = 6

Samples = NDArray[np.float32]


class Stretch(Struct, frozen=True):
    """What an author may steer. `colours_together` is 1 for yes, 0 for no."""

    black_share: float = 0.005
    sky_brightness: float = 0.13
    colours_together: float = 0.0


LIMITS = {"black_share": (0.0, 0.45), "sky_brightness": (0.01, 0.9), "colours_together": (0.0, 1.0)}


class SkyLevels(Struct, frozen=True):
    """Values of one channel, in the unit of the picture: what is drawn black, the sky's median, what is drawn white."""

    black: float
    sky: float
    white: float


class Curve(Struct, frozen=True):
    """asinh(u / `softening`) / asinh(1 / `softening`), or its inverse; u is 0 at `black` and 1 at `black` + `span`."""

    black: float
    span: float
    softening: float
    is_inverse: bool


class Drawing(Struct, frozen=True):
    """A curve for each channel; with `colours_together` the same for all."""

    curves: tuple[Curve, ...]
    colours_together: bool


def stretch_of(wishes: Mapping[str, float]) -> Stretch:
    """PictureProblem where a key is unknown or a value out of its range."""
    keys = [field.name for field in fields(Stretch)]
    for key, value in wishes.items():
        if key not in keys:
            raise PictureProblem(f"stretch has no '{key}' (known: {', '.join(keys)})")
        low, high = LIMITS[key]
        if not low <= value <= high:
            raise PictureProblem(f"stretch: {key} {value:g} is out of range ({low:g} to {high:g})")
    return Stretch(**wishes)


def measured(channels: list[Samples], wishes: Stretch) -> Drawing:
    """How each channel is to be drawn, from a sample of its values (arrays of any shape)."""
    levels = [_levels(channel.ravel(), wishes.black_share) for channel in channels]
    if wishes.colours_together:
        levels = _alike(levels)
    return Drawing(tuple(_curve(level, wishes.sky_brightness) for level in levels), bool(wishes.colours_together))


def drawn(linear: Samples, drawing: Drawing) -> NDArray[np.uint16]:
    """(rows, width, channels) in the unit that was measured -> the same for the screen, 0 to 65535."""
    light = [_light(linear[..., channel], curve) for channel, curve in enumerate(drawing.curves)]
    if drawing.colours_together and len(light) > 1:
        unit = _in_proportion(light, drawing.curves[0])
    else:
        unit = np.stack([_bent(values, curve) for values, curve in zip(light, drawing.curves, strict=True)], axis=-1)
    return np.asarray(np.rint(unit * np.float32(65_535)), np.uint16)


def sampling_step(width_px: int, height_px: int) -> int:
    """Every n-th column and row is enough for the statistics; odd, so that it meets every place of a Bayer cell."""
    step = int(np.ceil(np.sqrt(width_px * height_px / SAMPLED_PIXELS)))
    return max(1, step + 1 - step % 2)


def asinh_curve(light: float, softening: float) -> float:
    """The asinh of Lupton et al. 2004, scaled to give 0 at 0 and 1 at 1."""
    return asinh(light / softening) / asinh(1 / softening)


def inverse_curve(light: float, softening: float) -> float:
    """The light that `asinh_curve` draws so."""
    return softening * sinh(light * asinh(1 / softening))


def softening_for(sky: float, brightness: float) -> float:
    """The softening with which `sky`, 0 to 1, is drawn at `brightness`; the end of `SOFTENING` where none does."""
    low, high = (log(end) for end in SOFTENING)
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if asinh_curve(sky, exp(middle)) > brightness else (low, middle)
    return significant(exp((low + high) / 2), DIGITS)


def _levels(channel: Samples, black_share: float) -> SkyLevels:
    """Of the pixels that have a value; an exact 0 is the border that registration leaves."""
    values = channel[channel != 0]
    if values.size < channel.size // 20 or values.size == 0:
        values = channel
    ordered = np.sort(values)
    count = _sky_count(ordered)
    white = ordered.size - 1 - int(ordered.size * SHARE_ABOVE_WHITE)
    return SkyLevels(float(ordered[int(count * black_share)]), float(ordered[count // 2]), float(ordered[white]))


def _sky_count(ordered: Samples) -> int:
    """How many of the sorted values are sky."""
    count = ordered.size
    for _ in range(MASKING_ROUNDS):
        median, quartile = float(ordered[count // 2]), float(ordered[count // 4])
        count = int(np.searchsorted(ordered, median + MASKED_ABOVE * (median - quartile), side="right"))
    return count


def _alike(levels: list[SkyLevels]) -> list[SkyLevels]:
    """Each colour's own sky, with the mean way down to black and the longest way up to white."""
    down = sum(level.sky - level.black for level in levels) / len(levels)
    up = max(level.white - level.sky for level in levels)
    return [SkyLevels(level.sky - down, level.sky, level.sky + up) for level in levels]


def _curve(levels: SkyLevels, brightness: float) -> Curve:
    """A sky without noise is black itself; a thousandth of white is then drawn with its brightness. A frame of one value is drawn
    black: its span only has to be more than 0."""
    span = significant(max(levels.white - levels.black, abs(levels.black) * 1e-6, 1e-30), DIGITS)
    sky = significant((levels.sky - levels.black) / span, DIGITS) or 0.001
    if sky > brightness:
        return Curve(levels.black, span, softening_for(brightness, sky), is_inverse=True)
    return Curve(levels.black, span, softening_for(sky, brightness), is_inverse=False)


def _light(values: Samples, curve: Curve) -> Samples:
    """0 at black, 1 at white and, above that, more."""
    light: Samples = np.maximum((values - np.float32(curve.black)) / np.float32(curve.span), np.float32(0))
    return light


def _bent(light: Samples, curve: Curve) -> Samples:
    """Light as it is drawn, 0 to 1, from a table of the curve with straight lines between its knots."""
    table, rise = _table(curve.softening, curve.is_inverse)
    place = np.sqrt(np.minimum(light, np.float32(1))) * np.float32(KNOTS)
    knot = place.astype(np.int32)
    return table[knot] + (place - knot.astype(np.float32)) * rise[knot]


@lru_cache(maxsize=3)
def _table(softening: float, is_inverse: bool) -> tuple[Samples, Samples]:
    """The curve at each knot, and its rise to the next."""
    shape = inverse_curve if is_inverse else asinh_curve
    table = np.array([shape((knot / KNOTS) ** 2, softening) for knot in range(KNOTS + 1)], np.float32)
    return table, np.append(np.diff(table), np.float32(0))


def _in_proportion(light: list[Samples], curve: Curve) -> Samples:
    """As Lupton et al. 2004: each colour times f(I) / I, with I their mean, and none more than white."""
    mean = sum(light[1:], light[0]) / np.float32(len(light))
    gain = np.divide(_bent(mean, curve), mean, out=np.zeros_like(mean), where=mean > 0)
    colours = np.stack(light, axis=-1) * gain[..., None]
    kept: Samples = colours / np.maximum(colours.max(axis=-1, keepdims=True), np.float32(1))
    return kept
