"""The kept light frames of an entry by log: a table is one, and so are the frames of a folder read under the same keys."""

from collections import Counter
from itertools import groupby
from shlex import quote

from msgspec import Struct

from sitegen.diary.entry import Entry
from sitegen.diary.sub import Sub


class WitnessedLog(Struct, frozen=True):
    """`source` is its file, the first one of a folder's frames; `pattern` what a log item's 'files' would say."""

    source: str
    pattern: str
    rig: str
    site: str
    clock: str | None
    subs: tuple[Sub, ...]

    @property
    def gathered(self) -> bool:
        """Written by `gather`: the times cannot be read again but from the frames."""
        return any(sub.origin is not None and sub.origin.file is not None for sub in self.subs)


def kept_logs(entry: Entry) -> tuple[WitnessedLog, ...]:
    """By source, rig, site and clock, in that order."""
    kept = [sub for sub in entry.lights if sub.kept]
    frames = {source for source, count in Counter(sub.source for sub in entry.subs).items() if count == 1}

    def key(sub: Sub) -> tuple[str, str, str, str]:
        return _pattern(sub.source) if sub.source in frames else sub.source, sub.rig, sub.site, sub.clock or ""

    groups = [(pattern, tuple(group)) for (pattern, *_), group in groupby(sorted(kept, key=key), key)]
    return tuple(
        WitnessedLog(min(sub.source for sub in subs), pattern, subs[0].rig, subs[0].site, subs[0].clock, subs)
        for pattern, subs in groups
    )


def _pattern(source: str) -> str:
    folder, _, name = source.rpartition("/")
    stem, dot, ending = name.rpartition(".")
    packed = f".{stem.rpartition('.')[2]}" if ending.casefold() in ("gz", "fz") and "." in stem else ""
    return f"{folder}/*{packed}{dot}{ending}"


def how_many(count: int, log: WitnessedLog) -> str:
    return f"{count} of {len(log.subs)} subs"


def item_with(log: WitnessedLog, key: str) -> str:
    """The log's item in the entry with one more key, as it may be pasted under 'logs'."""
    return f"'- {{files: {log.pattern}, {key}}}' under 'logs'"


def gather_command(log: WitnessedLog, option: str) -> str:
    """The command that reads the frames of a gathered log again."""
    name = log.source.rpartition("/")[2].removesuffix(".ecsv")
    folders = sorted({sub.origin.folder for sub in log.subs if sub.origin is not None and sub.origin.folder})
    return f"sitegen gather {quote(name)} {' '.join(map(quote, folders)) or 'FOLDER'} {option}"
