"""What is remembered of each step: the digests it was made from, and what came of it.

None of these records can stand in a ring, so that the interpreter need not look among them for rings (`gc=False`): there are tens
of thousands.
"""

from collections.abc import Iterator, Mapping
from datetime import date

from msgspec import Struct, field

from sitegen.keeping.footprint import Mark
from sitegen.keeping.products import Product
from sitegen.pages.outer_card import OuterCard
from sitegen.problems import Problem
from sitegen.reading.shared_addresses import AddressedName

Marks = tuple[tuple[str, Mark | None], ...]


class ReadEntry(Struct, frozen=True, gc=False):
    """An entry as read. `marks` of its own file and its logs; `entry` the digest under which the record is kept, None where a
    problem is an error; `logs` the digest under which its logs are kept as they were read; `extra` the pictures and star frames
    it names; `named` as in `reading.reader`."""

    relative: str
    marks: Marks
    asked: tuple[str, ...]
    frame: str
    today: date
    problems: tuple[Problem, ...]
    logs: str
    slug: str = ""
    entry: str | None = None
    published: date = date.min
    unlisted: bool = False
    rigs: tuple[str, ...] = ()
    extra: tuple[str, ...] = ()
    named: tuple[AddressedName, ...] = ()


class FactsOfEntry(Struct, frozen=True, gc=False):
    """`core` is the digest of its view, facts and pictures; `card` has no more than feeds and neighbours show, `evenings` are its
    nights' days. `half_night_s`: the longest stretch from midnight to sunset or sunrise. `links`: entries that its text leads to.
    `at_night`: the digest of all but the text, of which nights show nothing. `search_row`: its row of the search index.
    `sights`: what its pictures show, as target pages spell it; `pointings`: names of the kept records of where they point.
    `stars`: names of the measurements kept for it."""

    key: str
    marks: Marks
    core: str
    at_night: str
    card: OuterCard
    evenings: tuple[date, ...]
    half_night_s: float
    links: tuple[str, ...]
    search_row: str
    sights: tuple[str, ...]
    pointings: tuple[str, ...]
    products: tuple[Product, ...]
    problems: tuple[Problem, ...]
    stars: tuple[str, ...] = ()


class DrawnPages(Struct, frozen=True, gc=False):
    """`pages`: each page's digest and file, by its path in the site. `card` the digest of the card with its ribbons; `feed_html`
    the text as feeds show it, None for all but the newest; `mistaken`: the text has a marker that leads nowhere;
    `charts`: keys of the charts it shows."""

    key: str
    pages: Mapping[str, tuple[str, Product]]
    card: str = ""
    feed_html: str | None = None
    mistaken: bool = False
    charts: tuple[str, ...] = ()


class Ledger(Struct):
    """Everything remembered, by path, slug, evening or name of list."""

    maker: str = ""
    names: frozenset[str] = frozenset()
    read: dict[str, ReadEntry] = field(default_factory=dict)
    facts: dict[str, FactsOfEntry] = field(default_factory=dict)
    drawn: dict[str, DrawnPages] = field(default_factory=dict)
    nights: dict[str, DrawnPages] = field(default_factory=dict)
    lists: dict[str, DrawnPages] = field(default_factory=dict)
    feeds: DrawnPages | None = None

    def all_drawn(self) -> Iterator[DrawnPages]:
        yield from (*self.drawn.values(), *self.nights.values(), *self.lists.values())
        if self.feeds is not None:
            yield self.feeds

    def carry_over(self, known: "Ledger") -> None:
        """Steps that this rebuild never came to keep what was known of them."""
        self.facts = self.facts or known.facts
        self.drawn = self.drawn or known.drawn
        self.nights = self.nights or known.nights
        self.lists = self.lists or known.lists
        self.feeds = self.feeds or known.feeds
