"""The demo diary as a visitor, a machine and a careful neighbour meet it."""

import json
import re
from datetime import date
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

import html5lib
import pytest
from astropy import units
from astropy.table import Table

from sitegen.folders import Folders
from sitegen.rebuild import rebuild
from tests.conftest import ROOT, TODAY


class _Links(HTMLParser):
    """Every address a page points at, and every id it offers."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.addresses: list[str] = []
        self.ids: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        for name, value in attrs:
            if name in ("href", "src") and value and not (tag in ("a", "link") and value.startswith("http")):
                self.addresses.append(value)
            if name == "srcset" and value:
                self.addresses += [candidate.split()[0] for candidate in value.split(",")]
            if name == "id" and value:
                self.ids.append(value)


def pages(site: Path) -> list[Path]:
    return sorted(site.rglob("*.html"))


@pytest.fixture(scope="module")
def links(demo_site: Path) -> dict[Path, _Links]:
    return {page: _Links(page.read_text("utf-8")) for page in pages(demo_site)}


def test_the_demo_is_a_real_diary(demo_site: Path) -> None:
    """At least eight entries, each with its page, its facts and its place on the front page."""
    entries = sorted(path.name for path in (demo_site / "entries").iterdir())
    front = (demo_site / "index.html").read_text("utf-8")
    assert len(entries) >= 8
    assert all(f"entries/{name}/index.html" in front for name in entries)
    assert all((demo_site / "entries" / name / "facts.json").is_file() for name in entries)


def test_every_link_leads_somewhere(demo_site: Path, links: dict[Path, _Links]) -> None:
    """Relative links only, to files that are there and anchors that exist."""
    wrong = []
    for page, found in links.items():
        for address in found.addresses:
            parts = urlsplit(address)
            if parts.scheme == "data":
                continue
            target = (page.parent / unquote(parts.path)).resolve() if parts.path else page
            if parts.scheme or parts.netloc or parts.path.startswith("/") or not target.is_file():
                wrong.append(f"{page.relative_to(demo_site)} -> {address}")
            elif parts.fragment and target in links and parts.fragment not in links[target].ids:
                wrong.append(f"{page.relative_to(demo_site)} -> {address}: no such place in the page")
    assert wrong == []


def test_every_page_can_be_reached_and_is_in_the_sitemap(demo_site: Path, links: dict[Path, _Links]) -> None:
    """By links from the front page alone; the sitemap names every page but the one for addresses that lead nowhere."""
    reached, waiting = {demo_site / "index.html"}, [demo_site / "index.html"]
    while waiting:
        page = waiting.pop()
        paths = (urlsplit(address).path for address in links[page].addresses)
        targets = {(page.parent / unquote(path)).resolve() for path in paths if path} & set(links)
        waiting += sorted(targets - reached)
        reached |= targets
    every = set(links) - {demo_site / "404.html"}
    assert sorted(every - reached) == []
    root = "https://two-tanks.example/"
    places = re.findall(r"<loc>([^<]+)</loc>", (demo_site / "sitemap.xml").read_text("utf-8"))
    files = {demo_site / f"{place.removeprefix(root)}index.html" for place in places if place.startswith(root)}
    assert sorted(every ^ files) == []


def test_ids_are_unique_in_each_page(links: dict[Path, _Links]) -> None:
    """Two ribbons in one page keep their gradients apart."""
    doubled = {page: {one for one in found.ids if found.ids.count(one) > 1} for page, found in links.items()}
    assert {page: ids for page, ids in doubled.items() if ids} == {}


def test_pages_are_well_formed(demo_site: Path) -> None:
    """An independent parser (html5lib, by the standard's own algorithm) finds no mistake in any page."""
    for page in pages(demo_site):
        parser = html5lib.HTMLParser(strict=False)
        parser.parse(page.read_text("utf-8"))
        assert parser.errors == [], page


def test_no_page_needs_another_site(demo_site: Path) -> None:
    """No request leaves: scripts, styles and pictures are all local, and the policy in each page says so."""
    for page in pages(demo_site):
        text = page.read_text("utf-8")
        text = re.sub(r'<link rel="canonical"[^>]*>', "", text)  # says where the page lives; nothing is fetched
        assert re.findall(r"<(?:script|link|img|source|iframe)[^>]+(?:src|href)=\"(?:https?:)?//", text) == []
        assert " style=" not in text
        assert re.findall(r"<script(?![^>]*src=)(?![^>]*application/ld\+json)", text) == []


PRIVATE = ("SITELAT", "SITELONG", "OBSGEO", "GPS", str(ROOT), "139.03", "-32.6")


def test_nothing_private_is_published(demo_site: Path) -> None:
    """No exact position, private header keyword or path of this machine in any text file of the site."""
    told = [
        (path.relative_to(demo_site).as_posix(), word)
        for path in sorted(demo_site.rglob("*"))
        if path.suffix in (".html", ".json", ".ecsv", ".xml", ".css", ".js", ".txt")
        for word in PRIVATE[:5]
        if word in path.read_text("utf-8")
    ]
    assert told == []


def test_subs_read_back_with_units(demo_site: Path) -> None:
    """astropy reads every subs.ecsv, with units, and finds in it what facts.json says."""
    for path in sorted(demo_site.rglob("subs.ecsv")):
        table = Table.read(path, format="ascii.ecsv")
        facts = json.loads((path.parent / "facts.json").read_text("utf-8"))
        assert table["exposure_s"].unit == units.s
        assert table["target_altitude_deg"].unit == units.deg
        assert list(table["start"]) == facts["subs"]["start"]
        assert [bool(kept) for kept in table["kept"]] == facts["subs"]["kept"]


def test_a_second_rebuild_gives_the_same_bytes(demo_folders: Folders, tmp_path: Path) -> None:
    """Same content, same bytes, also in another folder."""
    again = Folders(demo_folders.content, demo_folders.themes, tmp_path / "output", demo_folders.keep)
    rebuild(again, TODAY)
    first, second = (_contents(folder) for folder in (demo_folders.output, again.output))
    assert first.keys() == second.keys()
    assert [path for path in first if first[path] != second[path]] == []


def _contents(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_the_date_of_the_rebuild_is_not_published(demo_site: Path) -> None:
    """Nothing in the site tells on which day it was built."""
    assert date(2026, 11, 25) == TODAY
    told = [
        path
        for path in pages(demo_site)
        if path.parent.name != "outlook" and "2026-11-25" in path.read_text("utf-8")  # the outlook is about days to come
    ]
    assert told == []
