"""The canonical columns of a table that an instrument wrote, as an entry's series may rename them."""

from sitegen.reading.value_types.group import Group, Key
from sitegen.reading.value_types.text import LINE

SERIES_COLUMNS = Group(
    (
        Key("time", LINE, "When it was read, ISO 8601; a bare time is UTC unless the series' time_zone says otherwise.",
            "Timestamp"),
        Key("ra_arcsec", LINE, "Guiding error in right ascension, arcsec.", "RA error"),
        Key("dec_arcsec", LINE, "Guiding error in declination, arcsec.", "Dec error"),
        Key("ra_px", LINE, "The same in pixels of the guider; it needs `scale_arcsec_px`.", "RA px"),
        Key("dec_px", LINE, "The same in pixels of the guider.", "Dec px"),
        Key("state", LINE, "Rows whose state speaks of a lost star, of settling or of a dither say nothing of the guiding.",
            "Status"),
        Key("temperature_c", LINE, "Of the air, °C.", "Temp"),
        Key("humidity_percent", LINE, "Relative.", "RH"),
        Key("wind_m_s", LINE, "Metres a second.", "Wind"),
        Key("cloud_percent", LINE, "Of the sky that is covered.", "Cloud"),
        Key("sky_mag_arcsec2", LINE, "What a sky meter read.", "Sky"),
    ),
    called="columns",
)  # fmt: skip
