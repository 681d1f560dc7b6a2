"""A small part of what tests/bench tries at length: clocks, killed parents, faults at every call."""

import subprocess
import sys

import pytest

from tests.conftest import ROOT

SLICES = {
    "edits within a tick of one and of two seconds": ("coarse_clock.py", "--tries", "2"),
    "three killed parents": ("killed_parent.py", "--tries", "3"),
    "faults while a site is published": ("faults.py", "--systems", "plain", "no-exchange", "--kinds", "refused", "--step", "40"),
}  # fmt: skip


@pytest.mark.skipif(sys.platform != "linux", reason="the scripts copy processes and read /proc")
@pytest.mark.parametrize("words", SLICES.values(), ids=SLICES)
def test_a_part_of_the_bench(words: tuple[str, ...]) -> None:
    """Each script ends with 1 where anything went wrong."""
    command = [sys.executable, f"tests/bench/{words[0]}", *words[1:]]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr[-2000:]
