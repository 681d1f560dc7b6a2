"""The demo's pages in a real browser: every lamp, every width, no script, large text, a keyboard."""

import shutil
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from urllib.parse import urlencode

import numpy as np
import pytest
from axe_playwright_python.sync_playwright import Axe
from PIL import Image
from playwright.sync_api import Browser, Page, expect

pytestmark = pytest.mark.browser

WIDTHS = {"desktop": 1280, "tablet": 768, "phone": 360}
OVERLAPPING_TEXT = (Path(__file__).parent / "overlapping_text.js").read_text("utf-8")
# WCAG 2.2 A and AA; in the red lamp contrast is as good as dim red allows and is measured on its own
RULES = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(reduced_motion="reduce")
    yield context.new_page()
    context.close()


def addresses(site: Path) -> list[str]:
    return [path.relative_to(site).as_posix() for path in sorted(site.rglob("*.html")) if path.name != "404.html"]


def light(page: Page, lamp: str) -> None:
    """Turns the switch as a reader would."""
    page.locator(f"#lamp-{lamp}").check(force=True)


def test_no_page_scrolls_sideways_or_complains(page: Page, demo_site: Path) -> None:
    """Every page at every width: no console message, no request off the site, nothing too wide, no text over text."""
    wrong: list[str] = []
    page.on("console", lambda message: wrong.append(f"{page.url}: {message.text}"))
    page.on("pageerror", lambda error: wrong.append(f"{page.url}: {error}"))
    page.on("request", lambda request: None if request.url.startswith(("file:", "data:")) else wrong.append(request.url))
    for address in addresses(demo_site):
        page.goto((demo_site / address).as_uri())
        for name, width in WIDTHS.items():
            page.set_viewport_size({"width": width, "height": 800})
            wide = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
            if wide > 0:
                wrong.append(f"{address}: {wide} px too wide on a {name}")
            wrong += [f"{address} on a {name}: {words}" for words in page.evaluate(OVERLAPPING_TEXT)]
    assert wrong == []


def test_axe_finds_nothing(page: Page, demo_site: Path, kinds: dict[str, str]) -> None:
    """axe-core, an independent accessibility checker, reports no violation on any kind of page in paper, nor on an entry in dusk.

    `tests/bench/every_page.py` asks it about every page in every lamp at every width.
    """
    wrong = []
    page.set_viewport_size({"width": 1280, "height": 900})
    for address, lamp in [*((address, "paper") for address in kinds.values()), (kinds["entries"], "dusk")]:
        page.goto((demo_site / address).as_uri())
        if address != "404.html":
            light(page, lamp)
        found = Axe().run(page, options=RULES)
        wrong += [f"{address} {lamp}: {one['id']}: {one['nodes'][0]['html'][:120]}" for one in found.response["violations"]]
    assert wrong == []


def test_text_twice_as_large_still_fits(page: Page, demo_site: Path, kinds: dict[str, str]) -> None:
    """At 200 % text on a desktop nothing runs out of the window (WCAG 1.4.4)."""
    page.set_viewport_size({"width": 1280, "height": 900})
    for address in kinds.values():
        page.goto((demo_site / address).as_uri())
        page.evaluate("document.documentElement.style.fontSize = '200%'")
        assert page.evaluate("document.documentElement.scrollWidth <= document.documentElement.clientWidth"), address


def test_the_lamp_is_remembered(page: Page, demo_site: Path) -> None:
    """Red lamp chosen on one page is red on the next, and its ground has no green and no blue."""
    page.goto((demo_site / "index.html").as_uri())
    light(page, "red")
    page.goto((demo_site / "lessons/index.html").as_uri())
    assert page.evaluate("document.documentElement.dataset.lamp") == "red"
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(0, 0, 0)"


def strongest(page: Page) -> list[int]:
    """The largest red, green and blue of any pixel in the window."""
    pixels = np.asarray(Image.open(BytesIO(page.screenshot())).convert("RGB"))
    return [int(most) for most in pixels.max(axis=(0, 1))]


def test_the_red_lamp_shines_red_only(page: Page, demo_site: Path, kinds: dict[str, str]) -> None:
    """In the red lamp no pixel has any green or blue: pictures, the zoom, check boxes and fields included."""
    page.set_viewport_size({"width": 800, "height": 1600})
    for address in ("index.html", "search/index.html", "totals/index.html", "sky/index.html", kinds["entries"]):
        page.goto((demo_site / address).as_uri())
        light(page, "red")
        for field in page.locator("#q").all():
            field.fill("moon")  # a mark to clear the field appears in it
        page.wait_for_timeout(200)
        red, green, blue = strongest(page)
        assert (red > 100, green, blue) == (True, 0, 0), address
    page.locator("a.zoomable").first.click()
    page.wait_for_timeout(400)
    red, green, blue = strongest(page)
    assert (red > 60, green, blue) == (True, 0, 0)


