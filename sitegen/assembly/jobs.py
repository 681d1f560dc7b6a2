"""The jobs that one step hands to the crew, as plain records."""

from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path
from typing import Any

from msgspec import Struct

from sitegen.assembly.picture_work import PictureWork
from sitegen.keeping.products import Product
from sitegen.pages.outer_card import OuterCard
from sitegen.problems import Problem

Pages = Mapping[str, tuple[str, Product]]
Around = tuple[date | None, date, date | None]
"""An evening between the ones before and after it."""
Measure = Callable[[str, Path, str, str], tuple[Any, tuple[Problem, ...]]]
"""('survey' or 'ring', the file, how problem lines show it, how the author wrote it) to a measurement or None, and problems."""
ENTRIES, LOGS, CORES, CARDS, STARS = "entries", "logs", "cores", "cards", "stars"
"""Folders of kept records: an entry as read; its logs; with its facts and pictures; its card with ribbons; stars measured."""


class ReadJob(Struct, frozen=True):
    """`relative` inside content/; `frame` the digest of what entries may name; `logs` the digest of its logs as they were read
    before, if any, and `unchanged` those whose files are as they were."""

    relative: str
    frame: str
    logs: str | None
    unchanged: frozenset[str]


class FactsJob(Struct, frozen=True):
    """`before` as in `facts.diary_in_sky`; `others` the digests of the listed entries, as read, that may tell of its frames;
    `earlier` the digest of the core made of this entry before, if any."""

    key: str
    slug: str
    entry: str
    before: tuple[tuple[str, date], ...]
    others: tuple[str, ...]
    earlier: str | None
    picture_work: PictureWork
    measure: Measure


class DrawJob(Struct, frozen=True):
    """`around`: the cards its page may know, its own among them; `evenings`: its nights that no other entry shares; `in_feed`:
    its text stands in the feeds; `earlier`: pages drawn before."""

    key: str
    core: str
    half_hours: float
    around: tuple[OuterCard, ...]
    evenings: tuple[Around, ...]
    in_feed: bool
    earlier: Pages


class NightJob(Struct, frozen=True):
    """An evening that several entries share, with all of them."""

    key: str
    cores: tuple[str, ...]
    half_hours: float
    evening: Around
    earlier: Pages


class ListJob(Struct, frozen=True):
    """One kind of page for the whole diary; `cards` are digests, newest first."""

    key: str
    kind: str
    cards: tuple[str, ...]
    earlier: Pages


class FeedsJob(Struct, frozen=True):
    """The whole diary for machines: cards without nights, newest first; every evening with a night; the newest texts, and
    every row of the search index, by slug."""

    key: str
    cards: tuple[OuterCard, ...]
    evenings: tuple[date, ...]
    texts: Mapping[str, str]
    rows: Mapping[str, str]
