"""The diary as it will be once new rigs and sites stand in it, read by its own reader before anything is written."""

import shutil
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

from msgspec import Struct

from sitegen.diary.rig import Rig
from sitegen.diary.site import Site
from sitegen.problems import DiaryProblems, errors_in
from sitegen.reading.diary_config import DiaryReading, read_config

_READ = ("diary.yaml", "rigs", "sites")


class Planned(Struct, frozen=True):
    rigs: Mapping[str, Rig]
    sites: Mapping[str, Site]


def planned(content: Path, texts: Mapping[str, str], today: date) -> Planned:
    """`texts` by path inside content/. Raises DiaryProblems where what would be written could not be read."""
    with TemporaryDirectory(prefix="sitegen-") as folder:
        beside = Path(folder) / "content"
        beside.mkdir()
        for name in _READ:
            _copy(content / name, beside / name)
        for name, text in texts.items():
            path = beside / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="\n")
        config = read_config(beside, today, str(content))
        if isinstance(config, DiaryReading):
            raise DiaryProblems(config.problems)
        if errors := [problem for problem in errors_in(config.problems) if _is_of(problem.path, texts)]:
            raise DiaryProblems(errors)
        return Planned(config.rigs, config.sites)


def _copy(source: Path, target: Path) -> None:
    if source.is_dir():
        shutil.copytree(source, target)
    elif source.is_file():
        shutil.copy(source, target)


def _is_of(path: str, texts: Mapping[str, str]) -> bool:
    return any(path.endswith(name) for name in texts)
