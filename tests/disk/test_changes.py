"""A disk changes under the diary: frames are sorted out, moved, renamed, deleted, unplugged. The log follows, and the author's
own hand in it wins. What an imager expects of this: common practice, no source."""

import re
import shutil
from pathlib import Path

import pytest
from click.testing import Result

from tests.disk.command import UNDO, Diagnostics
from tests.disk.conftest import OneProject

CLEAN = "paw"  # 64 sound subs on two nights


def lights(diagnostics: Diagnostics, night: str = "2025-07-21") -> list[Path]:
    return sorted((diagnostics.disk / "paw" / night).glob("*.fits"))


def gathered(one_project: OneProject) -> Diagnostics:
    diagnostics = one_project(CLEAN)
    assert diagnostics.gather(CLEAN, CLEAN).exit_code == 0
    return diagnostics


def sorted_out(diagnostics: Diagnostics, count: int = 6, called: str = "rejected") -> Result:
    """The last frames of the night moved into a folder that says so, and all gathered again."""
    for path in lights(diagnostics)[-count:]:
        (path.parent / called).mkdir(exist_ok=True)
        path.rename(path.parent / called / path.name)
    return diagnostics.gather(CLEAN, CLEAN)


def test_frames_moved_to_rejected(one_project: OneProject) -> None:
    """64 gathered, six sorted out, gathered again: 58 kept, 6 discarded, said and published."""
    diagnostics = gathered(one_project)
    assert diagnostics.counted(CLEAN) == (64, 0)
    assert "58 kept, 6 discarded" in sorted_out(diagnostics).stdout
    integration = diagnostics.rebuilt_facts(CLEAN)["integration"]
    assert (integration["kept"], integration["discarded"], integration["total_s"]) == (58, 6, 58 * 180)
    assert len(diagnostics.rows(CLEAN)) == 64


def test_frames_moved_back(one_project: OneProject) -> None:
    """What gathering discarded, gathering takes back."""
    diagnostics = gathered(one_project)
    sorted_out(diagnostics)
    for path in sorted((diagnostics.disk / "paw/2025-07-21/rejected").iterdir()):
        path.rename(path.parents[1] / path.name)
    diagnostics.gather(CLEAN, CLEAN)
    assert diagnostics.counted(CLEAN) == (64, 0)


def test_frames_renamed_as_bad(one_project: OneProject) -> None:
    """A prefix says as much as a folder."""
    diagnostics = gathered(one_project)
    for path in lights(diagnostics)[:3]:
        path.rename(path.with_name(f"bad_{path.name}"))
    diagnostics.gather(CLEAN, CLEAN)
    assert diagnostics.counted(CLEAN) == (61, 3)


def test_each_use_of_a_word_is_told(one_project: OneProject) -> None:
    """The author sees which folder or prefix threw frames away."""
    diagnostics = gathered(one_project)
    assert "rejected" in sorted_out(diagnostics).output


def test_frames_renamed_and_moved_are_recognised(one_project: OneProject) -> None:
    """Other names, another folder: the same 64."""
    diagnostics = gathered(one_project)
    for number, path in enumerate(lights(diagnostics)[:7]):
        path.rename(path.with_name(f"panel_one_{number}.fits"))
    shutil.move(diagnostics.disk / "paw/2025-07-20", diagnostics.disk / "paw/archive/summer")
    diagnostics.gather(CLEAN, CLEAN)
    assert diagnostics.counted(CLEAN) == (64, 0)
    assert len(diagnostics.rows(CLEAN)) == 64


def test_deleted_frames_stay_until_the_author_decides(one_project: OneProject) -> None:
    """The number is told, and both cures."""
    diagnostics = gathered(one_project)
    for path in lights(diagnostics)[:5]:
        path.unlink()
    done = diagnostics.gather(CLEAN, CLEAN)
    assert diagnostics.counted(CLEAN) == (64, 0)
    assert re.search(r"\b5\b", done.output)
    assert "--gone keep" in done.output and "--gone discard" in done.output


@pytest.mark.parametrize(("decision", "expected"), [("keep", (64, 0)), ("discard", (59, 5))])
def test_the_author_decides_on_deleted_frames(decision: str, expected: tuple[int, int], one_project: OneProject) -> None:
    diagnostics = gathered(one_project)
    for path in lights(diagnostics)[:5]:
        path.unlink()
    diagnostics.gather(CLEAN, CLEAN, options=("--gone", decision))
    assert diagnostics.counted(CLEAN) == expected


