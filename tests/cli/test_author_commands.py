"""start, begin, gather, outlook as they are typed: words in, words and a status out."""

import json
import os
import pty
import re
import shutil
import subprocess
import sys
from datetime import datetime
from pathlib import Path

import numpy as np
import pytest
import vobject
from astropy.io import fits

from sitegen.cli.registry import COMMANDS
from tests.cli.conftest import Run

COLOUR = r"\x1b\[(?:\d+;)*(?:3[0-8]|9[0-7])(?:;\d+)*m"
OWN = ("start", "begin", "gather", "preview", "outlook")


def make_frame(path: Path, moment: str, **cards: object) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    header = fits.Header({"DATE-OBS": moment, "EXPTIME": 120.0, "FILTER": "Ha", "OBJECT": "NGC 2070", "FOCALLEN": 1000.0} | cards)
    fits.PrimaryHDU(np.zeros((4, 6), np.uint8), header).writeto(path)
    return path


def test_start_says_what_to_do_next(run: Run, tmp_path: Path) -> None:
    """Each file it speaks of is there; a second start is refused, with the remedy."""
    said = run("start", "other").output
    named = re.findall(r"content/\S+\.(?:yaml|md|csv)", said)
    assert len(named) >= 4
    assert all((tmp_path / "diary/other" / path).is_file() for path in named)
    again = run("start", "other")
    assert again.exit_code == 1
    assert again.stderr.startswith("other:1:1: error: is not empty: a new diary begins in a folder of its own; name one that")


def test_from_frames_to_an_entry(run: Run, tmp_path: Path) -> None:
    """begin, then gather after the next night, then check: three commands, each says what it found."""
    make_frame(tmp_path / "disk/a.fits", "2026-11-20T10:00:00")
    begun = run("begin", "tarantula", tmp_path / "disk")
    assert begun.exit_code == 0, begun.output
    assert "target  NGC 2070\n" in begun.stdout
    assert "2026-11-20  Ha 1 × 120 s" in begun.stdout
    make_frame(tmp_path / "disk/b.fits", "2026-11-21T10:00:00")
    gathered = run("gather", "tarantula", tmp_path / "disk")
    assert gathered.stdout == (
        "content/logs/tarantula.ecsv: 2 frames, 2 kept, 0 discarded; 1 new, 1 there already\n"
        "  2026-11-21  Ha 1 × 120 s\n"
        f"  2 frames do not tell their clock: read as UTC; with the clock of the camera: sitegen gather tarantula "
        f"{tmp_path}/disk --time-zone Pacific/Auckland\n"
    )
    assert run("check").exit_code == 0


def test_an_unreadable_frame_ends_in_one_but_the_rest_is_written(run: Run, tmp_path: Path) -> None:
    """The status tells a script, the line tells the author."""
    make_frame(tmp_path / "disk/a.fits", "2026-11-20T10:00:00")
    (tmp_path / "disk/b.fits").write_bytes(b"not a frame" * 300)
    done = run("gather", "first-light", tmp_path / "disk", "--quiet")
    assert done.exit_code == 1
    assert done.stdout == ""
    assert f"{tmp_path}/disk/b.fits:1:1: error: is not FITS" in done.stderr
    assert Path("content/logs/first-light.ecsv").is_file()


def test_json_reports(run: Run, tmp_path: Path) -> None:
    """What is told in words is there for programs, too."""
    make_frame(tmp_path / "disk/a.fits", "2026-11-20T10:00:00")
    report = json.loads(run("gather", "first-light", tmp_path / "disk", "--json").stdout)
    assert (report["new"], report["known"], report["named_in_entry"]) == (1, 0, True)
    assert report["nights"] == [{"evening": "2026-11-20", "what": "Ha", "count": 1, "exposure_s": 120.0}]
    make_frame(tmp_path / "disk/b.fits", "2026-11-22T10:00:00")
    report = json.loads(run("begin", "other", tmp_path / "disk/b.fits", "--json").stdout)
    assert report["recognised"]["target"] == {"found": "NGC 2070", "sure": True}


