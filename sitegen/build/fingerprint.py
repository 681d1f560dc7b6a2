"""The fingerprint of a diary: what all that a site is made from looks like from outside. Results found for it are kept, and hold
for as long as the fingerprint is the same."""

import json
import sys
import time
from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property
from pathlib import Path
from typing import Any

from sitegen.build.code_version import PACKAGE, package_folders
from sitegen.build.stamps import Stamp, all_reliable, digest_of_files, digest_of_output, digest_of_stamps, stamps_in
from sitegen.build.store import key_of, read_checked, write_checked
from sitegen.folders import Folders

Files = Iterable[tuple[str, int, int, int]]
"""Path, size, time and inode of each file of the output."""


@dataclass(frozen=True)
class Fingerprint:
    """`content` are the stamps of the author's files, taken at `looked_ns`; `root` is that of the store, None where nothing is
    kept."""

    folders: Folders
    themes: tuple[Path, ...]
    today: date
    root: Path | None
    looked_ns: int
    content: dict[str, Stamp] = field(repr=False)

    @cached_property
    def digest(self) -> str:
        """Of everything as it was when this was asked first: what changes while the site is built is news for the next time."""
        places = [(str(place.absolute()), digest_of_stamps(stamps)) for place, stamps in self._code.items()]
        libraries = [(str(place), place.stat().st_mtime_ns) for place in package_folders() if place.is_dir()]
        named = [str(folder) for folder in (self.folders.content, self.folders.themes, self.folders.output)]
        return key_of(digest_of_stamps(self.content), places, libraries, named, sys.version, self.today.year)

    @cached_property
    def _code(self) -> dict[Path, dict[str, Stamp]]:
        return {place: stamps_in(place) for place in (*self.themes, PACKAGE)}

    @property
    def is_reliable(self) -> bool:
        """No file is so new that it may change within the same tick of its disk's clock."""
        return all(all_reliable(stamps.values(), self.looked_ns) for stamps in (self.content, *self._code.values()))


def take_fingerprint(folders: Folders, themes: tuple[Path, ...], today: date, root: Path | None) -> Fingerprint:
    """`themes` are the folders that hold themes, each once."""
    now = time.time_ns()
    return Fingerprint(folders, themes, today, root, now, stamps_in(folders.content))


def saved_result(fingerprint: Fingerprint, name: str) -> Any:
    """The value saved under this name, as JSON has it; None where there is none, or anything has changed since."""
    path = _path(fingerprint, name)
    try:
        saved = json.loads(read_checked(path)) if path else None
        if saved is None or not _holds_on(fingerprint.today, saved) or saved["inputs"] != fingerprint.digest:
            return None
        return saved["value"]
    except (OSError, ValueError, TypeError, KeyError, AttributeError):
        return None


def save_result(fingerprint: Fingerprint, name: str, value: Any, lasting: bool) -> None:
    """`lasting`: it holds on every later day. Of a diary edited a moment before nothing is saved: its files may change within the
    same tick."""
    path = _path(fingerprint, name)
    if path is not None and fingerprint.is_reliable:
        saved = {"today": fingerprint.today.isoformat(), "lasting": lasting, "inputs": fingerprint.digest, "value": value}
        write_checked(path, json.dumps(saved).encode())


def saved_report(fingerprint: Fingerprint) -> dict[str, Any] | None:
    """What was reported when the site as it stands was built; None where anything has changed since, or may have."""
    saved = saved_result(fingerprint, "report")
    same = isinstance(saved, dict) and saved.get("output") == digest_of_output(fingerprint.folders.output)
    report = saved.get("report") if same else None
    return report if isinstance(report, dict) else None


def save_report(fingerprint: Fingerprint, report: dict[str, Any], files: Files | None) -> None:
    """Called when the site has been published, with the output's files where they are known."""
    output = digest_of_output(fingerprint.folders.output) if files is None else digest_of_files(files)
    save_result(fingerprint, "report", {"output": output, "report": report}, lasting=not report["problems"])


def _holds_on(today: date, saved: dict[str, Any]) -> bool:
    """What lay in the future has been warned of; without a warning, the same holds on every later day."""
    return saved["today"] == today.isoformat() or (saved["lasting"] is True and saved["today"] < today.isoformat())


def _path(fingerprint: Fingerprint, name: str) -> Path | None:
    folders = fingerprint.folders
    places = str(folders.content.absolute()), str(folders.output.absolute())
    return fingerprint.root / f"{name}-{key_of(places)}.json" if fingerprint.root else None
