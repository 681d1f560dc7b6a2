"""Entries to facts, cards, pictures and data files."""

from collections.abc import Iterator, Sequence
from contextlib import suppress

from msgspec.structs import replace

from sitegen.build.context import BuildContext
from sitegen.build.kept_entries import get_entry
from sitegen.build.rule import Outcome
from sitegen.build.rules.facts import FactsJob, FactsSummary, entry_file
from sitegen.build.store import CacheMiss, Output, digest_of
from sitegen.build.work.contradictions import contradiction_problems
from sitegen.build.work.kept_prepared import KeptPrepared, get_prepared, kept_prepared
from sitegen.build.work.pictures import make_pictures
from sitegen.build.work.stars import with_stars
from sitegen.diary import addresses
from sitegen.diary.entry import Entry
from sitegen.diary.to_write import GAP
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import facts_of, json_text
from sitegen.facts.views import EntryView
from sitegen.facts.witnesses import witnesses
from sitegen.feeds.search_terms import search_entry
from sitegen.pages.card import card_of, summary_of
from sitegen.pages.markdown_text import Resolvers, gaps_in, plain_text, to_html
from sitegen.pages.picture_view import main_picture, picture_view
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.ribbon import half_night_s
from sitegen.pages.subs_table import subs_ecsv
from sitegen.problems import Problem


def facts_of_entries(context: BuildContext, chunk: Sequence[FactsJob]) -> list[Outcome[FactsSummary]]:
    """One pass of the sky for the whole chunk."""
    entries = [get_entry(context.store, job.entry) for job in chunk]
    before = {job.slug: dict(job.before) for job in chunk}
    others = _others(context, chunk, entries)
    views = views_of(context.diary, entries, before, _earlier(context, chunk), others)
    return [_facts(context, job, view) for job, view in zip(chunk, views, strict=True)]


def _others(context: BuildContext, chunk: Sequence[FactsJob], entries: Sequence[Entry]) -> dict[str, list[Entry]]:
    """Each read once a chunk."""
    by_name = {job.entry: entry for job, entry in zip(chunk, entries, strict=True)}
    for name in dict.fromkeys(name for job in chunk for name in job.others):
        if name not in by_name:
            by_name[name] = get_entry(context.store, name)
    return {job.slug: [by_name[name] for name in job.others] for job in chunk}


def _earlier(context: BuildContext, chunk: Sequence[FactsJob]) -> dict[str, EntryView]:
    views: dict[str, EntryView] = {}
    for job in chunk:
        if job.earlier:
            with suppress(CacheMiss):
                views[job.slug] = get_prepared(context.store, job.earlier).view
    return views


def _facts(context: BuildContext, job: FactsJob, view: EntryView) -> Outcome[FactsSummary]:
    measured = with_stars(context, view)
    with_pictures = make_pictures(context, measured.view)
    facts = facts_of(with_pictures.view)
    main = main_picture(with_pictures.pictures)
    card = card_of(with_pictures.view, facts, picture_view(main) if main else None)
    prepared = PreparedEntry(with_pictures.view, facts, card, tuple(with_pictures.pictures), with_pictures.has_card)
    kept = kept_prepared(prepared)
    name = context.store.put(kept)
    return Outcome(
        value=_value(context, job, kept, name, with_pictures.labelled_objects),
        reads=job.extra,
        outputs=(*_data(context, prepared), *with_pictures.outputs),
        problems=(*with_pictures.problems, *measured.problems, *_told_to_the_author(context, with_pictures.view)),
        uses=(name, *with_pictures.uses, *measured.kept),
    )


def _value(
    context: BuildContext, job: FactsJob, kept: KeptPrepared, name: str, labelled_objects: tuple[str, ...]
) -> FactsSummary:
    view, card, entry = kept.bare.view, kept.bare.card, kept.bare.view.entry
    at_night = replace(view, entry=replace(entry, body="", body_line=1)), kept.entry.subs, kept.lights, kept.nights
    return FactsSummary(
        common=job.common,
        prepared=name,
        at_night=digest_of((at_night, kept.bare.facts.nights, card)),
        card=summary_of(card),
        evenings=tuple(dict.fromkeys(night.evening for night in card.nights)),
        half_night_s=half_night_s(view.nights),
        links=_links(entry.body),
        searched=search_entry(card, context.config.rigs, plain_text(entry.body)),
        labelled_objects=labelled_objects,
        sky_note=view.sky_note,
    )


def _told_to_the_author(context: BuildContext, view: EntryView) -> Iterator[Problem]:
    yield from contradiction_problems(view, context.config.folder.shown)
    yield from _witnessed(context, view)
    yield from _to_write(context, view)


def _witnessed(context: BuildContext, view: EntryView) -> Iterator[Problem]:
    """Told to the author alone: the true site stands behind them."""
    for witness in witnesses(view.entry, context.config.sites, context.config.rigs):
        yield Problem(context.config.folder.shown(witness.source), 1, 1, witness.wrong, witness.remedy, "warning")


def _to_write(context: BuildContext, view: EntryView) -> Iterator[Problem]:
    """Paragraphs of the text that are left out until their author writes them."""
    entry = view.entry
    shown = context.config.folder.shown(entry_file(entry.slug))
    for line in gaps_in(entry.body):
        wrong = "this paragraph is still to be written, and not published until it is"
        yield Problem(shown, entry.body_line + line, 1, wrong, f"write it, without '{GAP}'", "warning")


def _data(context: BuildContext, prepared: PreparedEntry) -> list[Output]:
    slug = prepared.view.entry.slug
    texts = [(addresses.entry_facts(slug), json_text(prepared.facts))]
    if prepared.view.lights:
        texts.append((addresses.entry_subs(slug), subs_ecsv(prepared.facts.subs)))
    return [context.store.put_file(path, text.encode("utf-8")) for path, text in texts]


def _links(body: str) -> tuple[str, ...]:
    """Names of the entries that a text leads to, whether they exist or not."""
    if "md" not in body:
        return ()
    names: dict[str, None] = {}

    def noted(name: str) -> str:
        names[name.rpartition("/")[2].removesuffix(".md")] = None
        return "#"

    to_html(body, Resolvers(entry_address=noted, fact=lambda *_: "", figure=lambda *_: ""))
    return tuple(names)
