"""The name of a piece of work: the same file and settings, the same name, whatever the file is called and wherever it lies."""

import hashlib
import json
from functools import cache
from importlib.metadata import version
from pathlib import Path

from msgspec.structs import asdict

from sitegen.pictures.records import PictureSettings

MAKING = 1  # raise where a change of this room changes a published byte
MADE_BY = ("pyvips", "pyvips-binary", "astropy", "numpy")


def picture_key(path: Path, settings: PictureSettings) -> str:
    """64 hexadecimal digits from the file's content, the settings, and the versions of what makes the files."""
    wishes = asdict(settings) | {"stretch": dict(settings.stretch), "widths_px": sorted(set(settings.widths_px))}
    with path.open("rb") as stream:
        content = hashlib.file_digest(stream, "sha256").hexdigest()
    words = json.dumps([MAKING, _makers(), content, wishes], sort_keys=True)
    return hashlib.sha256(words.encode("utf-8")).hexdigest()


@cache
def _makers() -> tuple[str, ...]:
    return tuple(f"{name} {version(name)}" for name in MADE_BY)
