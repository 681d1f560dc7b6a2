"""Guiding errors reduced to an exposure, against errors whose parts are known."""

import numpy as np
import pytest

from sitegen.sky.guiding import covered_share, guiding_of
from tests.published_values.record import Published

WORKED = "worked by hand"
JITTER = (0.45, 0.35)
DRIFT_ARCSEC_S, EXPOSURE_S = 0.004, 300.0
WITH_DRIFT = Published(
    0.6671, 0.01, f"{WORKED}: √(0.45² + 0.35² + (0.004 × 300)²/12); a drift over L spreads by L/√12", "asked for to 0.01 arcsec"
)
DRIFT_ARCSEC_MIN = Published(0.24, 0.01, f"{WORKED}: 0.004 arcsec/s × 60 s", "asked for to 0.01 arcsec")


def samples(seed: int, offset: tuple[float, float] = (0.25, -0.1)) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Every two seconds: jitter of both axes, a drift in declination, an offset."""
    draws = np.random.default_rng(seed)
    times_s = np.arange(1.0, EXPOSURE_S, 2.0)
    ra, dec = (draws.normal(place, width, len(times_s)) for place, width in zip(offset, JITTER, strict=True))
    return times_s, ra, dec + DRIFT_ARCSEC_S * (times_s - EXPOSURE_S / 2)


def test_the_drift_is_kept_and_the_offset_is_not() -> None:
    """Mean of 400 exposures, so that what is drawn evens out."""
    reduced = [guiding_of(*samples(seed), 0.0, EXPOSURE_S) for seed in range(400)]
    assert WITH_DRIFT.agrees(float(np.sqrt(np.mean([guiding.rms_arcsec**2 for guiding in reduced if guiding]))))
    (times_s, ra, dec), still = samples(3), guiding_of(*samples(3), 0.0, EXPOSURE_S)
    assert guiding_of(times_s, ra + 40.0, dec - 7.0, 0.0, EXPOSURE_S) == pytest.approx(still)


def test_a_drift_alone_is_told_as_such() -> None:
    """In one axis or in both, whatever its sign."""
    times_s = np.arange(0.0, EXPOSURE_S + 1, 2.0)
    along = guiding_of(times_s, 0 * times_s, -DRIFT_ARCSEC_S * times_s, 0.0, EXPOSURE_S)
    assert along is not None
    assert DRIFT_ARCSEC_MIN.agrees(along.drift_arcsec_min)
    across = guiding_of(times_s, 0.6 * DRIFT_ARCSEC_S * times_s, 0.8 * DRIFT_ARCSEC_S * times_s, 0.0, EXPOSURE_S)
    assert across is not None
    assert DRIFT_ARCSEC_MIN.agrees(across.drift_arcsec_min)


@pytest.mark.parametrize(
    ("times_s", "share"),
    [
        (np.arange(1.0, 300.0, 2.0), 1.0),
        (np.arange(61.0, 300.0, 2.0), 1 - 61 / 300),
        (np.concatenate((np.arange(1.0, 101.0, 2.0), np.arange(200.0, 300.0, 2.0))), 1 - 101 / 300),
        (np.arange(10.0), 1 - 291 / 300),
        (np.array([150.0]), 0.0),
        (np.array([]), 0.0),
    ],
)
def test_gaps_are_not_covered(times_s: np.ndarray, share: float) -> None:
    """At the beginning, in the midst, at the end."""
    assert covered_share(times_s, 0.0, 300.0) == pytest.approx(share)


@pytest.mark.parametrize("kept", [slice(0, 9), slice(32, None), slice(0, 118)], ids=["nine", "from 65 s on", "to 235 s"])
def test_too_little_is_no_number(kept: slice) -> None:
    """Fewer than ten samples, or less than four fifths of the exposure."""
    times_s, ra, dec = samples(1)
    assert guiding_of(times_s[kept], ra[kept], dec[kept], 0.0, EXPOSURE_S) is None
