"""content/ -> the diary, or everything that is wrong with it.

Two steps: the frame (settings, sites, rigs: what every entry stands in), then the entries, each of which needs nothing but
the frame, its own file and the logs it names. So an entry may be read in another process, or remembered from earlier.
"""

import unicodedata
from collections.abc import Callable, Iterable
from datetime import date
from functools import partial
from pathlib import Path
from typing import TypeVar

from msgspec import Struct

from sitegen.diary.diary import Diary
from sitegen.diary.entry import Entry
from sitegen.diary.rig import Rig
from sitegen.diary.settings import Settings
from sitegen.diary.site import Site
from sitegen.diary.sub import Sub
from sitegen.problems import Problem, errors_in, in_order
from sitegen.reading.capture_logs.joining import join_logs
from sitegen.reading.capture_logs.registry import read_log as read_any_log
from sitegen.reading.capture_logs.request import LogReading, LogRequest
from sitegen.reading.content_folder import ContentFolder, walk_content
from sitegen.reading.documents import Document, check_twins, document_of, documents_of, files_of, single_document, unread
from sitegen.reading.entry_checks import check_entry, check_nights
from sitegen.reading.entry_logs import Known, log_requests
from sitegen.reading.entry_record import entry_of
from sitegen.reading.entry_targets import targets_of
from sitegen.reading.model.diary_file import DIARY_FILE
from sitegen.reading.model.entry_file import ENTRY_FILE
from sitegen.reading.model.registry import AUTHOR_FILES
from sitegen.reading.model.rig_file import RIG_FILE
from sitegen.reading.model.site_file import SITE_FILE
from sitegen.reading.rig_record import rig_of
from sitegen.reading.settings_record import settings_of
from sitegen.reading.site_record import site_of
from sitegen.reading.stray_files import stray_files

Record = TypeVar("Record")
ReadLog = Callable[[LogRequest], LogReading]


class DiaryReading(Struct, frozen=True):
    """`diary` is None exactly where a problem is an error. `files` are the author's files and logs that were read, sorted."""

    diary: Diary | None
    problems: tuple[Problem, ...]
    files: tuple[Path, ...]


class Frame(Struct, frozen=True):
    """What every entry stands in. `settings` is None where diary.yaml has an error; `files` are paths inside content/."""

    folder: ContentFolder
    settings: Settings | None
    known: Known
    problems: tuple[Problem, ...]
    files: tuple[str, ...]
    today: date

    @property
    def sites(self) -> dict[str, Site]:
        return {slug: site for slug, site in self.known.sites.items() if site is not None}

    @property
    def rigs(self) -> dict[str, Rig]:
        return {slug: rig for slug, rig in self.known.rigs.items() if rig is not None}


class EntryReading(Struct, frozen=True):
    """`entry` is None where a problem is an error. `sources` are the logs it names; `asked` as on its desk."""

    relative: str
    entry: Entry | None
    problems: tuple[Problem, ...]
    sources: tuple[str, ...] = ()
    asked: tuple[str, ...] = ()


def read_diary(content: Path, today: date, shown_as: str = "content", read_log: ReadLog = read_any_log) -> DiaryReading:
    """Every file of the diary, and every problem of every file at once.

    `shown_as` is content/ as the author would type it. `today` is for what lies in the future.
    `read_log` may be one that remembers what it has read before.
    """
    frame = read_frame(content, today, shown_as)
    if isinstance(frame, DiaryReading):
        return frame
    readings = [read_entry(relative, frame, read_log) for relative in entry_files(frame)]
    problems = in_order([*frame.problems, *(problem for reading in readings for problem in reading.problems)])
    sources = {source for reading in readings for source in reading.sources}
    files = tuple(sorted(frame.folder.path(name) for name in {*frame.files, *entry_files(frame), *sources}))
    if errors_in(problems) or frame.settings is None:
        return DiaryReading(None, problems, files)
    entries = newest_first(reading.entry for reading in readings if reading.entry is not None)
    return DiaryReading(Diary(frame.settings, frame.sites, frame.rigs, entries), problems, files)


