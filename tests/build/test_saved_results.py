"""What was found out of a whole diary is told again as long as nothing changed, and not a moment longer."""

import time
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from sitegen.authoring.new_diary import start_diary
from sitegen.folders import Folders
from sitegen.rebuild import check, reveals
from tests.build.small_diary import SETTLED_S

TODAY = date(2026, 11, 25)
TOMORROW = date(2026, 11, 26)


@pytest.fixture
def folders(tmp_path: Path) -> Folders:
    start_diary(tmp_path / "diary", TODAY, "diary")
    base = tmp_path / "diary"
    time.sleep(SETTLED_S)
    return Folders(base / "content", base / "themes", base / "output", base / "kept")


@pytest.fixture
def looked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What was really looked through, one word each time."""
    from sitegen.build import run
    from sitegen.reading import reader

    found: list[str] = []

    def counted(name: str, do: Callable[..., Any]) -> Callable[..., Any]:
        return lambda *args, **named: (found.append(name), do(*args, **named))[1]

    monkeypatch.setattr(run, "run_graph", counted("check", run.run_graph))
    monkeypatch.setattr(reader, "read_diary", counted("reveals", reader.read_diary))
    return found


def warn(folders: Folders, words: str = "") -> None:
    """A log from the day after tomorrow: a camera's clock that is set wrong, as long as that day has not come."""
    log, entry = folders.content / "logs/first-light.csv", folders.content / "entries/first-light.md"
    log.write_text(log.read_text("utf-8").replace("2026-11-24", "2026-11-27"), "utf-8")
    entry.write_text(entry.read_text("utf-8").replace("2026-11-24", "2026-11-27") + words, "utf-8")
    time.sleep(SETTLED_S)


def test_a_diary_is_looked_through_once(folders: Folders, looked: list[str]) -> None:
    """The same problems and the same list of what is told about the author, from what was kept."""
    warn(folders)
    first = check(folders, TODAY), reveals(folders, TODAY)
    assert len(first[0]) == 1 and first[1]
    assert (check(folders, TODAY), reveals(folders, TODAY)) == first
    assert looked == ["check", "reveals"]


def test_any_change_is_looked_at(folders: Folders, looked: list[str]) -> None:
    """A word in an entry, a theme that came, and a damaged record: the answer is always that of the files."""
    assert check(folders, TODAY) == ()
    warn(folders, "\n[](fact:no.such)\n")
    assert sorted(problem.severity for problem in check(folders, TODAY)) == ["error", "warning"]
    (folders.themes / "own/words").mkdir(parents=True)
    (folders.themes / "own/words/en.yaml").write_text("", "utf-8")
    check(folders, TODAY)
    for path in (folders.keep or Path()).joinpath("store").glob("problems-*"):
        path.write_bytes(path.read_bytes()[:-1] + b"!")
    check(folders, TODAY)
    assert looked.count("check") == 4


def test_a_warning_does_not_outlive_its_day(folders: Folders, looked: list[str]) -> None:
    """What lay in the future is today's on the next day; where there was nothing to tell, there is nothing the day after."""
    warn(folders)
    assert len(check(folders, TODAY)) == 1
    assert check(folders, TOMORROW) == ()
    assert check(folders, date(2027, 1, 1)) == ()
    assert check(folders, date(2027, 1, 2)) == ()
    assert looked == ["check"] * 3
