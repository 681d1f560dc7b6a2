"""A site is published whole or not at all."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from sitegen.artifact import Artifact
from sitegen.problems import DiaryProblems
from sitegen.publish import publish as room
from sitegen.publish import staging, swap
from sitegen.publish.publish import publish, recover
from sitegen.publish.record import RECORD


def site(version: str, pages: int = 3) -> list[Artifact]:
    return [Artifact.text(f"pages/{number}/index.html", f"{version} {number}") for number in range(pages)]


def contents(folder: Path) -> dict[str, str]:
    """Every file but the record."""
    files = (path for path in folder.rglob("*") if path.is_file() and path.name != RECORD)
    return {path.relative_to(folder).as_posix(): path.read_text() for path in files}


def test_the_first_site_appears(tmp_path: Path) -> None:
    """Every artifact is a file, readable by everybody, whatever the umask."""
    earlier = os.umask(0o077)
    try:
        told = publish(site("old"), tmp_path / "output")
    finally:
        os.umask(earlier)
    assert (told.files, told.changed, told.removed, told.carried) == (3, 3, 0, ())
    assert contents(tmp_path / "output") == {f"pages/{number}/index.html": f"old {number}" for number in range(3)}
    assert (tmp_path / "output/pages/0/index.html").stat().st_mode & 0o777 == 0o644
    assert (tmp_path / "output/pages/0").stat().st_mode & 0o777 == 0o755


def test_what_did_not_change_is_not_written(tmp_path: Path) -> None:
    """An unchanged page keeps its file; a page that is no more is gone."""
    output, state = tmp_path / "output", tmp_path / "state"
    publish(site("same"), output, state)
    before = (output / "pages/0/index.html").stat().st_ino
    told = publish(site("same", pages=2), output, state)
    assert (told.files, told.changed, told.removed) == (2, 0, 1)
    assert (output / "pages/0/index.html").stat().st_ino == before
    assert not (output / "pages/2").exists()


def test_what_did_not_change_is_not_touched(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The third site begins from the first: nothing is linked that both share, and a site of many new files is ready at once."""
    output, state = tmp_path / "output", tmp_path / "state"
    for version in ("first", "second"):
        publish([*site("same", 30), Artifact.text("a.html", version)], output, state)
    linked: list[str] = []
    really = os.link
    monkeypatch.setattr(os, "link", lambda old, new, **how: (linked.append(Path(new).name), really(old, new, **how))[0])
    publish([*site("same", 30), Artifact.text("a.html", "third")], output, state)
    assert (linked, contents(output)["a.html"]) == ([], "third")
    monkeypatch.setattr(room, "CATCH_UP", 20)
    publish(site("other", 30), output, state)
    assert contents(state / "before-output") == contents(output) == contents(output) | {"pages/7/index.html": "other 7"}


def test_whatever_lies_in_the_site_before_is_put_right(tmp_path: Path) -> None:
    """Half a file of a killed rebuild, a folder in a page's place, a page in a folder's place, files and links of nobody."""
    output, state = tmp_path / "output", tmp_path / "state"
    for version in ("first", "second"):
        publish(site(version), output, state)
    before = state / "before-output"
    (before / "pages/0/index.html").unlink()
    (before / "pages/0/index.html").mkdir()
    (before / "pages/0/index.html/deep").write_text("x")
    (before / "pages/1/index.html").write_text("first")
    (before / "pages/2/index.html").unlink()
    (before / "pages/2").rmdir()
    (before / "pages/2").write_text("x")
    (before / "nobody/nothing").mkdir(parents=True)
    (before / "nobody/link").symlink_to(tmp_path)
    for version in ("second", "third"):
        publish(site(version), output, state)
        assert contents(output) == {f"pages/{number}/index.html": f"{version} {number}" for number in range(3)}
        assert sorted(path.name for path in output.rglob("*") if path.is_dir()) == ["0", "1", "2", "pages"]


