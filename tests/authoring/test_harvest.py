"""What a harvest makes of headers that say little, or contradict the diary. Common practice, no source, where none is named."""

from datetime import date
from pathlib import Path

import pytest
from PIL.ExifTags import Base
from PIL.TiffImagePlugin import IFDRational

from sitegen.authoring.captures.memory import FrameMemory
from sitegen.authoring.captures.walk import find_files
from sitegen.authoring.harvest.harvesting import HarvestOptions, harvest
from sitegen.authoring.harvest.report import Harvest, ProjectReport
from sitegen.authoring.harvest.zones import nearest_zone
from sitegen.folders import Folders
from tests.authoring.conftest import TODAY, MakeFrames, later_ns
from tests.reading.capture_logs.test_exif_tags import structure

NOTHING = {"OBJECT": None, "RA": None, "DEC": None}


@pytest.fixture
def bare(tmp_path: Path) -> Folders:
    """No diary yet."""
    base = tmp_path / "new"
    return Folders(base / "content", base / "themes", base / "output", base / ".sitegen")


def harvested(folders: Folders, folder: Path, **options: bool) -> Harvest:
    memory = FrameMemory(folders.keep, later_ns())
    return harvest(find_files([str(folder)]), memory, folders, TODAY, HarvestOptions(**options))


def only(done: Harvest) -> ProjectReport:
    (project,) = done.projects
    return project


def text(folders: Folders, path: str) -> str:
    return (folders.content / path).read_text("utf-8")


@pytest.mark.parametrize(("apart", "entries"), [(89, ["ngc-2070"]), (90, ["ngc-2070-2025", "ngc-2070-2026"])])
def test_ninety_nights_part_projects(
    apart: int, entries: list[str], bare: Folders, make_frames: MakeFrames, tmp_path: Path
) -> None:
    """Between two evenings; a night less goes on."""
    make_frames("captures", 2, start="2025-12-20T10:00:00")
    later = date.fromordinal(date(2025, 12, 20).toordinal() + apart)
    make_frames("captures", 2, start=f"{later}T10:00:00")
    assert [project.entry for project in harvested(bare, tmp_path / "captures").projects] == entries


