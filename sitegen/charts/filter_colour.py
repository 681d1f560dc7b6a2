"""A filter's own colour and sign, both from its passbands: so that it is told apart in every lamp, by every eye.

The colour is for night ground. Its hue follows the wavelength through OKLCH (B. Ottosson, 2020); beyond 625 nm, where the colour
of light hardly changes any more, the hue keeps turning, so that R, Hα and [S II] part. The sign is the passband standing upright:
700 nm at the top of a mark, 400 nm at its foot, filled where light comes through.
"""

import math
from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct

from sitegen.diary.rig import Filter

# hue by wavelength in nm, linear between: the order of the rainbow, measured apart on night ground for three kinds of sight
HUES = ((400, 305.0), (450, 270.0), (500, 195.0), (535, 145.0), (590, 75.0), (625, 47.0), (656, 12.0), (673, -20.0), (700, -35.0))
NO_HUE = "#e4dfd3"
"""Luminance, clear, and what nobody knows."""
TOP_NM, FOOT_NM = 700.0, 400.0
WIDE_NM = 200.0
DOUBLET_NM = (668.0, 678.0)
"""The two lines of [S II], 671.6 and 673.1 nm, come through one filter."""
BROAD, LINE, DOUBLET = "broad", "line", "doublet"
HEIGHTS = {BROAD: 0.42, LINE: 0.2, DOUBLET: 0.14}
"""Of a mark's height."""
LIGHTER = {BROAD: 0.0, LINE: -0.06, DOUBLET: 0.16}
RED_LEAST, RED_MOST = 190, 255
"""The red lamp tells filters by their sign; its marks keep 3 : 1 to black (WCAG 2.2, 1.4.11)."""


class Part(Struct, frozen=True):
    """One piece of a mark: the passband that colours it, '' for no hue, and where it lies from the mark's top."""

    band: str
    y: float
    height: float


def passbands_of(rig_filter: Filter) -> tuple[str, ...]:
    """Of each passband its centre in whole nm and its kind: '656-line'. None for a filter that is wide open, or whose centre
    nobody knows: it shows no hue."""
    if rig_filter.width_nm is not None and rig_filter.width_nm > WIDE_NM:
        return ()
    return tuple(f"{round(centre)}-{_kind(rig_filter, centre)}" for centre in rig_filter.centre_nm)


def _kind(rig_filter: Filter, centre_nm: float) -> str:
    if rig_filter.kind == "broadband":
        return BROAD
    return DOUBLET if DOUBLET_NM[0] <= centre_nm <= DOUBLET_NM[1] else LINE


def centre_of(band: str) -> int:
    """In nm."""
    return int(band.partition("-")[0])


def sign_of(bands: Sequence[str], y: float, height: float) -> tuple[Part, ...]:
    """A mark of that height as the filter's passbands fill it; the whole mark where it has none."""
    parts = [part for band in bands for part in _pieces(band)] or [Part("", 0.0, 1.0)]
    return tuple(Part(part.band, round(y + part.y * height, 3), round(part.height * height, 3)) for part in parts)


def _pieces(band: str) -> list[Part]:
    centre, kind = centre_of(band), band.partition("-")[2]
    tall = HEIGHTS[kind]
    whole = 2.6 * tall if kind == DOUBLET else tall
    top = min(max((TOP_NM - centre) / (TOP_NM - FOOT_NM) - whole / 2, 0.0), 1.0 - whole)
    return [Part(band, top, tall), Part(band, top + 1.6 * tall, tall)] if kind == DOUBLET else [Part(band, top, tall)]


def colour_of(band: str) -> str:
    """'#rrggbb' on night ground; '' has no hue."""
    if not band:
        return NO_HUE
    centre, kind = centre_of(band), band.partition("-")[2]
    lightness = 0.64 + 0.10 * math.exp(-(((centre - 545) / 55) ** 2)) + LIGHTER[kind]
    hue = math.radians(-15.0 if kind == DOUBLET else hue_deg(centre))
    return _in_srgb(lightness, 0.14 if kind == BROAD else 0.17, hue)


def red_of(band: str) -> str:
    """The same filter in the red lamp, which has no other channel."""
    red, green, blue = bytes.fromhex(colour_of(band)[1:])
    bright = (0.2126 * red + 0.7152 * green + 0.0722 * blue) / 255
    return f"#{round(min(RED_LEAST + (RED_MOST - RED_LEAST) * bright, RED_MOST)):02x}0000"


def hue_deg(wavelength_nm: float) -> float:
    """OKLCH hue; light beyond the ends takes the hue there."""
    nm = min(max(wavelength_nm, HUES[0][0]), HUES[-1][0])
    for (before, start), (after, end) in pairwise(HUES):
        if nm <= after:
            return start + (end - start) * (nm - before) / (after - before)
    return HUES[-1][1]


def _in_srgb(lightness: float, chroma: float, hue: float) -> str:
    """Chroma is lowered until the colour fits sRGB."""
    while True:
        rgb = _rgb_of_oklab(lightness, chroma * math.cos(hue), chroma * math.sin(hue))
        if chroma <= 0.0 or all(-1e-4 <= channel <= 1.0001 for channel in rgb):
            break
        chroma -= 0.005
    return "#" + "".join(f"{round(255 * _gamma(min(max(channel, 0.0), 1.0))):02x}" for channel in rgb)


def _rgb_of_oklab(lightness: float, a: float, b: float) -> tuple[float, float, float]:
    long = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3
    middle = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3
    short = (lightness - 0.0894841775 * a - 1.2914855480 * b) ** 3
    return (
        4.0767416621 * long - 3.3077115913 * middle + 0.2309699292 * short,
        -1.2684380046 * long + 2.6097574011 * middle - 0.3413193965 * short,
        -0.0041960863 * long - 0.7034186147 * middle + 1.7076147010 * short,
    )


def _gamma(channel: float) -> float:
    return 12.92 * channel if channel <= 0.0031308 else 1.055 * channel ** (1 / 2.4) - 0.055
