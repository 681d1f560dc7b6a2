"""All cards to the feeds; apart from `lists`, since most rebuilds make feeds and no lists."""

from collections.abc import Sequence

from sitegen.build.context import BuildContext
from sitegen.build.neighbours import with_evenings
from sitegen.build.rule import Outcome
from sitegen.build.rules.feeds import FeedsJob, FeedsMade
from sitegen.build.work.drawing_kit import kit_of
from sitegen.diary import addresses
from sitegen.feeds.feed import FeedSource
from sitegen.feeds.registry import FEEDS
from sitegen.pages.passband_styles import passband_css


def make_feeds(context: BuildContext, chunk: Sequence[FeedsJob]) -> list[Outcome[FeedsMade]]:
    """Feeds, and the stylesheet of the filters' colours."""
    return [_made(context, job) for job in chunk]


def _made(context: BuildContext, job: FeedsJob) -> Outcome[FeedsMade]:
    cards = (*(with_evenings(card, job.evenings) for card in job.cards[:1]), *job.cards[1:])
    source = FeedSource(kit_of(context).book(cards), job.texts, job.searched)
    files = [(artifact.path, artifact.content) for feed in FEEDS for artifact in feed.make(source)]
    files.append((addresses.look("passbands.css"), passband_css(context.config.rigs).encode("utf-8")))
    outputs = tuple(context.store.put_file(path, content) for path, content in files if isinstance(content, bytes))
    return Outcome(FeedsMade(), outputs=outputs)
