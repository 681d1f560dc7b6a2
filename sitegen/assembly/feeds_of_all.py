"""All cards to the feeds; apart from `lists`, since most rebuilds make feeds and no lists."""

from collections.abc import Sequence

from sitegen.assembly.bench import Bench
from sitegen.assembly.jobs import FeedsJob
from sitegen.assembly.records import DrawnPages
from sitegen.assembly.surroundings import with_evenings
from sitegen.diary import addresses
from sitegen.feeds.feed import FeedSource
from sitegen.feeds.registry import FEEDS
from sitegen.keeping.products import keep_bytes
from sitegen.pages.passband_styles import passband_css


def make_feeds(bench: Bench, chunk: Sequence[FeedsJob]) -> list[DrawnPages]:
    """Feeds, and the stylesheet of the filters' colours."""
    return [_made(bench, job) for job in chunk]


def _made(bench: Bench, job: FeedsJob) -> DrawnPages:
    cards = (*(with_evenings(card, job.evenings) for card in job.cards[:1]), *job.cards[1:])
    source = FeedSource(bench.book(cards), job.texts, job.rows)
    made = [(artifact.path, artifact.content) for feed in FEEDS if (artifact := feed.make(source)) is not None]
    made.append((addresses.static("passbands.css"), passband_css(bench.frame.rigs).encode("utf-8")))
    pages = {path: ("", keep_bytes(path, content, bench.blobs)) for path, content in made if isinstance(content, bytes)}
    return DrawnPages(job.key, pages)
