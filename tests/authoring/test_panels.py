"""Mosaics from captures: gathering keeps a frame's panel, harvest drafts the entry with its panels."""

from pathlib import Path

from sitegen.authoring.captures.memory import FrameMemory
from sitegen.authoring.captures.walk import find_files
from sitegen.authoring.harvest.harvesting import HarvestOptions, harvest
from sitegen.authoring.harvest.report import ProjectReport
from sitegen.folders import Folders
from sitegen.reading.reader import read_diary
from tests.authoring.conftest import TODAY, MakeFrames, gathered, later_ns, log_of


def panels_in(folders: Folders, name: str = "first-light") -> list[str]:
    """The log's column, row by row."""
    lines = [line for line in log_of(folders, name).read_text("utf-8").splitlines() if not line.startswith("#")]
    index = lines[0].split(",").index("panel")
    return [line.split(",")[index] for line in lines[1:]]


def harvested(folders: Folders, folder: Path) -> tuple[ProjectReport, ...]:
    memory = FrameMemory(folders.keep, later_ns())
    return harvest(find_files([str(folder)]), memory, folders, TODAY, HarvestOptions()).projects


def test_gathering_keeps_the_panel(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """From OBJECT, else from the folder; darks have none."""
    make_frames("disk/a", 1, OBJECT="NGC 253 panel 2", RA=11.9, DEC=-25.3)
    make_frames("disk/Panel 03", 1, start="2026-11-20T11:00:00", OBJECT="NGC 253", RA=11.9, DEC=-25.9)
    make_frames("disk/Panel 03", 1, start="2026-11-20T12:00:00", prefix="dark_", IMAGETYP="Dark Frame")
    gathered(folders, tmp_path / "disk", target="NGC 253")
    assert panels_in(folders) == ["2", "3", ""]


def test_a_log_from_before_learns_its_panels(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """And the author's own word for one stays."""
    make_frames("disk/Panel 1", 2, OBJECT="NGC 253", RA=11.9, DEC=-25.3)
    gathered(folders, tmp_path / "disk", target="NGC 253")
    log = log_of(folders)
    once = log.read_text("utf-8")
    rows = [line for line in once.splitlines() if line.startswith("2026")]
    assert panels_in(folders) == ["1", "1"]
    index = next(line for line in once.splitlines() if line.startswith("start,")).split(",").index("panel")
    for row, panel in zip(rows, ("west", ""), strict=True):
        cells = row.split(",")
        once = once.replace(row, ",".join([*cells[:index], panel, *cells[index + 1 :]]))
    log.write_text(once, "utf-8")
    gathered(folders, tmp_path / "disk", target="NGC 253")
    assert panels_in(folders) == ["west", "1"]


def test_a_single_field_gets_no_column(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Nothing in names or folders speaks of panels."""
    make_frames("disk/P1", 2, OBJECT="NGC 253", RA=11.9, DEC=-25.3)
    gathered(folders, tmp_path / "disk", target="NGC 253")
    assert "panel" not in log_of(folders).read_text("utf-8").replace("panels", "")


def test_harvest_drafts_a_mosaic(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Two panels found by their pointings, 0.85° apart in a field 0.9° high: one entry, whose draft names them."""
    for number, dec in enumerate((-24.9, -25.75)):
        make_frames("disk/NGC 253", 3, start=f"2026-11-{18 + number}T10:00:00", OBJECT="NGC 253", RA=11.9, DEC=dec)
    (project,) = harvested(folders, tmp_path / "disk")
    assert (project.kept, project.panels) == (6, 2)
    text = (folders.content / f"entries/{project.entry}.md").read_text("utf-8")
    assert "#panels:  # found in the frames; take the '#' away to name them" in text
    assert "#  - {name: 1, ra: 11.900, dec: -24.900}  # Ha 0.2 h" in text
    reading = read_diary(folders.content, TODAY)
    assert [str(problem) for problem in reading.problems if problem.severity == "error"] == []
    named = text.replace("#panels:", "panels:").replace("#  - {name: ", "  - {name: ")
    (folders.content / f"entries/{project.entry}.md").write_text(named, "utf-8")
    entries = read_diary(folders.content, TODAY).diary
    assert entries is not None
    entry = next(entry for entry in entries.entries if entry.slug == project.entry)
    assert [panel.name for panel in entry.panels or ()] == ["1", "2"]


def test_panels_named_in_three_ways_are_one_project(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """'NGC 253 panel 1', 'NGC253_P2' and a frame without a name in the third panel's folder."""
    make_frames("disk/one", 1, start="2026-11-18T10:00:00", OBJECT="NGC 253 panel 1", RA=11.9, DEC=-24.9)
    make_frames("disk/two", 2, start="2026-11-18T11:00:00", OBJECT="NGC253_P2", RA=11.9, DEC=-25.7)
    make_frames("disk/NGC 253 Panel 3", 1, start="2026-11-18T12:00:00", OBJECT=None, RA=12.9, DEC=-25.3)
    (project,) = harvested(folders, tmp_path / "disk")
    assert (project.target, project.kept, project.panels) == ("NGC 253", 4, 3)


def test_panels_of_a_name_of_one_s_own(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """No catalogue knows it; the panels hang together."""
    for number, ra in enumerate((40.0, 41.8)):
        make_frames("disk", 3, start=f"2026-11-{18 + number}T10:00:00", OBJECT=f"Dusty corner_P{number + 1}", RA=ra, DEC=-60.0)
    (project,) = harvested(folders, tmp_path / "disk")
    assert (project.target, project.kept, project.panels) == ("Dusty corner", 6, 2)
