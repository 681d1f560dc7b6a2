"""Logs -> a new entry that passes check, with gaps where only its author knows."""

from collections.abc import Iterable
from datetime import date
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from sitegen.authoring.captures.memory import FrameMemory
from sitegen.authoring.captures.places import Target, target_called
from sitegen.authoring.captures.reading import Progress, ReadFrames, frames_of, read_records
from sitegen.authoring.captures.record import Frame, FrameFile
from sitegen.authoring.captures.sorting import SortedFrames, SortingRequest, sort_frames
from sitegen.authoring.captures.walk import FoundFiles
from sitegen.authoring.entry_file import config_of, entry_path
from sitegen.authoring.entry_text import EntryDraft, doubt_of, entry_text, patterns_of
from sitegen.authoring.gather_report import Gathering, Sorting, nights_of, sorting_report
from sitegen.authoring.gathered_log import log_path, read_gathered, sub_of
from sitegen.authoring.gathering import (
    GatherOptions,
    LogContext,
    Prepared,
    discarding_of,
    drawn_together,
    filter_name_of,
    longitude_of,
    prepare,
    rig_called,
    unreadable_problems,
    write_prepared,
)
from sitegen.authoring.new_files import refuse, write_new, write_over
from sitegen.authoring.recorded.recorded_files import RecordedRequest
from sitegen.authoring.recorded.shapes import ShapeMemory
from sitegen.authoring.rig_fit import RigFit, filter_words, rig_of
from sitegen.authoring.schemas import FOLDER, schema_files
from sitegen.authoring.site_fit import SiteFit, site_of
from sitegen.authoring.target_fit import TargetFit, target_of
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems, Problem
from sitegen.reading.capture_logs.filter_names import match_filter
from sitegen.reading.diary_config import DiaryConfig
from sitegen.sky.solar_time import evening_at

ADD_TO_IT = "'sitegen gather' adds frames to it"


class Beginning(Struct, frozen=True):
    """`entry` is the path inside content/; `gathering` is None where every log lay inside content/ already. `sorting` is of all
    files, wherever they lie."""

    entry: str
    draft: EntryDraft
    sorting: Sorting
    gathering: Gathering | None
    problems: tuple[Problem, ...]


def begin(
    name: str, captures: FoundFiles, memory: FrameMemory, folders: Folders, today: date, options: GatherOptions | None = None,
    jobs: int | None = None, progress: Progress | None = None,
) -> Beginning:  # fmt: skip
    """Raises DiaryProblems, with nothing written, where the entry exists, there is no diary, or no log holds a frame."""
    options = options or GatherOptions()
    diary = config_of(folders.content, today)
    relative = entry_path(name)
    if relative in diary.folder.names:
        raise refuse(diary.folder.shown(relative), "exists already and is left as it is", ADD_TO_IT)
    records = read_records(captures.frames, memory, jobs, progress)
    recorded = RecordedRequest(memory=ShapeMemory(folders.keep), strict_below=diary.folder.root)
    read = frames_of(captures.frames, records, captures.tables, options.time_zone, today, recorded)
    if not (read.frames or read.table_rows):
        problems = drawn_together([*read.problems, *unreadable_problems(read.unreadable)])
        shown = str(captures.paths[0])
        raise DiaryProblems([*problems, *refuse(shown, "no frame could be read, so no entry was begun").problems])
    beginning, prepared = _begun(name, read, captures, diary, options, recorded)
    if not options.dry_run:
        memory.save()
        text = entry_text(beginning.draft, today)
        write_new(diary.folder.path(relative), text, diary.folder.shown(relative), ADD_TO_IT)
        if prepared is not None:
            write_prepared(name, prepared, folders, today, has_entry=False)
    return beginning


def _begun(
    name: str, read: ReadFrames, captures: FoundFiles, diary: DiaryConfig, options: GatherOptions, recorded: RecordedRequest
) -> tuple[Beginning, Prepared | None]:
    discarding = discarding_of(options, None, diary)
    asked = (target_called(options.target),) if options.target else ()
    first = sort_frames(read, SortingRequest(asked, (), rig_called(options.rig, diary), discarding))
    lights = [exposure.frame for exposure in first.counted]
    rig = _rig_fit(options.rig, lights, diary)
    site = site_of((*read.frames, *read.table_rows), diary.sites)
    longitude_deg = site.site.longitude_deg if site and site.sure else longitude_of(read, None, diary)
    shown = first.targets.target
    targets = (*asked, *([shown] if shown is not None and not asked else []))
    outside = _outside(read, captures, diary, options.time_zone, recorded)
    prepared = None
    if outside.frames or outside.table_rows or outside.unreadable:
        context = LogContext(rig.rig if rig else None, tuple(targets), longitude_deg, options.time_zone)
        prepared = prepare(read_gathered(log_path(name), diary), outside, _files_of(captures, diary), diary, options, context)
    sorted_frames = sort_frames(read, SortingRequest(tuple(targets), (), rig.rig if rig else None, discarding))
    draft = replace(_draft(name, captures, sorted_frames, diary, rig, site, longitude_deg, prepared), time_zone=options.time_zone)
    sorting = sorting_report(sorted_frames, {}, len(captures.frames), len(read.table_rows), captures.passed_over,
                             options.time_zone or "UTC")  # fmt: skip
    problems = drawn_together([*unreadable_problems(sorted_frames.unreadable), *read.problems, *sorted_frames.against_rig])
    gathering = prepared.gathering if prepared is not None else None
    return Beginning(entry_path(name), draft, sorting, gathering, problems), prepared


