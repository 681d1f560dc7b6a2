"""The keys of content/rigs/NAME.yaml."""

from typing import get_args

from msgspec.structs import replace

from sitegen.diary.rig import CautionKind
from sitegen.reading.model.author_file import AuthorFile
from sitegen.reading.value_types.choice import Choice
from sitegen.reading.value_types.collections import ListOf, MapOf
from sitegen.reading.value_types.day import Day
from sitegen.reading.value_types.group import Group, Key
from sitegen.reading.value_types.number import Number
from sitegen.reading.value_types.one_or_more import OneOrMore
from sitegen.reading.value_types.text import LINE, NAME, PARAGRAPHS, WORD

# A pinhole has a fifth of a millimetre, a telephone's lens 1.5 mm of aperture and 4 mm of focal length.
APERTURE = Number(unit="mm", least=0.1, most=100_000)
FOCAL_LENGTH = Number(unit="mm", least=1, most=100_000)
# The strongest reducers have 0.2, and two Barlows in a row 5.
FACTOR = Number(least=0.1, most=10)
# The smallest pixels made have half a micrometre; a wave of green light is as long.
PIXEL_SIZE = Number(unit="µm", least=0.3, most=1000)
# Solar etalons pass 0.03 nm.
WIDTH = Number(unit="nm", least=0.01, most=2000)
NANOMETRES = Number(unit="nm", least=200, most=3000)
PIXELS = Number(unit="px", least=1, most=100_000, whole=True)

TELESCOPE_KEYS = (
    Key("design", LINE, "Its kind, in words.", "Newtonian"),
    Key("aperture_mm", APERTURE, "Clear aperture.", "200"),
    Key("obstruction_mm", Number(unit="mm", least=0, most=100_000), "Diameter of the secondary.", "58"),
    Key("focal_length_mm", FOCAL_LENGTH, "Nominal, without reducer or Barlow.", "1000", required=True),
    Key("factor", FACTOR, "Reducer or corrector below 1, Barlow above.", "0.95", default="1"),
)  # fmt: skip
CAMERA_KEYS = (
    Key("name", LINE, "Its make, or what you call it.", "mono camera"),
    Key("pixel_um", PIXEL_SIZE, "Pixel size, unbinned.", "3.76", required=True),
    Key("width_px", PIXELS, "Width of the unbinned frame.", "6248", required=True),
    Key("height_px", PIXELS, "Height of the unbinned frame.", "4176", required=True),
    Key("colour", Choice(("mono", "colour")), "Whether the sensor itself sees colour.", "mono", required=True),
)  # fmt: skip

FILTER = Group(
    (
        Key("name", LINE, "What visitors read.", "hydrogen-alpha", default="its short name"),
        Key("kind", Choice(("broadband", "narrowband", "dual-band")), "What the Moon may do to it.", "narrowband", required=True),
        Key("centre_nm", OneOrMore(NANOMETRES), "Centre of the passband, or of each; the colour on the site comes from it.",
            "656.3"),
        Key("width_nm", WIDTH, "Width of a passband.", "7"),
        Key("spelt", ListOf(NAME, or_one=True),
            "What else logs call it. Case, blanks, hyphens, Greek letters and a width (`Ha 3nm`) are understood without.",
            "[Ha wide]"),
    ),
    called="a filter",
)  # fmt: skip

CHANGE = Group(
    (
        Key("from", Day(past=True), "The first evening on which the train stood like this.", "2026-04-18", required=True),
        *(replace(key, required=False, default=None) for key in (*TELESCOPE_KEYS, *CAMERA_KEYS)),
        Key("note", LINE, "Why.", "reducer moved 2 mm inward"),
    ),
    called="a change",
    remedies=(
        ("telescope", "write its keys beside 'from', without 'telescope:'"),
        ("camera", "write its keys beside 'from', without 'camera:'"),
    ),
)  # fmt: skip

WORK = Group(
    (
        Key("date", Day(past=True), "When it was done.", "2026-04-11", required=True),
        Key("part", LINE, "On what.", "secondary mirror", required=True),
        Key("what", LINE, "What was done.", "turned until it looked round from the focuser", required=True),
        Key("note", PARAGRAPHS, "Why, and what came of it.", "stars in the corners were long"),
        Key("caution", Choice(get_args(CautionKind)), "What could hurt somebody who copies it, where its words do not say so.",
            "laser"),
    ),
    called="a piece of work",
)  # fmt: skip

RIG_FILE = AuthorFile(
    name="rig",
    pattern="rigs/NAME.yaml",
    explained="One optical train and its history. NAME is what entries call it.",
    group=Group(
        (
            Key("name", LINE, "What visitors read.", "Dome Newtonian", required=True),
            Key("telescope", Group(TELESCOPE_KEYS, called="a telescope"), "The optics at the beginning.",
                "{aperture_mm: 200, focal_length_mm: 1000}", required=True),
            Key("camera", Group(CAMERA_KEYS, called="a camera"), "The camera at the beginning.",
                "{pixel_um: 3.76, width_px: 6248, height_px: 4176, colour: mono}", required=True),
            Key("mount", LINE, "What carries it.", "equatorial fork"),
            Key("guiding", LINE, "What keeps it on the target.", "off-axis guider"),
            Key("other", PARAGRAPHS, "Whatever else belongs to it.", "dew heaters"),
            Key("filters", MapOf(WORD, FILTER, "SHORT"), "By the short names that the logs use.",
                "{Ha: {kind: narrowband, centre_nm: 656.3}}"),
            Key("changes", ListOf(CHANGE),
                "What was different from an evening on, in date order: any key of telescope and camera.",
                "[{from: 2026-04-18, factor: 0.73}]"),
            Key("work", ListOf(WORK), "What was adjusted, when, and why.", "[{date: 2026-04-11, part: focuser, what: squared}]"),
        ),
        called="a rig",
    ),
)  # fmt: skip
