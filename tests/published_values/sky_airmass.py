"""Airmass: Kasten & Young, by apparent altitude in degrees."""

from tests.published_values.record import Table

KASTEN_YOUNG = "F. Kasten & A. T. Young 1989, Applied Optics 28, 4735"

KASTEN_YOUNG_TABLE = Table(
    {0.0: 38.0868, 1.0: 26.2595, 5.0: 10.3164, 10.0: 5.5841},
    0.005,
    f"{KASTEN_YOUNG}, table II as quoted in a public program's notes on its sources",
    "their formula keeps within 0.5 % of their table; the horizon is 0.44 % off",
    relative=True,
)
KASTEN_YOUNG_FORMULA = Table(
    {10.0: 5.586, 0.1: 36.467}, 0.001, f"{KASTEN_YOUNG}, as the test suite of pvlib prints it", "three digits printed"
)
KASTEN_YOUNG_COMPUTED = Table(
    {5.0: 10.306, 10.0: 5.586, 15.0: 3.813, 20.0: 2.903, 30.0: 1.994, 45.0: 1.413, 60.0: 1.154, 90.0: 0.9997},
    0.001,
    f"computed a second time from the formula of {KASTEN_YOUNG}",
    "three digits kept",
)
