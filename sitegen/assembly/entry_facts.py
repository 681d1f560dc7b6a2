"""Entries to facts, cards, pictures and data files."""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from sitegen.assembly.bench import Bench, Gone
from sitegen.assembly.entry_pictures import make_pictures
from sitegen.assembly.entry_stars import with_stars
from sitegen.assembly.jobs import CORES, ENTRIES, FactsJob
from sitegen.assembly.records import FactsOfEntry
from sitegen.assembly.told_twice import contradiction_problems
from sitegen.diary import addresses
from sitegen.diary.entry import Entry
from sitegen.diary.to_write import GAP
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import facts_of, json_text
from sitegen.facts.views import EntryView
from sitegen.facts.witnesses import witnesses
from sitegen.feeds.search_index import search_row
from sitegen.keeping.keep import digest_of
from sitegen.keeping.products import Product, keep_bytes
from sitegen.pages.card import card_of, outer_card
from sitegen.pages.markdown_text import Resolvers, gaps_in, plain_text, to_html
from sitegen.pages.picture_view import main_picture, picture_view
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.ribbon import half_night_s
from sitegen.pages.subs_table import subs_ecsv
from sitegen.problems import Problem


def facts_of_entries(bench: Bench, chunk: Sequence[FactsJob]) -> list[FactsOfEntry]:
    """One pass of the sky for the whole chunk."""
    entries = [bench.get(ENTRIES, job.entry) for job in chunk]
    before = {job.slug: dict(job.before) for job in chunk}
    others = _others(bench, chunk, entries)
    views = views_of(bench.diary, entries, before, _earlier(bench, chunk), others)
    return [_facts(bench, job, view) for job, view in zip(chunk, views, strict=True)]


def _others(bench: Bench, chunk: Sequence[FactsJob], entries: Sequence[Entry]) -> dict[str, list[Entry]]:
    """Each read once a chunk."""
    known = {job.entry: entry for job, entry in zip(chunk, entries, strict=True)}
    for digest in dict.fromkeys(digest for job in chunk for digest in job.others):
        if digest not in known:
            known[digest] = bench.get(ENTRIES, digest)
    return {job.slug: [known[digest] for digest in job.others] for job in chunk}


def _earlier(bench: Bench, chunk: Sequence[FactsJob]) -> dict[str, EntryView]:
    found = {}
    for job in chunk:
        try:
            found[job.slug] = bench.get(CORES, job.earlier).view if job.earlier else None
        except Gone:
            continue
    return {slug: view for slug, view in found.items() if view is not None}


def _facts(bench: Bench, job: FactsJob, view: EntryView) -> FactsOfEntry:
    measured = with_stars(bench, view, job.measure)
    view = measured.view
    made = make_pictures(bench, view, job.picture_work)
    view, pictures, products, problems = made.view, made.pictures, made.products, made.problems
    facts = facts_of(view)
    main = main_picture(pictures)
    card = card_of(view, facts, None, picture_view(main) if main else None)
    prepared = PreparedEntry(view, facts, card, tuple(pictures), made.has_card)
    core = bench.put(CORES, prepared)
    return FactsOfEntry(
        key=job.key,
        marks=(),
        core=core,
        at_night=digest_of((replace(view, entry=replace(view.entry, body="", body_line=1)), facts.nights, card)),
        card=outer_card(card),
        evenings=tuple(dict.fromkeys(night.evening for night in card.nights)),
        half_night_s=half_night_s(view.nights),
        links=_links(view.entry.body),
        search_row=search_row(card, bench.frame.rigs, plain_text(view.entry.body)),
        sights=made.sights,
        pointings=tuple(made.pointings),
        products=(*_data(bench, prepared), *products),
        problems=(
            *problems,
            *measured.problems,
            *contradiction_problems(view, bench.frame.folder.shown),
            *_witnessed(bench, view),
            *_to_write(bench, view),
        ),
        stars=measured.kept,
        sky_note=view.sky_note,
    )


def _witnessed(bench: Bench, view: EntryView) -> Iterator[Problem]:
    """Told to the author alone: the true site stands behind them."""
    for witness in witnesses(view.entry, bench.frame.sites, bench.frame.rigs):
        yield Problem(bench.frame.folder.shown(witness.source), 1, 1, witness.wrong, witness.remedy, "warning")


def _to_write(bench: Bench, view: EntryView) -> Iterator[Problem]:
    """Paragraphs of the text that are left out until their author writes them."""
    entry = view.entry
    shown = bench.frame.folder.shown(f"entries/{entry.slug}.md")
    for line in gaps_in(entry.body):
        wrong = "this paragraph is still to be written, and not published until it is"
        yield Problem(shown, entry.body_line + line, 1, wrong, f"write it, without '{GAP}'", "warning")


def _data(bench: Bench, prepared: PreparedEntry) -> list[Product]:
    slug = prepared.view.entry.slug
    texts = [(addresses.entry_facts(slug), json_text(prepared.facts))]
    if prepared.view.lights:
        texts.append((addresses.entry_subs(slug), subs_ecsv(prepared.facts.subs)))
    return [keep_bytes(path, text.encode("utf-8"), bench.blobs) for path, text in texts]


def _links(body: str) -> tuple[str, ...]:
    """Names of the entries that a text leads to, whether they exist or not."""
    if "md" not in body:
        return ()
    found: dict[str, None] = {}

    def noted(name: str) -> str:
        found[name.rpartition("/")[2].removesuffix(".md")] = None
        return "#"

    to_html(body, Resolvers(entry_address=noted, fact=lambda *_: "", figure=lambda *_: ""))
    return tuple(found)
