"""What sitegen assumes of a system, and what becomes of a rebuild where it is not so. DEVELOPERS.md lists the assumptions.

The systems are simulated (`lacking.py`); what is judged is the command's answer and the published folder.
"""

import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tests.build import small_diary
from tests.systems.conftest import Diary
from tests.systems.machines import run, start

HELD = "the site could not be written: another program has the file open; close that program (a browser, an editor, a scanner), "
WAITING = "another rebuild of this diary is at work: waiting until it is done"
MACHINES = (
    "no-fork no-affinity no-proc", "no-fcntl no-names-of-unix", "link=ENOSYS", "link=EINVAL no-exchange", "link=EPERM",
    "link=EXDEV", "no-link no-exchange", "held-open=2 no-exchange", "no-inode", "read-only-attribute", "case-insensitive",
    "tick=1", "tick=2",
)  # fmt: skip


@pytest.mark.parametrize("machine", MACHINES)
def test_a_lesser_system_makes_the_same_site(diary: Diary, machine: str) -> None:
    """Rebuilt from nothing kept, then after a change: the bytes of an ordinary machine, and no word about the lack."""
    if machine.startswith("read-only"):
        (diary.folder / "output/CNAME").write_text("nights.example")
        (diary.folder / "output/CNAME").chmod(0o444)
    ours = {name: diary.site()[name] for name in diary.site().keys() - diary.old.keys()}
    for options in (("--fresh",), ()):
        status, _, told = run(diary.folder, machine, "rebuild", "--quiet", *options)
        assert (status, "Traceback" in told, "error" in told) == (0, False, False), told
        assert diary.site() == (diary.new if not options else diary.old) | ours
        diary.change()


def test_nothing_changed_is_seen_where_folders_tell_no_inodes(diary: Diary) -> None:
    """os.DirEntry.stat on Windows gives 0 (Python's documentation): the site is still known as the one that was published."""
    diary.change()
    time.sleep(0.05)
    run(diary.folder, "no-inode", "rebuild", "--quiet")
    time.sleep(0.05)
    assert "nothing has changed" in run(diary.folder, "no-inode", "rebuild")[1]


@pytest.mark.parametrize(
    ("machine", "sentence"),
    [("held-folder=output no-exchange", f"output:1:1: error: {HELD}and rebuild"),
     ("second-rename=EACCES no-exchange", "before-output:1:1: error: the site could not be written: permission denied")],
)  # fmt: skip
def test_a_folder_that_cannot_be_renamed_leaves_the_earlier_site(diary: Diary, machine: str, sentence: str) -> None:
    """While a browser or an editor has a file in it open, Windows renames no folder; the first of two renames is taken back."""
    diary.change()
    status, _, told = run(diary.folder, machine, "rebuild", "--quiet")
    errors = [line for line in told.splitlines() if ": error: " in line]
    assert (status, len(errors)) == (1, 1)
    assert sentence in errors[0]
    assert diary.site() == diary.old
    assert run(diary.folder, "no-exchange", "rebuild", "--quiet")[0] == 0
    assert diary.site() == diary.new


def test_an_output_that_is_a_file_system_is_published_into(diary: Diary) -> None:
    """A container's volume: it cannot change places with a folder. The author's files in it stay."""
    output = diary.folder / "output"
    if subprocess.run(["mount", "-t", "tmpfs", "tmpfs", str(output)], capture_output=True, check=False).returncode:
        pytest.skip("no file system may be mounted here: run the tests as root")
    try:
        (output / "films").mkdir()
        (output / "films/CNAME").write_text("nights.example")
        for version in (diary.old, diary.new):
            status, _, told = run(diary.folder, "", "rebuild", "--quiet")
            assert (status, "error" in told) == (0, False), told
            assert diary.site() == version | {"films/CNAME": b"nights.example"}
            diary.change()
        assert os.path.ismount(output)
        assert not (output / ".sitegen-next").exists()
    finally:
        subprocess.run(["umount", str(output)], check=True)


HOLDER = """
import sys, time
from pathlib import Path
from sitegen.publish.file_lock import file_lock
with file_lock(Path(sys.argv[1])):
    print("held", flush=True)
    time.sleep(600)
"""


def holder(diary: Diary) -> "subprocess.Popen[str]":
    command = [sys.executable, "-c", HOLDER, str(diary.folder / ".sitegen/lock")]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None and process.stdout.readline() == "held\n"
    return process


