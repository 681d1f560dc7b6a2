"""Every total of every list page against what a hand counts in a diary that tells frames twice (`frames_twice.py`)."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from sitegen.facts.registry import IntegrationFacts
from sitegen.feeds.list_facts_schema import list_facts_schema
from sitegen.folders import Folders
from sitegen.number_text import NumberText
from sitegen.pages.words import words_from
from sitegen.problems import Problem
from sitegen.rebuild import check, rebuild
from tests.conftest import ROOT, TODAY
from tests.whole.frames_twice import lay_out

# Counted by hand. Alpha: two kept L of the final entry (its third and fourth are discarded there) and five Ha of 600 s; four L of
# the twin. Beta: six of 120 s, of which the later entry 'claim' takes two for Delta. Gamma lies in Beta's field: the same four.
# Delta: its own two, and the two that 'claim' tells.
LISTS = {
    "targets/alpha": {"total_s": 4800, "kept": 11, "discarded": 2, "discarded_s": 600, "narrowband_s": 3000, "shared_s": 600},
    "targets/beta": {"total_s": 480, "kept": 4, "discarded": 0, "discarded_s": 0, "narrowband_s": 0, "shared_s": 0},
    "targets/gamma": {"total_s": 480, "kept": 4, "discarded": 0, "discarded_s": 0, "narrowband_s": 0, "shared_s": 0},
    "targets/delta": {"total_s": 480, "kept": 4, "discarded": 0, "discarded_s": 0, "narrowband_s": 240, "shared_s": 240},
    "rigs/long": {"total_s": 4560, "kept": 15, "discarded": 2, "discarded_s": 600, "narrowband_s": 3240, "shared_s": 840},
    "rigs/twin": {"total_s": 1200, "kept": 4, "discarded": 0, "discarded_s": 0, "narrowband_s": 0, "shared_s": 0},
    "sites/hill": {"total_s": 5760, "kept": 19, "discarded": 2, "discarded_s": 600, "narrowband_s": 3240, "shared_s": 840},
    "years/2026": {"total_s": 5760, "kept": 19, "discarded": 2, "discarded_s": 600, "narrowband_s": 3240, "shared_s": 840},
    "totals": {"total_s": 5760, "kept": 19, "discarded": 2, "discarded_s": 600, "narrowband_s": 3240, "shared_s": 840},
    "nights/2026-09-12": {"total_s": 1800, "kept": 6, "discarded": 2, "discarded_s": 600, "narrowband_s": 0, "shared_s": 600},
    "nights/2026-09-13": {"total_s": 3000, "kept": 5, "discarded": 0, "discarded_s": 0, "narrowband_s": 3000, "shared_s": 0},
    "nights/2026-10-01": {"total_s": 960, "kept": 8, "discarded": 0, "discarded_s": 0, "narrowband_s": 240, "shared_s": 240},
}
ENTRIES = {"progress": (900, 0), "final": (3600, 600), "twin": (1200, 0), "pair": (960, 0), "claim": (240, 240)}
NUMBERS = NumberText("en", words_from("en", ((ROOT / "themes/default/words/en.yaml").read_text("utf-8"),)))


@pytest.fixture(scope="module")
def folders(tmp_path_factory: pytest.TempPathFactory) -> Folders:
    root = tmp_path_factory.mktemp("twice")
    lay_out(root / "content")
    return Folders(root / "content", root / "themes", root / "output", root / "kept")


@pytest.fixture(scope="module")
def problems(folders: Folders) -> tuple[Problem, ...]:
    return rebuild(folders, TODAY, jobs=1).problems


@pytest.fixture(scope="module")
def site(folders: Folders, problems: tuple[Problem, ...]) -> Path:
    return folders.output


def facts(site: Path, page: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads((site / page / "facts.json").read_text("utf-8"))
    return found


def text_of(site: Path, page: str) -> str:
    return re.sub(r"<[^>]*>", "", (site / page / "index.html").read_text("utf-8"))


@pytest.mark.parametrize("page", LISTS)
def test_a_list_counts_each_frame_once(site: Path, page: str) -> None:
    """Its facts.json has what the hand counted; broadband is the rest, and filters and nights add up to the whole."""
    found = facts(site, page)["integration"]
    truth = LISTS[page]
    assert {key: found[key] for key in truth} == truth
    assert found["broadband_s"] == truth["total_s"] - truth["narrowband_s"]
    assert sum(row["total_s"] for row in found["by_filter"].values()) == sum(found["by_night"].values()) == truth["total_s"]
    assert sum(row["kept"] for row in found["by_filter"].values()) == truth["kept"]
    assert sum(row["discarded"] for row in found["by_filter"].values()) == truth["discarded"]


@pytest.mark.parametrize("page", LISTS)
def test_a_page_shows_the_hours_of_its_facts(site: Path, page: str) -> None:
    """The same total in words; a page with shared frames says so once, another does not."""
    found, text = facts(site, page)["integration"], text_of(site, page)
    if page != "nights/2026-09-13":  # of one entry alone: its section shows the hours
        assert NUMBERS.duration(found["total_s"]) in text
    shared = f"{NUMBERS.duration(found['shared_s'])} of it are told by more than one entry, and counted once."
    assert text.count(shared) == (1 if found["shared_s"] else 0)
    assert text.count("counted once") == text.count(shared)


@pytest.mark.parametrize("page", LISTS)
def test_the_facts_follow_the_schema_and_an_entry_s_keys(site: Path, page: str) -> None:
    """Valid by the published schema, and under `integration` the very keys of an entry's facts, in their order."""
    found = facts(site, page)
    assert list(Draft202012Validator(list_facts_schema()).iter_errors(found)) == []
    assert list(found["integration"]) == list(IntegrationFacts.__struct_fields__)
    assert list(found["integration"]) == list(facts(site, "entries/final")["integration"])
    assert (found["page"], found["name"]) == (page.partition("/")[0], page.partition("/")[2] or "Told twice")


