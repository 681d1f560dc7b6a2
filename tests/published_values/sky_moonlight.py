"""Moonlight: K. Krisciunas & B. E. Schaefer 1991, PASP 103, 1033, as the specsim project publishes it and computed independently.

Numbers of equations: 1, 2, 3, 15, 19, 20 and 21 are those that public implementations of the model give; 16, 18 and 22 are from
memory. Of the paper itself, only the abstract was read.
"""

from tests.published_values.record import LAST_DIGIT, Given, Published, Table

PAPER = "K. Krisciunas & B. E. Schaefer 1991, PASP 103, 1033"
SPECSIM_PAGE = "documentation of specsim.atmosphere.krisciunas_schaefer"
COMPUTED = f"computed a second time from {PAPER}"

SPECSIM = Given(
    {"separation_deg": 50.0, "phase_angle_deg": 45.0, "moon_zenith_deg": 70.0, "target_zenith_deg": 20.0, "extinction_mag": 0.15},
    f"{SPECSIM_PAGE}: phase 0.25, Z 20, Zm 70, rho 50, k 0.15",
)
SPECSIM_MAG = Published(19.855, 0.001, SPECSIM_PAGE, LAST_DIGIT)
SPECSIM_NL = Published(389.5, 0.2, f"computed from {SPECSIM_PAGE}: 19.855 mag in nanolamberts", "0.0005 mag, half its last digit")

FULL_MOON = Given(
    {"separation_deg": 60.0, "phase_angle_deg": 0.0, "moon_zenith_deg": 60.0, "target_zenith_deg": 0.0, "extinction_mag": 0.172},
    f"{COMPUTED}: the extinction of the paper's site, from memory",
)
FULL_MOON_NL = Published(1089.9, 0.1, f"{COMPUTED}, eqs 15 to 21", LAST_DIGIT)
FULL_MOON_BRIGHTENING = Published(2.925, 0.002, f"{COMPUTED}, eq. 22, dark zenith 79.0 nL", "three digits of brightness")
NEAR_MOON = Given(FULL_MOON.values | {"separation_deg": 30.0, "moon_zenith_deg": 30.0}, FULL_MOON.source)
NEAR_MOON_NL = Published(2367.6, 0.2, f"{COMPUTED}, eqs 15 to 21", LAST_DIGIT)
NEAR_MOON_TOTAL_MAG = Published(17.860, 0.002, f"{COMPUTED}, with the dark sky's 79.0 nL", "three digits of brightness")
DARK_ZENITH_MAG = Given(21.587, f"{PAPER}, 79.0 nL at their site, from memory")

SCATTERING_AIRMASS = Table(
    {0: 1.0, 30: 1.1471, 45: 1.3868, 60: 1.8898, 70: 2.5624, 80: 3.8084, 90: 5.0},
    1e-4,
    f"{COMPUTED}, eq. 3, by zenith distance",
    LAST_DIGIT,
)
SCATTERING_FUNCTION = Table(
    {5: 2.950e6, 10: 1.259e6, 30: 6.658e5, 45: 4.633e5, 60: 3.448e5, 90: 2.508e5, 120: 3.015e5},
    1e-3,
    f"{COMPUTED}, eqs 16, 18 and 19, by separation",
    "four digits",
    relative=True,
)
ILLUMINANCE_FC = Table({0: 0.029107, 90: 0.002649}, 1e-3, f"{COMPUTED}, eq. 20, by phase angle", "four digits", relative=True)
NANOLAMBERTS = Table(
    {22.0: 54.01, 21.587: 79.01, 21.0: 135.66, 20.0: 340.8, 18.0: 2150.0},
    5e-4,
    f"{COMPUTED}, eq. 1, by magnitude",
    "four digits; three at 18 mag",
    relative=True,
)
DARK_SKY_AT_70 = Published(
    2.0005,
    1e-3,
    f"worked by hand from {PAPER}, eq. 2, k 0.172: X 2.5624, 10^(-0.4 × 0.172 × 1.5624) = 0.7807",
    "four digits of the factor, times 2.6",
)