def test_without_a_swap_in_one_step_two_renames_do(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As on systems that have none."""
    monkeypatch.setattr(swap, "_exchanged", lambda *_: False)
    for version in ("first", "second", "third"):
        publish(site(version), tmp_path / "output", tmp_path / "state")
        assert contents(tmp_path / "output")["pages/1/index.html"] == f"{version} 1"
    assert sorted(path.name for path in tmp_path.iterdir()) == [".output.lock", "output", "state"]


def test_a_file_put_there_by_hand_stays_and_is_named(tmp_path: Path) -> None:
    """A verification file for a search engine, say, survives every rebuild."""
    output, state = tmp_path / "output", tmp_path / "state"
    publish(site("old"), output, state)
    (output / "CNAME").write_text("two-tanks.example")
    told = publish(site("new"), output, state)
    assert told.carried == ("CNAME",)
    assert (output / "CNAME").read_text() == "two-tanks.example"


def test_a_file_in_the_way_of_a_page_is_an_error(tmp_path: Path) -> None:
    """It is named, nothing is published, nothing is deleted."""
    output, state = tmp_path / "output", tmp_path / "state"
    publish(site("old"), output, state)
    (output / "about.html").write_text("by hand")
    with pytest.raises(DiaryProblems, match=r"^output/about\.html:1:1: error: this file was put here by hand"):
        publish([*site("new"), Artifact.text("about.html", "made")], output, state)
    assert (output / "about.html").read_text() == "by hand"
    assert (output / "pages/0/index.html").read_text() == "old 0"


@pytest.mark.parametrize("path", ["../escape", "/etc/passwd", "a/../../b", "a\\..\\b", ""])
def test_no_artifact_leaves_the_site(path: str, tmp_path: Path) -> None:
    """A path that would leave the output is refused before anything is switched."""
    with pytest.raises(ValueError, match="leaves the site"):
        publish([Artifact.text(path, "x")], tmp_path / "output")
    assert not (tmp_path / "output").exists()


def test_a_failure_half_way_leaves_the_earlier_site(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever happens while artifacts are made, the earlier site stands and no half site lies about."""
    output = tmp_path / "output"
    publish(site("old"), output)

    def failing() -> Iterator[Artifact]:
        yield Artifact.text("pages/0/index.html", "new 0")
        raise MemoryError

    with pytest.raises(MemoryError):
        publish(failing(), output)
    assert contents(output)["pages/0/index.html"] == "old 0"
    assert [path.name for path in tmp_path.iterdir() if path.name.endswith(".next")] == []


def test_a_full_disk_is_one_sentence(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """ENOSPC becomes a problem line that says what to do; the earlier site stands."""
    publish(site("old"), tmp_path / "output")

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device", str(tmp_path / "output/pages"))

    monkeypatch.setattr(staging, "_write", full)
    with pytest.raises(DiaryProblems, match="could not be written: no space left on device; free some space and rebuild"):
        publish(site("new"), tmp_path / "output")
    assert contents(tmp_path / "output")["pages/0/index.html"] == "old 0"


def test_a_death_between_two_renames_is_mended(tmp_path: Path) -> None:
    """Where the system cannot swap folders in one step, the next rebuild brings the earlier site back."""
    (tmp_path / ".output.old").mkdir()
    (tmp_path / ".output.old/index.html").write_text("old")
    recover(tmp_path / "output")
    assert (tmp_path / "output/index.html").read_text() == "old"


KILLED = """
import sys
from collections.abc import Iterator
from pathlib import Path
sys.path.insert(0, sys.argv[2])
from sitegen.artifact import Artifact
from sitegen.publish.publish import publish
print("ready", flush=True)
version = 0
while True:
    version += 1
    publish((Artifact.text(f"pages/{n}/index.html", f"version {version} " + "x" * 2000) for n in range(60)),
            Path(sys.argv[1]), Path(sys.argv[1]).with_name("state"))
    print("done", flush=True)
"""


def test_a_killed_rebuild_leaves_a_whole_site(tmp_path: Path) -> None:
    """Twelve processes that publish without pause, each killed at another moment: every time all pages are of one version."""
    output = tmp_path / "output"
    publish([Artifact.text(f"pages/{number}/index.html", "version 0 ") for number in range(60)], output, tmp_path / "state")
    root = str(Path(__file__).resolve().parents[2])
    for kill in range(12):
        with subprocess.Popen([sys.executable, "-c", KILLED, str(output), root], stdout=subprocess.PIPE) as process:
            assert process.stdout is not None
            assert [process.stdout.readline() for _ in range(2)] == [b"ready\n", b"done\n"]
            time.sleep(0.02 + 0.013 * kill)
            process.send_signal(signal.SIGKILL)
        found = contents(output)
        assert len(found) == 60
        assert len({text.split()[1] for text in found.values()}) == 1
