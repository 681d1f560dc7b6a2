"""The files that a gathering's answer hangs on are those that it walked through, as it saw them."""

from pathlib import Path

from sitegen.authoring.captures.walk import find_files
from sitegen.authoring.gather_answer import state_of
from sitegen.folders import Folders
from tests.authoring.conftest import MakeFrames

LATER_NS = 2**62


def test_the_walk_tells_the_state(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Whoever has walked through the folders need not look again; what changes afterwards makes another state."""
    frames = make_frames("disk/one", 2)
    (tmp_path / "disk/notes.txt").write_text("clouds", "utf-8")
    (tmp_path / "disk/.hidden").touch()
    (tmp_path / "disk/link.fits").symlink_to(frames[0])
    (tmp_path / "disk/nowhere.fits").symlink_to(tmp_path / "lost")
    disk = str(tmp_path / "disk")
    seen = find_files([disk]).seen
    assert len(seen) == 5
    by_walk = state_of(("gather",), "new", [disk], folders, LATER_NS, seen)
    assert by_walk is not None
    assert by_walk == state_of(("gather",), "new", [disk], folders, LATER_NS)
    (tmp_path / "disk/notes.txt").write_text("no clouds", "utf-8")
    assert state_of(("gather",), "new", [disk], folders, LATER_NS) != by_walk
    assert state_of(("gather",), "new", [disk], folders, LATER_NS, seen) == by_walk
