"""The ten years of `decade.py`, grown by what else lies on such disks: a mosaic, a planet, camera files, lists of older years.

Camera files are EXIF written by Pillow into JPEG and into a bare TIFF structure (.cr2): no library at hand writes a maker's
whole raw file, and none writes CR3, RAF, RW2 or IIQ. The workbook is openpyxl's. Lists and lines are invented: common practice,
no source.
"""

from datetime import UTC, datetime, timedelta
from typing import Any

import openpyxl
from msgspec.structs import replace
from PIL import Image
from PIL.ExifTags import IFD, Base
from PIL.TiffImagePlugin import IFDRational

from tests.disk import frames
from tests.disk.capture import Capture, Disk, Sky
from tests.disk.decade import COLOUR, FIRST, REDUCED, SOUTH, write_decade
from tests.disk.truth import DiskFile, TrueFrame
from tests.reading.capture_logs.test_exif_tags import structure

PAW = Sky("NGC 6334", 260.19, -36.1, "ngc-6334")
JUPITER = Sky("Jupiter", 74.9, 22.0, "jupiter")
FURNACE = Sky("", 53.402, -36.141, "ngc-1365")
CENTAURUS = Sky("NGC 5128", 201.365, -43.019, "ngc-5128")
ACROSS_DEG, DOWN_DEG = 0.2, 0.15
"""From panel to panel, of a field of 0.248° × 0.186°: 3.2 mm × 2.4 mm at 740 mm."""
PANELS = {"1": (-0.5, 0.5), "2": (0.5, 0.5), "P3": (-0.5, -0.5), "P4": (0.5, -0.5)}
"""In steps to the east and to the north of the target; the last two are named in OBJECT."""
LINES = (
    "{start:%H:%M:%S} exposing {exposure_s} s with {filter}",
    "{end:%H:%M:%S} stored {file}",
    "{discarded:%H:%M:%S} thrown away: {file} ({reason})",
)
SPOILT = 3
"""Frames of the Tarantula that the grading table throws away."""


class Grown(Disk):
    """`listed`: what tables and text logs tell of, which lies in no frame file; `panels`: by name, the mosaic's frames."""

    listed: list[TrueFrame]
    panels: dict[str, list[TrueFrame]]
    judged: list[str]


def write_grown(disk: Grown) -> None:
    disk.listed, disk.panels, disk.judged = [], {}, []
    write_decade(disk)
    mosaic(disk)
    planet(disk)
    camera(disk)
    semicolons(disk)
    workbook(disk)
    lines(disk)
    grades(disk)


def mosaic(disk: Grown) -> None:
    """Two nights, two panels each; one panel has a frame thrown away."""
    for number, (name, (east, north)) in enumerate(PANELS.items()):
        called = f"NGC6334_{name}" if name.startswith("P") else "NGC 6334"
        place = (PAW.ra_deg + east * ACROSS_DEG / 0.808, PAW.dec_deg + north * DOWN_DEG)  # cos 36.1°
        own = Capture(disk, "paw", REDUCED, SOUTH, Sky(called, *place, PAW.page), frames.plain)
        own.number = 100 * number
        night, hour = 11 + number // 2, 10 + 3 * (number % 2)
        taken = own.shoot("2024/paw", f"2024-07-{night}T{hour:02d}:30:00", 8 + number, 240.0, "Ha")
        taken += own.shoot("2024/paw", f"2024-07-{night}T{hour + 1}:30:00", 3, 240.0, "OIII")
        if name == "2":
            own.number += 50
            taken += own.shoot("2024/paw/rejected", f"2024-07-{night}T{hour + 2}:00:00", 2, 240.0, "OIII", fate="discarded")
        disk.panels[name.removeprefix("P")] = [each.file.frame for each in taken if each.file.frame is not None]


def planet(disk: Disk) -> None:
    """Two nights, between which it moved on; no filter."""
    own = Capture(disk, "jupiter", COLOUR, SOUTH, JUPITER, frames.plain)
    own.shoot("2024/planets", "2024-12-07T12:00:00", 20, 30.0)
    later = replace(JUPITER, ra_deg=73.9)
    own.sky = later
    own.shoot("2024/planets", "2024-12-14T12:00:00", 15, 30.0)


def camera(disk: Disk) -> None:
    """The colour camera's own card: each exposure as raw file and JPEG, a film beside them. Its files
    name neither telescope nor camera nor place."""
    own = Capture(disk, "furnace", COLOUR, SOUTH, FURNACE, frames.plain)
    for number, moment in enumerate(own.starts("2018-12-14T12:00:00", 12, 60.0, whole=True)):
        tags = _exif(moment, 60)
        name = f"DCIM/NGC 1365/IMG_{number:04d}"
        _save(disk, f"{name}.CR2", structure(tags))
        frame = TrueFrame(moment, 60.0, COLOUR.rig, SOUTH, FURNACE.page, None, True)
        disk.note(DiskFile(f"{name}.CR2", "furnace", "kept", "a camera's raw file", frame))
        picture = Image.Exif()
        picture.get_ifd(IFD.Exif).update(tags)
        Image.new("RGB", (60, 40)).save(disk.root / f"{name}.JPG", exif=picture)
        disk.note(DiskFile(f"{name}.JPG", "furnace", "passed_over", "the JPEG of a raw file"))
    disk.junk("DCIM/NGC 1365/MVI_0001.MOV", b"x", "furnace", "a film")