def test_progress_in_plain_lines_where_there_is_no_terminal(run: Run, tmp_path: Path) -> None:
    """A scheduled run leaves a line, no bar; on standard error, so that the answer stays clean."""
    for number in range(3):
        make_frame(tmp_path / f"disk/{number}.fits", f"2026-11-20T10:1{number}:00")
    done = run("gather", "first-light", tmp_path / "disk")
    assert "reading headers: 3 of 3\n" in done.stderr
    assert "reading" not in done.stdout


def test_a_rebuild_tells_its_stages(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    """What is being done, how many and of how many, on standard error; with --quiet nothing but what is wrong."""
    monkeypatch.setattr("sitegen.cli.progress.LINE_EVERY_S", 0.0)
    told = run("check")
    stages = ("reading entries", "computing entries", "checking claims", "checking texts")
    assert told.stderr.splitlines() == [f"{stage}: 1 of 1" for stage in stages]
    assert told.stdout == "content: no problems\n"
    entry = Path("content/entries/first-light.md")
    entry.write_text(entry.read_text("utf-8") + "\nMore.\n", "utf-8")
    assert run("check", "--quiet").output == ""
    entry.write_text(entry.read_text("utf-8").replace("rig: first", "rig: frist"), "utf-8")
    assert run("rebuild", "--quiet").output.count("\n") == 1


def test_a_bar_on_a_terminal_without_colours_where_they_are_unwanted(run: Run, tmp_path: Path) -> None:
    """NO_COLOR (no-color.org) leaves the bar and takes the colours."""
    for number in range(3):
        make_frame(tmp_path / f"disk/{number}.fits", f"2026-11-20T10:1{number}:00")
    (tmp_path / "disk/bad.fits").write_bytes(b"not a frame" * 300)
    plain, coloured = (on_terminal(tmp_path, {"NO_COLOR": word}) for word in ("1", ""))
    assert "reading headers" in plain and "reading headers" in coloured
    assert not re.search(COLOUR, plain)
    assert re.search(COLOUR, coloured)


def on_terminal(tmp_path: Path, more: dict[str, str]) -> str:
    """What gather writes on standard error where that is a terminal, and nothing is remembered of the frames."""
    shutil.rmtree(".sitegen", ignore_errors=True)
    ours, theirs = pty.openpty()
    command = [sys.executable, "-m", "sitegen", "gather", "first-light", str(tmp_path / "disk")]
    environment = os.environ | {"TERM": "xterm-256color", "PYTHONPATH": str(Path(__file__).resolve().parents[2])} | more
    subprocess.run(command, stdout=subprocess.DEVNULL, stderr=theirs, env=environment, timeout=60)
    os.close(theirs)
    text = os.read(ours, 100_000).decode("utf-8")
    os.close(ours)
    return text


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        (("gather", "NGC 253", "x"), "'NGC 253' cannot become an address; did you mean 'ngc-253'?"),
        (("begin", "ngc-253"), "Missing argument 'LOG...'"),
        (("gather", "a", "x", "--time-zone", "Europe/Athen"), "no time zone of the IANA database; did you mean 'Europe/Athens'?"),
        (("outlook", "--nights", "0"), "0 is not in the range"),
        (("outlook", "--from", "18.4.2026"), "does not match the format"),
    ],
)
def test_a_wrong_command_line_is_status_two(run: Run, words: tuple[str, ...], wanted: str) -> None:
    """And says how it is meant."""
    done = run(*words)
    assert done.exit_code == 2
    assert wanted in done.stderr


def test_outlook_in_words(run: Run) -> None:
    """NGC 2070 from 37° south is up all night; what is wanted, the season and the missing weather are told."""
    done = run("outlook", "--from", "2026-12-08", "--nights", "3")
    assert done.exit_code == 0, done.output
    said = done.stdout.replace("\u202f", " ")
    assert "still wanted: L 2 h, Ha 2 h 30 min" in said
    assert re.search(r"\d+ useful nights from 2026-12-08 until 2027-0\d-\d\d, \d+ of them", done.stdout)
    assert re.search(r"Tue 2026-12-08 +[56] h \d+ min", said)
    assert "No weather is known" in said


