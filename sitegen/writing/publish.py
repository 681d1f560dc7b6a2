"""Puts a finished site in the place of the earlier one."""

import os
import shutil
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from sitegen.artifact import Artifact


@dataclass(frozen=True, slots=True)
class Published:
    files: int
    changed: int


def publish(artifacts: Iterable[Artifact], output: Path) -> Published:
    """Writes beside `output` and switches. The earlier site stays whole until then."""
    working = output.with_name(f"{output.name}.{os.getpid()}.next")
    shutil.rmtree(working, ignore_errors=True)
    working.mkdir(parents=True)
    files = changed = 0
    for artifact in artifacts:
        files += 1
        changed += _place(artifact, working, output)
    _switch(working, output)
    return Published(files, changed)


def _place(artifact: Artifact, working: Path, output: Path) -> bool:
    target = working / artifact.path
    target.parent.mkdir(parents=True, exist_ok=True)
    if isinstance(artifact.content, Path):
        shutil.copyfile(artifact.content, target)
        return True
    earlier = output / artifact.path
    if earlier.is_file() and earlier.stat().st_size == len(artifact.content) and earlier.read_bytes() == artifact.content:
        os.link(earlier, target)
        return False
    target.write_bytes(artifact.content)
    return True


def _switch(working: Path, output: Path) -> None:
    old = output.with_name(f"{output.name}.{os.getpid()}.old")
    if output.exists():
        output.rename(old)
    working.rename(output)
    shutil.rmtree(old, ignore_errors=True)
