"""Witnesses in the terminal: told by rebuild and check, and in no published byte."""

from pathlib import Path
from unittest.mock import patch

from sitegen.folders import Folders
from sitegen.rebuild import check, rebuild
from tests.conftest import TODAY
from tests.entries.diary_text import HERE, lay_out, read_diary_text

LOG = "start,exposure_s,filter\n2026-06-14T23:00:00,300,L\n2026-06-14T23:06:00,300,Ha\n2026-06-14T23:12:00,300,Ha\n"
WARNING = (
    "content/logs/first.csv:1:1: warning: 3 of 3 subs lie in daylight (the Sun above -6°); with time_zone: Pacific/Auckland none "
    "would; '- {files: logs/first.csv, time_zone: Pacific/Auckland}' under 'logs'"
)


def folders(root: Path, log: str = LOG) -> Folders:
    lay_out(read_diary_text(HERE / "sound.diary"), root / "content")
    (root / "content/logs/first.csv").write_text(log, "utf-8")
    entry = root / "content/entries/first.md"
    text = entry.read_text("utf-8")
    entry.write_text(text.replace("pictures:\n  - {file: pictures/helix.png, alt: a ring of faint gas}\n", ""), "utf-8")
    return Folders(root / "content", root / "themes", root / "output", root / "kept")


def warnings(problems) -> list[str]:
    return [str(problem).replace(str(problem.path), f"content/{problem.path.partition('content/')[2]}") for problem in problems]


def published(output: Path) -> dict[str, bytes]:
    return {str(path.relative_to(output)): path.read_bytes() for path in sorted(output.rglob("*")) if path.is_file()}


def test_a_warning_stays_until_it_is_mended(tmp_path: Path) -> None:
    """Rebuild tells it, a second rebuild of nothing new too, and check; the pasted line mends it."""
    where = folders(tmp_path)
    for _ in range(2):
        assert warnings(rebuild(where, TODAY).problems) == [WARNING]
    assert warnings(check(where, TODAY)) == [WARNING]
    entry = where.content / "entries/first.md"
    line = "logs:\n  - {files: logs/first.csv, time_zone: Pacific/Auckland}\n"
    entry.write_text(entry.read_text("utf-8").replace("logs: [logs/first.csv]\n", line), "utf-8")
    assert warnings(check(where, TODAY)) == []


def test_no_published_byte_knows_of_it(tmp_path: Path) -> None:
    """With every witness struck dumb, the same site to the byte."""
    rebuild(folders(tmp_path / "told"), TODAY)
    with patch("sitegen.build.work.facts.witnesses", lambda *_: ()):
        silent = rebuild(folders(tmp_path / "silent"), TODAY, jobs=1)
    assert silent.problems == ()
    assert published(tmp_path / "told/output") == published(tmp_path / "silent/output")
