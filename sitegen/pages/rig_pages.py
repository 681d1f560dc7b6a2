"""One page a rig, with its history, and the list of all of them."""

from collections.abc import Iterable, Iterator
from datetime import date

from msgspec import Struct

from sitegen.cautions.sources import in_order, of_change, of_rig, of_work
from sitegen.charts.filter_colour import passbands_of
from sitegen.diary import addresses
from sitegen.diary.rig import CautionKind, Rig, Train, Work
from sitegen.facts.facts_json import record_of
from sitegen.facts.registry import OpticsFacts
from sitegen.facts.views import OpticsView
from sitegen.markdown.marks import without_marks
from sitegen.pages.by_year import addresses_by_year, pages_by_year
from sitegen.pages.card import EntryCard
from sitegen.pages.cautions_shown import CautionsSaid
from sitegen.pages.counted_light import LightTotals
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.stars import StarsShown, stars_shown
from sitegen.pages.entry_sections.train import optics_shown
from sitegen.pages.fact_formatter import Shown
from sitegen.pages.groups import group_context
from sitegen.pages.list_facts import list_facts
from sitegen.pages.page import Navigation, Page, PageKind

DESCRIBED = ("mount", "guiding", "other")


def pages(book: DiaryIndex) -> Iterable[Page]:
    for slug, rig in sorted(book.rigs.items()):
        yield from pages_by_year(_page(rig, book), book.by_rig.get(slug, []), book)
    yield Page(
        addresses.RIGS,
        "gear.html",
        book.formatter.words["page.gear"],
        {
            "rigs": [
                (addresses.rig(slug), rig.name, len(book.by_rig.get(slug, [])), _hours(book.totals_by_rig.get(slug)))
                for slug, rig in sorted(book.rigs.items())
            ],
            "sites": [
                (addresses.site(slug), site.name, len(book.by_site.get(slug, [])), _hours(book.totals_by_site.get(slug)))
                for slug, site in sorted(book.sites.items())
            ],
        },
        chapter="gear",
    )


def _page(rig: Rig, book: DiaryIndex) -> Page:
    cards, totals = book.by_rig.get(rig.slug, []), book.totals_by_rig.get(rig.slug, LightTotals())
    history = _history(rig, book)
    address, said = addresses.rig(rig.slug), CautionsSaid()
    return Page(
        address,
        "rig.html",
        rig.name,
        {
            "rig": rig,
            "cautions_of_rig": said.shown(of_rig(rig)),
            "described": [(key, without_marks(text)) for key in DESCRIBED if (text := getattr(rig, key))],
            "trains": [(train, without_marks(train.note or ""), _optics(rig, train, book)) for train in rig.trains],
            "filters_of_rig": [(rig_filter, passbands_of(rig_filter)) for rig_filter in rig.filters.values()],
            "history": history,
            "cautions": said.shown(in_order(kind for event in history for kind in event.cautions)),
            **group_context(address, cards, totals, book),
        },
        chapter="gear",
        facts=list_facts("rigs", rig.slug, cards, totals),
    )


def _hours(totals: LightTotals | None) -> float:
    return totals.total_s if totals else 0.0


def _optics(rig: Rig, train: Train, book: DiaryIndex) -> tuple[Shown, ...]:
    return optics_shown(record_of(OpticsFacts, OpticsView(rig, train, 1, None)), book)


class Event(Struct, frozen=True):
    """A change of the train, work on a part of it, or what stars showed that evening (`stars`, with the entry that tells)."""

    date: date
    what: str = ""
    part: str | None = None
    note: str | None = None
    cautions: tuple[CautionKind, ...] = ()
    stars: StarsShown | None = None
    entry: tuple[str, str] | None = None


def _history(rig: Rig, book: DiaryIndex) -> list[Event]:
    """Newest first; of one day what was measured first, which was done last."""
    changes = [_changed(train.from_evening, train) for train in rig.trains if train.from_evening]
    work = [_worked(work) for work in rig.work]
    measured = [event for card in book.by_rig.get(rig.slug, []) for event in _measured(card, rig, book)]
    return sorted([*changes, *work, *measured], key=lambda event: event.date)[::-1]


def _changed(evening: date, train: Train) -> Event:
    return Event(evening, note=without_marks(train.note or ""), cautions=of_change(train))


def _worked(work: Work) -> Event:
    part, what, note = (without_marks(text or "") for text in (work.part, work.what, work.note))
    return Event(work.date, what, part, note, of_work(work))


def _measured(card: EntryCard, rig: Rig, book: DiaryIndex) -> Iterator[Event]:
    """What one entry measured with this rig, evening by evening."""
    surveys = [survey for survey in card.surveys if survey.rig == rig.slug]
    rings = [ring for ring in card.rings if ring.rig == rig.slug]
    for evening in sorted({survey.evening for survey in surveys} | {ring.evening for ring in rings}):
        seen = ([survey for survey in surveys if survey.evening == evening], [ring for ring in rings if ring.evening == evening])
        yield Event(evening, stars=stars_shown(*seen, book), entry=(card.slug, card.title))


def _addresses(book: DiaryIndex) -> list[str]:
    groups = ((addresses.rig(slug), book.by_rig.get(slug, [])) for slug in sorted(book.rigs))
    return [addresses.RIGS, *addresses_by_year(groups)]


KIND = PageKind(name="rigs", pages=pages, addresses=_addresses, navigation=Navigation("gear", addresses.RIGS), has_facts=True)
