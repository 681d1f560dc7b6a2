"""Moonlight: Krisciunas & Schaefer 1991, PASP 103, 1033, as published by the specsim project and computed independently."""

from tests.published_values.sky_published import Published

SPECSIM = {
    "separation_deg": 50.0, "phase_angle_deg": 45.0, "moon_zenith_deg": 70.0, "target_zenith_deg": 20.0, "extinction_mag": 0.15,
}  # fmt: skip
SPECSIM_MAG = Published(19.855, 0.001, "specsim documentation, phase 0.25, Z 20, Zm 70, rho 50, k 0.15")
SPECSIM_NL = Published(389.5, 0.2, "specsim documentation, the same in nanolamberts", "0.05 %, the digits printed")

FULL_MOON = {
    "separation_deg": 60.0,
    "phase_angle_deg": 0.0,
    "moon_zenith_deg": 60.0,
    "target_zenith_deg": 0.0,
    "extinction_mag": 0.172,
}
FULL_MOON_NL = Published(1089.9, 0.1, "computed independently from eqs 15 to 21")
FULL_MOON_BRIGHTENING = Published(2.925, 0.002, "computed independently from eq. 22, dark zenith 79.0 nL")
NEAR_MOON = FULL_MOON | {"separation_deg": 30.0, "moon_zenith_deg": 30.0}
NEAR_MOON_NL = Published(2367.6, 0.2, "computed independently from eqs 15 to 21")
NEAR_MOON_TOTAL_MAG = Published(17.860, 0.002, "computed independently, with the dark sky's 79.0 nL")
DARK_ZENITH_MAG = 21.587

SCATTERING_AIRMASS = {0: 1.0, 30: 1.1471, 45: 1.3868, 60: 1.8898, 70: 2.5624, 80: 3.8084, 90: 5.0}
"""Eq. 3 by zenith distance; 1e-4."""
SCATTERING_FUNCTION = {5: 2.950e6, 10: 1.259e6, 30: 6.658e5, 45: 4.633e5, 60: 3.448e5, 90: 2.508e5, 120: 3.015e5}
"""Eqs 16, 18 and 19 by separation; 0.1 %."""
ILLUMINANCE_FC = {0: 0.029107, 90: 0.002649}
"""Eq. 20 by phase angle; 0.1 %."""
NANOLAMBERTS = {22.0: 54.01, 21.587: 79.01, 21.0: 135.66, 20.0: 340.8, 18.0: 2150.0}
"""Eq. 1 by magnitude; 0.05 %."""
