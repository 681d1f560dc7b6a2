"""Files made to exhaust a reader end within five seconds of work and 400 MB of memory (1 GB is promised)."""

import subprocess
import sys

import pytest

from tests.conftest import ROOT
from tests.trust.bombs import BOMBS

HARMLESS = {
    "a FITS of 99999999999 columns", "a PNG with 300 MB behind", "a PNG with 300 MB of text",
    "a PNG with 300 MB of profile",
    "entities in XMP",
}  # fmt: skip
"""What is too much in these is never unpacked, so that the picture may be taken."""
RENDERED = {"brackets, rendered", "pictures in brackets, rendered"}
"""Text of any kind is taken."""


@pytest.fixture(scope="module")
def answers() -> dict[str, tuple[str, float, float]]:
    """Answer, seconds and megabytes by name; each bomb in a process of its own."""
    command = [sys.executable, str(ROOT / "tests/trust/bombs.py")]
    told = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    rows = [line.split("\t") for line in told.splitlines()]
    return {name: (answer, float(seconds), float(peak_mb)) for name, answer, seconds, peak_mb in rows}


@pytest.mark.parametrize("name", BOMBS)
def test_a_bomb_ends_in_an_answer(answers: dict[str, tuple[str, float, float]], name: str) -> None:
    """Refused, or taken where nothing had to be unpacked."""
    answer, seconds, peak_mb = answers[name]
    assert answer in (("taken", "refused") if name in HARMLESS | RENDERED else ("refused",))
    assert seconds < 5
    assert peak_mb < 400
