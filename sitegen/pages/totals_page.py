"""The whole diary in charts: hours by filter, year, month and Moon, and how the dark hours were used."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from itertools import groupby

from babel import Locale
from babel.dates import get_month_names

from sitegen.charts import dark_hours_used, hours_by_month, hours_by_moon, hours_by_year, light_gathered
from sitegen.charts.chart import Drawn, Localizer, drawn
from sitegen.charts.columns import Column
from sitegen.charts.dark_hours_used import UsedNight
from sitegen.charts.filter_colour import centre_of, passbands_of
from sitegen.charts.light_gathered import FilterLight
from sitegen.diary import addresses
from sitegen.diary.rig import Filter, FilterKind
from sitegen.facts.integration_by_filter import FilterTotals
from sitegen.facts.night_use import covered_s
from sitegen.pages.card import EntryCard, NightCard
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.fact_formatter import Shown
from sitegen.pages.list_facts import list_facts
from sitegen.pages.page import Navigation, Page, PageKind
from sitegen.pages.recalled_light import recalled_sum

KINDS = ("broadband", "narrowband", "dual-band")


def pages(book: DiaryIndex) -> Iterable[Page]:
    words = book.formatter.words
    yield Page(
        addresses.TOTALS,
        "totals.html",
        words["page.totals"],
        {
            "sums": sums(book),
            "entry_count": len(book.cards),
            "night_count": len(book.by_evening),
            "shared_s": book.totals.shared_s,
            "recalled": recalled_sum(book.totals),
            "drawn": [chart for chart in _charts(book) if chart],
        },
        chapter="totals",
        description=words["totals.description"],
        facts=list_facts("totals", book.settings.title, book.cards, book.totals, book.by_evening),
    )


def sums(book: DiaryIndex) -> tuple[Shown, ...]:
    """The diary's own totals, each explained as an entry's are."""
    counted = book.totals
    totals = {
        "total_s": counted.total_s,
        "broadband_s": counted.broadband_s,
        "narrowband_s": counted.narrowband_s,
        "kept": counted.kept,
        "discarded": counted.discarded,
    }
    return book.formatter.show_known("integration", totals)


def _charts(book: DiaryIndex) -> Iterable[Drawn | None]:
    voice = book.voice
    nights = [night for cards in book.by_evening.values() for night in cards]
    lit = [night for night in nights if night.illuminated is not None]
    yield drawn(light_gathered.CHART, filter_lights(book.cards), voice)
    yield drawn(hours_by_year.CHART, by_year(nights), voice)
    yield drawn(hours_by_month.CHART, by_month(nights, voice.numbers.language), voice)
    yield drawn(hours_by_moon.CHART, [(night.illuminated, broad_s(night), night.counted_narrow_s) for night in lit], voice,
                note=_left_out(nights, lit, voice))  # fmt: skip
    yield drawn(dark_hours_used.CHART, used_nights(book.by_evening), voice, note=_without_dark(nights, voice))


def _left_out(nights: Sequence[NightCard], lit: Sequence[NightCard], voice: Localizer) -> str | None:
    """Said where hours are missing from a chart because their site keeps its place to itself."""
    missing_s = sum(night.counted_s for night in nights) - sum(night.counted_s for night in lit)
    return voice.words.say("totals.left_out", hours=voice.numbers.duration(missing_s)) if missing_s >= 60 else None


def _without_dark(nights: Sequence[NightCard], voice: Localizer) -> str | None:
    """Said where nights are missing from a chart because they never grew dark."""
    bright = {night.evening for night in nights if night.dark_s == 0}
    return voice.words.count("totals.without_dark", len(bright)) if bright else None


def broad_s(night: NightCard) -> float:
    return night.counted_s - night.counted_narrow_s


def filter_lights(cards: Sequence[EntryCard]) -> tuple[FilterLight, ...]:
    """Every filter that gathered light or is wanted, broadband before narrowband, each by wavelength. Filters of several
    rigs count together where they share a short name and a kind."""
    filters: dict[tuple[str, FilterKind], Filter] = {}
    gathered = _gathered(cards)
    missing: dict[tuple[str, FilterKind], float] = {}
    for card in cards:
        for short, rig_filter in card.filters:
            key, row = (short, rig_filter.kind), card.integration.by_filter.get(short)
            filters.setdefault(key, rig_filter)
            missing[key] = missing.get(key, 0.0) + _missing_s(card, row)
    for short, kind in gathered:
        filters.setdefault((short, kind), Filter(short, short, kind))
    shown = [key for key in filters if gathered.get(key) or missing.get(key)]
    first_nm = {key: [centre_of(band) for band in passbands_of(filters[key])[:1]] for key in shown}
    order = sorted(shown, key=lambda key: (KINDS.index(key[1]), first_nm[key], key))
    return tuple(
        FilterLight(key[0], filters[key].name, passbands_of(filters[key]), gathered.get(key, 0.0), missing.get(key, 0.0))
        for key in order
    )


def _gathered(cards: Iterable[EntryCard]) -> dict[tuple[str, FilterKind], float]:
    """Counted seconds by filter and kind."""
    gathered: dict[tuple[str, FilterKind], float] = {}
    for light in (light for card in cards for night in card.nights for light in night.light if light.counts()):
        key = light.filter, light.kind
        gathered[key] = gathered.get(key, 0.0) + light.kept_s
    return gathered


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
    return Column(label, sum(map(broad_s, nights)), sum(night.counted_narrow_s for night in nights))


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
    whole = len(cards) == 1 and first.counts_whole
    return UsedNight(first.evening, alone if whole else _together(cards), first.dark_s or 0.0)


def _together(cards: Sequence[NightCard]) -> float:
    """The share of the dark hours in which any of the entries' kept subs was exposing."""
    dark = next(card.dark for card in cards if card.dark)
    exposing = [stretch for card in cards for stretch in card.exposing]
    return covered_s(exposing, dark) / (dark[1] - dark[0]).total_seconds()


KIND = PageKind(
    name="totals",
    pages=pages,
    addresses=lambda _: (addresses.TOTALS,),
    navigation=Navigation("totals", addresses.TOTALS),
    has_facts=True,
    shows="numbers",
)
