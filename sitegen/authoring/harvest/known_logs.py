"""The logs that were gathered before, and whose they are: what is in one of them stays there."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from functools import cached_property

from sitegen.authoring.captures.record import Frame
from sitegen.authoring.entry_file import KnownEntry, known_entry
from sitegen.authoring.gathered_log import GatheredLog, is_written_by_us, read_gathered
from sitegen.reading.diary_config import DiaryConfig, entry_files
from sitegen.sky.solar_time import evening_at

_LOGS, _ECSV = "logs/", ".ecsv"


class KnownLog:
    """A log and the entry that names it, None where none does. Its rows are not held: those of all logs together are many."""

    def __init__(self, relative: str, diary: DiaryConfig, entry: str | None, front_matter: KnownEntry | None) -> None:
        self.relative, self.diary, self.entry, self.front_matter = relative, diary, entry, front_matter
        self.name = relative.removeprefix(_LOGS).removesuffix(_ECSV)
        self.longitude_deg = 0.0
        self.evenings: tuple[date, ...] = ()

    def read(self) -> GatheredLog:
        return read_gathered(self.relative, self.diary)

    def learn(self, log: GatheredLog) -> None:
        """Its place and its evenings."""
        longitudes = (sub.origin.longitude_deg for sub in log.subs if sub.origin is not None)
        self.longitude_deg = next((longitude for longitude in longitudes if longitude is not None), 0.0)
        if self.front_matter is not None and self.front_matter.site is not None:
            self.longitude_deg = self.front_matter.site.longitude_deg
        lights = (sub for sub in log.subs if sub.kind == "light")
        self.evenings = tuple(sorted({evening_at(sub.middle, self.longitude_deg) for sub in lights}))

    def shows(self, target: str, rig: str, site: str) -> bool:
        """Whether the entry is of this target, rig and site."""
        if self.front_matter is None or self.front_matter.rig is None or self.front_matter.site is None:
            return False
        names = {place.name for place in self.front_matter.targets}
        return target in names and (self.front_matter.rig.slug, self.front_matter.site.slug) == (rig, site)


class KnownLogs:
    """By file and by start, the log in which a frame is already. Of hundreds of thousands of rows only the hash of what they are
    known by is held, 64 bits long: two of a million rows share one once in 40 million diaries."""

    def __init__(self, logs: Iterable[KnownLog]) -> None:
        self.logs = tuple(logs)
        self._by_file: dict[int, KnownLog] = {}
        self._clocks: dict[tuple[str, str], str] = {}
        for log in self.logs:
            self._learn_files(log)

    def _learn_files(self, log: KnownLog) -> None:
        """In a frame of its own, so that one log's rows are gone before the next one's are read."""
        gathered = log.read()
        log.learn(gathered)
        for row in gathered.rows:
            if (file := row.file) is not None:
                self._by_file[hash(file)] = log
                if row.sub.clock not in (None, "UTC"):
                    self._clocks[file] = str(row.sub.clock)

    @cached_property
    def _by_start(self) -> dict[int, KnownLog]:
        """Start, exposure, filter and name: made only when a frame is not known by its file."""
        by_start: dict[int, KnownLog] = {}
        for log in self.logs:
            by_start |= dict.fromkeys(_moments_in(log.read()), log)
        return by_start

    def of(self, frame: Frame) -> KnownLog | None:
        """By its file, else by start, exposure, filter and name: it may have moved. A twin camera shares all but the name."""
        if not self.logs or frame.file is None:
            return None
        if log := self._by_file.get(hash((frame.file.folder, frame.file.below))):
            return log
        moment = frame.start, frame.exposure_s, frame.record.filter_words
        return self._by_start.get(hash((*moment, frame.file.name))) or self._by_start.get(hash((*moment, "")))

    def clock_of(self, folder: str, below: str) -> str | None:
        """In which its time was read."""
        return self._clocks.get((folder, below))


def _moments_in(gathered: GatheredLog) -> Iterator[int]:
    for row in gathered.rows:
        if row.sub.origin is not None:
            name = row.file[1].rpartition("/")[2] if row.file is not None else ""
            yield hash((row.sub.start, row.sub.exposure_s, row.sub.origin.filter_told or "", name))


def known_logs(diary: DiaryConfig) -> KnownLogs:
    """Raises DiaryProblems for a log that cannot be read without a loss."""
    names = sorted(name for name in diary.folder.names if name.startswith(_LOGS) and name.endswith(_ECSV))
    ours = [name for name in names if is_written_by_us(diary.folder.path(name).read_text("utf-8", "replace"))]
    entries = {path.rpartition("/")[2].removesuffix(".md") for path in entry_files(diary)}
    by_log = _entries_by_log(entries, diary, ours) if ours else {}
    return KnownLogs(KnownLog(name, diary, *by_log.get(name, (None, None))) for name in ours)


def _entries_by_log(
    entries: Iterable[str], diary: DiaryConfig, logs: Iterable[str]
) -> Mapping[str, tuple[str, KnownEntry | None]]:
    """An entry of the log's own name before others."""
    waiting = set(logs)
    by_log: dict[str, tuple[str, KnownEntry | None]] = {}
    for entry in sorted(entries):
        front_matter = known_entry(entry, diary)
        for log in front_matter.logs & waiting if front_matter is not None else ():
            if log not in by_log or log == f"{_LOGS}{entry}{_ECSV}":
                by_log[log] = entry, known_entry(entry, diary, log)
    return by_log
