"""Twilight and the weight of a sub under it.

F. Patat, O. S. Ugolnikov & O. V. Postylyakov 2006, A&A 455, 385, table 1 (V row, read in six transcriptions that agree, not
in the paper; its abstract was read); F. Patat 2003, A&A 400, 1183 (the night's V, in transcriptions); K. Krisciunas &
B. E. Schaefer 1991, PASP 103, 1033, eqs 1 to 20; F. Kasten & A. T. Young 1989, Applied Optics 28, 4735. What the papers do
not print is computed from their equations by `independent_weight.py`.
"""

from dataclasses import dataclass

from tests.published_values.sky_published import Published

PARABOLA_V = (11.84, 1.518, -0.057)
NIGHT_V = 21.61
TRANSCRIPTIONS = "Patat, Ugolnikov & Postylyakov 2006, A&A 455, 385, table 1, V, in transcriptions"
COMPUTED = "computed independently from the equations of the papers"

WHOLE_SKY_MAG = {95.0: 11.84, 100.0: 18.005, 103.0: 20.336, 105.0: 21.32}
"""The table's parabola by the Sun's zenith distance, worked with a pencil; 1e-9."""

BRIGHTENING_OVER_21_5 = {
    -8.0: 5.62, -10.0: 3.50, -12.0: 1.846, -13.0: 1.199, -14.0: 0.697, -15.0: 0.366, -16.0: 0.179, -17.0: 0.083, -18.0: 0.0,
}  # fmt: skip
"""V magnitudes at a zenith of 21.5 by the Sun's altitude; the last digit printed."""
BRIGHTENING_OVER_20_5 = Published(1.111, 0.0006, "the same at -12 deg over a zenith of 20.5; " + COMPUTED)
TANGENT_MAG = Published(20.74, 0.005, "twilight alone at zenith distance 103; " + COMPUTED)
TANGENT_SLOPE = Published(0.877, 0.0005, "its fading there, magnitudes a degree; " + COMPUTED)


@dataclass(frozen=True, slots=True)
class Weighed:
    """A sub's sky and what follows from it; moon_altitude_deg None for a Moon below the horizon; brightness in nanolamberts."""

    target_altitude_deg: float
    sun_altitude_deg: float
    moon_altitude_deg: float | None
    dark_nl: float
    moon_nl: float
    twilight_nl: float
    brightening_mag: float
    airmass: float
    weight: float


EXTINCTION_MAG, ZENITH_MAG, PHASE_ANGLE_DEG, SEPARATION_DEG = 0.22, 21.5, 30.0, 60.0
WEIGHED = (
    Weighed(50.0, -30.0, 40.0, 103.96, 824.25, 0.0, 2.377, 1.304, 0.0990),
    Weighed(50.0, -12.0, None, 103.96, 0.0, 383.18, 1.677, 1.304, 0.1887),
    Weighed(50.0, -12.0, 40.0, 103.96, 824.25, 383.18, 2.752, 1.304, 0.0701),
    Weighed(30.0, -30.0, None, 135.08, 0.0, 0.0, 0.0, 1.993, 0.6688),
)
WEIGHED_SOURCE = "k 0.22, zenith 21.5, phase angle 30, 60 deg from the Moon; " + COMPUTED
WEIGHED_TOLERANCE = 0.002
"""Of brightening, airmass and weight; brightness agrees to 0.01 nL, the digits printed."""
