"""content/ -> the diary, or everything that is wrong with it.

Two steps: the configuration (settings, sites, rigs: what every entry stands on), then the entries, each of which needs nothing
but the configuration, its own file and the logs it names. So an entry may be read in another process, or remembered from earlier.
"""

import unicodedata
from collections.abc import Callable, Iterable, Sequence
from datetime import date
from functools import partial
from pathlib import Path

from msgspec import Struct

from sitegen.diary.diary import Diary
from sitegen.diary.entry import Entry
from sitegen.diary.sub import Sub
from sitegen.problems import Problem, errors_in, in_order
from sitegen.reading.capture_logs.joining import join_logs
from sitegen.reading.capture_logs.registry import read_log as read_any_log
from sitegen.reading.capture_logs.request import LogReading, LogRequest
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.diary_config import DiaryConfig, DiaryReading, entry_files, read_config, whole
from sitegen.reading.documents import Document, document_of
from sitegen.reading.entry_checks import check_entry, check_nights
from sitegen.reading.entry_lessons import EntryPlans, plans_of, unmet_plans
from sitegen.reading.entry_logs import log_requests
from sitegen.reading.entry_panels import panels_of
from sitegen.reading.entry_recalled import recalled_of
from sitegen.reading.entry_record import entry_of
from sitegen.reading.entry_series import (
    Exposure,
    ReadSeries,
    SeriesReading,
    SeriesRequest,
    exposures_of,
    series_files,
    series_requests,
    with_readings,
)
from sitegen.reading.entry_targets import EntryTargets, targets_of
from sitegen.reading.model.entry_file import ENTRY_FILE
from sitegen.reading.shared_addresses import AddressedName, addressed_names, shared_addresses
from sitegen.reading.value_types.group import Values
from sitegen.reading.value_types.value_type import Kept


def no_series(_: Sequence[SeriesRequest], exposures: Sequence[Exposure]) -> SeriesReading:
    """For whoever asks nothing of the tables beside the logs."""
    return SeriesReading((None,) * len(exposures))


ReadLog = Callable[[LogRequest], LogReading]


class EntryReading(Struct, frozen=True):
    """`entry` is None where a problem is an error. `sources` are the logs it names; `asked` as on its diagnostics;
    `named` what has a page of its own by its name, `plans` what it leaves to do and ticks off, of a listed entry."""

    relative: str
    entry: Entry | None
    problems: tuple[Problem, ...]
    sources: tuple[str, ...] = ()
    asked: tuple[str, ...] = ()
    named: tuple[AddressedName, ...] = ()
    plans: EntryPlans = EntryPlans()


def read_diary(content: Path, today: date, shown_as: str = "content", read_log: ReadLog = read_any_log) -> DiaryReading:
    """Every file of the diary, and every problem of every file at once.

    `shown_as` is content/ as the author would type it. `today` is for what lies in the future.
    `read_log` may be one that remembers what it has read before.
    """
    config = read_config(content, today, shown_as)
    if isinstance(config, DiaryReading):
        return config
    readings = [read_entry(relative, config, read_log) for relative in entry_files(config)]
    shared = shared_addresses(named for reading in readings for named in reading.named)
    unmet = unmet_plans(reading.plans for reading in readings)
    of_entries = (problem for reading in readings for problem in reading.problems)
    problems = in_order([*config.problems, *of_entries, *shared, *unmet])
    sources = {source for reading in readings for source in reading.sources}
    files = tuple(sorted(config.folder.path(name) for name in {*config.files, *entry_files(config), *sources}))
    if errors_in(problems) or config.settings is None:
        return DiaryReading(None, problems, files)
    entries = newest_first(reading.entry for reading in readings if reading.entry is not None)
    return DiaryReading(Diary(config.settings, config.sites, config.rigs, entries), problems, files)


def read_entry(
    relative: str, config: DiaryConfig, read_log: ReadLog = read_any_log, read_series: ReadSeries = no_series
) -> EntryReading:
    """One entry, its logs, and the tables that instruments wrote beside them."""
    document = document_of(ENTRY_FILE, unicodedata.normalize("NFC", relative), config.folder, config.today)
    logs = _Logs(read_log, read_series, config)
    entry = whole(document, partial(_entry, config=config, logs=logs))
    problems = (*logs.problems, *document.diagnostics.problems)
    sound = None if errors_in(problems) else entry
    tables = {item.value.get("positions") for item in _targets(document) if isinstance(item.value, Values)} - {None}
    sources, asked = tuple(sorted(logs.sources | tables)), tuple(dict.fromkeys(document.diagnostics.asked))
    if sound is None or document.values is None:
        return EntryReading(relative, None, problems, sources, asked, plans=EntryPlans(document.slug, sound=False))
    if sound.unlisted:
        return EntryReading(relative, sound, problems, sources, asked)
    named = addressed_names(document.values, sound.targets, document.diagnostics.shown)
    plans = plans_of(sound, document.values, document.diagnostics.shown)
    return EntryReading(relative, sound, problems, sources, asked, named, plans)


class _Logs:
    """Reads the logs and series of one entry, and remembers which."""

    def __init__(self, read_log: ReadLog, read_series: ReadSeries, config: DiaryConfig) -> None:
        self.read_log, self.read_series, self.folder = read_log, read_series, config.folder
        self.sources: set[str] = set()
        self.problems: tuple[Problem, ...] = ()

    def subs(self, requests: tuple[LogRequest, ...]) -> tuple[Sub, ...]:
        self.sources.update(request.source for request in requests)
        subs, self.problems = join_logs([self.read_log(request) for request in requests], self.folder.shown)
        return subs

    def with_readings(self, subs: tuple[Sub, ...], values: Values, targets: EntryTargets, at: Diagnostics) -> tuple[Sub, ...]:
        requests = series_requests(values, at)
        if not requests:
            return subs
        self.sources |= series_files(values)
        series = self.read_series(requests, exposures_of(subs, targets.targets))
        self.problems = (*self.problems, *series.problems)
        return tuple(map(with_readings, subs, series.readings))


def _entry(document: Document, config: DiaryConfig, logs: _Logs) -> Entry | None:
    values, diagnostics = document.values, document.diagnostics
    if values is None or document.text is None:
        return None
    check_entry(values, config.known, diagnostics)
    targets = targets_of(values, diagnostics)
    recalled = recalled_of(values, targets, config.known, diagnostics)
    panels = panels_of(values, diagnostics)
    subs = logs.subs(log_requests(values, targets, config.known, diagnostics))
    subs = logs.with_readings(subs, values, targets, diagnostics)
    if not diagnostics.clean or errors_in(logs.problems):
        return None
    check_nights(values, subs, config.known.sites, diagnostics)
    return entry_of(document.slug, values, document.text, targets.targets, subs, recalled, panels)


def _targets(document: Document) -> tuple[Kept, ...]:
    return document.values.items_of("target") if document.values is not None else ()


def newest_first(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """The listed ones."""
    listed = (entry for entry in entries if not entry.unlisted)
    return tuple(sorted(listed, key=lambda entry: (-entry.published.toordinal(), entry.slug)))
