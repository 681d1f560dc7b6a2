"""The canonical columns of a capture-log table, as an entry's log item may rename them."""

from sitegen.reading.value_types.group import Group, Key
from sitegen.reading.value_types.text import LINE

COLUMNS = Group(
    (
        Key("start", LINE, "When the exposure began, ISO 8601; a bare time is UTC unless the log's time_zone says otherwise.",
            "Begin"),
        Key("exposure_s", LINE, "How long, in seconds; also 5m, 1/250, 90 s.", "Seconds"),
        Key("filter", LINE, "Short name of the filter.", "Band"),
        Key("kind", LINE, "light, dark, flat, bias or dark-flat; light without it.", "Type"),
        Key("kept", LINE, "yes or no; yes without it.", "Good"),
        Key("reason", LINE, "Why it was discarded.", "Why"),
        Key("binning", LINE, "Pixels summed, along one side.", "Bin"),
        Key("gain", LINE, "Camera gain as set.", "Gain"),
        Key("sensor_c", LINE, "Temperature of the sensor, °C.", "Temp"),
        Key("fwhm_arcsec", LINE, "Star width (FWHM) as recorded, pixel included, arcsec.", "FWHM"),
        Key("elongation", LINE, "Longer over shorter axis of the stars as recorded.", "Shape"),
        Key("guiding_rms_arcsec", LINE, "Guiding error, arcsec RMS.", "RMS"),
        Key("stars", LINE, "Stars counted on the frame.", "Stars"),
        Key("count", LINE, "The row stands for this many exposures in a row.", "Number"),
        Key("gap_s", LINE, "Seconds between them.", "Gap"),
        Key("panel", LINE, "Which panel of a mosaic it shows.", "Tile"),
        Key("note", LINE, "Anything else.", "Remark"),
    ),
    called="columns",
)  # fmt: skip
