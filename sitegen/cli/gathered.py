"""What a gathering brought, in words and as JSON."""

from collections.abc import Iterator
from itertools import groupby
from pathlib import Path
from typing import Any

from msgspec.structs import asdict

from sitegen.authoring.gathering import Gathering, NewOfNight
from sitegen.authoring.new_entry import Beginning, recognised


def gathering_lines(done: Gathering, name: str, content: Path) -> Iterator[str]:
    known = f", {done.known_count} there already" if done.known_count else ""
    unreadable = f", {done.unreadable} not readable" if done.unreadable else ""
    yield f"{content}/{done.log}: {done.new_count} new{known}{unreadable}"
    for evening, rows in groupby(done.new, key=lambda row: row.evening):
        yield f"  {evening}  {', '.join(map(frames_words, rows))}"
    if done.named is None:
        yield f"no entry is called {name} yet: 'sitegen begin {name}' writes one"


def frames_words(row: NewOfNight) -> str:
    """'Ha 12 × 300 s'."""
    return f"{row.what} {row.count} × {row.exposure_s:g} s"


def gathering_json(done: Gathering) -> dict[str, Any]:
    return {
        "log": done.log,
        "new": done.new_count,
        "known": done.known_count,
        "unreadable": done.unreadable,
        "named_in_entry": done.named,
        "nights": [asdict(row) | {"evening": row.evening.isoformat()} for row in done.new],
    }


def beginning_lines(done: Beginning, content: Path) -> Iterator[str]:
    yield f"{content}/{done.entry}: begun"
    for what, found, sure, against in recognised(done.draft):
        doubt = f" (to be confirmed{': ' if against else ''}{against})"
        yield f"  {what:<7} {found or 'not recognised'}{'' if sure or not found else doubt}"
    for evening, rows in groupby(done.draft.nights, key=lambda row: row.evening):
        yield f"  {evening}  {', '.join(map(frames_words, rows))}"
    if not done.draft.whole:
        yield "its logs wait behind a '#', which says what for"
    yield "what only you can write is marked 'To write:' in it"


def beginning_json(done: Beginning) -> dict[str, Any]:
    return {
        "entry": done.entry,
        "logs": list(done.draft.logs),
        "recognised": {
            what: {"found": found, "sure": sure} | ({"against": against} if against else {})
            for what, found, sure, against in recognised(done.draft)
        },
        "nights": [asdict(row) | {"evening": row.evening.isoformat()} for row in done.draft.nights],
        "gathered": gathering_json(done.gathering) if done.gathering else None,
    }
