"""sitemap.xml: sitemaps.org 0.9. It needs absolute addresses, so there is none where the diary has no address."""

from html import escape

from sitegen.artifact import Artifact
from sitegen.diary import addresses
from sitegen.feeds.feed import Feed, FeedSource

NAMESPACE = "http://www.sitemaps.org/schemas/sitemap/0.9"
MOST_URLS = 50_000
LISTS = (
    addresses.INDEX,
    addresses.NIGHTS,
    addresses.SKY,
    addresses.TARGETS,
    addresses.TOTALS,
    addresses.LESSONS,
    addresses.RIGS,
    addresses.TOPICS,
    addresses.SEARCH,
    addresses.EXPLAINED,
    addresses.CREDITS,
)


def make(source: FeedSource) -> Artifact | None:
    if source.book.settings.address is None:
        return None
    pages = _pages(source)[:MOST_URLS]
    places = escape("\n".join(source.link(address) for address, _ in pages), quote=False).split("\n")
    urls = [_url(place, changed) for place, (_, changed) in zip(places, pages, strict=True)]
    head, root = "<?xml version='1.0' encoding='utf-8'?>", f'<urlset xmlns="{NAMESPACE}">'
    return Artifact.text(addresses.SITEMAP, "\n".join([head, root, *urls, "</urlset>", ""]))


def _url(location: str, changed: str | None) -> str:
    """As text: two lines a page are no work for a tree."""
    when = f"  <lastmod>{changed}</lastmod>\n" if changed else ""
    return f" <url>\n  <loc>{location}</loc>\n{when} </url>"


def _pages(source: FeedSource) -> list[tuple[str, str | None]]:
    """Entries first, newest first, then everything that gathers them."""
    book = source.book
    entries = [(addresses.entry(card.slug), str(card.last_change)) for card in book.cards]
    lists = [*LISTS, *([addresses.OUTLOOK] if book.settings.outlook.published and book.cards else [])]
    groups = [
        *(addresses.year(year) for year in book.years),
        *(addresses.target(slug) for slug in sorted(book.by_target)),
        *(addresses.rig(slug) for slug in sorted(book.rigs)),
        *(addresses.site(slug) for slug in sorted(book.sites)),
        *(addresses.topic(slug) for slug in sorted(book.by_topic)),
        *(addresses.night(evening) for evening in book.by_evening),
    ]
    return [*entries, *((address, None) for address in [*lists, *groups])]


FEED = Feed("sitemap", make)
