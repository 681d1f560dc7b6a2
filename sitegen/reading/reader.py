"""content/ -> the diary, or everything that is wrong with it."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path
from typing import TypeVar

from sitegen.diary.diary import Diary
from sitegen.diary.entry import Entry
from sitegen.problems import Problem, errors_in, in_order
from sitegen.reading.capture_logs.joining import join_logs
from sitegen.reading.capture_logs.registry import read_log as read_any_log
from sitegen.reading.capture_logs.request import LogReading, LogRequest
from sitegen.reading.content_folder import ContentFolder, walk_content
from sitegen.reading.documents import Document, check_twins, documents_of, single_document
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


@dataclass(frozen=True, slots=True)
class DiaryReading:
    """`diary` is None exactly where a problem is an error. `files` are the author's files and logs that were read, sorted."""

    diary: Diary | None
    problems: tuple[Problem, ...]
    files: tuple[Path, ...]


def read_diary(content: Path, today: date, shown_as: str = "content", read_log: ReadLog = read_any_log) -> DiaryReading:
    """Every file of the diary, and every problem of every file at once.

    `shown_as` is content/ as the author would type it. `today` is for what lies in the future.
    `read_log` may be one that remembers what it has read before.
    """
    if not content.is_dir():
        remedy = "name its folder with --content, or begin one with 'sitegen start'"
        return DiaryReading(None, (Problem(shown_as, 1, 1, "there is no diary here", remedy),), ())
    folder, problems = walk_content(content, shown_as)
    return _Reading(folder, today, read_log, problems).result()


class _Reading:
    """The documents of one diary on their way to records."""

    def __init__(self, folder: ContentFolder, today: date, read_log: ReadLog, problems: list[Problem]) -> None:
        self.settings = single_document(DIARY_FILE, folder, today)
        self.sites = documents_of(SITE_FILE, folder, today)
        self.rigs = documents_of(RIG_FILE, folder, today)
        self.entries = documents_of(ENTRY_FILE, folder, today)
        self.folder = folder
        self.read_log = read_log
        self.logs_read: set[str] = set()
        self.problems = problems + stray_files(folder, AUTHOR_FILES)

    def result(self) -> DiaryReading:
        for documents in (self.sites, self.rigs, self.entries):
            check_twins(documents)
        settings = settings_of(self.settings)
        known = Known(
            {each.slug: _whole(each, rig_of) for each in self.rigs}, {each.slug: _whole(each, site_of) for each in self.sites}
        )
        entries = [_whole(each, partial(self._entry, known=known)) for each in self.entries]
        problems = in_order(self.problems + [problem for document in self._documents for problem in document.desk.problems])
        if errors_in(problems) or settings is None:
            return DiaryReading(None, problems, self._files)
        sites = {slug: site for slug, site in known.sites.items() if site is not None}
        rigs = {slug: rig for slug, rig in known.rigs.items() if rig is not None}
        return DiaryReading(Diary(settings, sites, rigs, _newest_first(entries)), problems, self._files)

    @property
    def _documents(self) -> tuple[Document, ...]:
        return (self.settings, *self.sites, *self.rigs, *self.entries)

    @property
    def _files(self) -> tuple[Path, ...]:
        names = {document.relative for document in self._documents} & self.folder.names.keys()
        return tuple(sorted(self.folder.path(name) for name in {self.folder.names[name] for name in names} | self.logs_read))

    def _entry(self, document: Document, known: Known) -> Entry | None:
        values, desk = document.values, document.desk
        if values is None or document.text is None:
            return None
        check_entry(values, known, desk)
        targets = targets_of(values, desk)
        requests = log_requests(values, targets, known, desk)
        subs, problems = join_logs([self.read_log(request) for request in requests], self.folder.shown)
        self.logs_read.update(request.source for request in requests)
        self.problems += problems
        if not desk.clean or errors_in(problems):
            return None
        check_nights(values, subs, known.sites, desk)
        return entry_of(document.slug, values, document.text, targets.targets, subs)


def _whole(document: Document, record_of: Callable[[Document], Record | None]) -> Record | None:
    """The document's record; None where it has an error."""
    record = document.desk.until_full(partial(record_of, document))
    return record if document.desk.clean else None


def _newest_first(entries: list[Entry | None]) -> tuple[Entry, ...]:
    """The listed ones."""
    listed = (entry for entry in entries if entry is not None and not entry.unlisted)
    return tuple(sorted(listed, key=lambda entry: (-entry.published.toordinal(), entry.slug)))
