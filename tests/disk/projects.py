"""Ten invented projects of a school observatory in the southern hemisphere and of a winter's visit to 60° N.

Start times are UTC. At the school's longitude the Sun is lowest near 14:44, at the lake near 22:20.
"""

from collections.abc import Callable
from datetime import timedelta

from msgspec import Struct
from msgspec.structs import replace

from tests.disk import frames, troubles
from tests.disk.capture import Capture, Disk, Sky
from tests.disk.frames import Train
from tests.disk.truth import Place

SCHOOL = Place("school", -34.2, 138.9, "Australia/Adelaide")
LAKE = Place("lake", 60.2, 25.0, "Europe/Helsinki")
PLACES = (SCHOOL, LAKE)

LONG = Train("long", 750.0, 200.0, 15.0, 480, 360, telescope="long tube", camera="square camera")
WIDE = Train("wide", 135.0, 50.0, 9.0, 320, 240, telescope="riding lens", camera="small camera")
EAST = Train("east", 530.0, 106.0, 9.0, 480, 360, telescope="east tube", camera="twin camera")
WEST = replace(EAST, rig="west", telescope="west tube")
LIGHT = Train("light", 200.0, 50.0, 12.0, 320, 240, telescope="travelling tube", camera="travelling camera")
SMALL = Train("small", 250.0, 60.0, 12.0, 400, 300, "colour", telescope="small tube", camera="colour camera")
ARCHIVE = Train("archive", 2000.0, 300.0, 18.0, 256, 200, telescope="dome tube", camera="first camera", binning=2)
TRAINS = (LONG, WIDE, EAST, WEST, LIGHT, SMALL, ARCHIVE)
FILTERS = {"long": "L R G B Ha OIII", "wide": "L", "east": "L Ha OIII", "west": "L Ha OIII", "light": "Ha OIII", "archive": "L"}
UNKNOWN_FILTER, UNKNOWN_IS = "Nebula X", "OIII"

SCULPTOR = Sky("NGC 253", 11.888, -25.288, "ngc-253")
HELIX = Sky("NGC 7293", 337.411, -20.837, "ngc-7293")
CARINA = Sky("NGC3372", 161.265, -59.867, "ngc-3372")
TUCANA = Sky("47 Tuc", 6.024, -72.081, "ngc-104")
TARANTULA = Sky("NGC 2070", 84.676, -69.101, "ngc-2070")
PAW = Sky("NGC 6334", 260.19, -36.10, "ngc-6334")
KETTLE = Sky("Kettle Knot", 120.0, -45.0, "kettle-knot")
HEART = Sky("IC 1805", 38.175, 61.45, "ic-1805")
PINWHEEL = Sky("M 83", 204.254, -29.866, "m-83")
OMEGA = Sky("NGC 5139", 201.697, -47.48, "ngc-5139")


class Project(Struct, frozen=True):
    """One entry with a log to gather: `folders` below the disk. `target` as the entry names it, in YAML. `witness` is the one
    doubt that `check` must raise, None for a sound project."""

    name: str
    published: str
    target: str
    sky: Sky
    rig: str
    place: Place
    folders: tuple[str, ...]
    options: tuple[str, ...] = ()
    witness: str | None = None


