"""The viewer and the slider, used in a real browser, from disk, under the site's own content security policy."""

import json
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from playwright.sync_api import Browser, CDPSession, Page

from sitegen.pictures.comparing import make_pair
from sitegen.pictures.derivatives import make_picture
from sitegen.pictures.records import PictureSettings
from tests.browser.conftest import becomes_true
from tests.pictures.level_0 import promised
from tests.pictures.test_tiles import static_host

pytestmark = pytest.mark.browser

STATIC = Path(__file__).parents[2] / "themes" / "default" / "look"
QUIET = "--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update"
POLICY = "default-src 'none'; img-src 'self' data:; style-src 'self'; script-src 'self'; base-uri 'none'"
PAGE = f"""<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Test</title>
<meta http-equiv="Content-Security-Policy" content="{POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1"></head><body>
<figure><a class="zoomable" href="p/tiles/full/max/0/default.jpg" data-tiles="p/tiles/info.json"
data-width="3001" data-height="1999" data-tile="256">
<img src="p/480.jpg" alt="A field of stars" width="480" height="320"></a></figure>
<figure class="compare" data-before="One night" data-after="Five nights">
<img src="pair/before/480.jpg" alt="Before" width="480" height="320">
<img src="pair/after/480.jpg" alt="After" width="480" height="320"></figure>
<script src="zoom.js"></script><script src="compare.js"></script></body></html>"""


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("viewer")
    noise = np.random.default_rng(1).integers(0, 255, (40, 60, 3), dtype=np.uint8)
    Image.fromarray(noise).resize((3001, 1999)).save(folder / "a.jpg", quality=80)
    settings = PictureSettings(widths_px=(480,), tile_px=256, avif_effort=0)
    make_picture(folder / "a.jpg", folder / "p", None, settings)
    make_pair(folder / "a.jpg", folder / "a.jpg", folder / "pair", settings)
    for script in ("zoom.js", "compare.js"):
        shutil.copy(STATIC / script, folder / script)
    (folder / "index.html").write_text(PAGE, encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def chromium(browser: Browser) -> Browser:
    """The one browser of the whole run."""
    return browser


@pytest.fixture
def page(chromium: Browser, site: Path) -> Iterator[Page]:
    """Fails at its end on whatever the browser complained of: a missing tile, a refused style, an error in a script."""
    context = chromium.new_context(viewport={"width": 900, "height": 600}, has_touch=True)
    one = context.new_page()
    complaints: list[str] = []
    one.on("console", lambda message: complaints.append(message.text))
    one.on("pageerror", lambda error: complaints.append(str(error)))
    one.on("requestfailed", lambda request: complaints.append(request.url))
    one.goto((site / "index.html").as_uri())
    yield one
    one.wait_for_timeout(200)
    context.close()
    assert complaints == []


def scale(page: Page) -> float:
    transform = page.evaluate("document.querySelector('.viewer .zoomable div').style.transform")
    return float(re.search(r"scale\((.+)\)", transform).group(1))


def corner(page: Page) -> tuple[float, float]:
    transform = page.evaluate("document.querySelector('.viewer .zoomable div').style.transform")
    x, y = re.search(r"translate\((.+)px, (.+)px\)", transform).groups()
    return float(x), float(y)


def open_viewer(page: Page) -> None:
    page.click("a.zoomable")
    page.wait_for_selector(".viewer")


WHOLE = 600 / 1999 * 0.998  # the picture's height in the window, less rounding


def test_it_opens_whole_and_closes_with_escape(page: Page) -> None:
    """A click shows the whole picture in the window; Escape removes the viewer and gives the focus back to the link."""
    open_viewer(page)
    assert scale(page) == pytest.approx(min(900 / 3001, 600 / 1999), rel=0.001)
    page.keyboard.press("Escape")
    page.wait_for_selector(".viewer", state="detached")
    assert page.evaluate("document.activeElement.className") == "zoomable"


def test_the_wheel_zooms_about_the_pointer(page: Page) -> None:
    """The pixel under the pointer stays under it."""
    open_viewer(page)
    page.mouse.move(300, 200)
    under = [(at - edge) / scale(page) for at, edge in zip((300, 200), corner(page), strict=True)]
    page.mouse.wheel(0, -600)
    page.wait_for_timeout(300)
    assert scale(page) > 2.5 * WHOLE
    now = [(at - edge) / scale(page) for at, edge in zip((300, 200), corner(page), strict=True)]
    assert now == pytest.approx(under, abs=0.5)


def test_every_level_is_reached_and_the_closest_is_four_to_one(page: Page) -> None:
    """Zooming in step by step to the end asks for tiles of each finer level; each of them is there (see `page`)."""
    open_viewer(page)
    levels = set()
    for _ in range(12):
        page.wait_for_timeout(120)
        levels |= set(page.evaluate("[...document.querySelectorAll('.viewer img')].map(one => one.src.split('/').at(-4))"))
        page.keyboard.press("+")
    assert scale(page) == 4
    widths = {int(region.split(",")[2]) for region in levels if region.count(",") == 3}
    assert {256, 512} <= widths
    assert page.evaluate("[...document.querySelectorAll('.viewer img')].every(one => one.complete && one.naturalWidth)")


def test_keys_move_and_return(page: Page) -> None:
    """Arrows move the view by 80 pixels, 0 shows the whole picture again, and it never leaves the window."""
    open_viewer(page)
    for key in "+++":
        page.keyboard.press(key)
    left = corner(page)[0]
    page.keyboard.press("ArrowRight")
    assert corner(page)[0] == pytest.approx(left - 80)
    for _ in range(60):
        page.keyboard.press("ArrowRight")
    assert corner(page)[0] + 3001 * scale(page) == pytest.approx(900, abs=0.5)
    page.keyboard.press("0")
    assert scale(page) == pytest.approx(min(900 / 3001, 600 / 1999), rel=0.001)


def test_drag_and_double_click(page: Page) -> None:
    """A double click comes closer; a drag moves the picture by as much as the pointer."""
    open_viewer(page)
    page.mouse.dblclick(450, 300)
    assert scale(page) > 2 * WHOLE
    before = corner(page)
    page.mouse.move(450, 300)
    page.mouse.down()
    page.mouse.move(420, 290, steps=5)
    page.mouse.up()
    assert corner(page) == pytest.approx((before[0] - 30, before[1] - 10), abs=0.5)


def test_two_fingers_pinch(page: Page) -> None:
    """Fingers that part to three times their distance show the picture three times as large."""
    open_viewer(page)
    before = scale(page)
    session = page.context.new_cdp_session(page)
    touch(session, "touchStart", (400, 300), (500, 300))
    for apart in range(50, 151, 10):
        touch(session, "touchMove", (450 - apart, 300), (450 + apart, 300))
    touch(session, "touchEnd")
    page.wait_for_timeout(100)
    assert scale(page) == pytest.approx(3 * before, rel=0.02)


def touch(session: CDPSession, kind: str, *fingers: tuple[int, int]) -> None:
    points = [{"x": x, "y": y, "id": number} for number, (x, y) in enumerate(fingers)]
    session.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})


