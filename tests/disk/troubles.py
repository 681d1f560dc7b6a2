"""The troubles that captures come with, one function each. All from common practice, no source, but where one is named."""

from collections.abc import Sequence
from typing import Any

from msgspec.structs import replace

from tests.disk.capture import Capture, Sky, Taken, turned_to
from tests.disk.frames import Train, jpeg_with_date, write_frame
from tests.disk.truth import DiskFile


def rejected_folder(
    capture: Capture, night: str, first: str, count: int, exposure_s: float, words: str, called: str, **changes: Any
) -> list[Taken]:
    """Frames that were sorted out lie in a folder that says so."""
    where, why = f"{night}/{called}", f"lies in {called}/"
    return capture.shoot(where, first, count, exposure_s, words, fate="discarded", why=why, **changes)


def bad_prefix(capture: Capture, night: str, first: str, count: int, exposure_s: float, words: str) -> None:
    """Frames that were sorted out got a name that says so."""
    capture.shoot(night, first, count, exposure_s, words, fate="discarded", why="its name begins with bad_", prefix="bad_")


def sound_badlands(capture: Capture, night: str, first: str, count: int, exposure_s: float, words: str) -> None:
    """A name that only begins with the same letters: 'badlands' is where the school went that week."""
    for number, moment in enumerate(capture.starts(first, count, exposure_s), start=1):
        shot = capture.shot(moment, exposure_s, words)
        frame = capture.true_frame(shot, words, "kept")
        capture.write(f"{night}/badlands_{number:03d}.fits", shot, "kept", "a sound sub with a name like a bad one", frame)


def other_object(
    capture: Capture, project: str, sky: Sky, night: str, first: str, count: int, exposure_s: float, words: str
) -> None:
    """The evening began with another target, in the same folder."""
    turned_to(capture, project, sky).shoot(night, first, count, exposure_s, words, why=f"shows {sky.object}")


def other_object_without_pointing(
    capture: Capture, project: str, sky: Sky, night: str, first: str, count: int, exposure_s: float, words: str
) -> None:
    """Only OBJECT says so; the catalogue knows where that is."""
    other = turned_to(capture, project, sky)
    other.shoot(night, first, count, exposure_s, words, why=f"is called {sky.object}, no pointing", ra_deg=None, dec_deg=None)


def object_left_from_before(
    capture: Capture, project: str, sky: Sky, night: str, first: str, count: int, exposure_s: float, words: str
) -> None:
    """The mount had moved on, the name in the header had not: the pointing is right."""
    other = turned_to(capture, project, replace(sky, object=capture.sky.object))
    other.number = 6000
    other.shoot(night, first, count, exposure_s, words, why=f"points at {sky.object}, is called {capture.sky.object}")


def second_telescope(capture: Capture, train: Train, night: str, first: str, count: int, exposure_s: float, words: str) -> None:
    """A lens rode along on the same mount and wrote into the same folder."""
    rider = turned_to(capture, capture.project, capture.sky)
    rider.train, rider.number = train, 7000
    rider.shoot(night, first, count, exposure_s, words, fate="other_train", why=f"the {train.telescope} took it")


def calibrated_copies(capture: Capture, originals: Sequence[Taken], folder: str) -> None:
    """Same start, same exposure; floating point; a line of history."""
    changes = {"bits": -32, "cards": {"HISTORY": "dark, flat and bias applied"}}
    capture.copies(originals, folder, "{}_c.fits", "a calibrated copy", **changes)


def registered_copies(capture: Capture, originals: Sequence[Taken], folder: str) -> None:
    """The calibrated ones once more, shifted."""
    changes = {"bits": -32, "cards": {"HISTORY": "registered to the first frame"}}
    capture.copies(originals, folder, "r_{}_c.fits", "a registered copy", **changes)


def backups(capture: Capture, originals: Sequence[Taken], folder: str, ending: str) -> None:
    """The same file on the same disk: as it was, gzipped, tile-compressed."""
    capture.copies(originals, folder, "{}" + ending, f"a backup ({ending})")


def only_calibrated_left(capture: Capture, folder: str, first: str, count: int, exposure_s: float, words: str) -> None:
    """The raw frames are gone: what is left of the exposure counts, once."""
    changes = {"bits": -32, "cards": {"HISTORY": "dark, flat and bias applied"}}
    capture.shoot(folder, first, count, exposure_s, words, why="a calibrated frame whose raw one is gone", **changes)


