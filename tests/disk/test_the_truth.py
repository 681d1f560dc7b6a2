"""The truth beside the disk, counted a second time: from the files alone, by the authority for their format."""

import hashlib
import math
from datetime import UTC, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from astropy.io import fits

from tests.disk import projects
from tests.disk.capture import Disk, Sky
from tests.disk.conftest import WrittenDisk
from tests.disk.diary import diary_truth
from tests.disk.projects import PROJECTS, TRAINS, write_disk
from tests.disk.truth import DiskFile, altitude_deg, gathered, sun_altitude_deg

SKIES = {each.page: each for each in vars(projects).values() if isinstance(each, Sky)}
FRAME_ENDINGS = (".fits", ".fits.gz", ".fits.fz")


def header_of(root: Path, file: DiskFile) -> fits.Header:
    """The header that tells of the frame: the second unit's where the image is compressed."""
    with fits.open(root / file.path) as units:
        return units[-1].header.copy()


def start_of(header: fits.Header) -> datetime:
    """As the FITS Standard 4.0 reads dates, but that the wall clock of `tucana` and `carina` is Adelaide's."""
    text = header.get("DATE-BEG") or header["DATE-OBS"]
    if "/" in text:
        return datetime.strptime(f"{text} {header['UT']}", "%d/%m/%y %H:%M:%S.%f").replace(tzinfo=UTC)
    on_the_wall = "EXPOSURE" in header
    return datetime.fromisoformat(text).replace(tzinfo=ZoneInfo("Australia/Adelaide") if on_the_wall else UTC)


def told_frames(disk: WrittenDisk) -> list[DiskFile]:
    return [each for each in disk.truth.files if each.frame is not None]


def test_it_is_large_enough() -> None:
    """Ten projects at least, one of them by two rigs."""
    assert len({each.sky.page for each in PROJECTS}) >= 10


def test_at_least_500_frames(disk: WrittenDisk) -> None:
    """Light frames that count, each once; and the files there are in all."""
    assert len(told_frames(disk)) >= 450
    assert sum(each.path.endswith(FRAME_ENDINGS) for each in disk.truth.files) >= 600


def test_every_file_has_its_truth(disk: WrittenDisk) -> None:
    """What lies on the disk is what is listed, each path once."""
    lying = sorted(path.relative_to(disk.root).as_posix() for path in disk.root.rglob("*") if path.is_file())
    assert lying == sorted(each.path for each in disk.truth.files)


def test_headers_say_what_is_true(disk: WrittenDisk) -> None:
    """astropy reads start, exposure and size of every sub as the truth has them; files are as long as their headers promise."""
    trains = {each.rig: each for each in TRAINS}
    for file in told_frames(disk):
        frame, header = file.frame, header_of(disk.root, file)
        assert frame is not None
        assert abs(start_of(header).astimezone(UTC) - frame.start) < timedelta(milliseconds=1), file
        exposure_s = next(header[key] for key in ("XPOSURE", "EXPTIME", "EXPOSURE") if key in header)
        train = trains[frame.rig]
        assert exposure_s == frame.exposure_s
        assert (header["NAXIS1"] * train.binning, header["NAXIS2"] * train.binning) == (train.width_px, train.height_px)
        assert header["XPIXSZ"] == train.pixel_um * header["XBINNING"]


def test_pixels_are_there(disk: WrittenDisk) -> None:
    """A hole in a file reads as zeros: the frames are whole."""
    with fits.open(disk.root / told_frames(disk)[0].path) as units:
        units.verify("exception")
        assert units[0].data.shape == (360, 480)