def test_outlook_as_json(run: Run) -> None:
    """New Moon on 9 December 2026 (00:52 UTC; USNO phases): any filter; full on the 24th: narrowband alone."""
    report = json.loads(run("outlook", "--from", "2026-12-08", "--nights", "17", "--json").stdout)
    assert report["weather"] == "not known"
    nights = {night["evening_of"]: night for night in report["outlooks"][0]["nights"]}
    assert (nights["2026-12-08"]["advice"], nights["2026-12-24"]["advice"]) == ("any", "narrowband")
    assert (nights["2026-12-08"]["filters"], nights["2026-12-24"]["filters"]) == (["L", "Ha"], ["Ha"])


def test_outlook_as_a_calendar(run: Run) -> None:
    """One event a useful night; made again from another day, the same nights keep their ids."""
    run("outlook", "--from", "2026-12-08", "--nights", "5", "--calendar", "one.ics")
    run("outlook", "--from", "2026-12-09", "--nights", "5", "--calendar", "two.ics")
    one, two = (Path(name).read_bytes() for name in ("one.ics", "two.ics"))
    assert one.count(b"\n") == one.count(b"\r\n") > 10
    ids = [re.findall(rb"\r\nUID:(\S+)", text) for text in (one, two)]
    assert ids[0][0] == b"first-light.ngc-2070.2026-12-08@sitegen.invalid"
    assert len(set(ids[0])) == 5
    assert len(set(ids[0]) & set(ids[1])) == 4
    assert max(map(len, one.split(b"\r\n"))) <= 75
    assert b"No weather is known." in one.replace(b"\r\n ", b"")
    assert b"-36.85" not in one and b"174.76" not in one


def test_the_calendar_parses_elsewhere(run: Run) -> None:
    """vobject, a reader of iCalendar that did not write it, finds the nights that the JSON report gives, to the second."""
    run("outlook", "--from", "2026-12-08", "--nights", "3", "--calendar", "one.ics")
    report = json.loads(run("outlook", "--from", "2026-12-08", "--nights", "3", "--json").stdout)
    calendar = vobject.readOne(Path("one.ics").read_bytes().decode("utf-8"), validate=True)
    nights = [night["target"]["above_minimum"] for night in report["outlooks"][0]["nights"] if night["useful"]]
    found = [[event.dtstart.value.timestamp(), event.dtend.value.timestamp()] for event in calendar.vevent_list]
    assert found == [[datetime.fromisoformat(each).timestamp() for each in (one[0][0], one[-1][1])] for one in nights]
    assert len(found) == 3
    first = calendar.vevent_list[0]
    assert first.summary.value.replace("\u202f", " ").startswith("NGC 2070: ")
    assert first.description.value.splitlines()[-1] == "No weather is known."


def test_outlook_of_a_diary_with_problems(run: Run) -> None:
    """The problems, and status 1."""
    Path("content/entries/first-light.md").write_text("---\n---\n", "utf-8")
    done = run("outlook")
    assert done.exit_code == 1
    assert "first-light.md" in done.stderr


def test_preview_without_a_diary(run: Run) -> None:
    """Ends at once, with the remedy, before a port is opened."""
    done = run("preview", "--content", "nowhere")
    assert done.exit_code == 1
    assert done.stderr.startswith("nowhere:1:1: error: there is no diary here; name its folder with --content, or begin one")


@pytest.mark.parametrize("name", COMMANDS)
def test_help_shows_examples(run: Run, name: str) -> None:
    """Each command's help ends its words with lines to copy."""
    said = run(name, "--help").stdout
    assert re.search(rf"Examples?:\n(    ?.*\n)*?\s+sitegen {name} ?", said)


def test_the_list_of_commands_says_each_in_a_whole_sentence(run: Run) -> None:
    """None is cut off at the edge of a terminal of 80 columns."""
    said = run("--help").stdout.partition("Commands:\n")[2].splitlines()
    assert len(said) == len(COMMANDS)
    assert all(line.endswith(".") and not line.endswith("...") for line in said)


def test_the_commands_are_registered() -> None:
    """And in the order of an evening."""
    assert [name for name in COMMANDS if name in OWN] == list(OWN)
