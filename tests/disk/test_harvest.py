"""From an empty folder to a published site: ten years of captures in at most five commands and ten answers, each number the true
one. What counts as a sub is common practice, no source; the truth is the generator's own."""

import json
import re
import shutil
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from typing import Any

import pytest
from msgspec import Struct, field

from tests.disk import decade
from tests.disk.capture import Disk
from tests.disk.command import Diagnostics, sums_of
from tests.disk.conftest import WrittenDisk
from tests.disk.decade import ENTRIES, NORTH, SOUTH, UNKNOWN_FILTER, write_decade
from tests.disk.projects import LAKE, SCHOOL
from tests.disk.projects import TRAINS as HARD_TRAINS
from tests.disk.truth import DiskTruth, TrueFrame, nights, sums

MOST_COMMANDS, MOST_ANSWERS = 5, 10
KINDS = ("counted", "discarded", "calibration", "derived", "set_aside", "other", "unreadable", "unclear")
FATES = {
    "kept": "counted", "discarded": "discarded", "calibration": "calibration", "copy": "derived", "combined": "derived",
    "focus": "derived", "unreadable": "unreadable", "passed_over": "other", "hidden": "other",
}  # fmt: skip
MARK = re.compile(r"  # to be confirmed:[^\n]*?(?=  #|\n)")


class Adoption(Struct):
    """Somebody who takes a disk into a new diary, and the commands and answers that it took."""

    diagnostics: Diagnostics
    truth: DiskTruth
    commands: int = 0
    answers: int = 0
    reports: list[dict[str, Any]] = field(default_factory=list)

    def run(self, *words: str | Path) -> str:
        self.commands += 1
        done = self.diagnostics.run(*words)
        assert done.exit_code == 0, done.output
        return done.stdout

    def harvest(self, *options: str) -> dict[str, Any]:
        self.reports.append(json.loads(self.run("harvest", self.diagnostics.disk, "--json", *options)))
        return self.reports[-1]

    def answer(self, *lines: str) -> None:
        """Under `captures.answers`, in a diary that has none yet."""
        path = self.diagnostics.content / "diary.yaml"
        begun = path.read_text("utf-8").partition("#captures:")[0]
        path.write_text(begun + "captures:\n  answers:\n" + "".join(f"    {line}\n" for line in lines), "utf-8")
        self.answers += len(lines)

    def confirm(self) -> None:
        """Every guess was right: the marks are taken away."""
        for path in sorted(self.diagnostics.content.rglob("*")):
            if path.suffix in (".yaml", ".md") and MARK.search(text := path.read_text("utf-8")):
                path.write_text(MARK.sub("", text), "utf-8")
                self.answers += len(MARK.findall(text))

    def spell(self, rig: str, short: str, spelling: str) -> None:
        path = self.diagnostics.content / f"rigs/{rig}.yaml"
        text = path.read_text("utf-8")
        path.write_text(re.sub(rf"(  {short}: {{.*)}}", rf"\1, spelt: [{spelling}]}}", text), "utf-8")
        self.answers += 1


@pytest.fixture(scope="module")
def ten_years(tmp_path_factory: pytest.TempPathFactory) -> WrittenDisk:
    written = Disk(tmp_path_factory.mktemp("ten-years") / "disk")
    write_decade(written)
    return WrittenDisk(written.root, written.truth())


def adoption(disk: WrittenDisk, base: Path) -> Adoption:
    return Adoption(Diagnostics(base / "content", base / "output", disk.root), disk.truth)


@pytest.fixture(scope="module")
def adopted(ten_years: WrittenDisk, tmp_path_factory: pytest.TempPathFactory) -> Adoption:
    """Two harvests with the answers between them, a check and a rebuild."""
    own = adoption(ten_years, tmp_path_factory.mktemp("adopted"))
    own.harvest()
    own.answer(
        "- {files: '2023/carina/*', time_zone: Australia/Adelaide}",
        "- {files: '2025/loose/*', target: NGC 104}",
        "- {files: '2025/tests/*', leave_out: true}",
    )
    own.spell("garden-newtonian", "OIII", UNKNOWN_FILTER)
    own.confirm()
    own.harvest()
    own.run("check", "--quiet")
    own.run("rebuild", "--jobs", "1")
    return own


