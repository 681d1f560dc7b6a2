"""The configuration of a whole diary: settings, sites and rigs, which every entry stands on."""

from collections.abc import Callable
from datetime import date
from functools import partial
from pathlib import Path
from typing import TypeVar

from msgspec import Struct

from sitegen.diary.diary import Diary
from sitegen.diary.rig import Rig
from sitegen.diary.settings import Settings
from sitegen.diary.site import Site
from sitegen.problems import Problem
from sitegen.reading.content_folder import ContentFolder, walk_content
from sitegen.reading.documents import Document, check_twins, documents_of, files_of, single_document, unread
from sitegen.reading.known import Known
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


class DiaryReading(Struct, frozen=True):
    """`diary` is None exactly where a problem is an error. `files` are the author's files and logs that were read, sorted."""

    diary: Diary | None
    problems: tuple[Problem, ...]
    files: tuple[Path, ...]


class DiaryConfig(Struct, frozen=True):
    """What every entry stands on. `settings` is None where diary.yaml has an error; `files` are paths inside content/."""

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


def read_config(content: Path, today: date, shown_as: str = "content") -> DiaryConfig | DiaryReading:
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
    records = Known({file.slug: whole(file, rig_of) for file in rigs}, {file.slug: whole(file, site_of) for file in sites})
    problems += stray_files(folder, AUTHOR_FILES)
    problems += [problem for document in (diary, *sites, *rigs, *entries) for problem in document.diagnostics.problems]
    names = {document.relative for document in (diary, *sites, *rigs)} & folder.names.keys()
    return DiaryConfig(folder, settings, records, tuple(problems), tuple(sorted(folder.names[name] for name in names)), today)


def entry_files(config: DiaryConfig) -> tuple[str, ...]:
    """Paths of the entries inside content/, as the disk spells them, sorted."""
    return tuple(config.folder.names[relative] for relative in files_of(ENTRY_FILE, config.folder))


def whole(document: Document, record_of: Callable[[Document], Record | None]) -> Record | None:
    """The document's record; None where it has an error."""
    record = document.diagnostics.until_full(partial(record_of, document))
    return record if document.diagnostics.clean else None
