"""What the tests of the pages share beside the browser."""

import time
from pathlib import Path

import pytest
from playwright.sync_api import Page

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
