"""The keys of an entry's `panels`: the fields that a mosaic is put together from."""

from sitegen.reading.value_types.angle import Declination, RightAscension
from sitegen.reading.value_types.group import Group, Key
from sitegen.reading.value_types.number import Number
from sitegen.reading.value_types.text import WORD

PANEL = Group(
    (
        Key("name", WORD, "What it is called: in logs under `panel`, in tables and on maps.", "north-east", required=True),
        Key("ra", RightAscension(), "Of its middle, ICRS.", "00 48 20", default="where its frames point"),
        Key("dec", Declination(), "Of its middle, ICRS.", "-25 05 00", default="where its frames point"),
        Key("rotation_deg", Number(unit="degrees", least=-360, most=360),
            "Position angle of the camera's up, from north through east.", "12.5", default="that of a solved picture of the rig"),
    ),
    called="a panel",
    remedies=(("title", "did you mean 'name'?"), ("angle", "did you mean 'rotation_deg'?"),
              ("rotation", "did you mean 'rotation_deg'?"), ("position_angle", "did you mean 'rotation_deg'?")),
)  # fmt: skip