@pytest.fixture(scope="module")
def hard(disk: WrittenDisk, tmp_path_factory: pytest.TempPathFactory) -> Adoption:
    """The disk of every trouble, whose headers name wrong places and clocks, from the same empty folder."""
    own = adoption(disk, tmp_path_factory.mktemp("hard"))
    own.harvest()
    own.answer(
        "- {files: 'carina/*', time_zone: Australia/Adelaide}",
        "- {files: 'omega/*', site: 34s-139e}",
        "- {files: 'tucana/*', time_zone: Australia/Adelaide}",
        "- {files: 'pinwheel/*', site: 34s-139e}",
    )
    own.spell("long-tube", "OIII", "Nebula X")
    own.confirm()
    own.harvest()
    own.run("rebuild", "--jobs", "1")
    return own


def true_kinds(truth: DiskTruth, others: str) -> dict[str, int]:
    """`others` is the kind of what is somebody else's."""
    kinds = dict.fromkeys(KINDS, 0)
    for written in truth.files:
        kinds[FATES.get(written.fate, others)] += 1
    return kinds


def kinds_in(report: Mapping[str, Any]) -> dict[str, int]:
    return {kind: report[kind] for kind in KINDS}


def counted_frames(truth: DiskTruth) -> list[TrueFrame]:
    return [written.frame for written in truth.files if written.frame is not None and written.fate in ("kept", "discarded")]


def test_few_commands_and_few_answers(adopted: Adoption, hard: Adoption) -> None:
    """The limits above, on six hundred files and more."""
    for own in (adopted, hard):
        assert len(own.truth.files) >= 600
        assert own.commands <= MOST_COMMANDS
        assert 0 < own.answers <= MOST_ANSWERS


def test_every_file_is_in_one_kind(adopted: Adoption, hard: Adoption) -> None:
    """Also before anything is answered; once all is, each kind is the true one. The lens that rode along has a rig of its own."""
    for own, others in ((adopted, "set_aside"), (hard, "counted")):
        for report in own.reports:
            assert report["files"] == sum(kinds_in(report).values()) == len(own.truth.files)
        assert kinds_in(own.reports[-1]) == true_kinds(own.truth, others)


def test_what_is_unclear_is_asked_with_its_key(adopted: Adoption, hard: Adoption) -> None:
    """The questions wait for all unclear files, and nothing is asked twice."""
    for own in (adopted, hard):
        first, last = own.reports[0], own.reports[-1]
        assert first["unclear"] == sum(question["files"] for question in first["questions"]) > 0
        asked = first["questions"]
        assert all(question["question"].count("?") == 1 and question["key"] and question["line"] for question in asked)
        assert (last["unclear"], last["questions"]) == (0, [])


def test_nothing_unclear_is_written(adopted: Adoption, ten_years: WrittenDisk, tmp_path: Path) -> None:
    """What waits for an answer stands in no log, so that no total is silently wrong."""
    own = adoption(ten_years, tmp_path)
    report = own.harvest()
    rows = sum(len(own.diagnostics.rows(path.stem)) for path in (own.diagnostics.content / "logs").iterdir())
    assert rows == report["counted"] + report["discarded"]
    assert report["counted"] + report["discarded"] + report["unclear"] >= len(counted_frames(ten_years.truth))


@pytest.mark.parametrize("name", ENTRIES)
def test_a_project(name: str, adopted: Adoption) -> None:
    """Its entry is called after the target, dated after its last night, and has the frames that it should."""
    frames = [written.frame for written in adopted.truth.files if written.project == name and written.frame is not None]
    entry, truth = ENTRIES[name], sums(frames)
    facts = adopted.diagnostics.facts(f"entries/{entry}/")
    assert sums_of(facts["integration"]) == truth
    assert [night["evening_of"] for night in facts["nights"]] == nights(frames)
    (told,) = [project for project in adopted.reports[-1]["projects"] if project["entry"] == entry]
    assert (told["kept"], told["discarded"], told["total_s"]) == (truth.kept, truth.discarded, truth.total_s)
    assert told["nights"] == nights(frames)
    assert (told["rig"], told["site"]) == (frames[0].rig, frames[0].place.site)
    page = (adopted.diagnostics.output / f"targets/{frames[0].target}/index.html").read_text("utf-8")
    assert re.search(rf"<h1[^>]*>\s*{told['target']}\b", page)