def test_the_buttons_have_names_and_work(page: Page) -> None:
    """Farther, closer, whole picture, close: each found by its name, at least 44 pixels large."""
    open_viewer(page)
    whole = scale(page)
    page.get_by_role("button", name="Closer").click()
    assert scale(page) == pytest.approx(1.6 * whole)
    page.get_by_role("button", name="Farther").click()
    page.get_by_role("button", name="Closer").click()
    page.get_by_role("button", name="Whole picture").click()
    assert scale(page) == pytest.approx(whole)
    box = page.get_by_role("button", name="Close", exact=True).bounding_box()
    assert box is not None and min(box["width"], box["height"]) >= 44
    page.get_by_role("button", name="Close", exact=True).click()
    page.wait_for_selector(".viewer", state="detached")


def test_without_script_the_link_is_a_link(chromium: Browser, site: Path) -> None:
    """With JavaScript off a click opens the full JPEG, and both pictures of a pair are in the page."""
    context = chromium.new_context(java_script_enabled=False)
    one = context.new_page()
    one.goto((site / "index.html").as_uri())
    assert one.locator(".compare img").count() == 2
    one.click("a.zoomable")
    one.wait_for_url("**/p/tiles/full/max/0/default.jpg")
    context.close()


def test_the_slider_follows_pointer_and_keys(page: Page) -> None:
    """A tap at a quarter puts the edge there; an arrow key moves it on; the slider tells its value in words."""
    page.locator(".compare-pictures").scroll_into_view_if_needed()
    box = page.locator(".compare-pictures").bounding_box()
    assert box is not None
    page.mouse.click(box["x"] + box["width"] / 4, box["y"] + box["height"] / 2)
    slider = page.get_by_role("slider", name="Where the two meet")
    assert float(slider.input_value()) == pytest.approx(25, abs=0.5)
    slider.press("ArrowRight")
    assert float(slider.input_value()) == pytest.approx(25.5, abs=0.5)
    assert slider.get_attribute("aria-valuetext") == "26 %"
    assert page.evaluate("document.querySelectorAll('.compare img')[1].style.clipPath") == "inset(0px 0px 0px 25.5%)"


