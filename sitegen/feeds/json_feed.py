"""feed.json: JSON Feed 1.1, the same entries as the Atom feed."""

import json
from typing import Any

from sitegen.artifact import Artifact
from sitegen.diary import addresses
from sitegen.feeds.feed import NEWEST, Feed, FeedSource
from sitegen.pages.card import EntryCard


def make(source: FeedSource) -> list[Artifact]:
    settings = source.book.settings
    feed: dict[str, Any] = {
        "version": "https://jsonfeed.org/version/1.1",
        "title": settings.title,
        "language": settings.language,
        "home_page_url": source.link(addresses.INDEX),
    }
    if settings.address:
        feed["feed_url"] = source.link(addresses.JSON_FEED)
    if settings.tagline:
        feed["description"] = settings.tagline
    if settings.author:
        feed["authors"] = [{"name": settings.author}]
    feed["items"] = [_item(card, source) for card in source.book.cards[:NEWEST]]
    return [Artifact.text(addresses.JSON_FEED, json.dumps(feed, ensure_ascii=False, indent=1) + "\n")]


def _item(card: EntryCard, source: FeedSource) -> dict[str, Any]:
    address = source.link(addresses.entry(card.slug))
    item: dict[str, Any] = {
        "id": address,
        "url": address,
        "title": card.title,
        "content_html": source.texts.get(card.slug, ""),
        "date_published": f"{card.published}T00:00:00Z",
    }
    if card.summary:
        item["summary"] = card.summary
    if card.updated:
        item["date_modified"] = f"{card.updated}T00:00:00Z"
    if card.picture:
        item["image"] = source.link(card.picture.fallback)
    if card.topics:
        item["tags"] = list(card.topics)
    return item


FEED = Feed("json feed", make)
