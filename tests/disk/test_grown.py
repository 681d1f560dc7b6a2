"""From an empty folder to a published site, with a mosaic, a planet, camera files, tables, a text log, measures and projects of
which only totals are left: five commands, ten questions, every number the true one. The truth is the generator's own; what
counts as a sub is common practice, no source."""

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.disk.command import Diagnostics, sums_of
from tests.disk.decade import ENTRIES, UNKNOWN_FILTER
from tests.disk.grown import LINES, SPOILT, Grown, own_frames, write_grown
from tests.disk.test_harvest import MOST_ANSWERS, MOST_COMMANDS, Adoption, kinds_in, true_kinds
from tests.disk.truth import TrueFrame, nights, sums
from tests.published_values.record import Published

NAMES = ENTRIES | {"paw": "ngc-6334", "jupiter": "jupiter", "furnace": "ngc-1365", "lists": "old-lists"}
OLD = """---
title: Before the logs
published: 2015-01-01
target: NGC 5128
rig: garden-newtonian
site: 34s-139e
logs: [logs/old-lists.ecsv]
recalled:
  - {filter: Ha, count: 40, exposure: 10m, when: autumn 2009}
  - {filter: L, total: 3h20m, when: 2010-04}
---
From two tables, a text log and memory.
"""
RECALLED_S = 24_000.0 + 12_000.0


@pytest.fixture(scope="module")
def grown(tmp_path_factory: pytest.TempPathFactory) -> Grown:
    disk = Grown(tmp_path_factory.mktemp("grown") / "disk")
    write_grown(disk)
    return disk


@pytest.fixture(scope="module")
def adopted(grown: Grown, tmp_path_factory: pytest.TempPathFactory) -> Adoption:
    base = tmp_path_factory.mktemp("adopted-grown")
    own = Adoption(Diagnostics(base / "content", base / "output", grown.root), grown.truth())
    own.harvest()
    own.answer(
        "- {files: '2023/carina/*', time_zone: Australia/Adelaide}",
        "- {files: '2025/loose/*', target: NGC 104}",
        "- {files: '2025/tests/*', leave_out: true}",
        "- {files: 'DCIM/*', rig: small-refractor, site: 34s-139e, target: NGC 1365}",
    )
    own.spell("garden-newtonian", "OIII", UNKNOWN_FILTER)
    own.confirm()
    own.run("gather", "ngc-2070", grown.root / "2022/tarantula", "--measures", grown.root / "lists/grades.csv")
    lists = [grown.root / f"lists/{name}" for name in ("2012.csv", "2013.xlsx", "2014-06-03.log")]
    patterns = [word for pattern in LINES for word in ("--lines", pattern)]
    options = ("--target", "NGC 5128", "--rig", "garden-newtonian", "--time-zone", "Australia/Adelaide")
    own.run("gather", "old-lists", *lists, *options, *patterns)
    (own.diagnostics.content / "entries/old-lists.md").write_text(OLD, "utf-8")
    own.harvest()
    own.run("rebuild", "--jobs", "1")
    return own


def test_five_commands_and_ten_questions(adopted: Adoption) -> None:
    """Each question that was asked is answered by the line that it shows; one line may answer several. None is left."""
    first, last = adopted.reports
    assert len(adopted.truth.files) >= 700
    assert adopted.commands <= MOST_COMMANDS
    assert 0 < len(first["questions"]) <= MOST_ANSWERS
    assert adopted.answers <= MOST_ANSWERS
    assert (last["questions"], last["unclear"]) == ([], 0)


def test_every_file_is_in_one_kind(adopted: Adoption, grown: Grown) -> None:
    """The frames that the grading table threw away among them."""
    kinds = true_kinds(adopted.truth, "set_aside")
    kinds["counted"] -= SPOILT
    kinds["discarded"] += SPOILT
    assert kinds_in(adopted.reports[-1]) == kinds
    assert len(grown.judged) == SPOILT


@pytest.mark.parametrize("name", NAMES)
def test_a_project(name: str, adopted: Adoption, grown: Grown) -> None:
    """Its sums, its nights and its rejects."""
    frames = [frame for project, frame in own_frames(grown) if project == name]
    facts = adopted.diagnostics.facts(f"entries/{NAMES[name]}/")
    assert sums_of(facts["integration"]) == sums(frames)
    assert [night["evening_of"] for night in facts["nights"]] == nights(frames)
    assert {row["rig"] for row in facts["optics"]} == {frame.rig for frame in frames}


