"""What the tests of the pages share beside the browser."""

from pathlib import Path

import pytest


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
