"""A whole disk gathered, checked and rebuilt: every number that gather reports and the site publishes is the true one.

What counts as a sub, and what as thrown away, foreign or a copy: common practice, no source; the truth is the generator's own.
"""

import json
import re
from collections.abc import Callable, Iterable

import pytest

from tests.disk.command import counts_of, sums_of
from tests.disk.conftest import WholeDiary, WrittenDisk
from tests.disk.projects import PAIR, PAIR_SKIES, PLACES, PROGRESS, PROJECTS, TRAINS, Project
from tests.disk.truth import TrueFrame, gathered, nights, sums
from tests.feeds.search_reading import searched

each_project = pytest.mark.parametrize("project", PROJECTS, ids=lambda each: each.name)
ENTRIES = (*(each.name for each in PROJECTS), PAIR, PROGRESS)
TARGETS = sorted({sky.page for sky in (*(each.sky for each in PROJECTS), *PAIR_SKIES)})
RIGS = sorted({each.rig for each in PROJECTS})
YEARS = ("1998", "1999", "2025")
NIGHTS = (
    "1998-05-20 1999-03-10 2025-01-18 2025-01-19 2025-02-20 2025-04-05 2025-04-08 2025-05-20 2025-05-21 2025-07-20 2025-07-21 "
    "2025-08-20 2025-08-21 2025-10-01 2025-10-02 2025-10-03 2025-10-04 2025-10-06 2025-10-07 2025-11-10 2025-11-20 2025-12-10 "
    "2025-12-11 2025-12-12"
).split()


@each_project
def test_gather_accounts_for_every_file(project: Project, diary: WholeDiary, disk: WrittenDisk) -> None:
    """The kinds add up to the files that are not hidden, and each is the true number."""
    report = diary.reports[project.name]
    truth = gathered(disk.truth, project.name, project.folders).counts
    assert counts_of(report) == truth
    hidden = sum(each.fate == "hidden" for each in disk.truth.under(project.folders))
    assert report["files"] == sum(truth.values()) == len(disk.truth.under(project.folders)) - hidden


def test_the_diary_can_be_rebuilt(diary: WholeDiary) -> None:
    """Nothing on such a disk is an error of the diary."""
    assert [each for each in diary.problems if each["severity"] == "error"] == []
    assert diary.rebuilt.exit_code == 0, diary.rebuilt.output


@pytest.mark.parametrize("name", ENTRIES)
def test_an_entry_has_its_own_frames(name: str, published: WholeDiary) -> None:
    """Kept, discarded, seconds, by filter and by night; all its own, whoever else tells of them."""
    frames = next(each.frames for each in published.truth.entries if each.name == name)
    facts = published.diagnostics.facts(f"entries/{name}/")
    assert sums_of(facts["integration"]) == sums(frames)
    assert [each["evening_of"] for each in facts["nights"]] == nights(frames)
    assert facts["subs"]["exposure_s"] == [each.exposure_s for each in sorted(frames, key=lambda frame: frame.start)]
    assert facts["subs"]["kept"] == [each.kept for each in sorted(frames, key=lambda frame: frame.start)]


@pytest.mark.parametrize("name", ENTRIES)
def test_an_entry_says_what_it_shares(name: str, published: WholeDiary) -> None:
    """With entries published before it: the final entry with its progress, nobody else."""
    assert published.diagnostics.facts(f"entries/{name}/")["integration"]["shared_s"] == published.truth.shared_s(name)


@pytest.mark.parametrize("evening", NIGHTS)
def test_a_night(evening: str, published: WholeDiary) -> None:
    compare(published, f"nights/{evening}/", lambda frame: frame.evening.isoformat() == evening)


@pytest.mark.parametrize("year", YEARS)
def test_a_year(year: str, published: WholeDiary) -> None:
    """By the year of the evening, not of the publication."""
    compare(published, f"years/{year}/", lambda frame: str(frame.evening.year) == year)


@pytest.mark.parametrize("page", TARGETS)
def test_a_target(page: str, published: WholeDiary) -> None:
    compare(published, f"targets/{page}/", lambda frame: frame.target == page)


@pytest.mark.parametrize("rig", RIGS)
def test_a_rig(rig: str, published: WholeDiary) -> None:
    compare(published, f"rigs/{rig}/", lambda frame: frame.rig == rig)