WALL_CLOCK = ("--time-zone", "Australia/Adelaide")
PROJECTS = (
    Project("omega", "1999-04-02", "NGC 5139", OMEGA, "archive", SCHOOL, ("omega",)),
    Project("heart", "2025-02-01", "IC 1805", HEART, "light", LAKE, ("heart",)),
    Project("kettle", "2025-03-01", "{name: Kettle Knot, ra: 120.0, dec: -45.0}", KETTLE, "long", SCHOOL, ("kettle",),
            witness="focal length"),
    Project("carina", "2025-05-01", "NGC 3372", CARINA, "east", SCHOOL, ("carina/east",), WALL_CLOCK),
    Project("carina-west", "2025-05-02", "NGC 3372", CARINA, "west", SCHOOL, ("carina/west",), WALL_CLOCK, "daylight"),
    Project("pinwheel", "2025-06-01", "M 83", PINWHEEL, "small", SCHOOL, ("pinwheel",), witness="place"),
    Project("paw", "2025-08-01", "NGC 6334", PAW, "long", SCHOOL, ("paw",)),
    Project("sculptor", "2025-10-20", "NGC 253", SCULPTOR, "long", SCHOOL, ("sculptor",)),
    Project("tucana", "2025-10-21", "NGC 104", TUCANA, "east", SCHOOL, ("tucana",), WALL_CLOCK),
    Project("helix", "2025-12-01", "NGC 7293", HELIX, "long", SCHOOL, ("helix", "sculptor/2025-10-02"), witness="horizon"),
    Project("tarantula", "2025-12-20", "NGC 2070", TARANTULA, "long", SCHOOL, ("tarantula",)),
)  # fmt: skip
PAIR = "pair"
PAIR_PUBLISHED = "2025-11-15"
PAIR_SKIES = (Sky("NGC 55", 3.785, -39.197, "ngc-55"), Sky("NGC 300", 13.723, -37.684, "ngc-300"))
PROGRESS = "tarantula-progress"
PROGRESS_PUBLISHED = "2025-12-12"


def write_disk(disk: Disk) -> None:
    for fill in FILL:
        fill(disk)


def sculptor(disk: Disk) -> None:
    """Several objects and a second telescope in one folder; thrown-away frames by folder and by name; everything else that lies
    in such a folder."""
    own = Capture(disk, "sculptor", LONG, SCHOOL, SCULPTOR, frames.plain)
    first = own.shoot("sculptor/2025-10-01", "2025-10-01T11:10:00", 20, 300.0, "L")
    troubles.jpeg_pairs(own, first[:4])
    night = "sculptor/2025-10-02"
    troubles.other_object(own, "helix", HELIX, night, "2025-10-02T10:45:00", 8, 300.0, "Ha")
    troubles.object_left_from_before(own, "helix", HELIX, night, "2025-10-02T11:35:00", 5, 300.0, "Ha")
    troubles.other_object_without_pointing(own, "tucana", TUCANA, night, "2025-10-02T12:10:00", 6, 120.0, "R")
    own.shoot(night, "2025-10-02T12:40:00", 12, 300.0, "L")
    night = "sculptor/2025-10-03"
    own.shoot(night, "2025-10-03T11:30:00", 6, 300.0, "R")
    own.shoot(night, "2025-10-03T12:10:00", 6, 300.0, "G")
    troubles.second_telescope(own, WIDE, night, "2025-10-03T11:30:00", 6, 120.0, "L")
    troubles.junk(own, night)
    night = "sculptor/2025-10-06"
    own.shoot(night, "2025-10-06T11:30:00", 10, 300.0, "B")
    troubles.rejected_folder(own, night, "2025-10-06T12:30:00", 4, 300.0, "B", "rejected")
    troubles.bad_prefix(own, night, "2025-10-06T13:00:00", 2, 300.0, "B")
    troubles.sound_badlands(own, night, "2025-10-06T13:20:00", 2, 300.0, "B")
    troubles.unreadable(own, night)
    troubles.calibration(own, "sculptor/calibration", "2025-10-07T20:00:00", "L", cased=False)


def helix(disk: Disk) -> None:
    """Filters as people spell them, one that nobody knows, a German folder of frames thrown away, one sub after moonset of the
    target."""
    own = Capture(disk, "helix", LONG, SCHOOL, HELIX, frames.plain)
    own.shoot("helix/2025-08-20", "2025-08-20T12:00:00", 12, 300.0, "Ha 3nm", "Ha")
    own.shoot("helix/2025-08-20", "2025-08-20T13:10:00", 8, 300.0, "H-alpha", "Ha")
    own.shoot("helix/2025-08-21", "2025-08-21T12:00:00", 10, 300.0, "oiii", "OIII")
    own.shoot("helix/2025-08-21", "2025-08-21T13:00:00", 8, 300.0, "O III", "OIII")
    own.shoot("helix/2025-08-21", "2025-08-21T14:00:00", 3, 300.0, UNKNOWN_FILTER, UNKNOWN_IS)
    troubles.rejected_folder(own, "helix/2025-08-21", "2025-08-21T14:30:00", 2, 300.0, "OIII", "verworfen")
    troubles.below_the_horizon(own, "helix/2025-11-20", "2025-11-20T16:50:00", 300.0, "L")


