"""One real browser for the tests of the pages."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, sync_playwright

QUIET = """--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking
--disable-component-update --disable-sync"""


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Debian's chromium; a developer without it sees a skip that says how to get it."""
    found = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
    if found is None:
        pytest.skip("no chromium on this machine: apt-get install chromium")
    with sync_playwright() as playwright:
        one = playwright.chromium.launch(executable_path=found, args=QUIET.split())
        yield one
        one.close()


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