def read_frame(content: Path, today: date, shown_as: str = "content") -> Frame | DiaryReading:
    """Settings, sites and rigs, and what can be told of the entries by their names; a reading where there is no diary."""
    if not content.is_dir():
        remedy = "name its folder with --content, or begin one with 'sitegen start'"
        return DiaryReading(None, (Problem(shown_as, 1, 1, "there is no diary here", remedy),), ())
    folder, problems = walk_content(content, shown_as)
    diary = single_document(DIARY_FILE, folder, today)
    sites, rigs = documents_of(SITE_FILE, folder, today), documents_of(RIG_FILE, folder, today)
    entries = tuple(unread(ENTRY_FILE, relative, folder, today) for relative in files_of(ENTRY_FILE, folder))
    for documents in (sites, rigs, entries):
        check_twins(documents)
    settings = settings_of(diary)
    known = Known({each.slug: _whole(each, rig_of) for each in rigs}, {each.slug: _whole(each, site_of) for each in sites})
    problems += stray_files(folder, AUTHOR_FILES)
    problems += [problem for document in (diary, *sites, *rigs, *entries) for problem in document.desk.problems]
    names = {document.relative for document in (diary, *sites, *rigs)} & folder.names.keys()
    return Frame(folder, settings, known, tuple(problems), tuple(sorted(folder.names[name] for name in names)), today)


def entry_files(frame: Frame) -> tuple[str, ...]:
    """Paths of the entries inside content/, as the disk spells them, sorted."""
    return tuple(frame.folder.names[relative] for relative in files_of(ENTRY_FILE, frame.folder))


def read_entry(relative: str, frame: Frame, read_log: ReadLog = read_any_log) -> EntryReading:
    """One entry and its logs."""
    document = document_of(ENTRY_FILE, unicodedata.normalize("NFC", relative), frame.folder, frame.today)
    logs = _Logs(read_log, frame)
    entry = _whole(document, partial(_entry, frame=frame, logs=logs))
    problems = (*logs.problems, *document.desk.problems)
    found = None if errors_in(problems) else entry
    return EntryReading(relative, found, problems, tuple(sorted(logs.sources)), tuple(dict.fromkeys(document.desk.asked)))


class _Logs:
    """Reads the logs of one entry, and remembers which."""

    def __init__(self, read_log: ReadLog, frame: Frame) -> None:
        self.read_log, self.folder = read_log, frame.folder
        self.sources: set[str] = set()
        self.problems: tuple[Problem, ...] = ()

    def subs(self, requests: tuple[LogRequest, ...]) -> tuple[Sub, ...]:
        self.sources.update(request.source for request in requests)
        subs, self.problems = join_logs([self.read_log(request) for request in requests], self.folder.shown)
        return subs


def _entry(document: Document, frame: Frame, logs: _Logs) -> Entry | None:
    values, desk = document.values, document.desk
    if values is None or document.text is None:
        return None
    check_entry(values, frame.known, desk)
    targets = targets_of(values, desk)
    subs = logs.subs(log_requests(values, targets, frame.known, desk))
    if not desk.clean or errors_in(logs.problems):
        return None
    check_nights(values, subs, frame.known.sites, desk)
    return entry_of(document.slug, values, document.text, targets.targets, subs)


def _whole(document: Document, record_of: Callable[[Document], Record | None]) -> Record | None:
    """The document's record; None where it has an error."""
    record = document.desk.until_full(partial(record_of, document))
    return record if document.desk.clean else None


def newest_first(entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """The listed ones."""
    listed = (entry for entry in entries if not entry.unlisted)
    return tuple(sorted(listed, key=lambda entry: (-entry.published.toordinal(), entry.slug)))