def test_there_are_ten_projects(adopted: Adoption) -> None:
    entries = sorted(path.stem for path in (adopted.diagnostics.content / "entries").iterdir())
    assert entries == sorted(ENTRIES.values()) == sorted(project["entry"] for project in adopted.reports[-1]["projects"])


def compare(own: Adoption, address: str, frames: Iterable[TrueFrame]) -> None:
    frames = list(frames)
    facts = own.diagnostics.facts(address)
    assert sums_of(facts["integration"]) == sums(frames)
    assert sorted(facts["nights"]) == nights(frames)


def test_every_total(adopted: Adoption) -> None:
    """Of the whole diary, of each year, rig, site, target and night."""
    frames = counted_frames(adopted.truth)
    groups: tuple[tuple[str, Callable[[TrueFrame], str]], ...] = (
        ("years", lambda frame: str(frame.evening.year)), ("rigs", lambda frame: frame.rig),
        ("sites", lambda frame: frame.place.site), ("targets", lambda frame: frame.target),
        ("nights", lambda frame: frame.evening.isoformat()),
    )  # fmt: skip
    compare(adopted, "totals/", frames)
    for folder, name_of in groups:
        for name in {name_of(frame) for frame in frames}:
            compare(adopted, f"{folder}/{name}/", (frame for frame in frames if name_of(frame) == name))


def test_every_rig_of_the_hard_disk(hard: Adoption) -> None:
    """Twin telescopes fired together stay apart; what a wrong place or clock had hidden is in its own night."""
    frames = counted_frames(hard.truth)
    called = {train.rig: train.telescope.replace(" ", "-") for train in HARD_TRAINS}
    for rig in {frame.rig for frame in frames}:
        compare(hard, f"rigs/{called[rig]}/", (frame for frame in frames if frame.rig == rig))
    assert {place.site for place in (SCHOOL, LAKE)} == {"school", "lake"}
    compare(hard, "sites/60n-25e/", (frame for frame in frames if frame.place == LAKE))


def test_a_train_that_changed_is_one_rig(adopted: Adoption) -> None:
    """With a dated change for the other camera and for the reducer, from the first evening on that has it."""
    text = (adopted.diagnostics.content / "rigs/garden-newtonian.yaml").read_text("utf-8")
    changes = dict(re.findall(r"from: (\S+), ([^,]*),", text))
    assert changes == decade.CHANGES
    assert sorted(path.stem for path in (adopted.diagnostics.content / "rigs").iterdir()) == sorted(decade.RIGS)
    trains = [(train["focal_length_mm"], train["from"]) for train in adopted.diagnostics.facts("entries/ngc-2070/")["optics"]]
    assert trains == [(decade.REDUCED.focal_length_mm, "2022-12-20")]


def test_sites_and_their_clocks(adopted: Adoption) -> None:
    """The zones are those of the places (IANA), the coordinates as coarse as the diary's privacy."""
    for place in (SOUTH, NORTH):
        text = (adopted.diagnostics.content / f"sites/{place.site}.yaml").read_text("utf-8")
        assert f"time_zone: {place.time_zone}\n" in text
        assert f"latitude_deg: {place.latitude_deg:g}\nlongitude_deg: {place.longitude_deg:g}\n" in text