@pytest.mark.parametrize("site", [each.site for each in PLACES])
def test_a_site(site: str, published: WholeDiary) -> None:
    compare(published, f"sites/{site}/", lambda frame: frame.place.site == site)


def test_the_totals(published: WholeDiary) -> None:
    """Each frame once, however many entries, logs and copies tell of it."""
    compare(published, "totals/", lambda frame: True)


def test_nights_and_pages_are_those_of_the_truth(published: WholeDiary) -> None:
    """The lists above leave none out, and the site has no night that the truth has not."""
    frames = published.truth.frames()
    assert nights(frames) == NIGHTS
    assert sorted({str(frame.evening.year) for frame in frames}) == list(YEARS)
    assert {each.rig for each in TRAINS} - {frame.rig for frame in frames} == {"wide"}
    pages = sorted(path.name for path in (published.diagnostics.output / "nights").iterdir() if path.is_dir())
    assert pages == NIGHTS


def compare(published: WholeDiary, address: str, belongs: Callable[[TrueFrame], bool]) -> None:
    """A list page's facts.json against the truth: schema, entries, nights, and the sums of its frames, each counted once."""
    frames = {frame: tellers for frame, tellers in published.truth.frames().items() if belongs(frame)}
    facts = published.diagnostics.facts(address)
    assert set(facts) >= {"schema", "page", "name", "entries", "nights", "integration"}
    assert facts["schema"] == 1
    assert sums_of(facts["integration"]) == sums(frames)
    assert sorted(facts["nights"]) == nights(frames)
    assert sorted(facts["entries"]) == tellers_of(frames.values())


def tellers_of(groups: Iterable[frozenset[str]]) -> list[str]:
    return sorted(frozenset[str]().union(*groups))


def test_filters_of_no_name_are_counted_too(published: WholeDiary) -> None:
    """Where a rig has no filters, and where it has, the rows add up to the whole."""
    for name in ENTRIES:
        integration = published.diagnostics.facts(f"entries/{name}/")["integration"]
        assert sum(row["total_s"] for row in integration["by_filter"].values()) == integration["total_s"], name


def test_one_sub_does_not_spoil_an_entrys_number(published: WholeDiary) -> None:
    """What one sub below the horizon or three in daylight add to the dark-sky time is nothing, and a number: these two entries
    have no other broadband light. Elsewhere it is something, and never more than was exposed."""
    for name in ("helix", "carina-west"):
        integration = published.diagnostics.facts(f"entries/{name}/")["integration"]
        assert (integration["dark_equivalent_s"], integration["broadband_s"] > 0) == (0, True), name
    for name in ("sculptor", "tarantula", "tucana", "omega"):
        integration = published.diagnostics.facts(f"entries/{name}/")["integration"]
        assert 0 < integration["dark_equivalent_s"] <= integration["broadband_s"], name


def test_names_of_files_stay_private(published: WholeDiary) -> None:
    """Neither a frame's name, nor the folder it lay in, nor the place in a header is in any text of the site."""
    for path in sorted(published.diagnostics.output.rglob("*")):
        if path.suffix in (".html", ".json", ".ecsv", ".xml", ".txt"):
            text = path.read_text("utf-8")
            for private in ("badlands", "verworfen/", "sculptor_0", "helix_0", "48 12 30", str(published.diagnostics.disk)):
                assert private not in text, path


@pytest.mark.parametrize("name", ENTRIES)
def test_machines_are_told_the_same(name: str, published: WholeDiary) -> None:
    """The dataset in a page's linked data counts its frames and nights, in the right number of the noun; so does the search."""
    frames = next(each.frames for each in published.truth.entries if each.name == name)
    page = (published.diagnostics.output / f"entries/{name}/index.html").read_text("utf-8")
    (linked,) = re.findall(r'<script type="application/ld\+json">(.*?)</script>', page, re.DOTALL)
    description = next(each["description"] for each in json.loads(linked)["@graph"] if each["@type"] == "Dataset")
    noun = "Nacht" if len(nights(frames)) == 1 else "Nächten"
    assert re.match(
        rf"{len(frames)} Einzelbilder aus {len(nights(frames)) if noun != 'Nacht' else '(1|einer)'} {noun}\b", description
    )
    (hours,) = [row[3] for row in searched(published.diagnostics.output).rows if row[1] == f"entries/{name}/"]
    assert hours == round(sums(frames).total_s / 3600, 3)