def test_there_are_no_other_entries(adopted: Adoption) -> None:
    assert sorted(path.stem for path in (adopted.diagnostics.content / "entries").iterdir()) == sorted(NAMES.values())


def test_every_total(adopted: Adoption, grown: Grown) -> None:
    """Of the whole diary, of each year, rig, site, target and night."""
    frames = [frame for _, frame in own_frames(grown)]
    groups: tuple[tuple[str, Callable[[TrueFrame], str]], ...] = (
        ("totals", lambda frame: ""), ("years", lambda frame: str(frame.evening.year)), ("rigs", lambda frame: frame.rig),
        ("sites", lambda frame: frame.place.site), ("targets", lambda frame: frame.target),
        ("nights", lambda frame: frame.evening.isoformat()),
    )  # fmt: skip
    for folder, name_of in groups:
        for name in {name_of(frame) for frame in frames}:
            own = [frame for frame in frames if name_of(frame) == name]
            facts = adopted.diagnostics.facts(f"{folder}/{name}/".replace("//", "/"))
            assert sums_of(facts["integration"]) == sums(own), (folder, name)
            assert sorted(facts["nights"]) == nights(own), (folder, name)


def test_the_mosaic_has_its_panels(adopted: Adoption, grown: Grown) -> None:
    """Two named in OBJECT, two found by their pointings: hours, filters and rejects of each."""
    facts = adopted.diagnostics.facts("entries/ngc-6334/")
    panels = {panel["name"]: panel for panel in facts["panels"]}
    assert facts["mosaic"]["elsewhere"] == 0
    assert sorted(panels) == sorted(grown.panels)
    truth = sorted((sums(frames) for frames in grown.panels.values()), key=lambda own: own.total_s)
    published = sorted(panels.values(), key=lambda panel: float(panel["integration_s"]))
    for panel, own in zip(published, truth, strict=True):
        assert (panel["integration_s"], panel["kept"], panel["discarded"]) == (own.total_s, own.kept, own.discarded)
        through = {short: (row["total_s"], row["kept"], row["discarded"]) for short, row in panel["by_filter"].items()}
        assert through == own.by_filter


def test_measures_are_in_the_log(adopted: Adoption) -> None:
    """The first frame is 2,0 px wide, at 5 µm and 740 mm."""
    rows = [row for row in adopted.diagnostics.rows("ngc-2070") if row["fwhm_arcsec"]]
    first = min(rows, key=lambda row: row["start"])
    worked = "worked by hand: 2.0 × 206.265 × 5 ÷ 740"
    assert Published(2.787, 0.001, worked, "three digits in the log").agrees(float(first["fwhm_arcsec"]))
    assert [row["reason"] for row in rows if row["kept"] == "False"] == ["wind"] * SPOILT


def test_the_planet_is_followed(adopted: Adoption) -> None:
    """By the bundled theory, and within a degree of where its frames point."""
    facts = adopted.diagnostics.facts("entries/jupiter/")
    places = [(night["target"]["positions_from"], night["target"]["ra_deg"]) for night in facts["nights"]]
    assert [source for source, _ in places] == ["ERFA plan94"] * 2
    opposed = "opposite the Sun on 7 December 2024, from memory; a degree to the west in a week, as planets go back then"
    for (_, ra_deg), own in zip(places, (74.9, 73.9), strict=True):
        assert Published(own, 1.0, opposed, "the Sun's place by the date alone").agrees(ra_deg)


def test_old_projects_stand_beside_the_totals(adopted: Adoption) -> None:
    """Of the entry, the whole diary, its target and its years; in no sum."""
    entry: dict[str, Any] = adopted.diagnostics.facts("entries/old-lists/")
    for facts in (entry, adopted.diagnostics.facts("totals/"), adopted.diagnostics.facts("targets/ngc-5128/")):
        assert facts["integration"]["recalled_s"] == RECALLED_S
    years = {year: adopted.diagnostics.facts(f"years/{year}/")["integration"] for year in (2009, 2010)}
    assert {year: (own["recalled_s"], own["total_s"]) for year, own in years.items()} == {2009: (24_000, 0), 2010: (12_000, 0)}


def test_the_recipe_names_what_was_typed() -> None:
    """The options of the two commands for lists and measures stand in the recipes."""
    recipes = (Path(__file__).parents[2] / "sitegen/authoring/RECIPES.md").read_text("utf-8")
    assert all(re.search(rf"--{option}\b", recipes) for option in ("measures", "lines", "time-zone"))
