"""Which files of the output sitegen itself put there: all others are the author's, and sacred.

The list is written before the two folders change places, together with the number (inode) of the folder it holds for. So it is
true whichever of the two stands afterwards, wherever the rebuild is killed.
"""

from collections.abc import Mapping
from hashlib import blake2b
from pathlib import Path
from typing import Any, NamedTuple

from msgspec import json

from sitegen.file_moves import move

SIGNS = ("facts.schema.json", "static/search-index.js", "explained/index.html")
"""A folder in which all of these lie was once published by sitegen, whatever is remembered."""


class Memory(NamedTuple):
    """`files` are what sitegen put there, each with its mark (`by_hand.mark_of`, '' where it is unknown); None where nobody
    remembers. `ours`: the folder was published by sitegen. `sites`: what is remembered of either folder, by its number."""

    files: Mapping[str, str] | None
    ours: bool
    sites: Mapping[int, Mapping[str, str]]


def remembered(output: Path, state: Path | None) -> Memory:
    """What is known of the output as it stands."""
    ours = all((output / sign).is_file() for sign in SIGNS)
    sites = _sites(output, state)
    if not sites:
        return Memory(None, ours, {})
    here = _number(output)
    return Memory(sites.get(here, next(iter(sites.values()))), ours, sites)


def remember(output: Path, beside: Path, state: Path | None, files: Mapping[str, str], known: Memory) -> None:
    """Called with the next site whole in `beside`, before it takes its place; `known` is what was remembered before."""
    if state is None:
        return
    earlier, here = known.sites, _number(output)
    sites: dict[int, Mapping[str, str]] = {_number(beside): files}
    if earlier:
        sites[here] = earlier.get(here, next(iter(earlier.values())))
    told = {"output": _spelt(output), "sites": [[number, dict(sorted(found.items()))] for number, found in sites.items()]}
    state.mkdir(parents=True, exist_ok=True)
    working = note(output, state).with_suffix(".part")
    body = json.encode(told)
    working.write_bytes(_checksum(body) + b"\n" + body)
    move(working, note(output, state))


def note(output: Path, state: Path) -> Path:
    return state / f"published-{output.name}.json"


def _sites(output: Path, state: Path | None) -> dict[int, Mapping[str, str]]:
    """By number of the folder, the newest first; empty where nothing is remembered, or what is there is no such note."""
    try:
        told = _told(note(output, state)) if state else {}
        found: dict[int, Mapping[str, str]] = {int(number): _marked(files) for number, files in told["sites"]}
        return found if told["output"] == _spelt(output) else {}
    except (OSError, ValueError, KeyError, TypeError):
        return {}


def _marked(files: Any) -> Mapping[str, str]:
    """A list is what an earlier version remembered: names without marks."""
    named = files if isinstance(files, dict) else dict.fromkeys(files, "")
    return {str(path): str(mark) for path, mark in named.items()}


def _told(path: Path) -> Any:
    """Raises ValueError where the checksum in the first line is not that of the rest."""
    checksum, _, body = path.read_bytes().partition(b"\n")
    if checksum != _checksum(body):
        raise ValueError("damaged")
    return json.decode(body)


def _checksum(body: bytes) -> bytes:
    return blake2b(body, digest_size=20).hexdigest().encode()


def _spelt(folder: Path) -> str:
    """A name that is no text on disk has one in the note, too."""
    return str(folder).encode("utf-8", "backslashreplace").decode()


def _number(folder: Path) -> int:
    """Of a folder in its file system; -1 where there is none."""
    try:
        return folder.stat().st_ino
    except OSError:
        return -1
