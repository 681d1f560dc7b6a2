"""Moonlight scattered into the sky: Krisciunas & Schaefer 1991, PASP 103, 1033, doi 10.1086/132921.

Surface brightness is in nanolamberts (nL), angles in degrees. Equation numbers are the paper's: 1, 2, 3, 15, 19, 20 and 21 as
public implementations of the model give them, 16, 18 and 22 from memory. Of the paper, only the abstract was read.

Valid for the V band: its authors found 8 to 23 % scatter (0.1 to 0.2 mag) at one clear mountain site. It knows neither haze nor
cloud, neither the Moon's distance (+16 to -11 % of moonlight) nor its extra brightness within 7 degrees of full (up to 35 %), and
steps by 16 % at 10 degrees from the Moon. It says nothing about a narrowband filter.
"""

import numpy as np
from numpy.typing import ArrayLike

from sitegen.sky.arrays import Floats

MIE_BRANCH_DEG = 10.0
NEAREST_DEG = 0.25
"""Inside the Moon's own disc equation 19 runs to infinity; the separation stops here."""

def nanolamberts(mag_arcsec2: ArrayLike) -> Floats:
    """V surface brightness to nL (eq. 1, after Garstang 1986, PASP 98, 364)."""
    return np.asarray(34.08 * np.exp(20.7233 - 0.92104 * np.asarray(mag_arcsec2, float)))


def mag_arcsec2(brightness_nl: ArrayLike) -> Floats:
    """nL to V surface brightness, the inverse of eq. 1."""
    return np.asarray((20.7233 - np.log(np.asarray(brightness_nl, float) / 34.08)) / 0.92104)


def scattering_airmass(zenith_distance_deg: ArrayLike) -> Floats:
    """Optical path of scattered light (eq. 3), 1 at the zenith and 5 at the horizon."""
    sine = np.sin(np.radians(zenith_distance_deg))
    return np.asarray((1.0 - 0.96 * sine**2) ** -0.5)


def illuminance_fc(phase_angle_deg: ArrayLike) -> Floats:
    """Moonlight outside the air in foot-candles (eq. 20); phase angle 0 at full Moon."""
    alpha = np.abs(np.asarray(phase_angle_deg, float))
    return np.asarray(10.0 ** (-0.4 * (3.84 + 0.026 * alpha + 4e-9 * alpha**4)))


def scattering_function(separation_deg: ArrayLike) -> Floats:
    """Rayleigh (eq. 16) plus Mie scattering (eq. 18; within 10 degrees of the Moon eq. 19)."""
    rho = np.maximum(np.asarray(separation_deg, float), NEAREST_DEG)
    rayleigh = 10.0**5.36 * (1.06 + np.cos(np.radians(rho)) ** 2)
    mie = np.where(rho < MIE_BRANCH_DEG, 6.2e7 * rho**-2.0, 10.0 ** (6.15 - rho / 40.0))
    return np.asarray(rayleigh + mie)


def moonlight_nl(
    separation_deg: ArrayLike,
    phase_angle_deg: ArrayLike,
    moon_zenith_deg: ArrayLike,
    target_zenith_deg: ArrayLike,
    extinction_mag: ArrayLike,
) -> Floats:
    """Moonlight at the target (eq. 15). Does not know that the Moon may be down: `brightening_mag` does."""
    k = np.asarray(extinction_mag, float)
    through = 10.0 ** (-0.4 * k * scattering_airmass(moon_zenith_deg))
    scattered = 1.0 - 10.0 ** (-0.4 * k * scattering_airmass(target_zenith_deg))
    return scattering_function(separation_deg) * illuminance_fc(phase_angle_deg) * through * scattered


def dark_sky_nl(zenith_sky_mag_arcsec2: ArrayLike, zenith_deg: ArrayLike, extinction_mag: ArrayLike) -> Floats:
    """The moonless sky away from the zenith (eq. 2): airglow's longer path, less its extinction."""
    path = scattering_airmass(zenith_deg)
    dimming = 10.0 ** (-0.4 * np.asarray(extinction_mag, float) * (path - 1.0))
    return np.asarray(nanolamberts(zenith_sky_mag_arcsec2) * dimming * path)


def brightening_mag(
    target_altitude_deg: Floats,
    moon_altitude_deg: Floats,
    separation_deg: Floats,
    phase_angle_deg: Floats,
    extinction_mag: ArrayLike,
    sky_mag_arcsec2: ArrayLike,
) -> Floats:
    """By how much moonlight brightens the sky at the target (eq. 22 turned positive), V magnitudes.

    0 with the Moon's centre at or below 0 deg; NaN with the target unknown or below the horizon, and with
    the Moon up where the dark sky is unknown (NaN).
    """
    seen = target_altitude_deg >= 0.0
    zenith = 90.0 - np.where(seen, target_altitude_deg, np.nan)
    dark = dark_sky_nl(sky_mag_arcsec2, zenith, extinction_mag)
    moon_zenith = 90.0 - np.maximum(moon_altitude_deg, 0.0)
    moonlit = moonlight_nl(separation_deg, phase_angle_deg, moon_zenith, zenith, extinction_mag)
    brighter = 2.5 * np.log10((moonlit + dark) / dark)
    return np.where(seen & (moon_altitude_deg <= 0.0), 0.0, brighter)
