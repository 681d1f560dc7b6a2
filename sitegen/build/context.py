"""What a process needs to do tasks: the diary's settings, sites and rigs, the theme, the store, the versions of the code."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from sitegen.build.store import Cache, Store
from sitegen.diary.diary import Diary
from sitegen.diary.settings import Settings
from sitegen.pages.theme import Theme
from sitegen.reading.diary_config import DiaryConfig

PICTURE_WORK, STAR_WORK = "sitegen.pictures.tasks:work", "sitegen.reading.star_measuring:measured"
"""The functions whose results are kept under the version of the code behind them."""


@dataclass(frozen=True, eq=False)
class BuildContext:
    """Small enough to be sent to another process. `versions` by module; `look` is the digest of the theme, its words, and the
    settings and rigs that every page may show."""

    content: Path
    root: Path
    config: DiaryConfig
    settings: Settings
    theme: Theme
    versions: Mapping[str, str]
    look: str

    @cached_property
    def store(self) -> Store:
        return Store(self.root)

    def cache_of(self, work: str) -> Cache:
        """What the function 'module:function' made before."""
        return self.store.made_by(self.versions[work.partition(":")[0]])

    @cached_property
    def diary(self) -> Diary:
        """Without its entries: a task of one entry must not read others, as it is not done again when they change."""
        return Diary(self.settings, self.config.sites, self.config.rigs, ())
