"""Whatever an author's text holds is text on every page, in every feed and data file: no tag, attribute or script is born."""

import json
import re
import shutil
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from xml.etree import ElementTree

import html5lib
import pytest
from astropy.table import Table
from playwright.sync_api import sync_playwright

from sitegen.rebuild import rebuild
from tests.conftest import QUIET, TODAY
from tests.feeds.search_reading import searched
from tests.trust import hostile
from tests.trust.hostile import NASTY

READ = NASTY.replace("\u2028", " ")  # one line of text has no line separators
XHTML = "{http://www.w3.org/1999/xhtml}"
OURS = re.compile(r"[\w./-]+\.js")
SEEN = """DIARY TAGLINE LICENCE SITE RIG MOUNT GUIDING OTHER DESIGN CAMERA FILTER CHANGE
PART WHAT WORK TITLE SUMMARY TARGET KIND ALT CAPTION SECOND CLOUDS WIND ENDED NIGHT LINK TOPIC WORKED FAILED
NEXT BODY HEADING CELL CODE FOOTNOTE""".split()


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The hostile diary, built."""
    folders = hostile.lay_out(tmp_path_factory.mktemp("hostile"))
    rebuild(folders, TODAY, jobs=1)
    return folders.output


def pages(site: Path) -> list[Path]:
    return sorted(site.rglob("*.html"))


def elements(page: Path) -> Iterator[ElementTree.Element]:
    parser = html5lib.HTMLParser(strict=False)
    document = parser.parse(page.read_text("utf-8"))
    assert parser.errors == [], page
    return iter(document.iter())


def harmful(element: ElementTree.Element) -> str | None:
    """What in an element could run."""
    tag = str(element.tag).removeprefix(XHTML)
    if tag == "img" and element.get("src") == "x":
        return "an <img> of the attack"
    if tag == "script" and element.get("type") != "application/ld+json" and not OURS.fullmatch(element.get("src") or ""):
        return "a <script>"
    for name, value in element.items():
        if name.startswith("on") or name in ("style", "srcdoc", "formaction"):
            return f"an attribute {name}"
        if name in ("href", "src", "action") and re.match(r"\s*(javascript|data:text|vbscript)", value, re.IGNORECASE):
            return f"a {name} to {value}"
    return None


def test_no_page_has_anything_that_runs(site: Path) -> None:
    """By the standard's own algorithm (html5lib): no script but ours, no handler, no style, no stray element."""
    found = [(page.name, page.parent.name, wrong) for page in pages(site) for one in elements(page) if (wrong := harmful(one))]
    assert found == []


def test_every_text_field_was_attacked_and_is_read(site: Path) -> None:
    """Each mark stands on some page with the attack behind it as plain text: nothing was swallowed or half escaped."""
    words: set[str] = set()
    for page in pages(site):
        for element in elements(page):
            texts = [element.text or "", element.tail or "", *(value for _, value in element.items())]
            words |= {found for text in texts for found in re.findall(r"([A-Z]+)</script><script>alert\(1\)</script>", text)}
    assert [mark for mark in SEEN if mark not in words and mark not in HALF] == []


HALF = ("BODY", "HEADING", "CELL", "CODE", "FOOTNOTE")
"""Behind these stands a blank, and Markdown makes a paragraph of it; test_no_page_has_anything_that_runs judges them."""


def test_linked_data_and_data_files_hold_the_very_text(site: Path) -> None:
    """JSON-LD, facts.json, feed.json and the search index read back to what was typed."""
    page = (site / "entries/first/index.html").read_text("utf-8")
    (block,) = re.findall(r'<script type="application/ld\+json">(.*?)</script>', page, re.DOTALL)
    assert json.loads(block)["@graph"][0]["headline"] == f"TITLE{READ}"
    assert json.loads((site / "entries/first/facts.json").read_text("utf-8"))["title"] == f"TITLE{READ}"
    assert json.loads((site / "feed.json").read_text("utf-8"))["title"] == f"DIARY{READ}"
    index = (site / "look/search-index.js").read_text("utf-8")
    assert "<" not in index
    assert "\u2028" not in index
    assert searched(site).rows[0][0] == f"TITLE{READ}"


def test_feeds_and_drawings_are_sound_xml(site: Path) -> None:
    """An XML parser reads atom.xml, the sitemap and every drawing; what the feed carries as HTML has nothing that runs."""
    for path in (*site.rglob("*.xml"), *site.rglob("*.svg")):
        ElementTree.fromstring(path.read_bytes())
    feed = ElementTree.fromstring((site / "atom.xml").read_bytes())
    assert feed.findtext("{http://www.w3.org/2005/Atom}title") == f"DIARY{READ}"
    carried = [one.text or "" for one in feed.iter("{http://www.w3.org/2005/Atom}content")]
    carried += [item["content_html"] for item in json.loads((site / "feed.json").read_text("utf-8"))["items"]]
    assert len(carried) == 2
    for html in carried:
        assert [wrong for one in html5lib.parseFragment(html).iter() if (wrong := harmful(one))] == []


def test_tables_read_back(site: Path) -> None:
    """A filter's name full of quotes stands in subs.ecsv as one cell."""
    table = Table.read(site / "entries/first/subs.ecsv", format="ascii.ecsv")
    assert set(table["filter"]) == {"L", "<i>&\"'"}


def test_no_file_name_of_the_site_carries_the_attack(site: Path) -> None:
    """Paths hold letters, digits and the few marks that every host keeps."""
    assert [path for path in site.rglob("*") if not re.fullmatch(r"[\w./-]+", path.relative_to(site).as_posix(), re.ASCII)] == []


@pytest.mark.browser
def test_nothing_runs_in_a_browser(site: Path) -> None:
    """Every page opened: no dialog, no error, no message (the policy had nothing to refuse), and no request leaves."""
    found = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
    if found is None:
        pytest.skip("no chromium on this machine: apt-get install chromium")
    with ThreadPoolExecutor(1) as other:  # the session's own browser may hold this thread
        assert other.submit(complaints, site, found).result() == []


def complaints(site: Path, chromium: str) -> list[str]:
    wrong: list[str] = []
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=QUIET.split())
        page = browser.new_page()
        page.on("dialog", lambda dialog: (wrong.append(f"a dialog: {dialog.message}"), dialog.dismiss()))
        page.on("pageerror", lambda error: wrong.append(f"{page.url}: {error}"))
        page.on("console", lambda message: wrong.append(f"{page.url}: {message.text}"))
        page.on("request", lambda request: None if request.url.startswith(("file:", "data:")) else wrong.append(request.url))
        for address in pages(site):
            page.goto(address.as_uri())
        page.goto((site / "search/index.html").as_uri() + "?q=title")
        page.wait_for_timeout(100)
        browser.close()
    return wrong


def test_the_policy_is_strict_on_every_page(site: Path) -> None:
    """No script, style, frame, object or form target but the site's own, and nothing inline."""
    for page in pages(site):
        policies = [one.get("content") for one in elements(page) if one.get("http-equiv") == "Content-Security-Policy"]
        assert len(policies) == 1, page
        rules = dict(rule.strip().split(" ", 1) for rule in str(policies[0]).split(";"))
        assert (rules["default-src"], rules["script-src"], rules["style-src"]) == ("'none'", "'self'", "'self'")
        assert rules["base-uri"] == "'none'"
        assert "unsafe" not in str(policies[0])
