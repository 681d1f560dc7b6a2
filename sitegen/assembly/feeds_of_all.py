"""All cards to the feeds; apart from `lists`, since most rebuilds make feeds and no lists."""

from collections.abc import Mapping

from sitegen.assembly.bench import Bench
from sitegen.assembly.records import DrawnPages
from sitegen.diary import addresses
from sitegen.feeds.feed import FeedSource
from sitegen.feeds.registry import FEEDS
from sitegen.keeping.products import keep_bytes
from sitegen.pages.passband_styles import passband_css
from sitegen.pages.site_book import SiteBook


def make_feeds(
    bench: Bench, key: str, book: SiteBook, texts: Mapping[str, str], rows: Mapping[str, str]
) -> DrawnPages:
    """Feeds, and the stylesheet of the filters' colours. The book's cards need no ribbons."""
    source = FeedSource(book, texts, rows)
    made = [(artifact.path, artifact.content) for feed in FEEDS if (artifact := feed.make(source)) is not None]
    made.append((addresses.static("passbands.css"), passband_css(bench.frame.rigs).encode("utf-8")))
    pages = {path: ("", keep_bytes(path, content, bench.blobs)) for path, content in made if isinstance(content, bytes)}
    return DrawnPages(key, pages)
