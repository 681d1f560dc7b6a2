"""What was found out by reading a whole diary, and stays true as long as none of its files changes."""

import json
from datetime import date
from pathlib import Path
from typing import Any

from sitegen.keeping.keep import key_of, read_checked, write_checked
from sitegen.keeping.standing import Look

FOLDER = "told"


def told_before(look: Look, what: str) -> Any:
    """The value kept under this name; None where there is none, or anything has changed since."""
    path = _path(look, what)
    try:
        told = json.loads(read_checked(path)) if path else None
    except (OSError, ValueError):
        return None
    if not isinstance(told, dict) or not _holds_on(look.today, told) or told.get("inputs") != look.inputs():
        return None
    return told.get("value")


def keep_told(look: Look, what: str, value: Any) -> None:
    """`value` as JSON has it. Of a diary edited a moment before nothing is kept: it may change within the same tick."""
    path = _path(look, what)
    if path is not None and look.settled:
        write_checked(path, json.dumps({"today": look.today.isoformat(), "inputs": look.inputs(), "value": value}).encode())


def _holds_on(today: date, told: dict[str, Any]) -> bool:
    """Warnings may hang on the day: what lay in the future does so no longer. Where nothing was told, nothing comes with time."""
    kept = str(told.get("today"))
    return kept == today.isoformat() or (told.get("value") == [] and kept < today.isoformat())


def _path(look: Look, what: str) -> Path | None:
    keep, place = look.folders.keep, str(look.folders.content.absolute())
    return keep / FOLDER / f"{what}-{key_of(place)}.json" if keep else None