def test_what_belongs_to_a_page(site: Path) -> None:
    """Entries newest first, evenings in order; what is unlisted belongs to none."""
    assert facts(site, "totals")["entries"] == ["final", "claim", "pair", "twin", "progress"]
    assert facts(site, "totals")["nights"] == ["2026-09-12", "2026-09-13", "2026-10-01"]
    assert facts(site, "targets/alpha")["entries"] == ["final", "twin", "progress"]
    assert facts(site, "targets/delta")["nights"] == ["2026-10-01"]
    assert facts(site, "nights/2026-10-01")["entries"] == ["claim", "pair"]
    assert facts(site, "rigs/twin")["nights"] == ["2026-09-12"]


def test_wishes_stand_on_a_target_s_page(site: Path) -> None:
    """By the newest entry that has one for the filter: 'progress' for L, two hours, 'final' for Ha, three; elsewhere unknown."""
    def wanted(page: str) -> dict[str, float | None]:
        return {short: row["wanted_s"] for short, row in facts(site, page)["integration"]["by_filter"].items()}

    assert wanted("targets/alpha") == {"L": 7200, "Ha": 10800}
    assert wanted("totals") == {"L": None, "Ha": None}


def test_an_entry_keeps_all_its_own_frames(site: Path) -> None:
    """Its total is whole, whoever else tells of them; what earlier entries tell is beside it."""
    found = {slug: facts(site, f"entries/{slug}")["integration"] for slug in ENTRIES}
    assert {slug: (one["total_s"], one["shared_s"]) for slug, one in found.items()} == ENTRIES
    assert not (site / "entries" / "hidden").exists()


def test_lists_of_lists_show_the_same_hours(site: Path) -> None:
    """The list of targets, the sky, gear and the nights' list say what the pages they lead to say; so does the topic of all."""
    hours = {page: NUMBERS.duration(truth["total_s"]) for page, truth in LISTS.items()}
    targets, sky, gear = text_of(site, "targets"), text_of(site, "sky"), text_of(site, "rigs")
    for name in ("Alpha", "Beta", "Gamma", "Delta"):
        assert re.search(rf"{name} [^\n]*{hours['targets/' + name.lower()]}", targets)
        assert f"{name} {hours['targets/' + name.lower()]}" in sky
    assert f"The long train 4 entries · {hours['rigs/long']}" in gear
    assert f"Its twin 1 entry · {hours['rigs/twin']}" in gear
    assert f"The hill 5 entries · {hours['sites/hill']}" in gear
    assert f"{hours['years/2026']} gathered in 3 nights" in text_of(site, "nights")
    assert f"deep 5 entries · {hours['totals']}" in text_of(site, "topics")


def test_a_night_told_twice_is_one_row_of_its_month(site: Path) -> None:
    """September has the twin's night and the final entry's two; the progress entry's is the final one's."""
    september = (site / "years" / "2026" / "09" / "index.html").read_text("utf-8")
    assert re.findall(r'class="hours">([^<]*)<', september) == [NUMBERS.duration(one) for one in (600, 1200, 3000)]


def test_contradictions_are_told_by_check_and_rebuild_alike(folders: Folders, problems: tuple[Problem, ...]) -> None:
    """One of a verdict, one of a filter, one of a target: at the later entry's file, with the first frame, how many, and the
    cure. The same ones by `check`, and by a rebuild that makes nothing of the facts again."""
    told = [str(problem).replace(str(folders.content), "content") for problem in problems]
    assert told == [
        "content/entries/claim.md:1:1: warning: the frame of 2026-10-01 12:00:00 UTC has the filter 'Ha' here and 'L' in the "
        "entry 'pair', and 1 more differ so; lists count what this entry says; write the same under 'filter' in "
        "content/logs/claim.csv and content/logs/beta.csv",
        "content/entries/claim.md:1:1: warning: the frame of 2026-10-01 12:00:00 UTC has the target 'Delta' here and 'Beta' in "
        "the entry 'pair', and 1 more differ so; lists count what this entry says; name one target for both: 'target' in "
        "content/entries/claim.md and content/entries/pair.md",
        "content/entries/final.md:1:1: warning: the frame of 2026-09-12 12:20:00 UTC is discarded here and kept in the entry "
        "'progress'; lists count what this entry says; write the same under 'kept' in content/logs/final.csv and "
        "content/logs/progress.csv",
    ]
    assert check(folders, TODAY) == problems
    (folders.content / "entries" / "twin.md").touch()
    again = rebuild(folders, TODAY, jobs=1)
    assert again.problems == problems
    assert again.made["facts of entries"] == 0


def test_numbers_speak_in_proper_plurals(site: Path) -> None:
    """A data set of one night is of one night."""
    assert "4 sub-exposures of 1 night (" in (site / "entries" / "twin" / "index.html").read_text("utf-8")
    assert "9 sub-exposures of 2 nights (" in (site / "entries" / "final" / "index.html").read_text("utf-8")