def test_tiles_of_the_usual_size_are_met_from_disk_and_from_a_host(chromium: Browser, site: Path, tmp_path: Path) -> None:
    """Without `data-tile` the script asks for tiles as `make_picture` cuts them: each of them is there, at every level."""
    make_picture(site / "a.jpg", tmp_path / "p", None, PictureSettings(widths_px=(480,), avif_effort=0))
    for script in ("zoom.js", "compare.js"):
        shutil.copy(STATIC / script, tmp_path / script)
    (tmp_path / "index.html").write_text(PAGE.replace(' data-tile="256"', ""), encoding="utf-8")
    with static_host(tmp_path) as host:
        reached = [tiles_reached(chromium, address) for address in ((tmp_path / "index.html").as_uri(), f"{host}/index.html")]
    levels = {"full/751,500", "0,0,2048,1999/1024,1000", "0,0,1024,1024/1024,1024"}
    assert reached[0] == reached[1]
    assert levels <= reached[0] <= {name.removesuffix("/0/default.jpg") for name in promised_in(tmp_path / "p/tiles")}


def promised_in(tiles: Path) -> set[str]:
    return promised(json.loads((tiles / "info.json").read_bytes()))


def tiles_reached(chromium: Browser, address: str) -> set[str]:
    """Regions and sizes of all tiles that were shown from the whole picture to its pixels, about its upper left corner."""
    context = chromium.new_context(viewport={"width": 700, "height": 450})
    one, missed = context.new_page(), []
    one.on("requestfailed", lambda request: missed.append(request.url))
    one.on("response", lambda response: missed.append(response.url) if response.status >= 400 else None)
    one.goto(address)
    open_viewer(one)
    one.mouse.move(1, 1)
    reached: set[str] = set()
    for _ in range(8):
        becomes_true(one, "[...document.querySelectorAll('.viewer img')].every((img) => img.complete && img.naturalWidth > 0)")
        sources = one.evaluate("[...document.querySelectorAll('.viewer img')].map((img) => img.src)")
        reached |= {"/".join(source.split("/")[-4:-2]) for source in sources if "/tiles/" in source}
        one.mouse.wheel(0, -300)
        one.wait_for_timeout(50)
    context.close()
    assert [url for url in missed if "/tiles/" in url] == []
    return reached


def test_the_scripts_stay_small() -> None:
    """Under 8 kB each as they are published, and nothing in them that a strict policy refuses."""
    for name in ("zoom.js", "compare.js"):
        text = (STATIC / name).read_text(encoding="utf-8")
        assert len(text.encode()) < 8192
        assert not re.search(r"innerHTML|setAttribute\('style'|eval\(|new Function|https?:", text)
