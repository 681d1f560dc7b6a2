"""An entry's own page: the picture, the text, and the sections that have something to say."""

from collections.abc import Iterable
from typing import Any

from sitegen.diary import addresses
from sitegen.markdown.marks import without_marks
from sitegen.pages.cautions_below import cautions_below
from sitegen.pages.cautions_shown import CautionsSaid
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_neighbours import neighbours
from sitegen.pages.entry_numbers import number_tables
from sitegen.pages.entry_pictures import figures
from sitegen.pages.entry_sections.registry import SECTIONS
from sitegen.pages.entry_text import cautions_said, text_of
from sitegen.pages.linked_data import entry_linked_data
from sitegen.pages.page import EntryPageKind, Page
from sitegen.pages.picture_cautions import kinds_above
from sitegen.pages.picture_view import main_picture, picture_view
from sitegen.pages.prepared import PreparedEntry


def entry_page(prepared: PreparedEntry, book: DiaryIndex) -> Page:
    """The page of one entry. Its text's mistakes are found while checking, before any page is made."""
    entry, card = prepared.view.entry, prepared.card
    main = main_picture(prepared.pictures)
    main_figure, more_figures = figures(prepared, book)
    body, above = text_of(prepared, book).parts, kinds_above(prepared)
    sections = {section.name: section.make(prepared, book) for section in SECTIONS}
    return Page(
        address=addresses.entry(entry.slug),
        template="entry.html",
        title=entry.title,
        description=card.summary,
        context={
            "card": card,
            "main_picture": picture_view(main) if main else None,
            "main_figure": main_figure,
            "has_card": prepared.has_card,
            "linked_data": entry_linked_data(prepared, book, picture_view(main) if main else None),
            "more_figures": more_figures,
            "body": body,
            "margin": _margin(prepared, book),
            "sections": sections,
            "cautions_above": CautionsSaid().shown(above),
            "cautions": cautions_below(prepared, cautions_said(body, above), main_figure, more_figures, sections),
            "numbers_tables": number_tables(prepared.facts, prepared.view, card.nights, book.formatter),
            "neighbours": neighbours(card, book),
            "links": [(without_marks(outside.title), outside.address) for outside in entry.links],
            "rigs": [(slug, book.rigs[slug].name) for slug in card.rigs],
            "sites": [(slug, book.sites[slug].name) for slug in card.sites],
        },
    )


def _margin(prepared: PreparedEntry, book: DiaryIndex) -> list[dict[str, Any]]:
    """The numbers that a reader wants first, beside the text: scale and field, hours, what the Moon took."""
    facts, show = prepared.facts, book.formatter.show
    notes: list[dict[str, Any]] = []
    for row in facts.optics[:2]:
        notes.append(
            {
                "number": show("optics.scale_arcsec_px", row.scale_arcsec_px),
                "field": show("optics.field_deg", row.field_deg),
                "pixels": show("optics.sampling_px_per_fwhm", row.sampling_px_per_fwhm),
                "kind": "scale",
                "rig": book.rigs[row.rig].name,
            }
        )
    totals = facts.integration
    if totals.kept:
        notes.append({"number": show("integration.total_s", totals.total_s), "kind": "total", "kept": totals.kept,
                      "nights": sum(night.integration_s > 0 for night in facts.nights),
                      "discarded": totals.discarded})  # fmt: skip
    worth = totals.dark_equivalent_s
    if totals.broadband_s and worth is not None and worth < 0.97 * totals.broadband_s:
        notes.append({"number": show("integration.dark_equivalent_s", worth), "kind": "worth",
                      "spent": show("integration.broadband_s", totals.broadband_s)})  # fmt: skip
    return notes


def _pages(prepared: Iterable[PreparedEntry], book: DiaryIndex) -> Iterable[Page]:
    return (entry_page(entry, book) for entry in prepared)


def _addresses(book: DiaryIndex) -> list[str]:
    return [addresses.entry(card.slug) for card in book.cards]


KIND = EntryPageKind(name="entries", pages=_pages, addresses=_addresses)