def _exif(moment: datetime, exposure_s: int) -> dict[Any, Any]:
    return {Base.DateTimeOriginal: moment.strftime("%Y:%m:%d %H:%M:%S"), Base.ExposureTime: IFDRational(exposure_s, 1),
            Base.ISOSpeedRatings: 1600, Base.OffsetTimeOriginal: "+00:00"}  # fmt: skip


def _save(disk: Disk, path: str, content: bytes) -> None:
    (disk.root / path).parent.mkdir(parents=True, exist_ok=True)
    (disk.root / path).write_bytes(content)


def _list(disk: Grown, start: str, exposure_s: float, short: str, kept: bool = True) -> None:
    moment = datetime.fromisoformat(start).replace(tzinfo=UTC)
    disk.listed.append(TrueFrame(moment, exposure_s, FIRST.rig, SOUTH, CENTAURUS.page, short, kept))


def semicolons(disk: Grown) -> None:
    """Decimal commas, day first, taken and good counts, a merged date, a sum row; the clock is the wall's (UTC + 9.5 h)."""
    rows = (
        "Datum;Beginn;Filter;Belichtung (s);Anzahl;Gut", "18.04.2012;21:00;L;300,0;12;10", ";22:30;R;180,5;6;6",
        "19.04.2012;20:45;L;300,0;8;8", "Summe;;;;26;24",
    )  # fmt: skip
    disk.junk("lists/2012.csv", ("\n".join(rows) + "\n").encode(), "lists", "a table")
    for start, count, good, exposure_s, short in (("2012-04-18T11:30:00", 12, 10, 300.0, "L"),
                                                  ("2012-04-18T13:00:00", 6, 6, 180.5, "R"),
                                                  ("2012-04-19T11:15:00", 8, 8, 300.0, "L")):  # fmt: skip
        for number in range(count):
            _list(disk, start, exposure_s, short, number < good)


def workbook(disk: Grown) -> None:
    """A sheet with dates and clocks as a spreadsheet keeps them."""
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.append(["Date", "Begin", "Filter", "Exposure (s)", "Count"])
    for evening, clock, short, exposure_s, count in ((20, 21, "L", 240.0, 5), (20, 23, "Ha", 600.0, 4), (22, 20, "Ha", 600.0, 3)):
        sheet.append([datetime(2013, 5, evening).date(), datetime(2013, 5, 20, clock).time(), short, exposure_s, count])  # noqa: DTZ001 # no zone
        for _ in range(count):
            _list(disk, f"2013-05-{evening}T{clock - 10:02d}:30:00", exposure_s, short)
    (disk.root / "lists").mkdir(exist_ok=True)
    book.save(disk.root / "lists/2013.xlsx")
    disk.note(DiskFile("lists/2013.xlsx", "lists", "passed_over", "a workbook"))


def lines(disk: Grown) -> None:
    """Start, end and thrown-away lines over local midnight; the date is in the file's name."""
    moment, text = datetime(2014, 6, 3, 13, 40, tzinfo=UTC), ["the roof is open"]
    for number in range(9):
        spoilt = number == 4
        local = (moment + timedelta(hours=9.5)).strftime("%H:%M:%S")
        ended = (moment + timedelta(hours=9.5, seconds=301)).strftime("%H:%M:%S")
        text += [f"{local} exposing 300 s with R", f"{ended} stored cen_{number:03d}.fits"]
        text += [f"{ended} thrown away: cen_{number:03d}.fits (a satellite)"] if spoilt else []
        _list(disk, moment.strftime("%Y-%m-%dT%H:%M:%S"), 300.0, "R", not spoilt)
        moment += timedelta(seconds=310)
    disk.junk("lists/2014-06-03.log", ("\n".join([*text, "the roof is shut"]) + "\n").encode(), "lists", "a text log")


def grades(disk: Grown) -> None:
    """Of the Tarantula's luminance, by name, with another ending; some are thrown away; one row meets no frame."""
    own = [each for each in disk.files if each.project == "tarantula" and each.fate == "kept" and "calib" not in each.path][:24]
    rows = ["File;FWHM (px);Eccentricity;Stars;Verdict;Reason"]
    for number, each in enumerate(own):
        name, spoilt = each.path.rpartition("/")[2].replace(".fits", "_c.xisf"), number in range(5, 5 + SPOILT)
        fwhm_px, verdict = f"{2 + number / 10:.1f}".replace(".", ","), "rejected;wind" if spoilt else "ok;"
        rows.append(f"{name};{fwhm_px};0,6;{900 - number};{verdict}")
        if spoilt:
            disk.judged.append(each.path)
    rows.append("nobody_001.fits;2,2;0,5;100;ok;")
    disk.junk("lists/grades.csv", ("\n".join(rows) + "\n").encode(), "lists", "a grading table")


def own_frames(disk: Grown) -> list[tuple[str, TrueFrame]]:
    """Every frame with its project, as it is once the grading table is read."""
    of_files = [(each.project, replace(each.frame, kept=each.frame.kept and each.path not in disk.judged))
                for each in disk.files if each.frame is not None and each.fate in ("kept", "discarded")]  # fmt: skip
    return [*of_files, *(("lists", frame) for frame in disk.listed)]

