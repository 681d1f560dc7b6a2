"""What instruments beside the camera read while it exposed."""

from msgspec import Struct


class Readings(Struct, frozen=True, gc=False):
    """Of one exposure; None where nothing was read, or for too little of it. Guiding: RMS about the mean, on the sky, and the
    star's drift; the others are means."""

    guiding_ra_rms_arcsec: float | None = None
    guiding_dec_rms_arcsec: float | None = None
    guiding_drift_arcsec_min: float | None = None
    temperature_c: float | None = None
    humidity_percent: float | None = None
    wind_m_s: float | None = None
    cloud_percent: float | None = None
    sky_mag_arcsec2: float | None = None