def test_without_script_everything_is_there(browser: Browser, demo_site: Path, kinds: dict[str, str]) -> None:
    """JavaScript off: the lamps switch, the picture links to its full size, the details open."""
    context = browser.new_context(java_script_enabled=False, color_scheme="light")
    page = context.new_page()
    page.goto((demo_site / kinds["entries"]).as_uri())
    page.locator("#lamp-dusk").check(force=True)
    assert page.locator("body").evaluate("element => getComputedStyle(element).backgroundColor") == "rgb(20, 22, 27)"
    assert page.locator("a.zoomable").first.get_attribute("href").endswith(".jpg")
    page.locator("details summary").first.click()
    assert page.locator("details table").first.is_visible()
    context.close()


def test_search_lists_the_entries_that_fit(page: Page, demo_site: Path) -> None:
    """Words, a name written in one piece, a year that has nothing; an empty form shows the newest entries again. From disk."""
    page.goto((demo_site / "search/index.html").as_uri())
    expect(page.locator("#newest")).to_be_visible()
    page.fill("#q", "ngc253")
    expect(page.locator("#hits h2").first).to_be_visible()
    titles = page.locator("#hits h2").all_text_contents()
    days = [page.locator(f"{rows} li", has_text="Five nights for").locator("time").first for rows in ("#hits", "#newest")]
    assert [day.text_content() for day in days] == ["20 October 2026"] * 2
    assert "Five nights for the Sculptor Galaxy" in titles
    expect(page.locator(".found")).to_have_text(f"{len(titles)} entries.")
    expect(page.locator("#newest")).not_to_be_visible()
    assert page.locator("#hits a").first.evaluate("link => link.href").startswith(demo_site.as_uri())
    page.fill("#q", "no such words anywhere")
    expect(page.locator(".found")).to_have_text("No entry matches.")
    assert page.locator("#hits h2").count() == 0
    page.fill("#q", "")
    expect(page.locator("#newest")).to_be_visible()


@pytest.mark.parametrize(
    ("asked", "hits"),
    [
        ({"q": "lantern"}, 3),  # the word itself
        ({"q": "LANT\u00c9"}, 3),  # its beginning, whatever its accents and capitals
        ({"q": "ngc 2"}, 50),  # a whole name, not the beginning of NGC 29
        ({"q": "m42"}, 1),  # a name that only the text has
        ({"q": "night"}, 2000),
        ({"q": "lantern", "rig": "The short tube"}, 1),
        ({"q": "lantern", "year": "2026"}, 2),
        ({"rig": "The short tube"}, 1000),
        ({"hours": "19"}, 100),
        ({"moon": "bright"}, 1000),
        ({"band": "narrowband", "filter": "Ha"}, 1000),
    ],
    ids=str,
)
def test_a_large_diary_is_searched_in_parts(page: Page, large_search: Path, asked: dict[str, str], hits: int) -> None:
    """Of two thousand entries only the parts that a question needs are fetched, from disk too; counts as the entries are made."""
    page.goto(f"{(large_search / 'search/index.html').as_uri()}?{urlencode(asked)}")
    expect(page.locator(".found")).to_have_text("One entry." if hits == 1 else f"{hits} entries.")
    shown = min(hits, 40)
    expect(page.locator("#hits h2")).to_have_count(shown)
    fetched = page.locator("script[src*='look/search/']").count()
    assert 1 <= fetched <= shown + 3
    sizes = {file.stem: file.stat().st_size for file in (large_search / "look/search").iterdir()}
    assert fetched < len(sizes) / 2
    assert max(size for name, size in sizes.items() if name != "choices") < 20_000


def test_a_part_that_cannot_be_fetched_is_told(page: Page, large_search: Path, tmp_path: Path) -> None:
    """Nothing is called found that was not looked for."""
    site = shutil.copytree(large_search, tmp_path / "site")
    (site / "look/search/choices.js").unlink()
    page.goto(f"{(site / 'search/index.html').as_uri()}?hours=19")
    expect(page.locator(".found")).to_have_text("A part of the search could not be fetched: try again.")


def test_a_keyboard_walks_through_the_subs(page: Page, demo_site: Path, kinds: dict[str, str]) -> None:
    """A lane takes the focus; the arrow keys walk from sub to sub; each has its numbers as a title."""
    page.goto((demo_site / kinds["entries"]).as_uri())
    page.locator("svg.large .lane").first.focus()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    title = page.evaluate("document.activeElement.querySelector('title').textContent")
    assert "UTC" in title


def test_printed_pages_drop_the_switches(page: Page, demo_site: Path, kinds: dict[str, str]) -> None:
    """On paper there is no navigation and no lamp."""
    page.goto((demo_site / kinds["entries"]).as_uri())
    page.emulate_media(media="print")
    assert not page.locator(".lamps").is_visible()
    assert page.locator("h1").is_visible()