@pytest.mark.parametrize("project", PROJECTS, ids=lambda each: each.name)
def test_subs_counted_from_headers_alone(project: projects.Project, disk: WrittenDisk) -> None:
    """A second count that knows no fates: exposures that differ in start or telescope, at the target, by this telescope, of the
    camera's own making, no focus run. Their number and their seconds are those of the truth."""
    telescope = next(each.telescope for each in TRAINS if each.rig == project.rig)
    exposures: dict[datetime, float] = {}
    for file in disk.truth.under(project.folders):
        if not file.path.endswith(FRAME_ENDINGS) or file.fate in ("passed_over", "hidden", "unreadable"):
            continue
        header = header_of(disk.root, file)
        kind = str(header.get("IMAGETYP") or header.get("OBSTYPE")).casefold()
        exposure_s = next(header[key] for key in ("XPOSURE", "EXPTIME", "EXPOSURE") if key in header)
        calibration = any(word in kind for word in ("dark", "flat", "bias"))
        if calibration or header["TELESCOP"] != telescope or not 5 < exposure_s < 1000 or not at_target(header, project.sky):
            continue
        exposures[start_of(header).astimezone(UTC)] = exposure_s
    truth = gathered(disk.truth, project.name, project.folders).frames
    assert len(exposures) == len(truth)
    assert math.fsum(exposures.values()) == math.fsum(each.exposure_s for each in truth)


def at_target(header: fits.Header, sky: Sky) -> bool:
    """By pointing within a degree, else by name; a frame with neither belongs where it lies."""
    if "OBJCTDEC" in header:
        return True
    dec_deg = header.get("DEC", header.get("CRVAL2"))
    if dec_deg is not None:
        return abs(float(dec_deg) - sky.dec_deg) < 1
    return header.get("OBJECT", "") in ("", sky.object)


def test_subs_lie_under_a_night_sky(disk: WrittenDisk) -> None:
    """But for the four that are meant not to: the Sun below −12°, the target above 20°, whatever the clock in the header says."""
    wrong = []
    for file in told_frames(disk):
        frame = file.frame
        assert frame is not None
        sky = SKIES[frame.target]
        high = altitude_deg(sky.ra_deg, sky.dec_deg, frame.start, frame.place) > 20
        if not high or sun_altitude_deg(frame.start, frame.place) > -12:
            wrong.append(file.why)
    assert sorted(wrong) == ["a sub in daylight"] * 3 + ["a sub with the target below the horizon"]


def test_the_sums_of_the_diary_are_these(disk: WrittenDisk) -> None:
    """Worked out by hand from the list of projects; so a change of the generator cannot change the truth unseen."""
    truth = diary_truth(disk.truth)
    frames = truth.frames()
    by_hand_s = {
        "omega": 30 * 240, "heart": 30 * 300, "kettle": 20 * 300, "carina": 42 * 300 + 600, "carina-west": 27 * 300,
        "pinwheel": 24 * 180, "paw": 64 * 180, "sculptor": 56 * 300, "tucana": 40 * 120 + 20 * 10, "helix": 55 * 300,
        "tarantula": 35 * 300, "tarantula-progress": 24 * 300, "pair": 13 * 300,
    }  # fmt: skip
    own = {entry.name: math.fsum(each.exposure_s for each in entry.frames if each.kept) for entry in truth.entries}
    assert own == by_hand_s
    assert math.fsum(each.exposure_s for each in frames if each.kept) == sum(by_hand_s.values()) - 24 * 300
    assert truth.shared_s("tarantula") == 23 * 300
    assert len(truth.contradictions()) == 1


def test_the_same_disk_every_time(disk: WrittenDisk, tmp_path: Path) -> None:
    """Byte by byte, so that what is red today is red tomorrow."""
    again = Disk(tmp_path / "again")
    write_disk(again)
    assert again.truth() == disk.truth
    assert digest(again.root, again.truth().files) == digest(disk.root, disk.truth.files)


def digest(root: Path, files: tuple[DiskFile, ...]) -> str:
    """Of every file's first 12,000 bytes, in which all headers end."""
    summed = hashlib.sha256()
    for each in files:
        with (root / each.path).open("rb") as file:
            summed.update(file.read(12_000))
    return summed.hexdigest()
