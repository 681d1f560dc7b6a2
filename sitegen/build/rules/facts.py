"""Facts of every listed entry, with its pictures and star measurements, and its data files."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from functools import partial
from typing import TYPE_CHECKING

from msgspec import Struct

from sitegen.build.rule import Rule, Task
from sitegen.build.rules.entries import EntryRead, listed
from sitegen.build.store import digest_of, key_of
from sitegen.diary.rigs_used import published_before
from sitegen.diary.same_frame import exposing_together
from sitegen.feeds.search_entry import SearchEntry
from sitegen.pages.entry_summary import EntrySummary
from sitegen.problems import Problem

if TYPE_CHECKING:
    from sitegen.build.graph import Build

FACTS_S, PICTURE_S = 0.02, 2.0
Trains = tuple[tuple[str, date], ...]
"""Rigs, and from when on an entry published before used each."""


class FactsSummary(Struct, frozen=True, gc=False):
    """`prepared` names the record of its view, facts and pictures; `common` is the digest of what the facts of all entries hang
    on; `card` has no more than feeds and neighbours show, `evenings` are its nights' days. `half_night_s`: the longest stretch
    from midnight to sunset or sunrise. `links`: entries that its text leads to. `at_night`: the digest of all but the text, of
    which nights show nothing. `searched`: what the search knows of it. `labelled_objects`: what its pictures show, as target
    pages spell it. `sky_note`: as in the view."""

    common: str
    prepared: str
    at_night: str
    card: EntrySummary
    evenings: tuple[date, ...]
    half_night_s: float
    links: tuple[str, ...]
    searched: SearchEntry
    labelled_objects: tuple[str, ...]
    sky_note: str | None = None


class FactsJob(Struct, frozen=True):
    """`before` as in `facts.diary_in_sky`; `others` name the records of entries that may tell of its frames; `earlier` the
    prepared entry made of this one before, if any; `extra` are the pictures and star frames that it names."""

    common: str
    slug: str
    entry: str
    before: Trains
    others: tuple[str, ...]
    extra: tuple[str, ...]
    earlier: str | None


def _tasks(build: "Build") -> Iterable[Task]:
    entries = listed(build)
    before = published_before((entry.slug, entry.published, entry.rigs) for entry in entries)
    common = key_of(digest_of(build.context.config.known), digest_of(build.context.settings))
    others = _others(entries)
    return [_task(build, entry, common, before[entry.slug], others[entry.slug]) for entry in entries]


def _task(build: "Build", entry: EntryRead, common: str, before: Mapping[str, date], others: Sequence[EntryRead]) -> Task:
    """Of the other entries the key knows their frames alone, so that their texts may change."""
    frames = [(other.slug, other.published, other.frames) for other in others]
    trains = tuple(sorted(before.items()))
    job = partial(_job, build, entry, common, trains, tuple(other.entry or "" for other in others))
    key = key_of(common, entry.entry, trains, frames)
    return Task(entry.slug, key, job, FACTS_S + PICTURE_S * len(entry.extra), entry_file(entry.slug))


def _job(build: "Build", entry: EntryRead, common: str, before: Trains, others: tuple[str, ...]) -> FactsJob:
    earlier = build.earlier_value(FACTS, entry.slug)
    prepared = earlier.prepared if earlier is not None and earlier.common == common else None
    return FactsJob(common, entry.slug, entry.entry or "", before, others, entry.extra, prepared)


def _others(entries: Sequence[EntryRead]) -> dict[str, list[EntryRead]]:
    """Of each entry, those that may tell of its frames, by slug."""
    by_slug = {entry.slug: entry for entry in entries}
    together = exposing_together((entry.slug, entry.stretches) for entry in entries)
    return {slug: [by_slug[other] for other in sorted(together.get(slug, ()))] for slug in by_slug}


def _sky_notes(build: "Build") -> Iterable[Problem]:
    """Told once, of the entry with the newest night that has one: it is of the installed data, not of the entry."""
    facts = build.values(FACTS)
    noted = [(max(entry.evenings), slug, entry.sky_note) for slug, entry in facts.items() if entry.sky_note]
    for _, slug, note in sorted(noted)[-1:]:
        shown = build.context.config.folder.shown(entry_file(slug))
        yield Problem(shown, 1, 1, note, "a newer version of the package astropy-iers-data mends it", "warning")


def entry_file(slug: str) -> str:
    return f"entries/{slug}.md"


FACTS: Rule[FactsSummary] = Rule(
    name="facts",
    value=FactsSummary,
    work="work.facts:facts_of_entries",
    tasks=_tasks,
    doing="computing entries",
    stage="facts and pictures",
    counted="facts of entries",
    together=_sky_notes,
    prewarmed=True,
)
