"""Twilight and the weight of a sub under it.

The papers were not read: the twilight's table stands in six transcriptions that agree (its paper's abstract was read), the night's
brightness in others. What the papers do not print is computed from their equations by `tests/sky/independent_weight.py`.
"""

from dataclasses import dataclass

from tests.published_values.record import LAST_DIGIT, Given, Published, Table

TWILIGHT = "F. Patat, O. S. Ugolnikov & O. V. Postylyakov 2006, A&A 455, 385, table 1, V, in transcriptions"
PAPERS = (
    f"{TWILIGHT}; F. Patat 2003, A&A 400, 1183; K. Krisciunas & B. E. Schaefer 1991, PASP 103, 1033; "
    "F. Kasten & A. T. Young 1989, Applied Optics 28, 4735"
)
COMPUTED = f"computed a second time from the equations of {PAPERS}"

PARABOLA_V = Given((11.84, 1.518, -0.057), TWILIGHT)
NIGHT_V = Given(21.61, "F. Patat 2003, A&A 400, 1183, in transcriptions")

WHOLE_SKY_MAG = Table(
    {95.0: 11.84, 100.0: 18.005, 103.0: 20.336, 105.0: 21.32},
    1e-9,
    f"worked by hand from {TWILIGHT}, by the Sun's zenith distance",
    "a parabola of the table's digits: exact but for rounding",
)
BRIGHTENING_OVER_21_5 = {
    "bright twilight": Table({-8.0: 5.62, -10.0: 3.50}, 0.006, f"{COMPUTED}, by the Sun's altitude", "two digits kept"),
    "dark twilight": Table(
        {-12.0: 1.846, -13.0: 1.199, -14.0: 0.697, -15.0: 0.366, -16.0: 0.179, -17.0: 0.083, -18.0: 0.0},
        0.0006,
        f"{COMPUTED}, by the Sun's altitude",
        "three digits kept",
    ),
}
"""V magnitudes at a zenith of 21.5."""
BRIGHTENING_OVER_20_5 = Published(1.111, 0.0006, f"{COMPUTED}, at -12 deg over a zenith of 20.5", "three digits kept")
TANGENT_MAG = Published(20.74, 0.005, f"{COMPUTED}, twilight alone at zenith distance 103", "half of the last digit")
TANGENT_SLOPE = Published(0.877, 0.0005, f"{COMPUTED}, its fading there, magnitudes a degree", "half of the last digit")


@dataclass(frozen=True, slots=True)
class Weighed:
    """A sub's sky and what follows from it; `moon_altitude_deg` None for a Moon below the horizon."""

    target_altitude_deg: float
    sun_altitude_deg: float
    moon_altitude_deg: float | None
    dark_nl: Published
    moon_nl: Published
    twilight_nl: Published
    brightening_mag: Published
    airmass: Published
    weight: Published


EXTINCTION_MAG, ZENITH_MAG, PHASE_ANGLE_DEG, SEPARATION_DEG = (Given(value, COMPUTED) for value in (0.22, 21.5, 30.0, 60.0))


def _weighed(
    target: float, sun: float, moon: float | None, lights_nl: tuple[float, float, float], shares: tuple[float, float, float]
) -> Weighed:
    source = f"{COMPUTED}, k 0.22, zenith 21.5, phase angle 30, 60 deg from the Moon"
    lights = (Published(light, 0.01, source, LAST_DIGIT) for light in lights_nl)
    rest = (Published(share, 0.0006, source, "half of the third digit") for share in shares)
    return Weighed(target, sun, moon, *lights, *rest)


WEIGHED = (
    _weighed(50.0, -30.0, 40.0, (103.96, 824.25, 0.0), (2.377, 1.304, 0.0990)),
    _weighed(50.0, -12.0, None, (103.96, 0.0, 383.18), (1.677, 1.304, 0.1887)),
    _weighed(50.0, -12.0, 40.0, (103.96, 824.25, 383.18), (2.752, 1.304, 0.0701)),
    _weighed(30.0, -30.0, None, (135.08, 0.0, 0.0), (0.0, 1.993, 0.6688)),
)
"""Moon; twilight; both; a low target."""
