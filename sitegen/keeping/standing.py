"""The site that stands: what everything looked like when it was built, so that a rebuild of nothing is nothing."""

import json
import sys
import time
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from functools import cached_property
from pathlib import Path
from typing import Any

from sitegen.folders import Folders
from sitegen.keeping.footprint import Mark, all_settled, digest_of_lay, digest_of_marks, digest_of_output, marks_in
from sitegen.keeping.keep import key_of, read_checked, write_checked
from sitegen.keeping.makers import PACKAGE, package_folders


@dataclass(frozen=True)
class Look:
    """One look at everything a site is made from. `content` are the marks of the author's files."""

    folders: Folders
    themes: tuple[Path, ...]
    today: date
    looked_ns: int
    content: dict[str, Mark] = field(repr=False)

    def inputs(self) -> str:
        """As they were when this was asked first: what changes while the site is built is news for the next look."""
        return self._inputs

    @cached_property
    def _inputs(self) -> str:
        places = [(str(place.absolute()), digest_of_marks(marks)) for place, marks in self._makers.items()]
        libraries = [(str(place), place.stat().st_mtime_ns) for place in package_folders() if place.is_dir()]
        named = [str(each) for each in (self.folders.content, self.folders.themes, self.folders.output)]
        return key_of(digest_of_marks(self.content), places, libraries, named, sys.version, self.today.year)

    @cached_property
    def _makers(self) -> dict[Path, dict[str, Mark]]:
        return {place: marks_in(place) for place in (*self.themes, PACKAGE)}

    @property
    def settled(self) -> bool:
        """No file is so new that it may change within the same tick of its disk's clock."""
        return all(all_settled(marks.values(), self.looked_ns) for marks in (self.content, *self._makers.values()))


def look(folders: Folders, themes: tuple[Path, ...], today: date) -> Look:
    """`themes` are the folders that hold themes, each once."""
    now = time.time_ns()
    return Look(folders, themes, today, now, marks_in(folders.content))


def standing_report(look: Look) -> Mapping[str, Any] | None:
    """What was reported when the site as it stands was built; None where anything has changed since, or may have."""
    path, inputs = _path(look), look.inputs()
    try:
        told = json.loads(read_checked(path)) if path else None
    except (OSError, ValueError):
        return None
    if not isinstance(told, dict) or not _holds_today(told, look.today):
        return None
    same = told.get("inputs") == inputs and told.get("output") == digest_of_output(look.folders.output)
    report = told.get("report")
    return report if same and isinstance(report, dict) else None


def remember(look: Look, report: Mapping[str, Any], lay: Iterable[tuple[str, int, int, int]] | None) -> None:
    """Called when the site has been published, with the output as it lies there where that is known. A diary edited a moment
    before is looked at again the next time."""
    path = _path(look)
    if path is None or not look.settled:
        return
    told = {
        "today": look.today.isoformat(),
        "inputs": look.inputs(),
        "output": digest_of_output(look.folders.output) if lay is None else digest_of_lay(lay),
        "report": report,
    }
    write_checked(path, json.dumps(told).encode())


def _holds_today(told: Mapping[str, Any], today: date) -> bool:
    """What lay in the future when it was built has been warned of; without a warning, the same holds on every later day."""
    built = str(told.get("today"))
    problems = told.get("report", {}).get("problems")
    return built == today.isoformat() or (problems == [] and built < today.isoformat())


def _path(look: Look) -> Path | None:
    keep = look.folders.keep
    return keep / "standing" / f"{key_of(str(look.folders.output.absolute()))}.json" if keep else None
