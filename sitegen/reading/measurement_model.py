"""What a saved measurement may hold, key by key: the fields of the records in `stars.records`, under their names."""

from sitegen.reading.value_types.choice import Choice
from sitegen.reading.value_types.collections import ListOf
from sitegen.reading.value_types.group import Group, Key
from sitegen.reading.value_types.number import Number
from sitegen.reading.value_types.text import NAME, Text
from sitegen.reading.value_types.value_type import ValueType

SCHEMA = "1"
STAR_SURVEY, RING = "star survey", "ring"

PX = Number("px", least=0, most=1e6)
ANGLE = Number("degrees", least=0, most=360)
COUNT = Number(least=0, most=1e9, whole=True)
SIDE = Number("px", least=1, most=1e6, whole=True)
COUNTS = Number(least=-1e12, most=1e12)
ARCSEC = Number("arcsec", above=0, most=1e5)
ELONGATION = Number(least=1, most=100)


def _key(name: str, kind: ValueType, explained: str, example: str, required: bool = True) -> Key:
    return Key(name, kind, explained, example, required)


HEAD = (
    _key("schema", Choice((SCHEMA,)), "The form of this file.", SCHEMA),
    _key("measures", Choice((STAR_SURVEY, RING)), "What was measured.", STAR_SURVEY),
    _key("frame", NAME, "The name of the frame.", "field.fits"),
    _key("taken", Text(longest=40), "When its exposure began, UTC.", "2026-04-18T21:03:12Z", False),
    _key("binning", Number(least=1, most=64, whole=True), "Pixels along a side of a binned one.", "1", False),
    _key("width_px", SIDE, "Width of the frame.", "6248"),
    _key("height_px", SIDE, "Height of the frame.", "4176"),
)

ZONE = Group(
    (
        _key("x", PX, "Its centre from the left.", "624.3"),
        _key("y", PX, "Its centre from the bottom.", "695.5"),
        _key("stars", COUNT, "How many were measured in it.", "40"),
        _key("fwhm_px", PX, "Full width at half maximum, pixel included.", "3.1", False),
        _key("fwhm_arcsec", ARCSEC, "The same on the sky.", "2.4", False),
        _key("elongation", ELONGATION, "Longer over shorter axis, pixel included.", "1.08", False),
        _key("angle_deg", ANGLE, "Of the longer axis, from +x towards +y.", "42", False),
        _key("scatter_px", PX, "Star to star, of the width.", "0.12", False),
        _key("scatter_e", Number(least=0, most=10), "Star to star, of the shape.", "0.01", False),
    ),
    "a zone",
)

REJECTED = Group(
    tuple(
        _key(name, COUNT, "How many.", "0", False) for name in ("hot_pixel", "edge", "saturated", "blended", "faint", "misfit")
    ),
    "'rejected'",
)

SURVEY = Group(
    (
        *HEAD,
        _key("scale_arcsec_px", ARCSEC, "The image scale.", "1.02", False),
        _key("bayer", Choice(("RGGB", "BGGR", "GRBG", "GBRG")), "Colour pattern of a raw frame.", "RGGB", False),
        _key("detected", COUNT, "Everything that was found.", "900"),
        _key("usable", COUNT, "What was left for measuring.", "700"),
        _key("star_count", COUNT, "Stars measured.", "580"),
        _key("fwhm_px", PX, "Median width of all of them.", "3.1", False),
        _key("fwhm_arcsec", ARCSEC, "The same on the sky.", "2.4", False),
        _key("elongation", ELONGATION, "Of all of them together.", "1.05", False),
        _key("angle_deg", ANGLE, "Of their longer axis.", "42", False),
        _key("background", COUNTS, "Of the sky, counts.", "1012"),
        _key("noise", COUNTS, "Of one pixel, counts.", "11.2"),
        _key("saturation", COUNTS, "Where the sensor clips, counts.", "65535", False),
        _key("rejected", REJECTED, "What was not measured, by reason.", "{faint: 20}"),
        _key("zones", ListOf(ZONE), "5 × 3 parts of the frame, row by row from the bottom left.", "[…]"),
    ),
    "a saved star survey",
)

RINGS = Group(
    (
        *HEAD,
        _key("outer_px", PX, "Diameter of the disc.", "167.4"),
        _key("inner_px", PX, "Diameter of the shadow.", "72.9"),
        _key("offset_px", PX, "From the disc's centre to the shadow's.", "1.2"),
        _key("offset_percent", Number("percent", least=0, most=100), "Of the disc's diameter.", "0.7"),
        _key("direction_deg", ANGLE, "Of the shadow, from +x towards +y.", "38", False),
        _key("uncertainty_px", PX, "One standard error of the offset: noise, sectors, rings.", "0.1"),
        _key("x", Number("px", least=-1e6, most=1e6), "The disc's centre from the left.", "159.6"),
        _key("y", Number("px", least=-1e6, most=1e6), "The disc's centre from the bottom.", "159.6"),
        _key("signal_to_noise", Number(least=0, most=1e9), "Of one pixel of the lit ring.", "89"),
        _key("warnings", ListOf(Text(longest=400)), "What to keep in mind.", "[]", False),
    ),
    "a saved ring measurement",
)
