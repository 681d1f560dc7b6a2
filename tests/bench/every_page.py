"""Every page of a built site, in every lamp at every width, in Debian's chromium: what is wrong, and how many were looked at.

    python tests/bench/every_page.py output

Wrong is: a console message, a request off the site, a page wider than its window, text over text, anything axe-core reports. In
the red lamp contrast is left out of that and printed instead: dim red cannot reach what WCAG asks of grey.
"""

import argparse
import shutil
from collections.abc import Iterator
from pathlib import Path

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, sync_playwright

WIDTHS = {"desktop": 1280, "tablet": 768, "phone": 360}
LAMPS = ("paper", "dusk", "red")
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
QUIET = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"]
OVERLAPPING_TEXT = (Path(__file__).parents[1] / "browser" / "overlapping_text.js").read_text("utf-8")
WIDER = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
INK = "[getComputedStyle(document.body).color, getComputedStyle(document.body).backgroundColor]"


def sweep(page: Page, site: Path, wrong: list[str]) -> Iterator[int]:
    """One for every look at a page."""
    for path in sorted(site.rglob("*.html")):
        page.goto(path.as_uri())
        for lamp in LAMPS:
            switch = page.locator(f"#lamp-{lamp}")
            if switch.count():
                switch.check(force=True)
            for device, width in WIDTHS.items():
                where = f"{path.relative_to(site)}, {lamp}, {device}"
                page.set_viewport_size({"width": width, "height": 900})
                wrong += [f"{where}: {found}" for found in looked_at(page, lamp)]
                yield 1


def looked_at(page: Page, lamp: str) -> Iterator[str]:
    """What is wrong with the page as it stands."""
    if (wider := page.evaluate(WIDER)) > 0:
        yield f"{wider} px too wide"
    yield from page.evaluate(OVERLAPPING_TEXT)
    rules = {"color-contrast": {"enabled": lamp != "red"}}
    found = Axe().run(page, options={"runOnly": RULES, "rules": rules, "preload": False}).response["violations"]
    yield from (f"{one['id']}: {one['nodes'][0]['html'][:120]}" for one in found)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("site", type=Path)
    site = parser.parse_args().site.resolve()
    wrong: list[str] = []
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=QUIET)
        page = browser.new_page(reduced_motion="reduce")
        page.on("console", lambda message: wrong.append(f"{page.url}: {message.text}"))
        page.on("pageerror", lambda error: wrong.append(f"{page.url}: {error}"))
        page.on("request", lambda request: None if request.url.startswith(("file:", "data:")) else wrong.append(request.url))
        looks = sum(sweep(page, site, wrong))
        page.goto((site / "index.html").as_uri())
        page.locator("#lamp-red").check(force=True)
        ink = page.evaluate(INK)
        browser.close()
    print(*wrong, sep="\n")
    print(f"{looks} looks, {len(wrong)} wrong; red lamp: text {ink[0]} on {ink[1]}, contrast {contrast(*ink):.1f}")


def contrast(*colours: str) -> float:
    """WCAG 2.2's contrast ratio of two 'rgb(r, g, b)'."""
    dark, bright = sorted(luminance([int(part) for part in colour[4:-1].split(",")]) for colour in colours)
    return (bright + 0.05) / (dark + 0.05)


def luminance(rgb: list[int]) -> float:
    linear = [part / 255 / 12.92 if part <= 10 else ((part / 255 + 0.055) / 1.055) ** 2.4 for part in rgb]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


if __name__ == "__main__":
    main()
