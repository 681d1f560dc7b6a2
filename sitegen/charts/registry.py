"""Every chart, in the order in which totals, the sky and an entry show them."""

from typing import Any

from sitegen.charts import (
    dark_hours_used,
    finder_map,
    hours_by_month,
    hours_by_moon,
    hours_by_year,
    light_gathered,
    sky_map,
    sub_quality,
)
from sitegen.charts.chart import Chart

CHARTS: tuple[Chart[Any], ...] = (
    light_gathered.CHART,
    hours_by_year.CHART,
    hours_by_month.CHART,
    hours_by_moon.CHART,
    dark_hours_used.CHART,
    sky_map.CHART,
    finder_map.CHART,
    sub_quality.CHART,
)
