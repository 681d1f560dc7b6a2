"""Entries to their pages and the pages of their nights; a page that shows what it showed is not drawn again."""

from collections.abc import Iterable, Sequence
from functools import partial

from msgspec import Struct
from msgspec.structs import replace

from sitegen.build.context import BuildContext
from sitegen.build.neighbours import EveningBetween, with_evenings
from sitegen.build.rule import Outcome
from sitegen.build.rules.entry_pages import DrawJob, EntryPages, Pages
from sitegen.build.rules.night_pages import NightJob
from sitegen.build.store import Output, are_whole, digest_of
from sitegen.build.work.drawing_kit import DrawingKit, kit_of
from sitegen.build.work.kept_prepared import get_prepared
from sitegen.diary import addresses
from sitegen.facts.facts_json import json_text
from sitegen.feeds.feed import absolute
from sitegen.pages.card import with_ribbons, without_words
from sitegen.pages.entry_page import entry_page
from sitegen.pages.entry_text import text_of
from sitegen.pages.night_pages import night_pages
from sitegen.pages.page import Page
from sitegen.pages.prepared import PreparedEntry


def draw_entries(context: BuildContext, chunk: Sequence[DrawJob]) -> list[Outcome[EntryPages]]:
    return [_draw_entry(kit_of(context), job) for job in chunk]


def draw_nights(context: BuildContext, chunk: Sequence[NightJob]) -> list[Outcome[EntryPages]]:
    return [_draw_night(kit_of(context), job) for job in chunk]


def _draw_entry(kit: DrawingKit, job: DrawJob) -> Outcome[EntryPages]:
    prepared = _on_common_clock(get_prepared(kit.context.store, job.prepared), job.half_hours)
    book = kit.book(job.cards)
    mistaken = bool(text_of(prepared, book).mistakes)
    card = kit.context.store.put(prepared.card)
    pages = drawn(kit, [entry_page(prepared, book), *_nights(kit, [prepared], job.evenings)], job.earlier)
    link = partial(absolute, book)
    text = text_of(prepared, book, link).parts if job.in_feed else None
    html = None if text is None else kit.page_layout.feed_text(text, link, prepared.card.picture)
    value = EntryPages(digests_of(pages), card, digest_of(without_words(prepared.card)), html, mistaken)
    return Outcome(value, outputs=outputs_of(pages), uses=(card, *kit.charts.taken_used()))


def _draw_night(kit: DrawingKit, job: NightJob) -> Outcome[EntryPages]:
    evening = job.evening[1]
    prepared = [_on_common_clock(kit.prepared(name).on([evening]), job.half_hours) for name in job.prepared]
    pages = drawn(kit, _nights(kit, prepared, [job.evening]), job.earlier)
    return Outcome(EntryPages(digests_of(pages)), outputs=outputs_of(pages), uses=kit.charts.taken_used())


def _on_common_clock(prepared: PreparedEntry, half_hours: float) -> PreparedEntry:
    """The entry with a ribbon for each of its nights."""
    return replace(prepared, card=with_ribbons(prepared.card, prepared.view, half_hours))


def _nights(kit: DrawingKit, prepared: Sequence[PreparedEntry], evenings: Iterable[EveningBetween]) -> Iterable[Page]:
    """The pages of the evenings named. The book knows no other evening than these and those beside them."""
    between = list(evenings)
    wanted = {evening for _, evening, _ in between}
    named = {evening for three in between for evening in three if evening}
    book = kit.book((with_evenings(prepared[0].card, named),))
    return night_pages([entry.on(wanted) for entry in prepared], book)


def drawn(kit: DrawingKit, pages: Iterable[Page], earlier: Pages) -> Pages:
    """Every page by its path in the site, and its facts beside it, each with the digest of what it shows."""
    files = {}
    for page in pages:
        path = addresses.file_of(page.address)
        files[path] = _drawn(kit, page, path, earlier)
        if page.facts is not None:
            path = addresses.list_facts(page.address)
            files[path] = _facts_beside(kit, path, page.facts, earlier)
    return files


def _drawn(kit: DrawingKit, page: Page, path: str, earlier: Pages) -> tuple[str, Output]:
    digest = kit.context.look + digest_of(page)
    same = _same(kit, path, digest, earlier)
    return digest, same or kit.context.store.put_file(path, kit.page_layout.draw(page).encode("utf-8"))


def _facts_beside(kit: DrawingKit, path: str, facts: Struct, earlier: Pages) -> tuple[str, Output]:
    digest = digest_of(facts)
    same = _same(kit, path, digest, earlier)
    return digest, same or kit.context.store.put_file(path, json_text(facts).encode("utf-8"))


def _same(kit: DrawingKit, path: str, digest: str, earlier: Pages) -> Output | None:
    """The file drawn before, where it shows what is shown now."""
    before = earlier.get(path)
    is_same = before is not None and before[0] == digest and are_whole([before[1]], kit.context.root)
    return before[1] if before and is_same else None


def digests_of(pages: Pages) -> dict[str, str]:
    return {path: digest for path, (digest, _) in pages.items()}


def outputs_of(pages: Pages) -> tuple[Output, ...]:
    return tuple(output for _, output in pages.values())