def test_a_hidden_place_is_not_shown(ten_years: WrittenDisk, tmp_path: Path) -> None:
    """Neither in a name that the site would publish nor on the screen."""
    own = adoption(ten_years, tmp_path)
    own.diagnostics.content.mkdir()
    settings = "title: Nights\nprivacy: {site_position: hidden}\n"
    (own.diagnostics.content / "diary.yaml").write_text(settings, "utf-8")
    said = own.run("harvest", ten_years.root)
    assert sorted(path.stem for path in (own.diagnostics.content / "sites").iterdir()) == ["place-1", "place-2"]
    assert not re.search(r"34\.2|138\.9|139e|34s", said)


def test_a_dry_run_writes_nothing(ten_years: WrittenDisk, tmp_path: Path) -> None:
    """And shows the table of projects."""
    own = adoption(ten_years, tmp_path)
    said = own.run("harvest", ten_years.root, "--dry-run")
    assert sorted(tmp_path.iterdir()) == []
    assert re.search(r"^ngc-253-2016 +NGC 253 +garden-newtonian +34s-139e +2 +70 +5 ", said, re.M)
    assert "nothing was written" in said


@pytest.fixture
def again(adopted: Adoption, ten_years: WrittenDisk, tmp_path: Path) -> Adoption:
    """The diary and the disk, to be changed."""
    shutil.copytree(ten_years.root, tmp_path / "disk")
    own = adoption(WrittenDisk(tmp_path / "disk", ten_years.truth), tmp_path)
    shutil.copytree(adopted.diagnostics.content, own.diagnostics.content)
    return own


def contents(folder: Path) -> dict[str, str]:
    return {path.relative_to(folder).as_posix(): path.read_text("utf-8") for path in sorted(folder.rglob("*")) if path.is_file()}


def test_once_more_changes_nothing(again: Adoption) -> None:
    """Not a byte, though the disk lies elsewhere now and nothing of it is remembered."""
    before = contents(again.diagnostics.content)
    report = again.harvest()
    assert report["written"] == [path for path in report["written"] if path.startswith("logs/")]
    assert {path: text for path, text in contents(again.diagnostics.content).items() if not path.startswith("logs/")} == {
        path: text for path, text in before.items() if not path.startswith("logs/")
    }
    assert [project["new"] for project in report["projects"]] == [0] * len(ENTRIES)
    second = again.harvest()
    assert second["written"] == []
    assert kinds_in(second) == kinds_in(report)


def test_a_new_night_joins_its_project(again: Adoption) -> None:
    """A frame of the next week goes on with the log; a frame four months later begins another entry."""
    disk = Disk(again.diagnostics.disk)
    own = decade.Capture(disk, "tarantula", decade.REDUCED, SOUTH, decade.TARANTULA, decade.frames.plain)
    own.number = 900
    own.shoot("2022/next-week", "2022-12-28T13:00:00", 7, 240.0, "L")
    own.shoot("2023/next-season", "2023-10-20T13:00:00", 6, 240.0, "L")
    projects = {project["entry"]: project for project in again.harvest()["projects"]}
    assert projects["ngc-2070"]["new"] == 7
    assert projects["ngc-2070"]["nights"][-1] == "2022-12-28"
    assert projects["ngc-2070-2023"]["kept"] == 6
    assert len(projects) == len(ENTRIES) + 1


def test_rejects_moved_since_are_discarded(again: Adoption) -> None:
    """And what the author wrote into the log and the entry stays."""
    entry = again.diagnostics.content / "entries/ngc-2070.md"
    entry.write_text(entry.read_text("utf-8") + "\nMine.\n", "utf-8")
    written = entry.read_text("utf-8")
    night = again.diagnostics.disk / "2022/tarantula"
    (night / "rejected").mkdir()
    for frame in sorted(night.glob("tarantula_000[1-3].fits")):
        frame.rename(night / "rejected" / frame.name)
    (told,) = [project for project in again.harvest()["projects"] if project["entry"] == "ngc-2070"]
    assert (told["kept"], told["discarded"]) == (45, 3)
    assert entry.read_text("utf-8") == written


def test_gather_goes_on_with_a_harvested_log(again: Adoption) -> None:
    """Every frame is known to it."""
    again.harvest()
    report = again.diagnostics.report("ngc-2070", "2022/tarantula")
    assert (report["new"], report["known"]) == (0, 48)