def carina(disk: Disk) -> None:
    """Twin rigs fired together; every kind of derivative; a clock on the wall, so says the header, and put back at 16:30 UTC."""
    east = Capture(disk, "carina", EAST, SCHOOL, CARINA, frames.told_local)
    night = "carina/east/2025-04-05"
    early = east.shoot(night, "2025-04-05T10:20:00", 12, 300.0, "Ha")
    late = east.shoot(night, "2025-04-05T14:00:00", 12, 300.0, "Ha")
    after = east.shoot(night, "2025-04-05T17:40:00", 10, 300.0, "Ha")
    oxygen = east.shoot("carina/east/2025-04-08", "2025-04-08T10:00:00", 6, 300.0, "OIII")
    troubles.real_long_sub(east, "carina/east/2025-04-08", "2025-04-08T10:45:00", "OIII")
    troubles.only_calibrated_left(east, "carina/east/calibrated", "2025-04-08T11:30:00", 2, 300.0, "OIII")
    spoilt = troubles.rejected_folder(east, night, "2025-04-05T15:10:00", 1, 300.0, "Ha", "rejected")
    every = [*early, *late, *after, *oxygen]
    troubles.calibrated_copies(east, [*every, *spoilt], "carina/east/calibrated")
    troubles.registered_copies(east, every[:38], "carina/east/registered")
    troubles.backups(east, [*early, *spoilt], "carina/east/backup", ".fits.gz")
    troubles.backups(east, late, "carina/east/backup", ".fits")
    troubles.backups(east, after[:5], "carina/east/backup", ".fits.fz")
    troubles.combined(east, early, "carina/east/result/hydrogen_early.fits", counted=True)
    troubles.combined(east, late, "carina/east/result/hydrogen_late.fits", counted=False)
    troubles.combined(east, after, "carina/east/result/hydrogen_after.fits", counted=False)
    troubles.combined(east, oxygen, "carina/east/result/oxygen.fits", counted=True)
    west = Capture(disk, "carina-west", WEST, SCHOOL, CARINA, frames.told_local)
    for each in (*early, *late):
        shot = replace(each.shot, train=WEST, start=each.shot.start + timedelta(seconds=0.12))
        west.save("carina/west/2025-04-05", shot, "Ha", "kept", "the twin camera fired together with the other")
    troubles.daylight(west, "carina/west/2025-04-05", "2025-04-05T21:20:00", 3, 300.0, "L")


def tucana(disk: Disk) -> None:
    """Focus runs among short subs; the wall clock, and nothing says so, put forward at 16:30 UTC in the middle of a run."""
    own = Capture(disk, "tucana", EAST, SCHOOL, TUCANA, frames.local_clock)
    night = "tucana/2025-10-04"
    troubles.focus_folder(own, "tucana/focus", "2025-10-04T12:30:00", "L")
    troubles.focus_in_line(own, night, "2025-10-04T12:45:00", "L")
    own.shoot(night, "2025-10-04T13:00:00", 16, 120.0, "L")
    troubles.bright_core(own, night, "2025-10-04T14:10:00", 20, "L")
    own.shoot(night, "2025-10-04T16:10:00", 14, 120.0, "L", why="a sub across the change of the clock")
    own.shoot("tucana/2025-10-07", "2025-10-07T12:00:00", 10, 120.0, "L")


