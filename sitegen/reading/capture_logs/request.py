"""What a log reader is asked, and what it answers."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path

from msgspec import Struct, field

from sitegen.diary.rig import Rig
from sitegen.diary.site import Site
from sitegen.diary.sub import Sub
from sitegen.problems import Problem


class LogRequest(Struct, frozen=True):
    """One log file, and what the entry says about it.

    `shown_path` is the file as problem lines show it, `source` the same file relative to content/, POSIX.
    `rig` and `site` are None where the entry names none or a wrong one: the caller has said so, and the log is
    still checked as far as it goes; its subs then carry an empty rig or site.
    `filter` is the filter of rows that name none; `time_zone` an IANA name, None for UTC;
    `columns` maps canonical column names to the table's own headings.
    `item_place` is path, line and column of the log item in the entry, for problems about the item itself.
    """

    path: Path
    shown_path: str
    source: str
    rig: Rig | None
    site: Site | None
    target: int | None
    filter: str | None
    time_zone: str | None
    item_place: tuple[str, int, int]
    today: date
    columns: Mapping[str, str] = field(default_factory=dict)


class LogReading(Struct, frozen=True):
    """`subs` in the order of the log; `header_targets` the OBJECT names seen, each once, in the order seen."""

    subs: tuple[Sub, ...] = ()
    problems: tuple[Problem, ...] = ()
    header_targets: tuple[str, ...] = ()
