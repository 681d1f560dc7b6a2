"""`begin` counts what `gather` counts, and passes no guess off as knowledge. Common practice, no source."""

import re

import pytest

from tests.disk.command import Diagnostics
from tests.disk.conftest import OneProject, WrittenDisk
from tests.disk.projects import PROJECTS
from tests.disk.truth import gathered, sums

BEGUN = ("carina", "tucana", "paw", "kettle", "heart", "pinwheel", "omega")
TRUE_PLACE = ("paw", "kettle", "heart")
_FRAMES = re.compile(r"(\d+) × ([\d.]+) s")
CONFIRM = re.compile(r"to be confirmed|is it this one\?|is the name right\?")


def begun(name: str, one_project: OneProject) -> tuple[Diagnostics, str]:
    """The entry that begin writes for a project of which the diary knows nothing yet."""
    diagnostics = one_project(name)
    project = next(each for each in PROJECTS if each.name == name)
    (diagnostics.content / f"entries/{name}.md").unlink()
    done = diagnostics.run("begin", name, *(diagnostics.disk / folder for folder in project.folders), *project.options)
    assert done.exit_code == 0, done.output
    return diagnostics, (diagnostics.content / f"entries/{name}.md").read_text("utf-8")


def line_of(entry: str, key: str) -> str:
    return next(line for line in entry.splitlines() if re.match(rf"#?{key}:", line))


@pytest.mark.parametrize("name", BEGUN)
def test_nights_are_counted_as_gather_counts(name: str, one_project: OneProject, disk: WrittenDisk) -> None:
    """The lines of its nights hold the kept seconds of each, copies, pairs and focus runs counted nowhere. Where no header tells
    the place, or a wrong one, the diary has two sites to choose from and evenings may fall otherwise; the sum may not."""
    _, entry = begun(name, one_project)
    project = next(each for each in PROJECTS if each.name == name)
    told = {}
    for line in entry.splitlines():
        if night := re.match(r"#\s+(\d{4}-\d{2}-\d{2}):", line):
            told[night[1]] = sum(int(count) * float(each_s) for count, each_s in _FRAMES.findall(line))
    truth = sums(gathered(disk.truth, name, project.folders).frames)
    assert sum(told.values()) == truth.total_s
    assert name not in TRUE_PLACE or told == dict(truth.by_night)


@pytest.mark.parametrize(("name", "published"), [("carina", "2025-04-09"), ("omega", "1999-03-11"), ("heart", "2025-01-20")])
def test_a_past_project_is_dated_by_its_last_night(name: str, published: str, one_project: OneProject) -> None:
    """The day after it, and finished: no outlook plans for it."""
    _, entry = begun(name, one_project)
    assert line_of(entry, "published").split("#")[0].strip() == f"published: {published}"
    assert line_of(entry, "stage").split("#")[0].strip() == "stage: finished"


@pytest.mark.parametrize("name", ["paw", "kettle", "helix"])
def test_a_guessed_target_is_marked(name: str, one_project: OneProject) -> None:
    """A name that stands in no header as it is written, or that no catalogue has, is to be confirmed."""
    _, entry = begun(name, one_project)
    line = line_of(entry, "target")
    assert name == "helix" or CONFIRM.search(line), line
    assert name != "helix" or re.search(r"target: NGC 7293", line), line


def test_a_name_of_ones_own_is_kept(one_project: OneProject) -> None:
    """What the header says is not called nothing."""
    assert "Kettle Knot" in line_of(begun("kettle", one_project)[1], "target")


def test_a_panels_name_is_not_renamed_silently(one_project: OneProject) -> None:
    """What it was guessed from stands beside the guess."""
    line = line_of(begun("paw", one_project)[1], "target")
    assert re.search(r"Panel 2|_P1|NGC 6334", line), line


def test_no_filter_is_wanted_of_a_colour_camera(one_project: OneProject) -> None:
    """Whatever stands there can be uncommented and passes check."""
    _, entry = begun("pinwheel", one_project)
    assert "light:" not in entry


def test_check_tells_of_text_still_to_write(one_project: OneProject) -> None:
    """And it is not published."""
    diagnostics, entry = begun("heart", one_project)
    assert "To write:" in entry
    told = [each for each in diagnostics.problems() if each["path"].endswith("entries/heart.md")]
    assert told and all(each["severity"] == "warning" for each in told)
    diagnostics.rebuilt_facts("heart")
    assert "To write:" not in (diagnostics.output / "entries/heart/index.html").read_text("utf-8")


def test_what_it_prints_is_short(one_project: OneProject) -> None:
    """No line a frame."""
    diagnostics = one_project("carina")
    (diagnostics.content / "entries/carina.md").unlink()
    done = diagnostics.run("begin", "carina", diagnostics.disk / "carina", "--time-zone", "Australia/Adelaide")
    assert len(done.output.splitlines()) < 40
