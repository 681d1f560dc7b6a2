"""Airmass: Kasten & Young 1989, Applied Optics 28, 4735."""

KASTEN_YOUNG_TABLE = {0.0: 38.0868, 1.0: 26.2595, 5.0: 10.3164, 10.0: 5.5841}
"""Table II by apparent altitude in degrees; their formula keeps within 0.5 % of it."""
KASTEN_YOUNG_TABLE_RELATIVE = 0.005

KASTEN_YOUNG_FORMULA = {10.0: 5.586, 0.1: 36.467}
"""pvlib's test suite, by apparent altitude; 0.001."""

KASTEN_YOUNG_COMPUTED = {5: 10.306, 10: 5.586, 15: 3.813, 20: 2.903, 30: 1.994, 45: 1.413, 60: 1.154, 90: 0.9997}
"""Computed from the formula, independently; 0.001."""
KASTEN_YOUNG_TOLERANCE = 0.001
