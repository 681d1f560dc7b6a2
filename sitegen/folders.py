"""Where a command reads and writes."""

from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class Folders:
    """`keep` holds what was made before; None keeps nothing."""

    content: Path
    themes: Path
    output: Path
    keep: Path | None
