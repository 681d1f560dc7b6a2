"""The weight of a sub worked out from the papers' equations, number by number: shares no line with the engine.

Equation numbers are those of K. Krisciunas & B. E. Schaefer 1991, PASP 103, 1033: 1, 2, 3, 15 and 20 as public implementations
give them, 16 and 18 from memory.
"""

from math import cos, exp, log10, radians, sin, tan

from tests.published_values.sky_twilight import NIGHT_V, PARABOLA_V


def nanolamberts(mag: float) -> float:
    """Eq. 1."""
    return 34.08 * exp(20.7233 - 0.92104 * mag)


def path(zenith_distance_deg: float) -> float:
    """Eq. 3."""
    return 1.0 / (1.0 - 0.96 * sin(radians(zenith_distance_deg)) ** 2) ** 0.5


def dark_nl(zenith_mag: float, target_altitude_deg: float, k: float) -> float:
    """Eq. 2."""
    x = path(90.0 - target_altitude_deg)
    return nanolamberts(zenith_mag) * x / 10.0 ** (0.4 * k * (x - 1.0))


def moon_nl(target_altitude_deg: float, moon_altitude_deg: float, separation_deg: float, phase_deg: float, k: float) -> float:
    """Eqs 15, 16, 18 (for more than 10 deg from the Moon) and 20; 0 with the Moon down."""
    if moon_altitude_deg <= 0.0:
        return 0.0
    scattering = 10.0**5.36 * (1.06 + cos(radians(separation_deg)) ** 2) + 10.0 ** (6.15 - separation_deg / 40.0)
    illuminance = 10.0 ** (-0.4 * (3.84 + 0.026 * phase_deg + 4e-9 * phase_deg**4))
    reaching = 10.0 ** (-0.4 * k * path(90.0 - moon_altitude_deg))
    return scattering * illuminance * reaching * (1.0 - 10.0 ** (-0.4 * k * path(90.0 - target_altitude_deg)))


def twilight_nl(sun_altitude_deg: float) -> float:
    """Patat, Ugolnikov & Postylyakov 2006: the parabola to zenith distance 103, less the night; then a line in magnitudes."""
    constant, slope, bend = PARABOLA_V.values
    night = 10.0 ** (-0.4 * NIGHT_V.values)

    def alone(distance_deg: float) -> float:
        x = distance_deg - 95.0
        return 10.0 ** (-0.4 * (constant + slope * x + bend * x * x)) - night

    distance = 90.0 - sun_altitude_deg
    if distance >= 108.0:
        return 0.0
    if distance <= 103.0:
        return nanolamberts(-2.5 * log10(alone(distance)))
    step = 1e-5
    fading = -2.5 * log10(alone(103.0) / alone(103.0 - step)) / step
    return nanolamberts(-2.5 * log10(alone(103.0)) + fading * (distance - 103.0))


def airmass(airless_altitude_deg: float) -> float:
    """Kasten & Young 1989 at the altitude refracted by Saemundsson's formula (1010 hPa, 10 deg C)."""
    h = airless_altitude_deg
    apparent = h + 1.02 / tan(radians(h + 10.3 / (h + 5.11))) / 60.0
    return 1.0 / (sin(radians(apparent)) + 0.50572 * (apparent + 6.07995) ** -1.6364)


def weight(dark: float, moon: float, twilight: float, air: float, k: float) -> float:
    """The three lights added as light; extinction taken from the signal, which counts squared."""
    return dark / (dark + moon + twilight) * 10.0 ** (-0.8 * k * (air - 1.0))
