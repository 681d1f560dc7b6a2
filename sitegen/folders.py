"""Where a command reads and writes."""

from pathlib import Path

from msgspec import Struct


class Folders(Struct, frozen=True):
    """`keep` holds what was made before; None keeps nothing."""

    content: Path
    themes: Path
    output: Path
    keep: Path | None
