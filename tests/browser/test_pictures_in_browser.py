"""The pictures of an entry's page, in a real browser: overlay, zoom, pair."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import becomes_true


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A page that fails the test on any error of its scripts."""
    context = browser.new_context(viewport={"width": 1200, "height": 800})
    one = context.new_page()
    errors: list[str] = []
    one.on("pageerror", lambda error: errors.append(str(error)))
    yield one
    context.close()
    assert errors == []


def open_entry(page: Page, site: Path, slug: str) -> None:
    page.goto((site / "entries" / slug / "index.html").as_uri())


def test_the_overlay_is_switched_without_script(browser: Browser, demo_site: Path) -> None:
    """A check box and a style sheet do it; the target's name leads to its page; the whole picture is shown then."""
    context = browser.new_context(java_script_enabled=False, viewport={"width": 1200, "height": 800})
    page = context.new_page()
    open_entry(page, demo_site, "carina-two-lengths")
    overlay = page.locator("figure.first .overlay")
    assert not overlay.is_visible()
    page.locator("figure.first .overlay-switch").check()
    assert overlay.is_visible()
    picture, drawn = (page.locator(f"figure.first {what}").bounding_box() for what in ("picture img", ".overlay"))
    assert picture is not None
    assert drawn is not None
    assert drawn == pytest.approx(picture, abs=1.0)
    assert picture["width"] / picture["height"] == pytest.approx(2200 / 1470, rel=2e-3)
    page.locator("figure.first .overlay a", has_text="NGC 3372").click()
    expect(page).to_have_url(re.compile(r"targets/ngc-3372/index\.html$"))
    context.close()


def test_names_keep_their_size_on_a_phone(browser: Browser, demo_site: Path) -> None:
    """11 px at least, and fewer of them than on a diagnostics."""
    shown = []
    for width in (1200, 360):
        page = browser.new_page(viewport={"width": width, "height": 800})
        open_entry(page, demo_site, "carina-two-lengths")
        page.locator("figure.first .overlay-switch").check()
        texts = page.locator("figure.first .overlay text:visible")
        sizes = texts.evaluate_all("all => all.map((one) => parseFloat(getComputedStyle(one).fontSize))")
        assert min(sizes) >= 11
        shown.append(len(sizes))
        page.close()
    assert shown[1] < shown[0]


def test_the_zoom_shows_tiles_and_the_overlay(page: Page, demo_site: Path) -> None:
    """A click opens the picture; closer, tiles of the finest level come; names stay as large as they were."""
    open_entry(page, demo_site, "carina-two-lengths")
    page.locator("figure.first .overlay-switch").check()
    page.locator("figure.first a.zoomable").click(position={"x": 15, "y": 250})
    viewer = page.locator("dialog.viewer")
    before = viewer.locator(".overlay text").first.bounding_box()
    for _ in range(4):
        page.keyboard.press("+")
    becomes_true(page, "[...document.querySelectorAll('.viewer img')].some((one) => one.src.includes('/1024,1024/0/') "
                       "&& one.naturalWidth === 1024)")
    after = viewer.locator(".overlay text").first.bounding_box()
    assert before is not None
    assert after is not None
    assert after["height"] == pytest.approx(before["height"], rel=0.05)
    page.keyboard.press("Escape")
    expect(viewer).to_have_count(0)


def test_the_edge_between_before_and_after_is_pushed(page: Page, demo_site: Path) -> None:
    """The slider's arrow keys uncover the later picture; both names stand on the picture."""
    open_entry(page, demo_site, "grain-of-sand")
    slider = page.locator("figure.compare input[type=range]")
    later = page.locator("figure.compare img").nth(1)
    assert later.evaluate("one => one.style.clipPath").startswith("inset(0px 0px 0px 50%")
    assert page.locator("figure.compare .compare-word").all_inner_texts() == ["Before", "After"]
    slider.focus()
    page.keyboard.press("Home")
    assert later.evaluate("one => one.style.clipPath").rstrip(")").endswith(("0%", "0px"))


def test_every_picture_has_its_preview_and_steps_have_words(page: Page, demo_site: Path) -> None:
    """A few hundred bytes inside the page stand under each picture; the steps of processing are numbered words and pictures."""
    open_entry(page, demo_site, "ngc-253-five-nights")
    previews = page.locator("a.zoomable .preview").evaluate_all("all => all.map((one) => one.naturalWidth)")
    assert len(previews) == page.locator("a.zoomable").count()
    assert min(previews) > 4
    steps = page.locator(".steps li")
    assert steps.count() == 4
    assert steps.locator("img:not(.preview)").count() == 3
