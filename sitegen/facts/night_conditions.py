"""What instruments beside the camera read while the night's subs were taken."""

import math
from collections.abc import Callable
from operator import attrgetter
from statistics import median

from sitegen.diary.readings import Readings
from sitegen.facts.fact import Fact
from sitegen.facts.sub_measures import SERIES
from sitegen.facts.views import NightView


def guiding_rms_arcsec(night: NightView) -> float | None:
    """Root of the mean square over the kept subs that tell it, each by its exposure."""
    guided = [(light.sub.exposure_s, rms) for light in night.kept if (rms := light.sub.guiding_rms_arcsec) is not None]
    total_s = math.fsum(exposure_s for exposure_s, _ in guided)
    return math.sqrt(math.fsum(exposure_s * rms**2 for exposure_s, rms in guided) / total_s) if total_s else None


def middle_of(get: Callable[[Readings], float | None]) -> Callable[[NightView], float | None]:
    """Median over all light frames, kept or not."""

    def compute(night: NightView) -> float | None:
        reduced = (light.sub.readings for light in night.lights)
        values = [value for readings in reduced if readings is not None and (value := get(readings)) is not None]
        return median(values) if values else None

    return compute


def _read(title: str, unit: str, name: str, explained: str, decimals: int) -> Fact[NightView]:
    return Fact(title, unit, middle_of(attrgetter(name)), explained, SERIES, decimals)


MIDDLE = "Median over the subs of the night, kept or not"
GUIDING_RMS_ARCSEC: Fact[NightView] = Fact(
    "Guiding error of the night",
    "″",
    guiding_rms_arcsec,
    "Both axes together: root of the mean square over the kept subs, each by its exposure.",
    SERIES,
    3,
)
TEMPERATURE_C = _read("Air temperature read", "°C", "temperature_c", f"{MIDDLE}.", 1)
HUMIDITY_PERCENT = _read("Humidity read", "%", "humidity_percent", f"{MIDDLE}.", 0)
WIND_M_S = _read("Wind read", "m/s", "wind_m_s", f"{MIDDLE}.", 1)
CLOUD_PERCENT = _read("Cloud cover read", "%", "cloud_percent", f"{MIDDLE}.", 0)
SKY_MAG_ARCSEC2 = _read("Sky brightness read", "mag/arcsec²", "sky_mag_arcsec2", f"{MIDDLE}; a sky meter looks overhead.", 2)
