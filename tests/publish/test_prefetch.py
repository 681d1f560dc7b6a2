"""The background scan sees what a scan made on the spot sees, and is not used when it is old or of other folders."""

import os
import subprocess
import sys
import time
from pathlib import Path

import pytest

from sitegen.publish import prefetch
from sitegen.publish.prefetch import DirectoryPrefetch, scan_both
from tests.processes import assert_all_end, children_of

ROOT = Path(__file__).resolve().parents[2]
TWO_FOLDERS = {"output": ("a.html", "b/c/d.html"), "before": ("a.html", "b/e.html")}


@pytest.fixture
def folders(tmp_path: Path) -> tuple[Path, Path]:
    for name, files in TWO_FOLDERS.items():
        for file in files:
            (tmp_path / name / file).parent.mkdir(parents=True, exist_ok=True)
            (tmp_path / name / file).write_text(file)
    return tmp_path / "output", tmp_path / "before"


@pytest.fixture
def no_threads(monkeypatch: pytest.MonkeyPatch) -> None:
    """The test's own process may have some, of its runner; what the copy needs of them is nothing."""
    monkeypatch.setattr(prefetch.threading, "active_count", lambda: 1)


@pytest.mark.skipif(sys.platform != "linux", reason="no copy of a process here")
@pytest.mark.filterwarnings("ignore::DeprecationWarning")
@pytest.mark.usefixtures("no_threads")
class TestTheCopy:
    def test_it_tells_what_is_there(self, folders: tuple[Path, Path]) -> None:
        one = DirectoryPrefetch(*folders)
        assert one.child
        assert one.seen(*folders) == scan_both(*folders)

    def test_what_came_since_is_not_in_it(self, folders: tuple[Path, Path]) -> None:
        """It really is the copy that looked, and earlier."""
        one = DirectoryPrefetch(*folders)
        scanned = one._scanned()
        (folders[0] / "later.html").write_text("later")
        assert scanned is not None
        assert set(scanned[0]) == {"a.html", "b/c/d.html"}

    def test_an_old_one_is_made_again(self, folders: tuple[Path, Path], monkeypatch: pytest.MonkeyPatch) -> None:
        """A fresh one is believed."""
        one = DirectoryPrefetch(*folders)
        scanned = one._scanned()
        monkeypatch.setattr(one, "_scanned", lambda: scanned)
        (folders[0] / "later.html").write_text("later")
        assert "later.html" not in one.seen(*folders).output.files
        monkeypatch.setattr(prefetch, "FRESH_S", 0.0)
        assert "later.html" in one.seen(*folders).output.files

    def test_a_long_walk_is_fresh_at_its_end(self, folders: tuple[Path, Path], monkeypatch: pytest.MonkeyPatch) -> None:
        """A site of tens of thousands of files would be walked through twice."""
        pid = os.getpid()

        def slow(output: Path, beside: Path) -> prefetch.BothTrees:
            assert os.getpid() != pid, "walked again"
            time.sleep(2 * prefetch.FRESH_S)
            return scan_both(output, beside)

        monkeypatch.setattr(prefetch, "FRESH_S", 1.0)
        monkeypatch.setattr(prefetch, "scan_both", slow)
        assert DirectoryPrefetch(*folders).seen(*folders) == scan_both(*folders)

    def test_other_folders_are_walked(self, folders: tuple[Path, Path]) -> None:
        one = DirectoryPrefetch(folders[1], folders[0])
        assert one.seen(*folders) == scan_both(*folders)

    def test_a_folder_in_the_others_place_is_walked(self, folders: tuple[Path, Path]) -> None:
        one = DirectoryPrefetch(*folders)
        folders[0].rename(folders[0].with_name("elsewhere"))
        folders[1].rename(folders[0])
        assert one.seen(*folders).output.files.keys() == {"a.html", "b/e.html"}


def test_a_rebuild_asks_it(folders: tuple[Path, Path]) -> None:
    """As the command does, in a process of its own without threads; nothing of it is left."""
    script = (
        "import os, sys\nfrom pathlib import Path\nfrom sitegen.artifact import Artifact\nfrom sitegen.publish.publish import *\n"
        "from sitegen.publish.publish import prefetch\n"
        "place, state = Path(sys.argv[1]), Path(sys.argv[2])\n"
        "for version in 'one', 'two', 'three':\n"
        "    scan = prefetch(place, state)\n"
        "    assert bool(scan.child) == (sys.platform == 'linux')\n"
        "    told = publish([Artifact.text('a.html', version), Artifact.text('b.html', 'b')], place, state, scan)\n"
        "    assert not scan.child\n"
        "print(told.changed, told.files, Path(sys.argv[1], 'a.html').read_text())\n"
    )
    base = folders[0].parent / "site"
    told = subprocess.run(
        [sys.executable, "-c", script, str(base), str(folders[0].parent / "state")], cwd=ROOT, capture_output=True, text=True
    )
    assert (told.stdout, told.stderr) == ("1 2 three\n", "")


@pytest.mark.skipif(sys.platform != "linux", reason="only there is a process copied")
def test_it_ends_where_nobody_is_left_to_ask_it(tmp_path: Path) -> None:
    """More files than a pipe holds: it waits for its words to be read, and the rebuild is killed."""
    for number in range(2_000):
        (tmp_path / f"{'a-name-of-some-length-' * 3}{number}.html").touch()
    script = (
        "import sys\nfrom pathlib import Path\nfrom sitegen.publish.prefetch import DirectoryPrefetch\n"
        "one = DirectoryPrefetch(Path(sys.argv[1]), Path(sys.argv[1]))\nprint(one.child, flush=True)\nsys.stdin.read()\n"
    )
    process = subprocess.Popen(
        [sys.executable, "-c", script, str(tmp_path)], cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    assert process.stdout is not None and process.stdin is not None
    child = int(process.stdout.readline())
    time.sleep(0.3)
    assert children_of(process.pid) == {child}
    process.kill()
    process.wait()
    process.stdin.close()
    process.stdout.close()
    assert_all_end({child})