def test_object_before_pointing_before_folder(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """A name that fits its pointing; a name left from the evening before, where the pointing wins; a folder where nothing else
    says it. The places are those of the catalogue (NGC 2070 and NGC 104)."""
    make_frames("captures/M 83", 1, start="2026-01-20T10:00:00", RA=84.676, DEC=-69.101)
    make_frames("captures/M 83/b", 2, start="2026-01-20T11:00:00", RA=6.024, DEC=-72.081)
    make_frames("captures/M 83/c", 3, start="2026-01-20T12:00:00", **NOTHING)
    projects = harvested(bare, tmp_path / "captures").projects
    assert {project.target: project.kept for project in projects} == {"NGC 2070": 1, "NGC 104": 2, "M 83": 3}
    assert "target: M 83  # to be confirmed: guessed from its folder's or its file's name" in text(bare, "entries/m-83.md")


def test_what_nothing_names_is_asked(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Once for the folder, whatever its nights are called."""
    for night in ("2026-01-20", "2026-01-21"):
        make_frames(f"captures/loose/{night}", 2, start=f"{night}T10:00:00", **NOTHING)
    done = harvested(bare, tmp_path / "captures")
    assert (done.kinds["unclear"], done.projects) == (4, ())
    (question,) = done.questions
    assert question.line == "- {files: 'loose/*', target: TARGET}"
    assert question.key == "diary.yaml: captures.answers"


def test_two_widths_are_two_filters(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Wavelength of hydrogen-alpha: 656.3 nm in air, from memory."""
    make_frames("captures", 1, start="2026-01-20T10:00:00", FILTER="Ha 3nm")
    make_frames("captures", 1, start="2026-01-20T11:00:00", FILTER="Ha 7nm", prefix="wide_")
    harvested(bare, tmp_path / "captures")
    (rig,) = (bare.content / "rigs").iterdir()
    assert "  Ha-3nm: {name: hydrogen-alpha, kind: narrowband, centre_nm: 656.3, width_nm: 3}" in rig.read_text("utf-8")
    rows = text(bare, "logs/ngc-2070.ecsv")
    assert (",Ha-3nm," in rows, ",Ha-7nm," in rows) == (True, True)


def test_a_rig_that_changed_is_asked_for(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Its file is the author's by then: the change is shown, not written, and its frames wait."""
    make_frames("captures", 2, start="2026-01-20T10:00:00", TELESCOP="Dome Newtonian")
    harvested(bare, tmp_path / "captures")
    before = text(bare, "rigs/dome-newtonian.yaml")
    make_frames("captures", 3, start="2026-02-20T10:00:00", TELESCOP="Dome Newtonian", FOCALLEN=730.0)
    done = harvested(bare, tmp_path / "captures")
    asked = next(question for question in done.questions if question.files)
    assert (asked.files, asked.key, asked.line) == (
        3, "rigs/dome-newtonian.yaml: changes", "- {from: 2026-02-20, focal_length_mm: 730}"
    )  # fmt: skip
    assert text(bare, "rigs/dome-newtonian.yaml") == before
    (bare.content / "rigs/dome-newtonian.yaml").write_text(f"{before}changes:\n  {asked.line}\n", "utf-8")
    assert only(harvested(bare, tmp_path / "captures")).kept == 5


def test_a_filter_that_the_rig_lacks_is_asked_for(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """And its frames stand in no log until it is told."""
    make_frames("captures", 2, start="2026-01-20T10:00:00")
    make_frames("captures", 3, start="2026-01-20T12:00:00", FILTER="Nebula X", prefix="x_")
    done = harvested(bare, tmp_path / "captures")
    assert (only(done).kept, done.kinds["unclear"]) == (2, 3)
    assert "what is the filter 'Nebula X'" in done.questions[0].question


def test_a_train_without_pixels_is_asked_for(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """A rig without them would give no image scale."""
    make_frames("captures", 2, start="2026-01-20T10:00:00", XPIXSZ=None, TELESCOP="Lens")
    done = harvested(bare, tmp_path / "captures")
    assert done.kinds["unclear"] == 2
    assert "what is pixel_um of 'Lens'?" in done.questions[0].question
    assert not (bare.content / "rigs").exists()


def test_telescopes_of_one_kind_are_rigs_of_their_own(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Fired together they are no copies of each other, also where the diary describes one of them."""
    make_frames("captures", 4, start="2026-01-20T10:00:00", TELESCOP="East")
    harvested(bare, tmp_path / "captures")
    make_frames("captures", 4, start="2026-01-20T10:00:00", TELESCOP="West", prefix="west_")
    assert sorted((project.rig, project.kept) for project in harvested(bare, tmp_path / "captures").projects) == [
        ("east", 4), ("west", 4)
    ]  # fmt: skip


@pytest.mark.parametrize(("step", "shown"), [("0.1", "-36.9"), ("2", "-36")])
def test_a_place_is_written_as_coarse_as_the_diary_is(
    step: str, shown: str, bare: Folders, make_frames: MakeFrames, tmp_path: Path
) -> None:
    """-36.85° on a grid of 0.1° and of 2°."""
    bare.content.mkdir(parents=True)
    settings = f"title: Nights\nprivacy: {{round_to_deg: {step}}}\n"
    (bare.content / "diary.yaml").write_text(settings, "utf-8")
    make_frames("captures", 1, start="2026-01-20T10:00:00")
    harvested(bare, tmp_path / "captures")
    (site,) = (bare.content / "sites").iterdir()
    assert f"latitude_deg: {shown}\n" in site.read_text("utf-8")


def test_a_known_site_and_rig_are_taken(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Those that 'start' writes are what the headers tell; nothing is written beside them."""
    make_frames("captures", 2, start="2026-01-20T10:00:00")
    done = harvested(folders, tmp_path / "captures")
    assert (only(done).rig, only(done).site) == ("first-train", "garden")
    assert done.written == ("logs/ngc-2070.ecsv", "entries/ngc-2070.md")


def test_a_log_that_was_gathered_goes_on(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """What the author wrote into it wins, and its entry keeps its name."""
    make_frames("captures", 2, start="2026-01-20T10:00:00")
    harvested(folders, tmp_path / "captures")
    (folders.content / "entries/ngc-2070.md").rename(folders.content / "entries/spider.md")
    log = folders.content / "logs/ngc-2070.ecsv"
    log.write_text(log.read_text("utf-8").replace("True,,", "False,a satellite,", 1), "utf-8")
    make_frames("captures", 3, start="2026-01-22T10:00:00")
    project = only(harvested(folders, tmp_path / "captures"))
    assert (project.entry, project.new, project.kept, project.discarded) == ("spider", 3, 4, 1)


def test_what_lies_hidden_is_other(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """A hidden frame, and all of a hidden folder."""
    make_frames("captures", 1, start="2026-01-20T10:00:00")
    make_frames("captures/.trash/deep", 2, start="2026-01-21T10:00:00")
    (tmp_path / "captures/._frame.fits").write_bytes(b"")
    done = harvested(bare, tmp_path / "captures")
    assert (done.files, done.kinds["other"]) == (4, 3)


@pytest.mark.parametrize(("place", "zone"), [
    ((-34.9, 138.6), ("Australia/Adelaide", "UTC+09:30")),
    ((60.2, 25.0), ("Europe/Helsinki", "UTC+02:00")),
    ((-33.5, -70.6), ("America/Santiago", "UTC-04:00")),
    ((19.8, -155.5), ("Pacific/Honolulu", "UTC-10:00")),
])  # fmt: skip
def test_the_nearest_zone(place: tuple[float, float], zone: tuple[str, str]) -> None:
    """Zones and their standard offsets: the IANA time zone database. Far from any border, so the nearest is the right one."""
    assert nearest_zone(*place) == zone


def test_a_rig_is_one_telescope(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Of two that the diary's rig may be, it is the one of its name, though the other has more frames."""
    rig = folders.content / "rigs/first-train.yaml"
    rig.write_text(rig.read_text("utf-8").replace("name: The first train", "name: The west tube"), "utf-8")
    make_frames("captures", 4, start="2026-01-20T10:00:00", TELESCOP="East tube")
    make_frames("captures", 2, start="2026-01-20T10:00:00", TELESCOP="West tube", prefix="west_")
    projects = harvested(folders, tmp_path / "captures").projects
    assert {project.rig: project.kept for project in projects} == {"first-train": 2, "east-tube": 4}


def test_what_was_answered_stays_answered(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Also when its frames were moved out of the folder that the answer names."""
    make_frames("captures/loose", 3, start="2026-01-20T10:00:00", **NOTHING)
    bare.content.mkdir(parents=True)
    answers = "[{files: 'loose/*', target: NGC 104}]"
    (bare.content / "diary.yaml").write_text(f"title: Nights\ncaptures: {{answers: {answers}}}\n", "utf-8")
    assert only(harvested(bare, tmp_path / "captures")).target == "NGC 104"
    (tmp_path / "captures/loose").rename(tmp_path / "captures/sorted")
    done = harvested(bare, tmp_path / "captures")
    assert (only(done).kept, only(done).new, done.kinds["unclear"]) == (3, 0, 0)


def test_a_place_is_not_guessed_across_rigs(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Of two sites, a rig whose headers tell none is asked for: now, and when all others are in their logs."""
    make_frames("captures/a", 2, start="2026-01-20T10:00:00", TELESCOP="Dome")
    make_frames("captures/b", 2, start="2026-01-20T23:00:00", TELESCOP="Traveller", SITELAT="60 12 00", SITELONG="25 00 00",
                OBJECT="IC 1805")  # fmt: skip
    make_frames("captures/c", 3, start="2026-01-21T10:00:00", TELESCOP="Third", SITELAT=None, SITELONG=None)
    for _ in range(2):
        done = harvested(bare, tmp_path / "captures")
        assert done.kinds["unclear"] == 3
        make_frames("captures/a", 2, start="2026-01-22T10:00:00", TELESCOP="Dome") if done.projects[0].new else None


def test_a_place_taken_from_the_rig_s_other_frames_is_marked(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    make_frames("captures/a", 2, start="2026-01-20T10:00:00", TELESCOP="Dome")
    make_frames("captures/b", 2, start="2026-01-20T23:00:00", TELESCOP="Traveller", SITELAT="60 12 00", SITELONG="25 00 00",
                OBJECT="IC 1805")  # fmt: skip
    make_frames("captures/c", 3, start="2026-01-21T10:00:00", TELESCOP="Dome", OBJECT="NGC 104", SITELAT=None, SITELONG=None)
    harvested(bare, tmp_path / "captures")
    assert "site: 37s-175e  # to be confirmed: guessed from the other frames of its rig" in text(bare, "entries/ngc-104.md")


def test_a_disk_without_any_place(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Nothing is written but the rig, and the question says how to begin a site."""
    make_frames("captures", 2, start="2026-01-20T10:00:00", SITELAT=None, SITELONG=None)
    done = harvested(bare, tmp_path / "captures")
    assert (done.kinds["unclear"], done.projects) == (2, ())
    assert "describe it in sites/NAME.yaml" in done.questions[0].question


def test_a_camera_spelt_otherwise_is_the_same(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Two programs took turns on one telescope; another camera after them is a change, with its name."""
    make_frames("captures/a", 2, start="2026-01-20T10:00:00", TELESCOP="Dome", INSTRUME="Cam 2600")
    make_frames("captures/b", 2, start="2026-01-20T12:00:00", TELESCOP="Dome", INSTRUME="CAM2600 (mono)")
    make_frames("captures/c", 2, start="2026-01-21T10:00:00", TELESCOP="Dome", INSTRUME="Cam 2600")
    make_frames("captures/d", 2, start="2026-02-21T10:00:00", TELESCOP="Dome", INSTRUME="Cam 533", XPIXSZ=8 * 3.0)
    assert only(harvested(bare, tmp_path / "captures")).kept == 8
    assert '- {from: 2026-02-21, pixel_um: 3, name: "Cam 533", note: ' in text(bare, "rigs/dome.yaml")


def test_a_raw_file_that_names_nothing_is_asked_for(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """It is coloured, as the only colour camera of the disk is; that alone says nothing of its telescope."""
    make_frames("captures/fits", 2, TELESCOP="one", INSTRUME="colour camera", BAYERPAT="RGGB")
    card = tmp_path / "captures/DCIM"
    card.mkdir()
    tags = {Base.DateTimeOriginal: "2026:11:20 11:12:00", Base.ExposureTime: IFDRational(30, 1)}
    (card / "IMG_1.CR2").write_bytes(structure(tags))
    done = harvested(bare, tmp_path / "captures")
    assert (only(done).kept, done.kinds["unclear"]) == (2, 1)
    assert "which rig took 1 frame in DCIM/?" in done.questions[0].question


def test_a_planet_needs_no_confirming(bare: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Where it was is known by its name; a comet's name is a guess."""
    make_frames("captures", 2, start="2026-11-18T10:00:00", OBJECT="Saturn")
    make_frames("captures", 2, start="2026-11-19T10:00:00", OBJECT="C/2031 Q9")
    harvested(bare, tmp_path / "captures")
    assert "target: {name: Saturn, kind: moving}\n" in text(bare, "entries/saturn.md")
    assert "kind: moving}  # to be confirmed: guessed from its name\n" in text(bare, "entries/c-2031-q9.md")
