"""Ten invented projects of ten years: one telescope whose camera and reducer changed, a colour camera, a lens in the north; a
disk whose headers leave out what its author knows. Written with the troubles of `troubles.py`, the truth beside it."""

from collections.abc import Callable
from datetime import timedelta

from msgspec.structs import replace

from tests.disk import frames, troubles
from tests.disk.capture import Capture, Disk, Sky, last_of
from tests.disk.frames import Train
from tests.disk.truth import Place

SOUTH = Place("34s-139e", -34.2, 138.9, "Australia/Adelaide")
NORTH = Place("60n-25e", 60.2, 25.0, "Europe/Helsinki")
PLACES = (SOUTH, NORTH)
FIRST = Train("garden-newtonian", 1000.0, 200.0, 9.0, 480, 360, telescope="Garden Newtonian", camera="first camera")
SECOND = replace(FIRST, camera="second camera", pixel_um=5.0, width_px=640, height_px=480)
REDUCED = replace(SECOND, focal_length_mm=740.0)
COLOUR = Train("small-refractor", 400.0, 70.0, 7.5, 480, 360, "colour", telescope="Small refractor", camera="colour camera")
LENS = Train("135-mm", 135.0, 50.0, 9.0, 320, 240, telescope="", camera="lens camera")
RIGS = ("garden-newtonian", "small-refractor", "135-mm")
CHANGES = {"2019-09-25": "pixel_um: 5", "2022-12-20": "focal_length_mm: 740"}
"""Of the garden Newtonian: the first evening of each train, and a key of it."""

SCULPTOR = Sky("NGC 253", 11.888, -25.288, "ngc-253")
HELIX = Sky("NGC 7293", 337.411, -20.837, "ngc-7293")
HEART = Sky("IC 1805", 38.175, 61.45, "ic-1805")
PINWHEEL = Sky("M 83", 204.254, -29.866, "m-83")
TARANTULA = Sky("NGC 2070", 84.676, -69.101, "ngc-2070")
CARINA = Sky("NGC3372", 161.265, -59.867, "ngc-3372")
KETTLE = Sky("Kettle Knot", 120.0, -45.0, "kettle-knot")
TUCANA = Sky("", 6.024, -72.081, "ngc-104")
PEACOCK = Sky("", 287.442, -63.857, "ngc-6744")
UNKNOWN_FILTER = "Nebula X"
NOTHING_TOLD = {"object": "", "ra_deg": None, "dec_deg": None}
ENTRIES = {
    "sculptor-old": "ngc-253-2016", "helix": "ngc-7293", "sculptor-new": "ngc-253-2019", "heart": "ic-1805",
    "pinwheel": "m-83", "peacock": "ngc-6744", "tarantula": "ngc-2070", "carina": "ngc-3372", "kettle": "kettle-knot",
    "tucana": "ngc-104",
}  # fmt: skip
"""By project, what its draft is called: the target, and the year where there are several seasons."""


def write_decade(disk: Disk) -> None:
    for fill in FILL:
        fill(disk)


def sculptor_old(disk: Disk) -> None:
    own = Capture(disk, "sculptor-old", FIRST, SOUTH, SCULPTOR, frames.plain)
    own.shoot("2016/sculptor/1", "2016-09-28T12:00:00", 50, 180.0, "L")
    own.shoot("2016/sculptor/2", "2016-09-29T12:00:00", 20, 180.0, "Red", "R")
    troubles.rejected_folder(own, "2016/sculptor/2", "2016-09-29T13:30:00", 5, 180.0, "R", "rejected")
    troubles.calibration(own, "2016/calibration", "2016-09-30T20:00:00", "L", cased=False)


def helix(disk: Disk) -> None:
    """Starts in whole seconds; a filter that nobody knows; thrown-away frames by name."""
    own = Capture(disk, "helix", FIRST, SOUTH, HELIX, frames.whole_seconds)
    own.shoot("2017/helix", "2017-08-20T12:00:00", 20, 300.0, "Ha 7nm", "Ha", whole=True)
    own.shoot("2017/helix", "2017-08-21T12:00:00", 20, 300.0, "O III", "OIII", whole=True)
    own.shoot("2017/helix", "2017-08-22T12:00:00", 6, 300.0, UNKNOWN_FILTER, "OIII", whole=True)
    troubles.bad_prefix(own, "2017/helix", "2017-08-22T13:00:00", 4, 300.0, "Ha")


