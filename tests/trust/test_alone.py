"""One rebuild of a diary at a time; what the machine refuses is a line, and the earlier site stands."""

import errno
import subprocess
import sys
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import NoReturn

import pytest

from sitegen import rebuild as room
from sitegen.build.workers import WorkerDied
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems
from sitegen.publish.file_lock import file_lock
from sitegen.rebuild import check, rebuild
from tests.conftest import ROOT
from tests.trust import tiny

TODAY = date(2026, 11, 25)
Work = Callable[[Folders, date], object]


@pytest.fixture
def folders(tmp_path: Path) -> Folders:
    return tiny.lay_out(tmp_path)


@pytest.mark.parametrize("command", ["rebuild", "check"])
def test_the_second_waits_and_says_so(folders: Folders, command: str) -> None:
    """A real second process does nothing while the lock is held, tells why on its first line, and goes on when it is free."""
    (folders.content / "diary.yaml").unlink()
    assert folders.keep is not None
    folders.keep.mkdir()
    words = [sys.executable, "-m", "sitegen", command, f"--content={folders.content}", f"--output={folders.output}"]
    with file_lock(folders.keep / "lock"):
        second = subprocess.Popen(words, cwd=ROOT, stderr=subprocess.PIPE, text=True)
        assert second.stderr is not None
        assert second.stderr.readline() == "another rebuild of this diary is at work: waiting until it is done\n"
        with pytest.raises(subprocess.TimeoutExpired):
            second.wait(0.3)
    assert "diary.yaml" in second.communicate(timeout=60)[1]
    assert second.returncode == 1


SPACE = OSError(errno.ENOSPC, "No space left on device")
CLOSED = PermissionError(errno.EACCES, "Permission denied", "/home/somebody/diary/.sitegen/ledger.12.part")
NO_MEMORY = "output:1:1: error: there is not enough memory to make the site; close other programs, or rebuild with --jobs 1"
LINES = {
    "disk": (SPACE, "output:1:1: error: the site could not be written: no space left on device; free some space and rebuild"),
    "rights": (CLOSED, "ledger.12.part:1:1: error: the site could not be written: permission denied; make the folder writable, "
               "or choose another with --output"),
    "memory": (MemoryError(), NO_MEMORY),
    "a process ended by the system": (WorkerDied("entries/a.md", None, "SIGKILL"), (
        "content/entries/a.md:1:1: error: the process that worked on it was killed by the system (SIGKILL), as a rule for want "
        "of memory; close other programs, or rebuild with --jobs 1")),
    "a process that crashed": (WorkerDied("entries/a.md", Path("content/pictures/b.png"), "SIGSEGV"), (
        "content/pictures/b.png:1:1: error: the process that worked on it for entries/a.md ended in the midst of it (SIGSEGV); "
        "that is a fault of sitegen or of a library: leave the file out until it is mended")),
    "a place of ours": (PermissionError(errno.EROFS, "", ".sitegen/logs"), (
        ".sitegen/logs:1:1: error: the site could not be written: read-only file system; the file system is read-only; choose "
        "another folder with --output")),
}  # fmt: skip


@pytest.mark.parametrize("work", [rebuild, check])
@pytest.mark.parametrize(("trouble", "line"), LINES.values(), ids=LINES)
def test_what_the_machine_refuses_is_a_line(
    folders: Folders, monkeypatch: pytest.MonkeyPatch, trouble: Exception, line: str, work: Work
) -> None:
    """Wherever it happens: in what is kept, while reading, in another process."""

    def refuse(*_: object, **__: object) -> NoReturn:
        raise trouble

    monkeypatch.setattr(room, "take_fingerprint", refuse)
    monkeypatch.chdir(folders.content.parent)
    with pytest.raises(DiaryProblems) as told:
        work(Folders(Path("content"), Path("themes"), Path("output"), Path(".sitegen")), TODAY)
    assert str(told.value) == line


def test_a_mistake_in_the_program_is_not_taken_for_want_of_memory(folders: Folders, monkeypatch: pytest.MonkeyPatch) -> None:
    """It stays what it is, so that it can be reported."""

    def refuse(*_: object) -> NoReturn:
        raise RuntimeError("a slip")

    monkeypatch.setattr(room, "take_fingerprint", refuse)
    with pytest.raises(RuntimeError, match="a slip"):
        rebuild(folders, TODAY)
