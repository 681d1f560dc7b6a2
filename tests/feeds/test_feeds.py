"""The lists for machines, read by machines that this project did not write."""

import json
import re
from pathlib import Path
from xml.etree import ElementTree

import feedparser
import pytest
from jsonschema import Draft202012Validator
from pyld import jsonld

from sitegen.feeds.facts_schema import facts_schema
from sitegen.feeds.list_facts_schema import list_facts_schema
from sitegen.pages.registry import KINDS
from tests.feeds.search_reading import searched

LISTS = tuple(kind.name for kind in KINDS if kind.has_facts and kind.name != "totals")
# schema.org's own context needs the network; for expansion only the vocabulary matters
CONTEXT = {"@context": {"@vocab": "https://schema.org/"}}


def test_atom_is_a_feed(demo_site: Path) -> None:
    """feedparser, an independent parser, finds a well-formed Atom 1.0 feed with everything RFC 4287 requires."""
    feed = feedparser.parse((demo_site / "atom.xml").read_bytes())
    assert not feed.bozo
    assert feed.version == "atom10"
    assert feed.feed.id and feed.feed.title and feed.feed.updated and feed.feed.author
    assert len(feed.entries) >= 8
    for entry in feed.entries:
        assert entry.id.startswith("https://")
        assert entry.title and entry.updated and entry.link
        assert "<p>" in entry.content[0].value
    assert len({entry.id for entry in feed.entries}) == len(feed.entries)


def test_feed_texts_have_absolute_links(demo_site: Path) -> None:
    """A reader shows the text far from the site: no relative link survives in it."""
    feed = feedparser.parse((demo_site / "atom.xml").read_bytes(), resolve_relative_uris=False, sanitize_html=False)
    links = [link for entry in feed.entries for link in re.findall(r'(?:href|src)="([^"]*)"', entry.content[0].value)]
    assert links
    assert [link for link in links if not link.startswith(("https://", "http://", "#", "mailto:"))] == []


def test_json_feed_holds_what_1_1_requires(demo_site: Path) -> None:
    """version, title and items; each item an id and its content (jsonfeed.org, version 1.1)."""
    feed = json.loads((demo_site / "feed.json").read_text("utf-8"))
    assert feed["version"] == "https://jsonfeed.org/version/1.1"
    assert feed["title"]
    assert all(isinstance(item["id"], str) and item["content_html"] for item in feed["items"])


def test_sitemap_names_pages_that_are_there(demo_site: Path) -> None:
    """Absolute addresses of one host, each once, each a page of the site (sitemaps.org 0.9)."""
    root = ElementTree.fromstring((demo_site / "sitemap.xml").read_text("utf-8"))
    urls = [element.text or "" for element in root.iter("{http://www.sitemaps.org/schemas/sitemap/0.9}loc")]
    assert len(urls) == len(set(urls)) > 60
    assert all(url.startswith("https://two-tanks.example/") for url in urls)
    assert all((demo_site / url.removeprefix("https://two-tanks.example/") / "index.html").is_file() for url in urls)


def test_facts_follow_their_published_schema(demo_site: Path) -> None:
    """jsonschema, an independent validator, accepts both schemas, and every facts.json by one of them."""
    checked = 0
    for name, places in (("facts", ("entries/*",)), ("list-facts", ("totals", *(f"{kind}/*" for kind in LISTS)))):
        schema = json.loads((demo_site / f"{name}.schema.json").read_text("utf-8"))
        Draft202012Validator.check_schema(schema)
        validator = Draft202012Validator(schema)
        for path in sorted(path for place in places for path in demo_site.glob(f"{place}/facts.json")):
            assert list(validator.iter_errors(json.loads(path.read_text("utf-8")))) == [], path
            checked += 1
    assert checked == len(list(demo_site.rglob("facts.json"))) > 60


def test_every_list_page_has_its_facts(demo_site: Path) -> None:
    """Beside each page of a target, rig, site, year and night, and the totals; the page leads to them."""
    pages = [demo_site / "totals" / "index.html", *(page for kind in LISTS for page in demo_site.glob(f"{kind}/*/index.html"))]
    assert len(pages) > 40
    assert [page for page in pages if not page.with_name("facts.json").is_file()] == []
    assert [page for page in pages if 'href="facts.json"' not in page.read_text("utf-8")] == []


def test_the_schema_can_refuse() -> None:
    """A fact that is missing is noticed."""
    validator = Draft202012Validator(facts_schema())
    assert {error.validator for error in validator.iter_errors({"schema": 3})} >= {"required", "enum"}
    strict = Draft202012Validator(list_facts_schema())
    assert {error.validator for error in strict.iter_errors({"page": "moons", "more": 1})} >= {"enum", "additionalProperties"}


@pytest.mark.parametrize("name", ["ngc-253-five-nights", "carina-two-lengths"])
def test_linked_data_expands(demo_site: Path, name: str) -> None:
    """PyLD, an independent JSON-LD processor, expands the posting, its picture and its log."""
    page = (demo_site / "entries" / name / "index.html").read_text("utf-8")
    found = re.search(r'<script type="application/ld\+json">(.*?)</script>', page, re.S)
    assert found
    expanded = jsonld.expand({**json.loads(found[1]), **CONTEXT})
    kinds = {kind for node in expanded for kind in node.get("@type", [])}
    assert {f"https://schema.org/{kind}" for kind in ("BlogPosting", "ImageObject", "Dataset")} <= kinds


def test_search_finds_a_target_by_its_other_names(demo_site: Path) -> None:
    """The index leads to NGC 253 from its Caldwell number and a common name (any atlas: Caldwell 65, Sculptor Galaxy)."""
    found = searched(demo_site)
    addresses = {row[1] for row in found.rows}
    assert "entries/ngc-253-five-nights/" in addresses
    for name in ("=ngc253", "=caldwell65", "=sculptorgalaxy"):
        assert "entries/ngc-253-five-nights/" in {found.rows[entry][1] for entry in found.entries(name)}
