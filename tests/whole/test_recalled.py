"""Recalled totals on a whole site: beside what logs tell, on every page that counts hours, and in no sum."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from sitegen.feeds.facts_schema import facts_schema
from sitegen.feeds.list_facts_schema import list_facts_schema
from sitegen.folders import Folders
from sitegen.rebuild import rebuild
from tests.conftest import TODAY
from tests.whole.frames_twice import ALPHA, BETA, entry_text, lay_out

OLD = (
    "recalled:\n"
    "  - {filter: Ha, count: 40, exposure: 10m, when: autumn 2019}\n"
    "  - {filter: OIII, total: 3h20m, when: 2018-04}\n"
    "  - {total: 30m}\n"
    "  - {filter: L, total: 1h, when: winter 2019/20, target: Beta}\n"
)
ONLY = "recalled: [{total: 5h}]\n"
# Worked by hand from the four lines: 24000, 12000, 1800 and 3600 s; and 18000 s with the twin, of the entry 'only'.
RECALLED = {
    "entries/old": (41400, {"Ha": 24000, "OIII": 12000, "L": 3600}),
    "targets/alpha": (37800, {"Ha": 24000, "OIII": 12000}),
    "targets/beta": (3600, {"L": 3600}),
    "targets/delta": (0, {}),
    "rigs/long": (41400, {"Ha": 24000, "OIII": 12000, "L": 3600}),
    "rigs/twin": (18000, {}),
    "sites/hill": (59400, {"Ha": 24000, "OIII": 12000, "L": 3600}),
    "years/2019": (27600, {"Ha": 24000, "L": 3600}),
    "years/2018": (12000, {"OIII": 12000}),
    "years/2026": (0, {}),
    "totals": (59400, {"Ha": 24000, "OIII": 12000, "L": 3600}),
    "nights/2026-09-12": (0, {}),
}
# As tests/whole/test_totals_of_lists.py counts them by hand, without the entry 'old'.
LOGGED = {"targets/alpha": (4800, 11), "rigs/long": (4560, 15), "years/2026": (5760, 19), "totals": (5760, 19),
          "years/2019": (0, 0), "entries/old": (0, 0)}  # fmt: skip


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("recalled")
    lay_out(root / "content")
    rig = root / "content/rigs/long.yaml"
    rig.write_text(rig.read_text("utf-8") + "  OIII: {kind: narrowband, centre_nm: 500.7, width_nm: 5}\n", "utf-8")
    old = entry_text("Old", "2026-10-21", f"[{ALPHA}, {BETA}]", "[]", more=OLD)
    (root / "content/entries/old.md").write_text(old, "utf-8")
    only = entry_text("Only", "2020-01-01", "Large Magellanic Cloud", "[]", "twin", ONLY)
    (root / "content/entries/only.md").write_text(only, "utf-8")
    folders = Folders(root / "content", root / "themes", root / "output", root / "kept")
    assert [problem for problem in rebuild(folders, TODAY, jobs=1).problems if "old.md" in problem.path] == []
    return folders.output


def facts(site: Path, page: str) -> dict[str, Any]:
    values: dict[str, Any] = json.loads((site / page / "facts.json").read_text("utf-8"))
    return values


def text_of(site: Path, page: str) -> str:
    return re.sub(r"<[^>]*>", "", (site / page / "index.html").read_text("utf-8"))


@pytest.mark.parametrize("page", RECALLED)
def test_recalled_hours_stand_in_the_facts_of_every_page(site: Path, page: str) -> None:
    """Of all, and by filter; what names no filter is in the sum alone, what names no time in no year."""
    integration = facts(site, page)["integration"]
    by_filter = {short: row["recalled_s"] for short, row in integration["by_filter"].items() if row["recalled_s"]}
    assert (integration["recalled_s"], by_filter) == RECALLED[page]
    schema = facts_schema() if page.startswith("entries") else list_facts_schema()
    assert list(Draft202012Validator(schema).iter_errors(facts(site, page))) == []


@pytest.mark.parametrize("page", LOGGED)
def test_they_are_added_to_nothing(site: Path, page: str) -> None:
    """Every total is that of the logs alone."""
    integration = facts(site, page)["integration"]
    assert (integration["total_s"], integration["kept"]) == LOGGED[page]
    assert sum(row["total_s"] for row in integration["by_filter"].values()) == integration["total_s"]


@pytest.mark.parametrize("page", [page for page in RECALLED if not page.startswith("nights")])
def test_a_page_shows_them_apart(site: Path, page: str) -> None:
    """In words of their own, where there are any, and nowhere else."""
    shown = "Recalled, no log:" in text_of(site, page) and 'class="recalled"' in (site / page / "index.html").read_text("utf-8")
    assert shown == bool(RECALLED[page][0])


def test_nothing_is_made_up_for_them(site: Path) -> None:
    """No night, no sub, no Moon: neither on the entry nor in its facts, nor in the list of nights."""
    old = facts(site, "entries/old")
    assert (old["nights"], old["subs"]["start"], old["integration"]["by_night"]) == ([], [], {})
    assert not (site / "entries/old/subs.ecsv").exists()
    assert facts(site, "years/2019")["nights"] == []
    assert facts(site, "years/2019")["entries"] == ["old"]
    page = (site / "entries/old/index.html").read_text("utf-8")
    assert 'id="nights"' not in page and 'id="light-gathered"' not in page


def test_the_entry_says_what_is_known_of_each(site: Path) -> None:
    """Filter, time, subs and hours, and the target where there are several."""
    page = (site / "entries/old/index.html").read_text("utf-8").replace("<td", " | <td")
    text = re.sub(r"\s+", " ", re.sub(r"<[^>]*>", "", page))
    for words in (
        "Recalled, no log: 11 h 30 min",
        "Ha Alpha | autumn 2019 | 40 × 600 s | 6 h 40 min",
        "OIII Alpha | April 2018 | | 3 h 20 min",
        "filter unknown Alpha | at an unknown time | | 30 min",
        "L Beta | winter 2019/20 | | 1 h",
    ):
        assert words in text, words


def test_the_sky_names_a_target_that_is_only_recalled(site: Path) -> None:
    """Where logs have hours, those are told; where they have none, the recalled ones."""
    old = "Large Magellanic Cloud Recalled, no log: 5 h"
    assert old in re.sub(r"\s+", " ", text_of(site, "sky"))


def test_the_year_of_recalled_hours_can_be_reached(site: Path) -> None:
    """From the list of nights, which says how many there are; the year's own page leads to the entry."""
    nights = (site / "nights/index.html").read_text("utf-8")
    assert 'href="../years/2018/index.html"' in nights
    assert "Recalled, no log: 7 h 40 min" in re.sub(r"\s+", " ", text_of(site, "nights"))
    assert 'href="../../entries/old/index.html"' in (site / "years/2018/index.html").read_text("utf-8")
