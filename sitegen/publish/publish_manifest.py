"""Which files of the output sitegen itself put there: all others are the author's, and sacred.

The record in the output decides (`writing.record`). It changes places together with the site, so it is true whichever of the two
sites stands, wherever a rebuild is killed. Where it is missing or damaged, what lies at an address of sitegen's is taken for its
own; nobody knows whether the author changed such a file, so it is kept beside the output before it goes.
"""

from collections.abc import Callable, Mapping
from hashlib import blake2b
from pathlib import Path
from typing import Any, NamedTuple

from msgspec import json

from sitegen.file_moves import move
from sitegen.publish.record import RECORD, Record, read_record


class SiteAddresses(NamedTuple):
    """How a site is known whose record is lost. A folder that holds all `landmarks` was published by sitegen; `may_be_ours` tells
    whether sitegen may have put a file there, by its path."""

    landmarks: tuple[str, ...]
    may_be_ours: Callable[[str], bool]


NO_ADDRESSES = SiteAddresses((), lambda path: False)


class PublishManifest(NamedTuple):
    """`files` are what sitegen put into the output, each with its mark (see `by_hand`; '' where it is unknown). `whole`: it put
    nothing else there. `ours`: sitegen published this folder."""

    files: Mapping[str, str]
    whole: bool
    ours: bool

    def certain(self) -> set[str]:
        """Files that are sitegen's beyond doubt."""
        return {path for path, mark in self.files.items() if mark or self.whole}


def read_publish_manifest(output: Path, state: Path | None, known_by: SiteAddresses) -> PublishManifest:
    """What is known of the output as it stands. Raises NewerRecord."""
    record, note = read_record(output / RECORD), _earlier_note(output, state)
    if record.whole or (note and not record.files):
        return PublishManifest({**record.files, **note}, whole=True, ours=True)
    files = {**dict.fromkeys(record.files, ""), **_copy(output, state), **note}
    landed = bool(known_by.landmarks) and all((output / mark).is_file() for mark in known_by.landmarks)
    return PublishManifest(files, whole=False, ours=bool(files) or landed)


def keep_copy(output: Path, state: Path | None, record: bytes) -> None:
    """Called when the site with this record stands. The copy helps where the record is lost, and takes the place of an earlier
    version's note."""
    if state is not None and state.is_dir():
        working = copy_path(output, state).with_suffix(".part")
        working.write_bytes(record)
        move(working, copy_path(output, state))
        note_path(output, state).unlink(missing_ok=True)


def copy_path(output: Path, state: Path) -> Path:
    return state / f"published-{output.name}.copy"


def _copy(output: Path, state: Path | None) -> Mapping[str, str]:
    """Of the record that the output had after the last rebuild here; empty where it is damaged."""
    record = read_record(copy_path(output, state)) if state else Record({}, whole=False)
    return record.files if record.whole else {}


def note_path(output: Path, state: Path) -> Path:
    """Where versions before the record in the output remembered the same."""
    return state / f"published-{output.name}.json"


def _earlier_note(output: Path, state: Path | None) -> Mapping[str, str]:
    """Marks by path, wherever the diary files_now when it was written; empty where there is no note, or it is damaged.

    It tells of two folders by their numbers, as it was written before they changed places. A copied folder has another number:
    then what stands in either is ours.
    """
    try:
        note = _checked(note_path(output, state)) if state else {"sites": ()}
        sites = {int(number): _marked(files) for number, files in note["sites"]}
    except (OSError, ValueError, KeyError, TypeError):
        return {}
    here = _inode(output)
    return sites[here] if here in sites else {path: mark for files in reversed(sites.values()) for path, mark in files.items()}


def _marked(files: Any) -> Mapping[str, str]:
    """The first versions remembered names without marks."""
    named = files if isinstance(files, dict) else dict.fromkeys(files, "")
    return {str(path): str(mark) for path, mark in named.items()}


def _checked(path: Path) -> Any:
    """Raises ValueError where the checksum in the first line is not that of the rest."""
    checksum, _, body = path.read_bytes().partition(b"\n")
    if checksum != blake2b(body, digest_size=20).hexdigest().encode():
        raise ValueError("damaged")
    return json.decode(body)


def _inode(folder: Path) -> int:
    """-1 where there is no such folder."""
    try:
        return folder.stat().st_ino
    except OSError:
        return -1
