"""One page a rig, with its history, and the list of all of them."""

from collections.abc import Iterable
from datetime import date

from sitegen.diary import addresses
from sitegen.diary.rig import Rig, Train
from sitegen.facts.facts_json import facts_in
from sitegen.facts.views import OpticsView
from sitegen.pages.card import passbands_of
from sitegen.pages.entry_sections.train import ROWS
from sitegen.pages.groups import group_context
from sitegen.pages.page import Page, PageKind
from sitegen.pages.shown import Shown
from sitegen.pages.site_book import SiteBook


def pages(book: SiteBook) -> Iterable[Page]:
    for slug, rig in sorted(book.rigs.items()):
        yield Page(
            addresses.rig(slug),
            "rig.html",
            rig.name,
            {
                "rig": rig,
                "trains": [(train, _optics(rig, train, book)) for train in rig.trains],
                "filters_of_rig": [(one, passbands_of(one)) for one in rig.filters.values()],
                "history": _history(rig),
                "cautions": list(dict.fromkeys(work.caution for work in rig.work if work.caution)),
                **group_context(book.by_rig.get(slug, []), book),
            },
            section="gear",
        )
    yield Page(
        addresses.RIGS,
        "gear.html",
        book.shower.words["page.gear"],
        {
            "rigs": [(addresses.rig(slug), rig.name, len(cards := book.by_rig.get(slug, [])),
                      sum(card.integration["total_s"] for card in cards)) for slug, rig in sorted(book.rigs.items())],
            "sites": [(addresses.site(slug), site.name, len(cards := book.by_site.get(slug, [])),
                       sum(night.integration_s for card in cards for night in card.nights if night.site == slug))
                      for slug, site in sorted(book.sites.items())],
        },
        section="gear",
    )  # fmt: skip


def _optics(rig: Rig, train: Train, book: SiteBook) -> list[Shown]:
    row = facts_in("optics", OpticsView(rig, train, 1, None))
    return [book.shower.show(f"optics.{key}", row[key]) for key in ROWS if row[key] is not None]


def _history(rig: Rig) -> list[tuple[date, str, str | None, str | None, str | None]]:
    """(date, what, part, note, caution), newest first: changes of the train and work on it, in one line of time."""
    changes = [(train.from_evening, "", None, train.note, None) for train in rig.trains if train.from_evening]
    work = [(one.date, one.what, one.part, one.note, one.caution) for one in rig.work]
    return sorted([*changes, *work], key=lambda row: (row[0], row[1]), reverse=True)


KIND = PageKind("rigs", pages)
