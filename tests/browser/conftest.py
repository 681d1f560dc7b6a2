"""What the tests of the pages share beside the browser."""

import shutil
import time
from pathlib import Path

import pytest
from playwright.sync_api import Page

from sitegen.feeds.search_entry import SearchEntry
from sitegen.feeds.search_index import files_of

PATIENCE_S, PAUSE_MS = 20.0, 50


def becomes_true(page: Page, script: str) -> None:
    """Asks again and again from outside: what the browser would poll by itself is text run as script, which the pages' own
    security policy forbids."""
    last = time.monotonic() + PATIENCE_S
    while not page.evaluate(script):
        assert time.monotonic() < last, f"never true: {script}"
        page.wait_for_timeout(PAUSE_MS)


@pytest.fixture(scope="session")
def kinds(demo_site: Path) -> dict[str, str]:
    """One page of each kind that the demo has, by its address."""
    found: dict[str, str] = {}
    for page in sorted(demo_site.rglob("*.html")):
        address = page.relative_to(demo_site).as_posix()
        kind = address.split("/")[0] + ("-list" if address.count("/") == 1 else "")
        found.setdefault(kind, address)
    found["entries"] = "entries/ngc-253-five-nights/index.html"
    return found


@pytest.fixture(scope="session")
def large_search(demo_site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo's search page over two thousand invented entries, newest first."""
    site = tmp_path_factory.mktemp("large")
    for folder in ("search", "look"):
        shutil.copytree(demo_site / folder, site / folder)
    for file in files_of([invented_entry(number) for number in range(2000)], {}):
        assert isinstance(file.content, bytes)
        (site / file.path).parent.mkdir(exist_ok=True)
        (site / file.path).write_bytes(file.content)
    return site


def invented_entry(number: int) -> SearchEntry:
    """Every other one with narrowband through the long tube and a bright Moon; one in forty names NGC 2, one of them also M 42;
    three have a lantern, one of these in 2025; hours from 0 to 19.5; words enough for many parts."""
    even = number % 2 == 0
    words = {f"word{number * step % 9973}" for step in range(1, 60)} | {"night", f"=ngc{2 if number % 40 == 0 else 29}"}
    words |= {"lantern"} if number in (7, 8, 1500) else set()
    words |= {"=m42"} if number == 80 else set()
    return SearchEntry(
        row=f'["Entry {number}","entries/entry-{number}/","2026-01-01",1.5,"","observation"]',
        rigs=("The long tube",) if even else ("The short tube",),
        filters=("Ha",) if even else ("L",),
        kinds=("narrowband",) if even else ("broadband",),
        years=(2025,) if number == 8 else (2026,),
        seconds=1800 * (number % 40),
        picture_type="observation",
        moon=(80, 90) if even else (0, 10),
        terms=" ".join(sorted(words)),
    )