def test_an_unplugged_disk_discards_nothing(one_project: OneProject) -> None:
    """Not even where deleted frames are to be discarded: an empty mount point, then none."""
    diagnostics = gathered(one_project)
    before = diagnostics.log(CLEAN).read_bytes()
    (diagnostics.disk / "paw").rename(diagnostics.disk / "unplugged")
    (diagnostics.disk / "paw").mkdir()
    diagnostics.gather(CLEAN, CLEAN, options=("--gone", "discard"))
    assert diagnostics.log(CLEAN).read_bytes() == before
    (diagnostics.disk / "paw").rmdir()
    diagnostics.gather(CLEAN, CLEAN, options=("--gone", "discard"))
    assert diagnostics.log(CLEAN).read_bytes() == before


def test_undo(one_project: OneProject) -> None:
    """The log is, byte by byte, what it was before the last gather."""
    diagnostics = gathered(one_project)
    before = diagnostics.log(CLEAN).read_bytes()
    sorted_out(diagnostics)
    assert diagnostics.log(CLEAN).read_bytes() != before
    assert diagnostics.gather(CLEAN, options=(UNDO,)).exit_code == 0
    assert diagnostics.log(CLEAN).read_bytes() == before


def test_a_dry_run_writes_nothing(one_project: OneProject) -> None:
    """It tells the same numbers."""
    diagnostics = one_project(CLEAN)
    entry = (diagnostics.content / "entries/paw.md").read_bytes()
    assert "64" in diagnostics.gather(CLEAN, CLEAN, options=("--dry-run",)).output
    assert not diagnostics.log(CLEAN).exists()
    assert (diagnostics.content / "entries/paw.md").read_bytes() == entry


def test_gathering_again_changes_nothing(one_project: OneProject) -> None:
    diagnostics = gathered(one_project)
    before = diagnostics.log(CLEAN).read_bytes(), diagnostics.log(CLEAN).stat().st_mtime_ns
    diagnostics.gather(CLEAN, CLEAN)
    assert (diagnostics.log(CLEAN).read_bytes(), diagnostics.log(CLEAN).stat().st_mtime_ns) == before


def edited_by_hand(diagnostics: Diagnostics) -> list[bytes]:
    """The author discards the first frame, comments on it in the head, and saves with Windows' line ends."""
    lines = diagnostics.log(CLEAN).read_text("utf-8").splitlines()
    head = next(number for number, line in enumerate(lines) if not line.startswith("#"))
    kept_at, reason_at = lines[head].split(",").index("kept"), lines[head].split(",").index("reason")
    cells = lines[head + 1].split(",")
    cells[kept_at], cells[reason_at] = "no", "a satellite"
    lines[head + 1] = ",".join(cells)
    lines.insert(head, "# # the keeper: a bright satellite right at the start")
    diagnostics.log(CLEAN).write_bytes("".join(f"{line}\r\n" for line in lines).encode())
    return diagnostics.log(CLEAN).read_bytes().splitlines(keepends=True)


def test_what_the_author_wrote_stays(one_project: OneProject) -> None:
    """`kept: no` and its reason win over the disk; a comment and the line ends stay, where other frames change."""
    diagnostics = gathered(one_project)
    before = edited_by_hand(diagnostics)
    assert diagnostics.counted(CLEAN) == (63, 1)
    sorted_out(diagnostics, 2)
    assert diagnostics.counted(CLEAN) == (61, 3)
    after = diagnostics.log(CLEAN).read_bytes().splitlines(keepends=True)
    assert all(line.endswith(b"\r\n") for line in after)
    assert [line for line in before if line.startswith(b"#") and line not in after] == []
    assert b"# # the keeper: a bright satellite right at the start\r\n" in after
    assert diagnostics.rows(CLEAN)[0]["reason"] == "a satellite"


def test_the_author_keeps_what_lies_in_rejected(one_project: OneProject) -> None:
    """A frame that gathering discarded and the author took back by hand stays kept."""
    diagnostics = gathered(one_project)
    sorted_out(diagnostics)
    text = diagnostics.log(CLEAN).read_text("utf-8")
    discarded = next(line for line in text.splitlines() if not line.startswith("#") and re.search(r",False,", line))
    diagnostics.log(CLEAN).write_text(text.replace(discarded, discarded.replace(",False,", ",yes,", 1)), "utf-8")
    diagnostics.gather(CLEAN, CLEAN)
    assert diagnostics.counted(CLEAN) == (59, 5)


def test_a_list_of_the_frames_that_were_used(one_project: OneProject, tmp_path: Path) -> None:
    """Those it names are kept, the others were thrown away."""
    diagnostics = one_project(CLEAN)
    used = [*lights(diagnostics, "2025-07-20"), *lights(diagnostics)[:20]]
    (tmp_path / "used.txt").write_text("\n".join(path.name for path in used) + "\n", "utf-8")
    diagnostics.gather(CLEAN, CLEAN, options=("--kept-list", str(tmp_path / "used.txt")))
    assert diagnostics.counted(CLEAN) == (52, 12)
