"""Filters are told apart in every lamp, by colour and by a second sign."""

import math
import re
from itertools import combinations, pairwise

import pytest

from sitegen.charts.filter_colour import Part, colour_of, hue_deg, passbands_of, red_of, sign_of
from sitegen.diary.rig import Filter
from tests.conftest import ROOT

LOOK = (ROOT / "themes/default/look/look.css").read_text("utf-8")
BANDS = {
    "L": "", "B": "450-broad", "G": "535-broad", "R": "640-broad", "OIII": "501-line", "Ha": "656-line", "SII": "672-doublet",
}  # fmt: skip
LEAST_CONTRAST = 3.0
"""WCAG 2.2, success criterion 1.4.11: what is needed to understand a drawing has 3 : 1 to what lies beside it."""
LEAST_DIFFERENCE = 15.0
"""ΔE of CIE 1976 between two filters, where their signs are alike: what this project asks of itself."""
# linear sRGB as people without the middle or the long cones see it (Viénot, Brettel and Mollon 1999, Color Res. Appl. 24, 243;
# coefficients from memory)
SIGHT = {
    "all cones": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
    "no long cones": ((0.11238, 0.88762, 0.0), (0.11238, 0.88762, 0.0), (0.00401, -0.00401, 1.0)),
    "no middle cones": ((0.29275, 0.70725, 0.0), (0.29275, 0.70725, 0.0), (-0.02234, 0.02234, 1.0)),
}
Rgb = tuple[float, float, float]


def linear(colour: str) -> Rgb:
    """IEC 61966-2-1."""
    values = [byte / 255 for byte in bytes.fromhex(colour[1:])]
    red, green, blue = (value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4 for value in values)
    return red, green, blue


def luminance(colour: str) -> float:
    red, green, blue = linear(colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(first: str, second: str) -> float:
    brighter, darker = sorted((luminance(first), luminance(second)), reverse=True)
    return (brighter + 0.05) / (darker + 0.05)


def seen(colour: str, sight: str) -> Rgb:
    """CIE L*a*b* (1976, D65) of what is left of a colour."""
    rgb = [max(0.0, sum(weight * value for weight, value in zip(row, linear(colour), strict=True))) for row in SIGHT[sight]]
    to_xyz = ((0.4124, 0.3576, 0.1805), (0.2126, 0.7152, 0.0722), (0.0193, 0.1192, 0.9505))
    xyz = [sum(weight * value for weight, value in zip(row, rgb, strict=True)) for row in to_xyz]
    shares = [value / white for value, white in zip(xyz, (0.9505, 1.0, 1.089), strict=True)]
    x, y, z = (math.cbrt(share) if share > 0.008856 else 7.787 * share + 16 / 116 for share in shares)
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def grounds(name: str) -> set[str]:
    return set(re.findall(rf"--{name}: (#[0-9a-f]{{6}})", LOOK))


@pytest.mark.parametrize("band", BANDS.values(), ids=BANDS)
def test_every_filter_stands_out_on_every_night_ground(band: str) -> None:
    """On the ground of a lane and on the mat, of paper and dusk; the red lamp's on its own."""
    dark = {ground for name in ("bed", "night") for ground in grounds(name)}
    assert len(dark) == 6
    red = {ground for ground in dark if ground.endswith("0000")}
    assert min(contrast(colour_of(band), ground) for ground in dark - red) >= LEAST_CONTRAST
    assert min(contrast(red_of(band), ground) for ground in red) >= LEAST_CONTRAST


def test_the_red_lamp_has_no_other_channel() -> None:
    assert {red_of(band)[3:] for band in BANDS.values()} == {"0000"}


ONLY_BY_SIGN = {"no middle cones": {("G", "R")}}
"""Pairs that some eyes cannot part by colour: their signs do."""


@pytest.mark.parametrize("sight", SIGHT)
def test_any_two_filters_differ_in_colour(sight: str) -> None:
    """Whatever cones the reader has, but for one pair."""
    alike = {
        (one, other)
        for (one, first), (other, second) in combinations(BANDS.items(), 2)
        if math.dist(seen(colour_of(first), sight), seen(colour_of(second), sight)) < LEAST_DIFFERENCE
    }
    assert alike == ONLY_BY_SIGN.get(sight, set())


def shape(band: str) -> list[tuple[float, float]]:
    """Of a sign: where its pieces lie."""
    return [(part.y, part.height) for part in sign_of((band,) if band else (), 0.0, 1.0)]


def test_no_two_filters_have_one_sign() -> None:
    """The red lamp tells them by it alone."""
    assert len({tuple(shape(band)) for band in BANDS.values()}) == len(BANDS)


def test_a_sign_is_the_passband_upright() -> None:
    """Red at the top, blue at the foot, nothing outside the mark; luminance fills it; two lines are two bars."""
    tops = [shape(BANDS[name])[0][0] for name in ("SII", "Ha", "G", "OIII")]
    assert tops == sorted(tops)
    assert shape(BANDS["R"])[0][0] == 0.0
    assert shape(BANDS["B"])[-1][0] + shape(BANDS["B"])[-1][1] == pytest.approx(1.0)
    assert shape("") == [(0.0, 1.0)]
    assert len(sign_of(("656-line", "501-line"), 0.0, 1.0)) == 2
    for band in BANDS.values():
        for part in sign_of((band,) if band else (), 10.0, 20.0):
            assert 10.0 <= part.y <= part.y + part.height <= 30.0


def test_a_filter_names_its_passbands() -> None:
    """Broad, a line, the doublet of sulphur, two lines at once; wide open or unknown has none."""
    assert passbands_of(Filter("R", "Red", "broadband", (640.0,), 100.0)) == ("640-broad",)
    assert passbands_of(Filter("Ha", "H", "narrowband", (656.3,), 5.0)) == ("656-line",)
    assert passbands_of(Filter("SII", "S", "narrowband", (672.4,), 5.0)) == ("672-doublet",)
    assert passbands_of(Filter("HO", "Both", "dual-band", (656.3, 500.7), 7.0)) == ("656-line", "501-line")
    assert passbands_of(Filter("L", "Luminance", "broadband", (550.0,), 300.0)) == ()
    assert passbands_of(Filter("X", "Unknown", "broadband")) == ()


def test_hues_stand_in_the_order_of_the_rainbow() -> None:
    """From the red end through green to violet the hue only rises, and does not stand still among the reds."""
    hues = [hue_deg(nm) for nm in (690, 672, 656, 640, 600, 550, 500.7, 450, 410)]
    assert all(later - earlier > 10 for earlier, later in pairwise(hues))


@pytest.mark.parametrize("band", ["300-broad", "400-line", "850-broad", "1000-line"])
def test_light_beyond_the_eye_has_a_colour_and_a_sign_too(band: str) -> None:
    """As deep violet and deep red."""
    assert len(bytes.fromhex(colour_of(band)[1:])) == 3
    assert all(0.0 <= part.y <= part.y + part.height <= 1.0 for part in sign_of((band,), 0.0, 1.0))
    assert isinstance(sign_of((band,), 0.0, 1.0)[0], Part)
