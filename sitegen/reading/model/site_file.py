"""The keys of content/sites/NAME.yaml."""

from sitegen.reading.model.author_file import AuthorFile
from sitegen.reading.value_types.collections import ListOf
from sitegen.reading.value_types.group import Group, Key
from sitegen.reading.value_types.number import Number, NumberPair
from sitegen.reading.value_types.text import LINE
from sitegen.reading.value_types.time_zone import TimeZone

HORIZON_POINT = NumberPair(
    Number(unit="degrees", least=0, most=360), Number(unit="degrees", least=-10, most=90), ("azimuth_deg", "altitude_deg")
)  # fmt: skip

SITE_FILE = AuthorFile(
    name="site",
    pattern="sites/NAME.yaml",
    explained="One place you observe from. NAME is what entries call it.",
    group=Group(
        (
            Key("name", LINE, "What visitors read.", "School roof", required=True),
            Key("latitude_deg", Number(unit="degrees", least=-90, most=90), "North positive.", "-36.85", required=True),
            Key("longitude_deg", Number(unit="degrees", least=-180, most=210),
                "East positive; beyond 180 where clocks keep the date from beyond the date line.", "174.76", required=True),
            Key("elevation_m", Number(unit="m", least=-450, most=9000), "Above sea level.", "80", default="0"),
            Key("time_zone", TimeZone(), "Its clocks, as the IANA database names them.", "Pacific/Auckland", required=True),
            Key("sky_mag_arcsec2", Number(unit="mag/arcsec²", least=12, most=23),
                "Sky brightness in V at the zenith without a Moon; without it neither moonlight nor twilight is reckoned.",
                "20.1"),
            Key("extinction_mag", Number(unit="mag per airmass", least=0, most=2), "What the air takes, in V.", "0.25",
                default="0.25"),
            Key("seeing_arcsec", Number(unit="arcsec", least=0.1, most=30),
                "Typical star width (FWHM), before the pixels widen it.", "2.8"),
            Key("bortle", Number(least=1, most=9, whole=True), "Class of the sky, shown as you give it.", "5"),
            Key("horizon", ListOf(HORIZON_POINT), "What stands in the way: altitudes of roofs and trees by azimuth.",
                "[[0, 12], [90, 25], [180, 8]]"),
        ),
        called="a site",
    ),
)  # fmt: skip
