"""The diary for machines: feeds, search index, sitemap, and the stylesheet of the filters' colours."""

from collections.abc import Iterable, Mapping
from datetime import date
from typing import TYPE_CHECKING

from msgspec import Struct

from sitegen.build.rule import Rule, Task
from sitegen.build.rules.entry_pages import ENTRY_PAGES
from sitegen.build.rules.facts import FACTS
from sitegen.build.store import key_of
from sitegen.feeds.search_entry import SearchEntry
from sitegen.pages.entry_summary import EntrySummary

if TYPE_CHECKING:
    from sitegen.build.graph import Build

FEEDS_S = 0.1


class FeedsMade(Struct, frozen=True, gc=False):
    """No later rule asks anything of the feeds."""


class FeedsJob(Struct, frozen=True):
    """Cards without nights, newest first; every evening with a night; the newest texts by slug; what the search knows of each
    entry, newest first."""

    cards: tuple[EntrySummary, ...]
    evenings: tuple[date, ...]
    texts: Mapping[str, str]
    searched: tuple[SearchEntry, ...]


def _tasks(build: "Build") -> Iterable[Task]:
    pages = build.values(ENTRY_PAGES)
    texts = {slug: entry.feed_html for slug, entry in pages.items() if entry.feed_html is not None}
    key = key_of(build.context.look, [facts.prepared for facts in build.values(FACTS).values()], texts)
    return [Task("feeds", key, lambda: _job(build, texts), FEEDS_S)]


def _job(build: "Build", texts: Mapping[str, str]) -> FeedsJob:
    facts = build.values(FACTS)
    evenings = sorted({evening for entry in facts.values() for evening in entry.evenings})
    cards, searched = (entry.card for entry in facts.values()), (entry.searched for entry in facts.values())
    return FeedsJob(tuple(cards), tuple(evenings), texts, tuple(searched))


FEEDS: Rule[FeedsMade] = Rule(
    name="feeds",
    value=FeedsMade,
    work="work.feeds:make_feeds",
    tasks=_tasks,
    doing="making feeds",
    stage="feeds",
    counted="feeds",
    prewarmed=True,
)
