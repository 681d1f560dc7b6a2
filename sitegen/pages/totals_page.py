"""The whole diary in charts: hours by filter, year, month and Moon, and how the dark hours were used."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from itertools import groupby

from babel import Locale
from babel.dates import get_month_names

from sitegen.charts import dark_hours_used, hours_by_month, hours_by_moon, hours_by_year, light_gathered
from sitegen.charts.chart import Drawn, Voice, drawn
from sitegen.charts.columns import Column
from sitegen.charts.dark_hours_used import UsedNight
from sitegen.charts.light_gathered import FilterLight
from sitegen.diary import addresses
from sitegen.diary.rig import Filter
from sitegen.facts.integration_by_filter import FilterTotals
from sitegen.facts.night_use import covered_s
from sitegen.pages.card import EntryCard, NightCard, passbands_of
from sitegen.pages.page import Page, PageKind
from sitegen.pages.shown import Shown
from sitegen.pages.site_book import SiteBook

KINDS = ("broadband", "narrowband", "dual-band")


def pages(book: SiteBook) -> Iterable[Page]:
    words = book.shower.words
    yield Page(
        addresses.TOTALS,
        "totals.html",
        words["page.totals"],
        {
            "sums": sums(book),
            "entry_count": len(book.cards),
            "night_count": len(book.by_evening),
            "drawn": [chart for chart in _charts(book) if chart],
        },
        section="totals",
        description=words["totals.description"],
    )


def sums(book: SiteBook) -> tuple[Shown, ...]:
    """The diary's own totals, each explained as an entry's are."""
    rows = [card.integration for card in book.cards]
    totals = {
        "total_s": sum(row.total_s for row in rows),
        "broadband_s": sum(row.broadband_s for row in rows),
        "narrowband_s": sum(row.narrowband_s for row in rows),
        "kept": sum(row.kept for row in rows),
        "discarded": sum(row.discarded for row in rows),
    }
    return book.shower.show_known("integration", totals)


def _charts(book: SiteBook) -> Iterable[Drawn | None]:
    voice = book.voice
    nights = [night for cards in book.by_evening.values() for night in cards]
    lit = [night for night in nights if night.illuminated is not None]
    yield drawn(light_gathered.CHART, filter_lights(book.cards), voice)
    yield drawn(hours_by_year.CHART, by_year(nights), voice)
    yield drawn(hours_by_month.CHART, by_month(nights, voice.numbers.language), voice)
    yield drawn(hours_by_moon.CHART, [(night.illuminated, broad_s(night), night.narrow_s) for night in lit], voice,
                note=_left_out(nights, lit, voice))  # fmt: skip
    yield drawn(dark_hours_used.CHART, used_nights(book.by_evening), voice, note=_without_dark(nights, voice))


def _left_out(nights: Sequence[NightCard], lit: Sequence[NightCard], voice: Voice) -> str | None:
    """Said where hours are missing from a chart because their site keeps its place to itself."""
    missing_s = sum(night.integration_s for night in nights) - sum(night.integration_s for night in lit)
    return voice.words.say("totals.left_out", hours=voice.numbers.duration(missing_s)) if missing_s >= 60 else None


def _without_dark(nights: Sequence[NightCard], voice: Voice) -> str | None:
    """Said where nights are missing from a chart because they never grew dark."""
    bright = {night.evening for night in nights if night.dark_s == 0}
    return voice.words.count("totals.without_dark", len(bright)) if bright else None


def broad_s(night: NightCard) -> float:
    return night.integration_s - night.narrow_s


def filter_lights(cards: Sequence[EntryCard]) -> tuple[FilterLight, ...]:
    """Every filter that gathered light or is wanted, broadband before narrowband, each by wavelength. Filters of several
    rigs count together where they share a short name and a kind."""
    known: dict[tuple[str, str], Filter] = {}
    gathered: dict[tuple[str, str], float] = {}
    missing: dict[tuple[str, str], float] = {}
    for card in cards:
        for short, one in card.filters:
            key, row = (short, one.kind), card.integration.by_filter.get(short)
            known.setdefault(key, one)
            gathered[key] = gathered.get(key, 0.0) + (row.total_s if row else 0.0)
            missing[key] = missing.get(key, 0.0) + _missing_s(card, row)
    shown = [key for key in known if gathered[key] or missing[key]]
    order = sorted(shown, key=lambda key: (KINDS.index(key[1]), passbands_of(known[key])[:1], key))
    return tuple(FilterLight(key[0], known[key].name, passbands_of(known[key]), gathered[key], missing[key]) for key in order)


def _missing_s(card: EntryCard, row: FilterTotals | None) -> float:
    """What an entry that is still gathering lacks of its wish."""
    if row is None or row.wanted_s is None or card.stage != "gathering":
        return 0.0
    return max(0.0, row.wanted_s - row.total_s)


def by_year(nights: Sequence[NightCard]) -> tuple[Column, ...]:
    """Every year from the first night to the last, those without light too."""
    years = [night.evening.year for night in nights]
    shown = range(min(years), max(years) + 1) if years else ()
    return tuple(_column(str(year), [night for night in nights if night.evening.year == year]) for year in shown)


def by_month(nights: Sequence[NightCard], language: str) -> tuple[Column, ...]:
    """The twelve months, all years together, by their names in the diary's language."""
    names = get_month_names("wide", context="stand-alone", locale=Locale.parse(language, sep="-"))
    return tuple(
        _column(names[month], [night for night in nights if night.evening.month == month]) for month in range(1, 13)
    )


def _column(label: str, nights: Sequence[NightCard]) -> Column:
    return Column(label, sum(map(broad_s, nights)), sum(night.narrow_s for night in nights))


def used_nights(by_evening: Mapping[date, Sequence[NightCard]]) -> tuple[UsedNight, ...]:
    """Each night at each site once: what several entries made of it counts together, overlaps once."""
    nights = [night for cards in by_evening.values() for night in cards if night.used_share is not None and night.dark_s]
    groups = groupby(sorted(nights, key=_place), key=_place)
    return tuple(_used(list(group)) for _, group in groups)


def _place(night: NightCard) -> tuple[date, str]:
    return night.evening, night.site


def _used(cards: Sequence[NightCard]) -> UsedNight:
    first = cards[0]
    alone = first.used_share or 0.0
    return UsedNight(first.evening, alone if len(cards) == 1 else _together(cards), first.dark_s or 0.0)


def _together(cards: Sequence[NightCard]) -> float:
    """The share of the dark hours in which any of the entries' kept subs was exposing."""
    dark = next(card.dark for card in cards if card.dark)
    exposing = [stretch for card in cards for stretch in card.exposing]
    return covered_s(exposing, dark) / (dark[1] - dark[0]).total_seconds()


KIND = PageKind("totals", pages)
