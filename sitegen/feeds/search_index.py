"""look/search-index.js: what the search page looks through. A script, not JSON, so that it loads from disk too.

Compact by columns and shared lists: names of rigs, filters, targets stand once, entries hold their numbers.
"""

import json
import re
from collections.abc import Mapping
from typing import Any, get_args

from sitegen.artifact import Artifact
from sitegen.catalogue.lookup import find_object
from sitegen.diary import addresses
from sitegen.diary.entry import PictureType
from sitegen.diary.rig import Rig
from sitegen.diary.target import Target
from sitegen.facts.registry import IntegrationFacts
from sitegen.feeds.feed import Feed, FeedSource
from sitegen.pages.card import EntryCard


def make(source: FeedSource) -> Artifact:
    rows = ",".join(source.search_rows[card.slug] for card in source.book.cards)
    words = source.book.formatter.words
    types = {kind: words[f"picture_type.{kind}"] for kind in get_args(PictureType) if kind != "observation"}
    index = f'self.diaryIndex = {{"entries":[{rows}],"types":{_script_json(types)}}};\n'
    return Artifact.text(addresses.SEARCH_INDEX, index)


def search_row(card: EntryCard, rigs: Mapping[str, Rig], words: str) -> str:
    """One entry's row, which hangs on no other entry. `words`: its plain text."""
    return _script_json(_entry(card, rigs, words))


def _script_json(value: Any) -> str:
    """JSON that may stand in a script: no '<' that could end it, no line separators that are not JSON's."""
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")


def _entry(card: EntryCard, rigs: Mapping[str, Rig], words: str) -> dict[str, Any]:
    """One entry: title, address, day, names it answers to, filters, rigs, years, hours, the Moon's share, the type of its
    picture, its words."""
    lit = [night.illuminated for night in card.nights if night.illuminated is not None and night.integration_s]
    return {
        "t": card.title,
        "a": addresses.entry(card.slug),
        "d": str(card.published),
        "n": sorted({name for target in card.targets for name in names_of(target)}),
        "f": [short for short, _ in card.filters],
        "r": [rigs[rig].name for rig in card.rigs],
        "y": sorted({night.evening.year for night in card.nights} | {card.published.year}),
        "h": round(card.integration.total_s / 3600, 3),
        "k": _kinds(card.integration),
        "m": [round(min(lit), 2), round(max(lit), 2)] if lit else None,
        "s": card.summary or "",
        "o": list(card.topics),
        "p": card.picture.type if card.picture else "observation",
        "w": distinct_words(words),
    }


def _kinds(totals: IntegrationFacts) -> list[str]:
    return [kind for kind, gathered_s in (("broadband", totals.broadband_s), ("narrowband", totals.narrowband_s)) if gathered_s]


def names_of(target: Target) -> set[str]:
    """The author's name, the catalogue's, and all its other designations."""
    sky_object = find_object(target.name)
    others = (sky_object.name, *sky_object.aliases) if sky_object else ()
    return {target.name, *target.aliases, *others}


def distinct_words(text: str) -> str:
    """Each word of the text once, lower case, three letters or more, sorted: what a search for words needs."""
    return " ".join(sorted({word for word in re.findall(r"\w+", text.casefold()) if len(word) > 2}))


FEED = Feed("search index", make)
