"""Entries to their pages and the pages of their nights; a page whose context is as it was is not drawn again."""

from collections.abc import Iterable, Iterator, Sequence
from functools import partial

from msgspec import Struct
from msgspec.structs import replace

from sitegen.assembly.bench import Bench
from sitegen.assembly.jobs import CARDS, CORES, Around, DrawJob, NightJob, Pages
from sitegen.assembly.records import DrawnPages
from sitegen.assembly.surroundings import with_evenings
from sitegen.diary import addresses
from sitegen.facts.facts_json import json_text
from sitegen.feeds.feed import absolute
from sitegen.keeping.keep import digest_of
from sitegen.keeping.products import Product, all_whole, keep_bytes
from sitegen.pages.card import card_of
from sitegen.pages.entry_page import entry_page
from sitegen.pages.entry_text import text_of
from sitegen.pages.night_pages import night_pages
from sitegen.pages.page import Page
from sitegen.pages.prepared import PreparedEntry


def draw_entries(bench: Bench, chunk: Sequence[DrawJob]) -> list[DrawnPages]:
    return [_draw_entry(bench, job) for job in chunk]


def draw_nights(bench: Bench, chunk: Sequence[NightJob]) -> list[DrawnPages]:
    return [_draw_night(bench, job) for job in chunk]


def _draw_entry(bench: Bench, job: DrawJob) -> DrawnPages:
    prepared = with_ribbons(bench, job.core, job.half_hours)
    book = bench.book(job.around)
    mistaken = bool(text_of(prepared, book).mistakes)
    card = bench.put(CARDS, prepared.card)
    pages = [entry_page(prepared, book), *_nights(bench, [prepared], job.evenings)]
    link = partial(absolute, book)
    html = bench.site_frame.feed_text(text_of(prepared, book, link).parts, link) if job.in_feed else None
    return DrawnPages(job.key, drawn(bench, pages, job.earlier), card, html, mistaken, bench.charts_used())


def _draw_night(bench: Bench, job: NightJob) -> DrawnPages:
    prepared = [with_ribbons(bench, core, job.half_hours) for core in job.cores]
    return DrawnPages(job.key, drawn(bench, _nights(bench, prepared, [job.evening]), job.earlier), charts=bench.charts_used())


def with_ribbons(bench: Bench, core: str, half_hours: float) -> PreparedEntry:
    """The entry with its nights on the diary's common clock."""
    prepared: PreparedEntry = bench.get(CORES, core)
    card = card_of(prepared.view, prepared.facts, half_hours, prepared.card.picture)
    return replace(prepared, card=card)


def _nights(
    bench: Bench, prepared: Sequence[PreparedEntry], evenings: Iterable[Around]
) -> Iterator[Page]:
    """Of all nights of these entries, the pages of the evenings named."""
    around = list(evenings)
    wanted = {evening for _, evening, _ in around}
    known = {evening for three in around for evening in three if evening}
    every = {night.evening for one in prepared for night in one.card.nights}
    book = bench.book((with_evenings(prepared[0].card, known | every),))
    return (page for page in night_pages(prepared, book) if page.context["evening"] in wanted) if wanted else iter(())


def drawn(bench: Bench, pages: Iterable[Page], earlier: Pages) -> dict[str, tuple[str, Product]]:
    """Every page by its path in the site, and its facts beside it."""
    files = {}
    for page in pages:
        files[addresses.file_of(page.address)] = _drawn(bench, page, earlier)
        if page.facts is not None:
            files[addresses.list_facts(page.address)] = _facts_beside(bench, page.address, page.facts, earlier)
    return files


def _drawn(bench: Bench, page: Page, earlier: Pages) -> tuple[str, Product]:
    path, digest = addresses.file_of(page.address), bench.look + digest_of(page)
    known = earlier.get(path)
    if known is not None and known[0] == digest and all_whole([known[1]], bench.keep):
        return known
    return digest, keep_bytes(path, bench.site_frame.draw(page).encode("utf-8"), bench.blobs)


def _facts_beside(bench: Bench, address: str, facts: Struct, earlier: Pages) -> tuple[str, Product]:
    path, digest = addresses.list_facts(address), digest_of(facts)
    known = earlier.get(path)
    if known is not None and known[0] == digest and all_whole([known[1]], bench.keep):
        return known
    return digest, keep_bytes(path, json_text(facts).encode("utf-8"), bench.blobs)
