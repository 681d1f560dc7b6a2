"""Before it is published, an author can read what a diary tells about its author."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from sitegen.cli import main
from tests.trust.tiny import Wishes, lay_out


def check(folder: Path, wishes: Wishes, *words: str) -> Result:
    folders = lay_out(folder, wishes)
    places = [f"--{name}={getattr(folders, name)}" for name in ("content", "themes", "output")]
    return CliRunner().invoke(main, ["check", *words, *places])


SITE = "sites/roof.yaml: tells the name 'School roof', the clock Pacific/Auckland, "


@pytest.mark.parametrize(("position", "told"), [
    ("rounded", "its position rounded to 0.1° (a square of 11.1 km from north to south): latitude -36.8°, longitude 174.8°, "
                "elevation 100 m"),
    ("hidden", "no position and nothing that depends on it"),
    ("exact", "its exact position: latitude -36.85°, longitude 174.76°, elevation 80 m"),
])  # fmt: skip
def test_a_line_for_each_site(tmp_path: Path, position: str, told: str) -> None:
    """As the diary's privacy leaves it, word for word."""
    answer = check(tmp_path, Wishes(position=position), "--reveals")
    assert f"{SITE}{told}\n" in answer.output
    assert ("174.76" in answer.output) == (position == "exact")


def test_lines_for_an_entry(tmp_path: Path) -> None:
    """When its author was out, whose notes, which pictures."""
    answer = check(tmp_path, Wishes(), "--reveals")
    assert answer.exit_code == 0
    when = "when you were out, to the second: 4 subs, 2026-06-14T10:00:00Z to 2026-06-14T10:31:00Z, at 'roof'"
    assert f"entries/first.md: tells {when}\n" in answer.output
    assert "entries/first.md: tells your notes of 1 nights, word for word\n" in answer.output
    assert "entries/first.md: tells what pictures/helix.jpg shows, and its name" in answer.output
    assert "diary.yaml: tells the name 'The keeper'\n" in answer.output


def test_json_has_the_same(tmp_path: Path) -> None:
    """As records, beside the problems; without --reveals the plain report has none."""
    told = json.loads(check(tmp_path, Wishes(), "--json").output)
    assert {one["file"] for one in told["reveals"]} == {"diary.yaml", "sites/roof.yaml", "entries/first.md"}
    assert ": tells " not in check(tmp_path, Wishes()).output


def test_a_diary_with_errors_tells_its_errors(tmp_path: Path) -> None:
    """And no half list."""
    answer = check(tmp_path, Wishes(position="secret"), "--reveals")
    assert answer.exit_code == 1
    assert ": tells " not in answer.output
