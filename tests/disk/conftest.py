"""The disk, written once; the diary gathered from it and rebuilt, once; small diaries of one project for tests that change
things."""

import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from click.testing import Result
from msgspec import Struct

from tests.disk.capture import Disk
from tests.disk.command import Diagnostics
from tests.disk.diary import diary_truth, log_by_hand, write_diary
from tests.disk.projects import PROJECTS, write_disk
from tests.disk.truth import DiaryTruth, DiskTruth

OneProject = Callable[..., Diagnostics]


class WrittenDisk(Struct, frozen=True):
    root: Path
    truth: DiskTruth


class WholeDiary(Struct, frozen=True):
    """`reports` and `problems` are what gather and check said as JSON, `rebuilt` how the rebuild ended."""

    diagnostics: Diagnostics
    truth: DiaryTruth
    reports: dict[str, Any]
    problems: list[dict[str, Any]]
    rebuilt: Result


@pytest.fixture(scope="session")
def disk(tmp_path_factory: pytest.TempPathFactory) -> WrittenDisk:
    written = Disk(tmp_path_factory.mktemp("captures") / "disk")
    write_disk(written)
    return WrittenDisk(written.root, written.truth())


@pytest.fixture(scope="session")
def diary(disk: WrittenDisk, tmp_path_factory: pytest.TempPathFactory) -> WholeDiary:
    """Every project gathered into one diary, that is checked and rebuilt."""
    base = tmp_path_factory.mktemp("whole")
    diagnostics = Diagnostics(base / "content", base / "output", disk.root)
    write_diary(diagnostics.content, disk.truth)
    reports = {each.name: diagnostics.report(each.name, *each.folders, options=each.options) for each in PROJECTS}
    problems = diagnostics.problems()
    return WholeDiary(diagnostics, diary_truth(disk.truth), reports, problems, diagnostics.run("rebuild", "--jobs", "1"))


@pytest.fixture(scope="session")
def by_hand(disk: WrittenDisk, tmp_path_factory: pytest.TempPathFactory) -> WholeDiary:
    """The same truth as an author would have typed it, one table a project: what gather has no part in."""
    base = tmp_path_factory.mktemp("by-hand")
    diagnostics, truth = Diagnostics(base / "content", base / "output", disk.root), diary_truth(disk.truth)
    write_diary(diagnostics.content, disk.truth, spelt=False)
    frames = {entry.name: entry.frames for entry in truth.entries}
    for project in PROJECTS:
        log_by_hand(diagnostics.content, project, frames[project.name])
    problems = diagnostics.problems()
    return WholeDiary(diagnostics, truth, {}, problems, diagnostics.run("rebuild", "--jobs", "1"))


@pytest.fixture(params=["gathered", "by hand"])
def published(request: pytest.FixtureRequest) -> WholeDiary:
    """What is published of the disk gathered, and of the same frames typed."""
    diary: WholeDiary = request.getfixturevalue("diary" if request.param == "gathered" else "by_hand")
    return diary


@pytest.fixture
def one_project(disk: WrittenDisk, tmp_path: Path) -> OneProject:
    """A diary of one project, beside a copy of its folders that a test may change."""

    def make(name: str, spelt: bool = True) -> Diagnostics:
        project = next(each for each in PROJECTS if each.name == name)
        for folder in project.folders:
            shutil.copytree(disk.root / folder, tmp_path / "disk" / folder)
        write_diary(tmp_path / "content", disk.truth, [project], spelt and name == "helix")
        return Diagnostics(tmp_path / "content", tmp_path / "output", tmp_path / "disk")

    return make
