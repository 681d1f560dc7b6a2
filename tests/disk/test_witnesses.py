"""What cannot be is doubted, once and with its cure; what is sound raises no doubt.

A light sub in daylight, below the horizon, from elsewhere, through another telescope: common practice, no source.
"""

import re
from typing import Any

import pytest

from tests.disk.capture import Capture, Disk
from tests.disk.command import Diagnostics
from tests.disk.conftest import OneProject, WholeDiary
from tests.disk.frames import told_local
from tests.disk.projects import CARINA, EAST, PROGRESS, PROJECTS, SCHOOL, WALL_CLOCK

SOUND = [each.name for each in PROJECTS if each.witness is None and each.name != "tarantula"]
TROUBLED = [(each.name, each.witness) for each in PROJECTS if each.witness is not None]
SAYS = {
    "daylight": r"\b3\b.*\b27\b.*daylight|daylight.*\b3\b",
    "horizon": r"\bbelow the horizon\b",
    "place": r"SITELAT|SITELONG|\bsite 'school'",
    "focal length": r"FOCALLEN|focal.length",
}


def about(problems: list[dict[str, Any]], name: str) -> list[str]:
    """Problem lines of this project's entry or log."""
    own = re.compile(rf"(?:entries|logs)/{re.escape(name)}\.(?:md|ecsv|csv)$")
    return [f"{each['wrong']}; {each['remedy']}" for each in problems if own.search(each["path"])]


@pytest.mark.parametrize(("name", "witness"), TROUBLED)
def test_each_trouble_is_told_once(name: str, witness: str, diary: WholeDiary) -> None:
    """One warning, and it is about that."""
    (line,) = about(diary.problems, name)
    assert re.search(SAYS[witness], line)


@pytest.mark.parametrize("name", SOUND)
def test_a_sound_project_raises_no_doubt(name: str, diary: WholeDiary) -> None:
    assert about(diary.problems, name) == []


def test_two_entries_that_contradict_each_other(diary: WholeDiary) -> None:
    """The frame that the progress entry kept and the final one threw away: one warning, that names both."""
    lines = [*about(diary.problems, "tarantula"), *about(diary.problems, PROGRESS)]
    (line,) = lines
    assert PROGRESS in line + "".join(each["path"] for each in diary.problems)
    assert "2025-12-10" in line


def test_nothing_else_is_told(diary: WholeDiary) -> None:
    """Four witnesses and one contradiction, all of them warnings, are all that check says of the whole diary."""
    assert sorted(each["severity"] for each in diary.problems) == ["warning"] * (len(TROUBLED) + 1)


def test_a_wall_clock_read_as_utc(one_project: OneProject) -> None:
    """Gathered without the time zone most subs lie in daylight; the site's zone would mend them, and the line says so."""
    diagnostics = one_project("tucana")
    diagnostics.gather("tucana", "tucana")
    clock = [line for line in about(diagnostics.problems(), "tucana") if "Australia/Adelaide" in line]
    assert len(clock) == 1
    assert "time_zone: Australia/Adelaide" in clock[0] or "--time-zone Australia/Adelaide" in clock[0]
    assert "daylight" in clock[0]


def test_the_cure_for_the_clock_works(one_project: OneProject) -> None:
    """Gathered again with the zone every frame stands at its true time, none twice, and the doubt is gone."""
    diagnostics = one_project("tucana")
    diagnostics.gather("tucana", "tucana")
    assert diagnostics.gather("tucana", "tucana", options=("--time-zone", "Australia/Adelaide")).exit_code == 0
    assert about(diagnostics.problems(), "tucana") == []
    assert diagnostics.counted("tucana") == (60, 0)


def test_the_hour_that_the_clock_shows_twice(one_project: OneProject) -> None:
    """From 15:30 to 17:30 UTC on 5 April 2025 Adelaide's clock went twice from 2 to 3. A run across it is put in order by its
    names and its running on: no two subs at once, each at its true time."""
    diagnostics = one_project("carina")
    disk = Disk(diagnostics.disk / "twice")
    own = Capture(disk, "carina", EAST, SCHOOL, CARINA, told_local)
    taken = own.shoot("run", "2025-04-05T15:10:00", 28, 300.0, "Ha")
    diagnostics.gather("carina", "twice/run", options=WALL_CLOCK)
    true = [f"{each.shot.start:%Y-%m-%dT%H:%M:%S}" for each in taken]
    assert [row["start"][:19] for row in diagnostics.rows("carina")] == true


def test_an_entry_that_names_another_target(one_project: OneProject) -> None:
    """Frames of ω Centauri in an entry about 47 Tucanae: doubted, also long after they were gathered."""
    diagnostics = one_project("omega")
    diagnostics.gather("omega", "omega")
    assert about(diagnostics.problems(), "omega") == []
    rename_target(diagnostics, "omega", "NGC 5139", "NGC 104")
    (line,) = about(diagnostics.problems(), "omega")
    assert "NGC 104" in line and "30" in line


def rename_target(diagnostics: Diagnostics, name: str, before: str, after: str) -> None:
    path = diagnostics.content / f"entries/{name}.md"
    path.write_text(path.read_text("utf-8").replace(f"target: {before}", f"target: {after}"), "utf-8")
