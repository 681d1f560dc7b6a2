"""Light in proportion -> light as the eye likes it.

The automatic stretch, from each channel's own numbers and nothing else, so that the same file always looks the same:

1. *sky* is the median of the channel, *noise* is 1.4826 × the median absolute deviation from it (the standard
   deviation, were the noise Gaussian). Most pixels of a deep-sky frame are sky, so neither is moved by the object.
2. `black` = sky − 2.8 noise is drawn black: two or three pixels in a thousand of pure sky.
3. `white`, the value that all but a 20,000th of the pixels stay under, is drawn white; the cores of the brightest
   stars are beyond it anyway.
4. In between a *midtone transfer*, the one rational function with f(0) = 0, f(1) = 1 and f(m) = ½,
   f(x) = (m − 1)·x / ((2m − 1)·x − m), with m such that the sky comes out at 0.18: dark, with the faint parts of a
   galaxy well above it.

Statistics are taken over at most some 2 million pixels, every n-th column and row; of a Bayer mosaic over the samples
as they were taken.
Unlinked (each channel by its own numbers) gives a neutral sky, which is what raw colour needs; `linked` uses the mean
of the channels' numbers and keeps a calibrated colour balance.
"""

from collections.abc import Mapping

import numpy as np
from msgspec import Struct
from msgspec.structs import fields
from numpy.typing import NDArray

from sitegen.pictures.records import PictureProblem

SAMPLED_PIXELS = 2_000_000
GAUSSIAN_SIGMA_PER_MAD = 1.4826  # 1 / the normal distribution's third quartile

Samples = NDArray[np.float32]
Points = tuple[tuple[float, float, float], ...]  # black, white and midtone of each channel


class Stretch(Struct, frozen=True):
    """What an author may steer. `black`: noise widths from the sky to what is drawn black (−2.8: below the sky);
    `white`: share of the pixels below what is drawn white; `midtone`: brightness, 0 to 1, at which the sky is drawn;
    `linked`: 1 for one stretch for all channels, 0 for each its own."""

    black: float = -2.8
    white: float = 0.99995
    midtone: float = 0.18
    linked: float = 0.0


LIMITS = {"black": (-100.0, 100.0), "white": (0.5, 1.0), "midtone": (0.001, 0.9), "linked": (0.0, 1.0)}


def stretch_of(wishes: Mapping[str, float]) -> Stretch:
    """PictureProblem where a key is unknown or a value out of its range."""
    known = [field.name for field in fields(Stretch)]
    for key, value in wishes.items():
        if key not in known:
            raise PictureProblem(f"stretch has no '{key}' (known: {', '.join(known)})")
        low, high = LIMITS[key]
        if not low <= value <= high:
            raise PictureProblem(f"stretch: {key} {value:g} is out of range ({low:g} to {high:g})")
    return Stretch(**wishes)


def measured(channels: list[Samples], wishes: Stretch) -> Points:
    """How each channel is to be drawn, from a sample of its values (arrays of any shape)."""
    numbers = np.array([_numbers(channel.ravel(), wishes.white) for channel in channels], dtype=float)
    if wishes.linked:
        numbers[:] = numbers.mean(axis=0)
    return tuple(_point(sky, noise, white, wishes) for sky, noise, white in numbers.tolist())


def drawn(linear: Samples, points: Points) -> NDArray[np.uint16]:
    """(rows, width, channels) in the unit that was measured -> the same for the screen, 0 to 65535."""
    black, white, midtone = (np.array(column, np.float32) for column in zip(*points, strict=True))
    unit = np.clip((linear - black) / (white - black), np.float32(0), np.float32(1))
    unit = (midtone - 1) * unit / ((2 * midtone - 1) * unit - midtone)
    return np.asarray(np.rint(unit * np.float32(65_535)), np.uint16)


def sampling_step(width_px: int, height_px: int) -> int:
    """Every n-th column and row is enough for the statistics; odd, so that it meets every place of a Bayer cell."""
    step = int(np.ceil(np.sqrt(width_px * height_px / SAMPLED_PIXELS)))
    return max(1, step + 1 - step % 2)


def midtone_transfer(midtone: float, value: float) -> float:
    """0 to 1 -> 0 to 1, monotonic, with `midtone` drawn at one half."""
    return (midtone - 1) * value / ((2 * midtone - 1) * value - midtone)


def _numbers(channel: Samples, share_below_white: float) -> tuple[float, float, float]:
    """Sky, noise and white of the pixels that have a value; an exact 0 is the border that registration leaves."""
    values = channel[channel != 0]
    if values.size < channel.size // 20 or values.size == 0:
        values = channel
    sky = float(np.median(values))
    noise = GAUSSIAN_SIGMA_PER_MAD * float(np.median(np.abs(values - sky)))
    return sky, noise, float(np.quantile(values, share_below_white))


def _point(sky: float, noise: float, white: float, wishes: Stretch) -> tuple[float, float, float]:
    black = sky + wishes.black * noise
    white = max(white, black + max(noise, abs(black) * 1e-6, 1e-30))
    level = min(max((sky - black) / (white - black), 1e-6), 1 - 1e-6)
    return black, white, midtone_transfer(wishes.midtone, level)
