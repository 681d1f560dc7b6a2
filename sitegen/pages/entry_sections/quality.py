"""How the subs came out over the nights, where the log tells star width or guiding."""

from collections.abc import Sequence

from sitegen.charts.chart import Drawn
from sitegen.charts.quality_values import QualityNight, QualitySub
from sitegen.charts.sub_quality import quality_chart
from sitegen.facts.views import NightView, SubInSky
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.prepared import PreparedEntry


def section(prepared: PreparedEntry, book: DiaryIndex) -> Drawn | None:
    nights = prepared.view.nights
    if not nights:
        return None
    voice = book.voice
    rows = [row for night in nights for row in _rows(night, book)]
    return quality_chart(rows, nights[0].site.time_zone, voice, "quality")


def _rows(night: NightView, book: DiaryIndex) -> list[QualityNight]:
    """One row a rig that worked that night; its name only where there were several."""
    rigs = sorted({light.sub.rig for light in night.lights})
    return [
        QualityNight(night.evening, _subs([light for light in night.lights if light.sub.rig == rig]),
                     book.rigs[rig].name if len(rigs) > 1 else "")
        for rig in rigs
    ]  # fmt: skip


def _subs(lights: Sequence[SubInSky]) -> tuple[QualitySub, ...]:
    return tuple(
        QualitySub(light.sub.start, light.sub.fwhm_arcsec, light.sub.guiding_rms_arcsec, light.sub.kept) for light in lights
    )


SECTION = EntrySection("quality", section)