def _draft(
    name: str, captures: FoundFiles, sorted_frames: SortedFrames, diary: DiaryConfig, rig: RigFit | None, site: SiteFit | None,
    longitude_deg: float, prepared: Prepared | None,
) -> EntryDraft:  # fmt: skip
    lights = [exposure.frame for exposure in sorted_frames.counted]
    filter_name = filter_name_of(rig.rig if rig else None)
    subs = [sub_of(exposure.frame, filter_name, exposure.kept, None, None, False) for exposure in sorted_frames.counted]
    inside = [path for given in captures.paths if (path := _inside(given, diary)) is not None]
    logs = (*patterns_of(inside, diary.folder.names.values()), *((prepared.gathering.log,) if prepared else ()))
    last = max((evening_at(frame.start, longitude_deg) for frame in lights), default=None)
    words = filter_words(lights)
    unknown = {word: count for word, count in sorted(words.items()) if rig is not None and match_filter(word, rig.rig) is None}
    unnamed = len(lights) - sum(words.values()) if rig is not None and rig.rig.filters else 0
    return EntryDraft(
        name, logs, rig, site, _target_fit(lights, sorted_frames), nights_of(subs, longitude_deg), refresh_schemas(diary),
        unknown, unnamed, last, prepared.gathering.log if prepared else None,
    )  # fmt: skip


def _rig_fit(asked: str | None, lights: list[Frame], diary: DiaryConfig) -> RigFit | None:
    if asked is None:
        return rig_of(lights, diary.rigs)
    rig = rig_called(asked, diary)
    return RigFit(rig, sure=True) if rig is not None else None


def _target_fit(lights: Iterable[Frame], sorted_frames: SortedFrames) -> TargetFit | None:
    fit = target_of(lights)
    target: Target | None = sorted_frames.targets.target
    if fit is None and target is not None:
        return TargetFit(target.name, catalogued=target.place is not None)
    return fit


def _outside(
    read: ReadFrames, captures: FoundFiles, diary: DiaryConfig, time_zone: str | None, recorded: RecordedRequest
) -> ReadFrames:
    """What has to be gathered because it does not lie in the diary."""
    frames = tuple(frame for frame in read.frames if frame.file is None or not _is_inside(frame.file, diary))
    unreadable = tuple(file for file in read.unreadable if not _is_inside(file.file, diary))
    tables = [path for path in captures.tables if _inside(path, diary) is None]
    is_whole = len(tables) == len(captures.tables)
    rows = read.table_rows if is_whole else frames_of((), (), tables, time_zone, diary.today, recorded).table_rows
    return replace(read, frames=frames, unreadable=unreadable, table_rows=rows)


def _files_of(captures: FoundFiles, diary: DiaryConfig) -> FoundFiles:
    return replace(captures, frames=tuple(file for file in captures.frames if not _is_inside(file, diary)))


def _is_inside(file: FrameFile, diary: DiaryConfig) -> bool:
    return f"{file.directory}/".startswith(f"{diary.folder.root}/") and _inside(Path(file.path), diary) is not None


def refresh_schemas(diary: DiaryConfig) -> bool:
    """Brings the schemas that 'start' wrote up to this version's keys; False where the diary holds none."""
    root = diary.folder.root
    if not (root / FOLDER).is_dir():
        return False
    for name, text in schema_files().items():
        path = root / name
        if not path.is_file() or path.read_text("utf-8", "replace") != text:
            write_over(path, text, diary.folder.shown(name))
    return True


def _inside(path: Path, diary: DiaryConfig) -> str | None:
    """The path inside content/; None for a file elsewhere, or one that the reader passes over there."""
    resolved = path.resolve()
    if not resolved.is_relative_to(diary.folder.root):
        return None
    relative = resolved.relative_to(diary.folder.root).as_posix()
    return relative if relative in diary.folder.names.values() else None


def recognised(draft: EntryDraft) -> tuple[tuple[str, str | None, bool, str], ...]:
    """What was made out: (what, as what, whether surely, what it was guessed from or what speaks against it)."""
    target, rig, site = draft.target, draft.rig, draft.site
    offered = f"; the catalogue has {target.offered} there" if target and target.offered else ""
    return (
        ("target", target.name if target else None, target is not None and target.catalogued and not target.by,
         f"guessed from {target.by}{offered}" if target and target.by else "no catalogue here has it" if target else ""),
        ("rig", rig.rig.slug if rig else None, rig is not None and rig.sure, doubt_of(rig)),
        ("site", site.site.slug if site else None, site is not None and site.sure,
         f"guessed from {site.by}" if site and not site.sure else ""),
    )  # fmt: skip
