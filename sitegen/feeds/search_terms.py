"""From an entry to what the search knows of it: its words, without accents and capitals, and its names."""

import re
import unicodedata
from collections.abc import Iterable, Mapping

from msgspec import json

from sitegen.catalogue.lookup import find_object
from sitegen.diary import addresses
from sitegen.diary.rig import Rig
from sitegen.diary.target import Target
from sitegen.facts.registry import IntegrationFacts
from sitegen.feeds.search_entry import SearchEntry
from sitegen.pages.card import EntryCard

NAME_MARK = "="
"""Stands before a whole name, written without blanks and hyphens: '=ngc253'."""
_DESIGNATION = re.compile(
    r"\b(m|ngc|ic|sh2|caldwell|c|b|barnard|ldn|lbn|vdb|abell|arp|mel|melotte|cr|collinder|tr|trumpler|rcw|ugc|pgc|pk|hd|hip)"
    r"[\s-]*(\d+)\b"
)


def search_entry(card: EntryCard, rigs: Mapping[str, Rig], text: str) -> SearchEntry:
    """`text` is the entry's plain text."""
    lit = [night.illuminated for night in card.nights if night.illuminated is not None and night.integration_s]
    picture_type = card.picture.type if card.picture else "observation"
    hours = round(card.integration.total_s / 3600, 3)
    row = [card.title, addresses.entry(card.slug), card.published, hours, card.summary or "", picture_type]
    names = sorted({name for target in card.targets for name in names_of(target)})
    shorts, rig_names = tuple(short for short, _ in card.filters), tuple(rigs[rig].name for rig in card.rigs)
    return SearchEntry(
        row=script_json(row),
        rigs=rig_names,
        filters=shorts,
        kinds=_kinds(card.integration),
        years=tuple(sorted({night.evening.year for night in card.nights} | {card.published.year})),
        seconds=round(card.integration.total_s),
        picture_type=picture_type,
        moon=(round(100 * min(lit)), round(100 * max(lit))) if lit else None,
        terms=_terms([card.title, card.summary or "", text, *names, *card.topics, *rig_names, *shorts], names),
    )


def script_json(value: object) -> str:
    """JSON that may stand in a script: no '<' that could end it, no line separators that are not JSON's."""
    text = json.encode(value).decode()
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")


def _kinds(totals: IntegrationFacts) -> tuple[str, ...]:
    gathered = (("broadband", totals.broadband_s), ("narrowband", totals.narrowband_s))
    return tuple(kind for kind, gathered_s in gathered if gathered_s)


def names_of(target: Target) -> set[str]:
    """The author's name, the catalogue's, and all its other designations."""
    sky_object = find_object(target.name)
    others = (sky_object.name, *sky_object.aliases) if sky_object else ()
    return {target.name, *target.aliases, *others}


def folded(text: str) -> str:
    """Lower case, without accents, as `look/search.js` folds what is asked for."""
    apart = unicodedata.normalize("NFKD", text.lower())
    return apart if apart.isascii() else "".join(letter for letter in apart if not unicodedata.category(letter).startswith("M"))


def words_of(text: str) -> set[str]:
    """Words of folded text that are looked for: two letters or more."""
    return {word for word in re.findall(r"\w+", text) if len(word) > 1}


def _terms(texts: Iterable[str], names: Iterable[str]) -> str:
    text = folded(" ".join(texts))
    words = words_of(text)
    whole = {re.sub(r"[\s-]+", "", folded(name)) for name in names} | {"".join(parts) for parts in _DESIGNATION.findall(text)}
    return " ".join(sorted(words | {f"{NAME_MARK}{name}" for name in whole}))
