"""The table of the Earth's rotation, read by its columns, against astropy's reader of the same file."""

import numpy as np
from astropy.utils import iers

from sitegen.sky.earth_rotation import DAY_S, UNIX_EPOCH_MJD, ut1_minus_utc_s, ut1_table


def test_every_day_is_as_astropy_reads_it() -> None:
    """All of some twenty thousand days and offsets, to the last bit (authority: astropy.utils.iers.IERS_A)."""
    table = iers.IERS_A.open(iers.IERS_A_FILE)
    times_s, offset_s = ut1_table()
    assert np.array_equal(times_s / DAY_S + UNIX_EPOCH_MJD, np.asarray(table["MJD"].value))
    assert np.array_equal(offset_s, np.asarray(table["UT1_UTC"].value, float))


def test_beyond_the_table_its_ends_are_held() -> None:
    """A day, a year and ten years after the last day, its offset; the same before the first (the rule of the program)."""
    times_s, offset_s = ut1_table()
    beyond = np.array([1.0, 365.0, 3652.0]) * DAY_S
    assert ut1_minus_utc_s(times_s[-1] + beyond).tolist() == [offset_s[-1]] * 3
    assert ut1_minus_utc_s(times_s[0] - beyond).tolist() == [offset_s[0]] * 3
    assert offset_s[0] != offset_s[-1]
