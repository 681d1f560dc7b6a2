"""The coming nights of what is still gathering, where the diary wants them published: from the public place, and from no clock.

A page may not change because a day has passed: the same diary gives the same bytes. So the nights are counted from the newest day
that the diary itself knows, and the page says which that is.
"""

from collections.abc import Iterable, Iterator
from datetime import date, timedelta
from zoneinfo import ZoneInfo

from msgspec import Struct

from sitegen.diary import addresses
from sitegen.diary.public_position import PublicSite
from sitegen.diary.settings import Settings
from sitegen.facts.outlook import FilterNeed, Outlook, OutlookNight, Season, Wish, needs_of, outlook_of
from sitegen.pages.card import EntryCard
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.page import Navigation, Page, PageKind


class OutlookRow(Struct, frozen=True):
    """`start` and `end` are clock times of the site; empty where the target stays too low."""

    evening: date
    dark_s: float
    target_s: float
    start: str
    end: str
    max_altitude_deg: float | None
    moonless_s: float
    illuminated: float
    advice: str | None
    filters: tuple[str, ...]
    useful: bool


class OutlookSheet(Struct, frozen=True):
    """One target of one entry. `rows` is empty, and `season` too, where the site keeps its place to itself."""

    entry: str
    title: str
    target: str
    site: PublicSite
    minimum_altitude_deg: float
    needs: tuple[FilterNeed, ...]
    rows: tuple[OutlookRow, ...]
    season: str


def pages(book: DiaryIndex) -> Iterable[Page]:
    first = first_evening(book)
    if not _is_wanted(book.settings) or first is None:
        return
    words = book.formatter.words
    yield Page(
        addresses.OUTLOOK,
        "outlook.html",
        words["page.outlook"],
        {"first": first, "sheets": [sheet for card in book.cards for sheet in _sheets(card, first, book)]},
        chapter="outlook",
        description=words["outlook.description"],
    )


def first_evening(book: DiaryIndex) -> date | None:
    """The evening after the newest night, or the day of the newest change where that is later; None for an empty diary."""
    after_nights = [evening + timedelta(days=1) for evening in book.by_evening]
    return max([*after_nights, *(card.last_change for card in book.cards)], default=None)


def useful_nights(card: EntryCard, book: DiaryIndex, most: int) -> tuple[OutlookRow, ...]:
    """The first of them for the entry's first target, where the diary publishes its outlook."""
    first = first_evening(book)
    if not _is_wanted(book.settings) or first is None:
        return ()
    sheet = next(_sheets(card, first, book), None)
    return tuple(row for row in sheet.rows if row.useful)[:most] if sheet else ()


def _sheets(card: EntryCard, first: date, book: DiaryIndex) -> Iterator[OutlookSheet]:
    site = _site(card, book)
    if card.stage != "gathering" or site is None:
        return
    settings, needs = book.settings, needs_of(card.integration.by_filter, card.filters)
    for target in card.targets:
        if target.ra_deg is not None:
            wish = Wish(card.slug, card.title, target, needs)
            look = settings.outlook
            ahead = outlook_of(wish, site, first, look.nights, look.minimum_altitude_deg, settings.moon_rule, season=True)
            yield _sheet(ahead, book)


def _site(card: EntryCard, book: DiaryIndex) -> PublicSite | None:
    """Where the newest night was spent, else a site the entry names."""
    slug = card.nights[-1].site if card.nights else next(iter(card.sites), None)
    return book.sites[slug] if slug else None


def _sheet(outlook: Outlook, book: DiaryIndex) -> OutlookSheet:
    zone = ZoneInfo(outlook.site.time_zone)
    return OutlookSheet(
        outlook.wish.entry,
        outlook.wish.title,
        outlook.wish.target.name,
        outlook.site,
        outlook.minimum_altitude_deg,
        tuple(need for need in outlook.wish.needs if need.missing_s),
        tuple(_row(night, zone, book) for night in outlook.nights),
        _season(outlook.season, book) if outlook.nights else "",
    )


def _season(season: Season | None, book: DiaryIndex) -> str:
    """How many useful nights are left, in a sentence."""
    words, day = book.formatter.words, book.formatter.numbers.day
    if season is None:
        return words["outlook.season.never"]
    moonless = words.count("outlook.season.moonless", season.moonless)
    if season.last is None:
        return words.say("outlook.season.always", first=day(season.first), moonless=moonless)
    return words.count("outlook.season.until", season.nights, first=day(season.first), last=day(season.last), moonless=moonless)


def _row(night: OutlookNight, zone: ZoneInfo, book: DiaryIndex) -> OutlookRow:
    clock = book.formatter.numbers.clock
    return OutlookRow(
        evening=night.evening,
        dark_s=night.dark_s,
        target_s=night.target_s,
        start=clock(night.target[0][0], zone) if night.target else "",
        end=clock(night.target[-1][1], zone) if night.target else "",
        max_altitude_deg=night.max_altitude_deg,
        moonless_s=night.moonless_s,
        illuminated=night.illuminated,
        advice=night.advice,
        filters=night.filters,
        useful=night.useful,
    )


def _is_wanted(settings: Settings) -> bool:
    return settings.outlook.published


def _addresses(book: DiaryIndex) -> list[str]:
    return [addresses.OUTLOOK] if _is_wanted(book.settings) and book.cards else []


KIND = PageKind(
    name="outlook",
    pages=pages,
    addresses=_addresses,
    navigation=Navigation("outlook", addresses.OUTLOOK, _is_wanted),
)
