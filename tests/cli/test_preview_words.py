"""What the preview says in the terminal."""

from datetime import date
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from sitegen import rebuild as line
from sitegen.authoring.preview_server import ANY_FREE
from sitegen.cli import preview
from sitegen.folders import Folders


def folders_in(root: Path) -> Folders:
    return Folders(root / "content", root / "themes", root / "output", root / ".sitegen")


def test_what_stands_while_there_are_errors(tmp_path: Path) -> None:
    """A preview that begins with an error promises no site where there never was one."""
    folders = folders_in(tmp_path)
    assert preview._what_stands(folders) == "there is no site yet: it comes with the first save without an error"
    folders.output.mkdir()
    (folders.output / "index.html").touch()
    assert preview._what_stands(folders) == "the last good site stays"


@pytest.mark.parametrize(("words", "port"), [([], ANY_FREE), (["--port", "4180"], 4180)])
def test_the_port_is_any_free_one_unless_it_is_named(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, words: list[str], port: int
) -> None:
    """The first line says where the site is, also with --quiet."""
    asked: list[int] = []

    def served(folders: Folders, port: int, build: Any, ready: Any, *_: Any) -> bool:
        asked.append(port)
        ready("http://127.0.0.1:49152/")
        return True

    monkeypatch.setattr("sitegen.authoring.preview.preview", served)
    (tmp_path / "content").mkdir()
    for more in ([], ["--quiet"]):
        done = CliRunner().invoke(preview.command, ["--content", str(tmp_path / "content"), *words, *more])
        assert done.stdout == "http://127.0.0.1:49152/  (Ctrl-C ends)\n"
    assert asked == [port, port]


@pytest.mark.parametrize("quiet", [False, True])
def test_a_rebuild_shows_how_far_it_has_come(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], quiet: bool
) -> None:
    """The first build of a large diary takes a minute: lines now and then, as in a rebuild; none with --quiet."""
    monkeypatch.setattr("sitegen.cli.progress.LINE_EVERY_S", 0.0)

    def rebuilt(folders: Folders, today: date, jobs: int | None, on_wait: Any, progress: Any) -> Any:
        progress("drawing entries", 3, 40)
        raise line.DiaryProblems([])

    monkeypatch.setattr(line, "rebuild", rebuilt)
    preview._build(folders_in(tmp_path), 1, quiet)
    assert capsys.readouterr().err == ("" if quiet else "drawing entries: 3 of 40\n")
