"""What an entry draws needs no library of charts."""

import subprocess
import sys

import pytest

DRAW = """
import sys
from sitegen.charts.chart import drawn
from sitegen.charts.registry import CHARTS
from sitegen.pages import entry_page, totals_page
from tests.charts.speaking import VOICE
for chart in CHARTS:
    if chart.name in sys.argv[1:]:
        drawn(chart, chart.example, VOICE)
print("matplotlib" in sys.modules)
"""
DRAWN_AS_TEXT = ("sub_quality", "light_gathered", "hours_by_year", "hours_by_month", "hours_by_moon", "dark_hours_used")


@pytest.mark.parametrize(("names", "is_loaded"), [(DRAWN_AS_TEXT, "False"), (("finder_map",), "True")], ids=["plots", "a map"])
def test_only_maps_load_matplotlib(names: tuple[str, ...], is_loaded: str) -> None:
    """A process that draws pages without maps never imports it."""
    run = subprocess.run([sys.executable, "-c", DRAW, *names], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == is_loaded, run.stderr