def tarantula(disk: Disk) -> None:
    """Starts in whole seconds. A table tells of the first two nights, too; one frame was sorted out after that."""
    own = Capture(disk, "tarantula", LONG, SCHOOL, TARANTULA, frames.whole_seconds)
    for night in ("2025-12-10", "2025-12-11", "2025-12-12"):
        for number, moment in enumerate(own.starts(f"{night}T12:30:00", 12, 300.0, whole=True)):
            spoilt = night == "2025-12-10" and number == 4
            folder = f"tarantula/{night}/rejected" if spoilt else f"tarantula/{night}"
            why = "sorted out after the progress entry" if spoilt else "a sound sub"
            own.save(folder, own.shot(moment, 300.0, "L"), "L", "discarded" if spoilt else "kept", why)


def paw(disk: Disk) -> None:
    """Two panels; the second lies more than a field's diagonal from the target, next to the first, and was taken earlier."""
    second = Capture(disk, "paw", LONG, SCHOOL, replace(PAW, object="NGC 6334 Panel 2", dec_deg=-35.38), frames.plain)
    second.shoot("paw/2025-07-20", "2025-07-20T10:30:00", 32, 180.0, "Ha", why="a sub of the second panel")
    first = Capture(disk, "paw", LONG, SCHOOL, replace(PAW, object="NGC6334_P1", dec_deg=-35.76), frames.plain)
    first.number = 100
    first.shoot("paw/2025-07-21", "2025-07-21T10:30:00", 32, 180.0, "Ha", why="a sub of the first panel")


def kettle(disk: Disk) -> None:
    """A target of the author's own; frames without a name, and without a name and a pointing; another focal length typed."""
    own, cards = Capture(disk, "kettle", LONG, SCHOOL, KETTLE, frames.plain), troubles.header_focal_length(800.0)
    night = "kettle/2025-02-20"
    own.shoot(night, "2025-02-20T11:30:00", 12, 300.0, "L", cards=cards)
    own.shoot(night, "2025-02-20T12:40:00", 5, 300.0, "L", why="a sub without a name", object="", cards=cards)
    unnamed = {"object": "", "ra_deg": None, "dec_deg": None, "cards": cards}
    own.shoot(night, "2025-02-20T13:15:00", 3, 300.0, "L", why="a sub without a name and a pointing", **unnamed)


def heart(disk: Disk) -> None:
    """Two lines, far from home. Headers as the standard has them, kinds in lower case."""
    own = Capture(disk, "heart", LIGHT, LAKE, HEART, frames.by_the_standard)
    own.shoot("heart/2025-01-18", "2025-01-18T17:00:00", 15, 300.0, "Ha")
    own.shoot("heart/2025-01-19", "2025-01-19T17:00:00", 15, 300.0, "OIII")
    troubles.calibration(own, "heart/calibration", "2025-01-20T20:00:00", "Ha", cased=True)


def pinwheel(disk: Disk) -> None:
    """A colour camera without a filter, on a laptop that believes itself at 48° N."""
    own, cards = Capture(disk, "pinwheel", SMALL, SCHOOL, PINWHEEL, frames.plain), {}
    cards |= troubles.header_place_elsewhere("48 12 30.0", "11 36 00.0")
    own.shoot("pinwheel/2025-05-20", "2025-05-20T10:30:00", 14, 180.0, cards=cards)
    own.shoot("pinwheel/2025-05-21", "2025-05-21T10:30:00", 10, 180.0, cards=cards)


def omega(disk: Disk) -> None:
    """Two seasons from the school's first camera, dated as the last century did, binned."""
    own = Capture(disk, "omega", ARCHIVE, SCHOOL, OMEGA, frames.old)
    own.shoot("omega/1998", "1998-05-20T10:30:00", 15, 240.0, "Luminance", "L")
    own.shoot("omega/1999", "1999-03-10T13:30:00", 15, 240.0, "Luminance", "L")


FILL: tuple[Callable[[Disk], None], ...] = (
    sculptor, helix, carina, tucana, tarantula, paw, kettle, heart, pinwheel, omega
)  # fmt: skip