def combined(capture: Capture, inputs: Sequence[Taken], path: str, counted: bool) -> None:
    """The sum of many in one file that begins as the first does; its header counts its inputs, or does not."""
    total_s = sum(each.shot.exposure_s for each in inputs)
    cards = {"NCOMBINE": len(inputs)} if counted else {}
    why = f"{len(inputs)} subs combined, {'and its header says so' if counted else 'which its exposure gives away'}"
    capture.write(path, replace(inputs[0].shot, exposure_s=total_s, bits=-32, cards=cards), "combined", why)


def real_long_sub(capture: Capture, night: str, first: str, words: str) -> list[Taken]:
    """600 s among 300 s: as long as two others together, but it has its own time and the camera's own pixels."""
    return capture.shoot(night, first, 1, 600.0, words, why="a real sub of 600 s among those of 300 s")


def focus_folder(capture: Capture, folder: str, first: str, words: str) -> None:
    """A folder that says what it holds; the headers call them lights."""
    capture.shoot(folder, first, 8, 3.0, words, fate="focus", why="lies in a folder of focus runs")


def focus_in_line(capture: Capture, night: str, first: str, words: str) -> None:
    """Among the lights: nine short ones in quick succession, the focuser stepping."""
    for number, moment in enumerate(capture.starts(first, 9, 4.0)):
        shot = capture.shot(moment, 4.0, words, cards={"FOCUSPOS": 11_800 + 50 * number})
        capture.save(night, shot, words, "focus", "the focuser steps from frame to frame")


def bright_core(capture: Capture, night: str, first: str, count: int, words: str) -> None:
    """Short exposures for a core that burns out: subs, however short; the focuser stands still."""
    capture.shoot(night, first, count, 10.0, words, why="a short sub for the bright core", cards={"FOCUSPOS": 12_040})


def calibration(capture: Capture, folder: str, first: str, words: str, cased: bool) -> None:
    """Darks, flats and bias of one morning."""
    kinds = (("dark", 300.0, None), ("flat", 2.5, words), ("bias", 0.0, None))
    for number, (kind, exposure_s, told) in enumerate(kinds):
        hour = first.replace("T20:", f"T2{number}:")
        shown = kind if cased else kind.upper()
        away = {"ra_deg": None, "dec_deg": None, "object": "", "kind": shown}
        capture.shoot(f"{folder}/{kind}s", hour, 10, exposure_s, told, fate="calibration", why=f"a {kind} frame", **away)


def junk(capture: Capture, folder: str) -> None:
    """What else lies in a capture folder: hidden files of the system's, notes, a camera's small pictures."""
    disk, frame = capture.disk, capture.shot(next(capture.starts("2025-10-03T12:00:00", 1, 1.0)), 300.0, "L")
    for name in (".hidden_0001.fits", "._sculptor_0001.fits"):
        write_frame(disk.root / folder / name, frame, capture.dialect)
        disk.note(DiskFile(f"{folder}/{name}", capture.project, "hidden", "hidden"))
    disk.junk(f"{folder}/.folder", b"\0\1", capture.project, "hidden", "hidden")
    disk.junk(f"{folder}/notes.txt", b"thin cirrus after midnight\n", capture.project, "notes")


def jpeg_pairs(capture: Capture, taken: Sequence[Taken]) -> None:
    """Beside each frame the camera's own small picture of the same moment."""
    for each in taken:
        path = each.file.path.replace(".fits", ".jpg")
        capture.disk.junk(path, jpeg_with_date(each.shot.start), capture.project, "a picture beside its frame")


def unreadable(capture: Capture, folder: str) -> None:
    """A file of nonsense, and an empty one."""
    capture.disk.junk(f"{folder}/torn.fits", b"nonsense" * 400, capture.project, "no FITS", "unreadable")
    capture.disk.junk(f"{folder}/void.fits", b"", capture.project, "empty", "unreadable")


def daylight(capture: Capture, night: str, first: str, count: int, exposure_s: float, words: str) -> None:
    """Left running until the Sun was up."""
    capture.shoot(night, first, count, exposure_s, words, why="a sub in daylight")


def below_the_horizon(capture: Capture, night: str, first: str, exposure_s: float, words: str) -> None:
    """Left running after the target had set."""
    capture.shoot(night, first, 1, exposure_s, words, why="a sub with the target below the horizon")


def header_place_elsewhere(latitude: str, longitude: str) -> dict[str, str]:
    """The laptop had been set for another place."""
    return {"SITELAT": latitude, "SITELONG": longitude}


def header_focal_length(told_mm: float) -> dict[str, float]:
    """Somebody typed another focal length once."""
    return {"FOCALLEN": told_mm}
