"""What the search page looks through: a small head, and parts that are fetched when they are asked for.

Each is a script, not JSON, so that it loads from disk too. A small diary has all its parts in the head.
"""

from collections.abc import Iterator, Sequence
from typing import Any, get_args

from sitegen.artifact import Artifact
from sitegen.diary import addresses
from sitegen.diary.entry import PictureType
from sitegen.feeds.feed import Feed, FeedSource
from sitegen.feeds.search_entry import SearchEntry
from sitegen.feeds.search_terms import folded, script_json, words_of
from sitegen.feeds.search_words import index_of, parts_of

ROWS_A_PART = 50
WHOLE_BYTES = 60_000
"""So much at most stands in the head itself, together with it."""


def make(source: FeedSource) -> list[Artifact]:
    words = source.book.formatter.words
    types = {kind: words[f"picture_type.{kind}"] for kind in get_args(PictureType) if kind != "observation"}
    return files_of(source.searched, types)


def files_of(entries: Sequence[SearchEntry], types: dict[str, str]) -> list[Artifact]:
    """`types`: the words for what the picture of an entry may be, beside an observation."""
    labels = {kind: words_of(folded(label)) for kind, label in types.items()}
    index = parts_of(index_of({*entry.terms.split(), *labels.get(entry.picture_type, ())} for entry in entries))
    parts = {"choices": script_json(_choices(entries))}
    parts |= {_words_part(beginning): script_json(terms) for beginning, terms in index.items()}
    parts |= dict(_rows(entries))
    head: dict[str, Any] = {"entries": len(entries), "rowsAPart": ROWS_A_PART, "words": sorted(index), "types": types}
    if sum(map(len, parts.values())) <= WHOLE_BYTES:
        inside = ",".join(f"{script_json(name)}:{part}" for name, part in parts.items())
        return [_head(head, f"diarySearch.parts = {{{inside}}};\n")]
    return [_head(head, ""), *(_part(name, part) for name, part in parts.items())]


def _head(head: dict[str, Any], parts: str) -> Artifact:
    return Artifact.text(addresses.SEARCH_INDEX, f"self.diarySearch = {script_json(head)};\n{parts}")


def _part(name: str, part: str) -> Artifact:
    return Artifact.text(addresses.search_part(name), f"diarySearch.part({script_json(name)}, {part});\n")


def _words_part(beginning: str) -> str:
    """A name that every disk and web server can bear."""
    return f"words-{beginning.encode('utf-8').hex()}"


def _rows(entries: Sequence[SearchEntry]) -> Iterator[tuple[str, str]]:
    for first in range(0, len(entries), ROWS_A_PART):
        rows = ",".join(entry.row for entry in entries[first : first + ROWS_A_PART])
        yield f"rows-{first // ROWS_A_PART}", f"[{rows}]"


def _choices(entries: Sequence[SearchEntry]) -> dict[str, Any]:
    """By what entries are picked: of each question its answers, and of each entry the number of its own; hours in hundredths,
    rounded down; the Moon in percent, −1 where nothing was kept under a known sky."""
    columns: dict[str, Any] = {
        "rig": _numbered([entry.rigs for entry in entries]),
        "filter": _numbered([entry.filters for entry in entries]),
        "band": _numbered([entry.kinds for entry in entries]),
        "year": _numbered([entry.years for entry in entries]),
    }
    columns["hours"] = [entry.seconds // 36 for entry in entries]
    columns["darkest"] = [entry.moon[0] if entry.moon else -1 for entry in entries]
    columns["brightest"] = [entry.moon[1] if entry.moon else -1 for entry in entries]
    return columns


def _numbered(answers: Sequence[tuple[Any, ...]]) -> dict[str, Any]:
    numbers = {answer: number for number, answer in enumerate(sorted(set(answers)))}
    return {"answers": list(numbers), "of": [numbers[answer] for answer in answers]}


FEED = Feed("search index", make)