def test_a_lock_dies_with_its_holder(diary: Diary) -> None:
    """The file stays, and nobody waits for it."""
    with holder(diary) as process:
        process.send_signal(signal.SIGKILL)
    assert (diary.folder / ".sitegen/lock").exists()
    status, _, told = run(diary.folder, "", "rebuild", "--quiet")
    assert (status, WAITING in told) == (0, False)


def test_ctrl_c_ends_the_wait(diary: Diary) -> None:
    """At once, without a traceback."""
    with holder(diary) as process:
        waiting = start(diary.folder, "", "rebuild", "--quiet")
        assert waiting.stderr is not None and waiting.stderr.readline() == f"{WAITING}\n"
        waiting.send_signal(signal.SIGINT)
        told = waiting.communicate(timeout=20)[1]
        process.kill()
    assert waiting.returncode == 1
    assert "Traceback" not in told


def test_a_place_that_cannot_be_written_is_named(diary: Diary) -> None:
    """Read-only `.sitegen/`: the line names it, from the diary's folder, and no log of the author's."""
    diary.change()
    status, _, told = run(diary.folder, "refuse=EROFS:.sitegen", "rebuild", "--quiet", "--fresh")
    errors = [line for line in told.splitlines() if ": error: " in line]
    assert (status, len(errors)) == (1, 1), told
    assert errors[0].startswith(".sitegen/")
    assert errors[0].endswith(
        ":1:1: error: the site could not be written: read-only file system; the file system is read-only; "
        "choose another folder with --output"
    )
    assert diary.site() == diary.old


def test_a_process_that_dies_names_what_it_worked_on(tmp_path: Path) -> None:
    """Each time it is tried: the entry, the picture where one was open, and the signal; nothing of memory. The rest is told by
    the next rebuild, once the picture is gone."""
    folders = small_diary.lay_out(tmp_path)
    small_diary.picture(folders, random.Random(1))
    (entry,) = [path for path in small_diary.entries(folders.content) if "first.png" in path.read_text("utf-8")]
    status, _, told = run(tmp_path, "dying=SIGSEGV:first.png:1", "rebuild", "--quiet", "--jobs", "2")
    errors = [line for line in told.splitlines() if ": error: " in line]
    assert (status, len(errors), "Traceback" in told) == (1, 1, False), told
    assert errors[0] == (
        f"content/entries/{entry.name}:1:1: error: the process that worked on it ended in the midst of it (SIGSEGV); that is a "
        "fault of sitegen or of a library: leave the file out until it is mended"
    )


def test_start_on_a_full_disk_may_be_tried_again(tmp_path: Path) -> None:
    """What was begun is gone, so that the next try is not refused. A limit on the size of files stands for the disk."""
    import resource  # POSIX only

    limited = subprocess.run(
        [sys.executable, "-m", "sitegen", "start", "nights"], cwd=tmp_path, capture_output=True, text=True, check=False,
        env={**os.environ, "PYTHONPATH": str(Path(__file__).resolve().parents[2]), "PYTHONDONTWRITEBYTECODE": "1"},
        preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (700, 700)),
    )  # fmt: skip
    assert limited.returncode == 1
    assert limited.stderr.count("\n") == 1 and "cannot be written: File too large" in limited.stderr
    assert not (tmp_path / "nights").exists()
    assert run(tmp_path, "", "start", "nights")[0] == 0


@pytest.mark.parametrize("encoding", ["cp1252", "ascii"])
def test_a_terminal_of_an_old_code_page_is_spoken_to(diary: Diary, encoding: str) -> None:
    """Without ″, α or ×: a '?' stands for what it lacks; JSON escapes it."""
    entry = diary.folder / "content/entries/first.md"
    entry.write_text(entry.read_text("utf-8").replace("rig: dome", "rig: dömeα″", 1), "utf-8")
    _, _, told = run(diary.folder, "", "check", PYTHONIOENCODING=encoding)
    assert "Traceback" not in told
    assert "unknown rig" in told
    _, said, told = run(diary.folder, "", "check", "--json", PYTHONIOENCODING=encoding)
    assert "Traceback" not in told
    assert "d\\u00f6me\\u03b1\\u2033" in said


def test_time_zones_come_along(diary: Diary) -> None:
    """Windows has no database of them: that of the package tzdata serves."""
    status, _, told = run(diary.folder, "", "rebuild", "--quiet", "--fresh", PYTHONTZPATH="")
    assert (status, "error" in told) == (0, False)
    assert diary.site() == diary.old
