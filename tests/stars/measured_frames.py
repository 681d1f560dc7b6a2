"""Measurements written by hand, for tests that need no pixels."""

from datetime import UTC, datetime

from sitegen.stars.measured import RingedFrame, SurveyedFrame, scaled
from sitegen.stars.pattern import field_pattern
from sitegen.stars.records import Rejected, StarRing, StarSurvey, Zone
from sitegen.stars.zones import COLUMNS, ROWS


def survey(scale=1.5, slope=0.0, elongation=1.02, angle=30.0, empty=()):
    """3 px wide stars on 1500 × 900 px; `slope`: how much wider from column to column; `empty`: zones without a measurement."""
    zones = []
    for index in range(COLUMNS * ROWS):
        row, column = divmod(index, COLUMNS)
        place = 150.0 + 300 * column - 0.5, 150.0 + 300 * row - 0.5
        if index in empty:
            zones.append(Zone(*place, 2))
        else:
            zones.append(Zone(*place, 30, 3.0 * (1 + slope * column), None, elongation, angle, 0.02, 0.002))
    whole = 3.0, None, elongation, angle
    plain = StarSurvey(1500, 900, None, None, 700, 500, 450, *whole, 1000.0, 10.0, None, Rejected(), tuple(zones))
    return scaled(plain, scale)


def surveyed(file="pictures/field.fits", taken=datetime(2026, 9, 12, 12, 30, tzinfo=UTC), binning=None, **shape):
    found = survey(**shape)
    return SurveyedFrame(file, taken, binning, found, field_pattern(found))


def ringed(file="pictures/ring.fits", taken=datetime(2026, 9, 12, 12, 40, tzinfo=UTC), offset=6.0, direction=90.0, warnings=()):
    ring = StarRing(120.0, 40.0, offset, 100 * offset / 120, direction, 0.2, 200.0, 150.0, 30.0, tuple(warnings))
    return RingedFrame(file, taken, 1, 400, 300, ring)