def sculptor_new(disk: Disk) -> None:
    """The same target three years later, through another camera; a name left over from the evening's first target."""
    own = Capture(disk, "sculptor-new", SECOND, SOUTH, SCULPTOR, frames.plain)
    first = own.shoot("2019/sculptor", "2019-09-25T12:00:00", 30, 240.0, "L")
    troubles.focus_in_line(own, "2019/sculptor", "2019-09-25T11:30:00", "L")
    troubles.combined(own, first[:12], "2019/sculptor/result/stack.fits", counted=True)
    own.shoot("2019/sculptor", "2019-09-26T12:00:00", 20, 240.0, "L")
    troubles.unreadable(own, "2019/sculptor")


def heart(disk: Disk) -> None:
    """A lens in the north; the headers name a camera, and no telescope."""
    own = Capture(disk, "heart", LENS, NORTH, HEART, frames.by_the_standard)
    own.shoot("2020/north", "2020-01-18T17:00:00", 25, 300.0, "Ha")
    own.shoot("2020/north", "2020-01-19T17:00:00", 15, 300.0, "OIII")


def pinwheel(disk: Disk) -> None:
    """A colour camera without a filter, whose headers tell no place: its rig was never anywhere else but in the south."""
    own = Capture(disk, "pinwheel", COLOUR, SOUTH, PINWHEEL, frames.plain)
    own.shoot("2021/pinwheel", "2021-05-10T11:00:00", 30, 180.0)
    nowhere = {"SITELAT": None, "SITELONG": None}
    own.shoot("2021/pinwheel", "2021-05-11T11:00:00", 20, 180.0, cards=nowhere, why="a sub without a place")


def peacock(disk: Disk) -> None:
    """Neither OBJECT nor pointing; the folder says it."""
    own = Capture(disk, "peacock", SECOND, SOUTH, PEACOCK, frames.plain)
    own.shoot("2021/NGC 6744 Pavo", "2021-08-08T10:30:00", 30, 240.0, "L", **NOTHING_TOLD)


def tarantula(disk: Disk) -> None:
    """The reducer is in; every kind of copy."""
    own = Capture(disk, "tarantula", REDUCED, SOUTH, TARANTULA, frames.plain)
    taken = own.shoot("2022/tarantula", "2022-12-20T13:00:00", 24, 240.0, "L")
    taken += own.shoot("2022/tarantula", "2022-12-21T13:00:00", 24, 240.0, "Ha")
    troubles.calibrated_copies(own, taken, "2022/tarantula/calibrated")
    troubles.registered_copies(own, taken[:24], "2022/tarantula/registered")
    troubles.backups(own, taken[:10], "backup/tarantula", ".fits.gz")
    troubles.junk(own, "2022/tarantula")


def carina(disk: Disk) -> None:
    """The clock on the wall, and TIMESYS says so; no place in the headers. Focus runs in a folder of their own."""
    own = Capture(disk, "carina", REDUCED, SOUTH, CARINA, frames.told_local)
    taken = own.shoot("2023/carina", "2023-04-02T13:30:00", 25, 300.0, "Ha")
    troubles.focus_folder(own, "2023/carina/focus", "2023-04-02T13:00:00", "Ha")
    after = (last_of(taken) + timedelta(minutes=5)).strftime("%Y-%m-%dT%H:%M:%S")
    troubles.rejected_folder(own, "2023/carina", after, 3, 300.0, "Ha", "bad")


def kettle(disk: Disk) -> None:
    """A name of the author's own; frames without it, and without it and a pointing."""
    own = Capture(disk, "kettle", REDUCED, SOUTH, KETTLE, frames.plain)
    own.shoot("2024/kettle", "2024-02-20T11:30:00", 20, 300.0, "L")
    own.shoot("2024/kettle", "2024-02-20T13:30:00", 6, 300.0, "L", object="")
    own.shoot("2024/kettle", "2024-02-20T14:10:00", 4, 300.0, "L", **NOTHING_TOLD)


def tucana(disk: Disk) -> None:
    """Nothing tells what it is; one set of frames that belongs to nobody."""
    own = Capture(disk, "tucana", REDUCED, SOUTH, TUCANA, frames.plain)
    own.shoot("2025/loose", "2025-10-04T13:00:00", 30, 120.0, "L", **NOTHING_TOLD)
    own.shoot("2025/loose", "2025-10-05T13:00:00", 30, 120.0, "L", **NOTHING_TOLD)
    strange = {"fate": "other_target", "why": "a test of the mount, left out by its author"}
    own.shoot("2025/tests", "2025-10-06T13:00:00", 5, 60.0, "L", **NOTHING_TOLD, **strange)


FILL: tuple[Callable[[Disk], None], ...] = (
    sculptor_old, helix, sculptor_new, heart, pinwheel, peacock, tarantula, carina, kettle, tucana
)  # fmt: skip
