"""atom.xml: RFC 4287, the newest entries with their full text."""

import uuid
from xml.etree import ElementTree

from sitegen.artifact import Artifact
from sitegen.diary import addresses
from sitegen.feeds.feed import NEWEST, Feed, FeedSource
from sitegen.pages.card import EntryCard

NAMESPACE = "http://www.w3.org/2005/Atom"
DIARY = uuid.UUID("6f0a6a1e-3c36-5d0e-9d1b-5a0d3f6b7c11")  # a constant of this format, so that ids never change


def make(source: FeedSource) -> list[Artifact]:
    """Dates are days: an entry is published at the start of its day, UTC, since the diary knows no hour."""
    settings = source.book.settings
    ElementTree.register_namespace("", NAMESPACE)
    feed = ElementTree.Element(f"{{{NAMESPACE}}}feed", {"xml:lang": settings.language})
    _text(feed, "id", source.link(addresses.INDEX) if settings.address else _urn(settings.title))
    _text(feed, "title", settings.title)
    if settings.tagline:
        _text(feed, "subtitle", settings.tagline)
    newest = max((card.last_change for card in source.book.cards), default=None)
    _text(feed, "updated", f"{newest or '1970-01-01'}T00:00:00Z")
    _text(ElementTree.SubElement(feed, f"{{{NAMESPACE}}}author"), "name", settings.author or settings.title)
    if settings.address:
        _link(feed, source.link(addresses.ATOM), "self")
    _link(feed, source.link(addresses.INDEX), "alternate")
    for card in source.book.cards[:NEWEST]:
        _entry(feed, card, source)
    ElementTree.indent(feed, " ")
    return [Artifact(addresses.ATOM, ElementTree.tostring(feed, "utf-8", xml_declaration=True) + b"\n")]


def _entry(feed: ElementTree.Element, card: EntryCard, source: FeedSource) -> None:
    entry = ElementTree.SubElement(feed, f"{{{NAMESPACE}}}entry")
    address = addresses.entry(card.slug)
    _text(entry, "id", source.link(address) if source.book.settings.address else _urn(address))
    _text(entry, "title", card.title)
    _text(entry, "published", f"{card.published}T00:00:00Z")
    _text(entry, "updated", f"{card.last_change}T00:00:00Z")
    _link(entry, source.link(address), "alternate")
    for topic in card.topics:
        ElementTree.SubElement(entry, f"{{{NAMESPACE}}}category", {"term": topic})
    if card.summary:
        _text(entry, "summary", card.summary)
    if card.slug in source.texts:
        _text(entry, "content", source.texts[card.slug]).set("type", "html")


def _text(parent: ElementTree.Element, name: str, text: str) -> ElementTree.Element:
    child = ElementTree.SubElement(parent, f"{{{NAMESPACE}}}{name}")
    child.text = text
    return child


def _link(parent: ElementTree.Element, address: str, relation: str) -> None:
    kind = "application/atom+xml" if relation == "self" else "text/html"
    ElementTree.SubElement(parent, f"{{{NAMESPACE}}}link", {"rel": relation, "type": kind, "href": address})


def _urn(name: str) -> str:
    """A permanent name where the diary has no address of its own."""
    return uuid.uuid5(DIARY, name).urn


FEED = Feed("atom", make)
