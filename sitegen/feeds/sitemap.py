"""sitemap.xml: sitemaps.org 0.9. It needs absolute addresses, so there is none where the diary has no address."""

from html import escape

from sitegen.artifact import Artifact
from sitegen.diary import addresses
from sitegen.feeds.feed import Feed, FeedSource
from sitegen.pages.registry import KINDS

NAMESPACE = "http://www.sitemaps.org/schemas/sitemap/0.9"
MOST_URLS = 50_000

def make(source: FeedSource) -> list[Artifact]:
    if source.book.settings.address is None:
        return []
    pages = _pages(source)[:MOST_URLS]
    places = escape("\n".join(source.link(address) for address, _ in pages), quote=False).split("\n")
    urls = [_url(place, changed) for place, (_, changed) in zip(places, pages, strict=True)]
    head, root = "<?xml version='1.0' encoding='utf-8'?>", f'<urlset xmlns="{NAMESPACE}">'
    return [Artifact.text(addresses.SITEMAP, "\n".join([head, root, *urls, "</urlset>", ""]))]


def _url(location: str, changed: str | None) -> str:
    """As text: two lines a page are no work for a tree."""
    when = f"  <lastmod>{changed}</lastmod>\n" if changed else ""
    return f" <url>\n  <loc>{location}</loc>\n{when} </url>"


def _pages(source: FeedSource) -> list[tuple[str, str | None]]:
    """Every page in the order of the kinds, and the day of an entry's last change."""
    book = source.book
    changed = {addresses.entry(card.slug): str(card.last_change) for card in book.cards}
    listed = [address for kind in KINDS if kind.in_sitemap for address in kind.addresses(book)]
    return [(address, changed.get(address)) for address in listed]


FEED = Feed("sitemap", make)
