"""Tables and text logs in one gathering with frames, and the recipe as it stands."""

import re
import shlex
from pathlib import Path

import pytest

from sitegen.folders import Folders
from sitegen.problems import DiaryProblems
from tests.authoring.conftest import MakeFrames, gathered, log_of
from tests.authoring.recorded.test_lines import LOG
from tests.conftest import ROOT

SPREADSHEET = "Datum;Beginn;Filter;Belichtung (s);Anzahl;Gut\n18.04.2026;21:36;Ha;300,0;12;10\nSumme;;;;12;10\n"


def test_frames_tables_and_lines_in_one_call(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Each counts by its own evidence, and the log bears them all."""
    frames = make_frames(tmp_path / "disk", 3)
    (tmp_path / "night.csv").write_text(SPREADSHEET, "utf-8")
    (tmp_path / "2026-04-20.log").write_text(LOG, "utf-8")
    done = gathered(folders, frames[0].parent, tmp_path / "night.csv", tmp_path / "2026-04-20.log",
                    lines=("{start:%H:%M:%S} begin {exposure_s} s, filter {filter}",))  # fmt: skip
    assert (done.totals.kept, done.totals.discarded) == (3 + 10 + 3, 2)
    assert "night.csv: 18.04.2026 is day first, since 18 is no month" in done.told
    again = gathered(folders, tmp_path / "night.csv", tmp_path / "2026-04-20.log")
    assert (again.new_count, again.known_count) == (0, 15)


def test_a_table_of_the_same_exposures_is_told(folders: Folders, make_frames: MakeFrames, tmp_path: Path) -> None:
    """Its minutes meet no start of a frame, so that each exposure would count twice; one of the same seconds is the frame itself,
    and one of another hour no doubt. Also where the frames were gathered before."""
    frames = make_frames(tmp_path / "disk", 3)
    rows = "2026-11-20 10:01,300 s,H-alpha\n2026-11-20T10:05:10,300 s,H-alpha\n2026-11-20 12:00,300 s,H-alpha\n"
    (tmp_path / "night.csv").write_text(f"Start,Exposure,Filter\n{rows}", "utf-8")
    for words in ((frames[0].parent, tmp_path / "night.csv"), (tmp_path / "night.csv",)):
        done = gathered(folders, *words)
        assert [problem.wrong for problem in done.problems if problem.severity == "warning"] == [
            "1 exposure of tables or text logs overlap those of frame files, the first at 2026-11-20 10:01 UTC"
        ]


def test_a_doubtful_table_gathers_nothing(folders: Folders, tmp_path: Path) -> None:
    """Half a table would count half a night."""
    (tmp_path / "night.csv").write_text("Date,Time,Exposure,Filter\n3/4/2026,21:00,300,L\n", "utf-8")
    done = gathered(folders, tmp_path / "night.csv")
    assert [problem.severity for problem in done.problems] == ["error"]
    assert not log_of(folders).exists()


def test_a_dry_run_remembers_nothing(folders: Folders, tmp_path: Path) -> None:
    """It writes nothing at all."""
    (tmp_path / "night.csv").write_text("Date,Time,Exposure,Filter\n3/4/2026,21:00,300,L\n", "utf-8")
    gathered(folders, tmp_path / "night.csv", columns=("date=Date:%d/%m/%Y",), dry_run=True)
    assert gathered(folders, tmp_path / "night.csv").totals.kept == 0


def test_a_wrong_option_reads_no_file(folders: Folders, tmp_path: Path) -> None:
    """It is told before anything else."""
    with pytest.raises(DiaryProblems, match="is no field of a line"):
        gathered(folders, tmp_path, lines=("{strat}",))


def test_a_pattern_of_files_finds_spreadsheets(folders: Folders, tmp_path: Path) -> None:
    """'*.tsv' is a table, though no reader of a diary knows it."""
    (tmp_path / "night.tsv").write_text(SPREADSHEET.replace(";", "\t"), "utf-8")
    assert gathered(folders, tmp_path / "*.tsv").totals.kept == 10


def test_the_recipe_works_as_it_stands(folders: Folders, tmp_path: Path) -> None:
    """Every option of the recipe's commands, on the files it speaks of."""
    recipe = (ROOT / "sitegen/authoring/RECIPES.md").read_text("utf-8").partition("## A spreadsheet, or a text log")[2]
    recipe = recipe.partition("\n## ")[0].replace("\\\n", " ")
    commands = [shlex.split(line.strip().removeprefix("$ ")) for line in recipe.splitlines()
                if re.match(r"    (?:\$ )?sitegen gather", line)]  # fmt: skip
    assert len(commands) == 3
    (tmp_path / "subs.csv").write_text("Date,Time,Exposure,Filter\n3/4/2026,21:00,300,L\n", "utf-8")
    (tmp_path / "2026-04-18.log").write_text(LOG, "utf-8")
    counts, errors = [], []
    for words in commands:
        options: dict[str, tuple[str, ...]] = {"columns": (), "lines": ()}
        zone = None
        for option, value in zip(words[4::2], words[5::2], strict=True):
            if option == "--time-zone":
                zone = value
            else:
                options[option.removeprefix("--")] += (value,)
        done = gathered(folders, tmp_path / words[3], name=words[2], time_zone=zone, **options)
        counts.append((done.new_count, done.totals.discarded))
        errors += [str(problem).partition("subs.csv")[2] for problem in done.problems]
    assert counts == [(0, 0), (1, 0), (3, 1)]
    assert f"subs.csv{errors[0]}" in recipe
