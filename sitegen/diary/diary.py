"""The whole diary: what flows from reading to writing."""

from collections.abc import Mapping

from msgspec import Struct

from sitegen.diary.entry import Entry
from sitegen.diary.rig import Rig
from sitegen.diary.settings import Settings
from sitegen.diary.site import Site


class Diary(Struct, frozen=True):
    """`entries` are the listed ones, newest first (by `published`, then slug); rigs and sites by slug."""

    settings: Settings
    sites: Mapping[str, Site]
    rigs: Mapping[str, Rig]
    entries: tuple[Entry, ...]
