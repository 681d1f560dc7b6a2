"""Frames lying anywhere -> logs/NAME.ecsv, and what came of each of them."""

from collections import Counter
from collections.abc import Iterable
from datetime import date
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from sitegen.authoring.captures.discards import Discarding, KeptList, read_kept_list
from sitegen.authoring.captures.memory import FrameMemory
from sitegen.authoring.captures.places import Target, target_called
from sitegen.authoring.captures.reading import Progress, ReadFrames, Unreadable, frame_of_sub, frames_of, read_records
from sitegen.authoring.captures.sorting import SortedFrames, SortingRequest, sort_frames
from sitegen.authoring.captures.walk import FoundFiles
from sitegen.authoring.entry_file import KnownEntry, config_of, entry_path, known_entry, name_log
from sitegen.authoring.gather_report import Gathering, nights_of, sorting_report, totals_of
from sitegen.authoring.gather_undo import EntryChange, Undo, text_of
from sitegen.authoring.gathered_changes import ChangeRequest, GoneRule, change_log
from sitegen.authoring.gathered_log import GatheredLog, log_path, read_gathered
from sitegen.authoring.gathered_rows import FilterName
from sitegen.authoring.log_table import table_text
from sitegen.authoring.new_files import refuse, write_over
from sitegen.authoring.recorded.asked_columns import read_asked
from sitegen.authoring.recorded.line_patterns import line_patterns
from sitegen.authoring.recorded.measures import read_measures, with_measures
from sitegen.authoring.recorded.overlaps import overlap_warning
from sitegen.authoring.recorded.recorded_files import RecordedRequest
from sitegen.authoring.recorded.shapes import ShapeMemory
from sitegen.diary.rig import Rig
from sitegen.diary.settings import Settings
from sitegen.diary.target import Target as DiaryTarget
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems, Problem, hint_for, in_order
from sitegen.reading.capture_logs.filter_names import match_filter
from sitegen.reading.capture_logs.joining import MOST_ALIKE
from sitegen.reading.diary_config import DiaryConfig


class GatherOptions(Struct, frozen=True):
    """What is asked beyond the frames. None, or nothing, leaves it to the entry, the settings or the frames themselves."""

    target: str | None = None
    rig: str | None = None
    discarded: tuple[str, ...] = ()
    kept_list: Path | None = None
    gone: GoneRule | None = None
    time_zone: str | None = None
    with_names: bool = True
    dry_run: bool = False
    columns: tuple[str, ...] = ()
    lines: tuple[str, ...] = ()
    measures: Path | None = None


class LogContext(Struct, frozen=True):
    """What a log's frames stand in: rig and targets where they are known, the longitude by which nights change, and the clock of
    records that do not tell theirs, None for UTC; `corrects_clock` where the author named it this time."""

    rig: Rig | None
    targets: tuple[Target, ...]
    longitude_deg: float
    time_zone: str | None
    corrects_clock: bool = False


NO_UNDO = "the frames are gathered, and that cannot be taken back"


class Prepared(Struct, frozen=True):
    """A gathering, and the log's text before and after it; nothing is written yet."""

    gathering: Gathering
    path: Path
    shown: str
    before: str
    after: str
    sorted_frames: SortedFrames


def gather(
    name: str, captures: FoundFiles, memory: FrameMemory, folders: Folders, today: date, options: GatherOptions | None = None,
    jobs: int | None = None, progress: Progress | None = None,
) -> Gathering:  # fmt: skip
    """Reads, changes the log where anything is new, and names it in the entry. An unreadable file is a problem in the answer.

    Raises DiaryProblems, with nothing written, where there is no diary or the log is not one that may be written again.
    """
    options = options or GatherOptions()
    diary = config_of(folders.content, today)
    entry = known_entry(name, diary, log_path(name))
    rig = rig_called(options.rig, diary) or (entry.rig if entry else None)
    recorded = RecordedRequest(read_asked(options.columns), line_patterns(options.lines), ShapeMemory(folders.keep))
    records = read_records(captures.frames, memory, jobs, progress)
    if not options.dry_run:
        memory.save()
    log = read_gathered(log_path(name), diary)
    asked = options.time_zone or (entry.time_zone if entry else None)
    time_zone = asked or remembered_clock(log)
    read = frames_of(captures.frames, records, captures.tables, time_zone, today, recorded)
    if options.measures is not None:
        read = _measured(read, options.measures, rig, time_zone, today, recorded)
    targets = (target_called(options.target),) if options.target else _targets_of(entry)
    context = LogContext(rig, targets, longitude_of(read, entry, diary), time_zone, asked is not None)
    prepared = prepare(log, read, captures, diary, options, context)
    if options.dry_run:
        return prepared.gathering
    recorded.memory.save()
    return write_prepared(name, prepared, folders, today, entry is not None)


def prepare(
    log: GatheredLog, read: ReadFrames, captures: FoundFiles, diary: DiaryConfig, options: GatherOptions, context: LogContext
) -> Prepared:
    """Sorts the frames, and changes the log in memory."""
    kept_list = read_kept_list(options.kept_list, read.frames) if options.kept_list is not None else None
    taken_in = tuple(frame_of_sub(sub) for sub in log.subs if sub.kind == "light")
    discarding = discarding_of(options, kept_list, diary)
    request = SortingRequest(context.targets, taken_in, context.rig, discarding)
    sorted_frames = sort_frames(read, request)
    wanted = ChangeRequest(filter_name_of(context.rig), captures.scopes, options.gone, options.with_names, context.corrects_clock,
                           bool(discarding.patterns), kept_list is not None)  # fmt: skip
    changes = change_log(log, sorted_frames, wanted)
    gathering = Gathering(
        log=log.relative,
        sorting=sorting_report(sorted_frames, changes.kept, len(captures.frames), len(read.table_rows), captures.passed_over,
                               context.time_zone or "UTC"),
        totals=totals_of(changes.subs),
        new=nights_of(changes.new, context.longitude_deg),
        new_count=len(changes.new),
        known_count=changes.known,
        judged_anew=changes.judged_anew,
        moved_clock=changes.moved_clock,
        removed=changes.removed,
        gone=changes.gone,
        named=None,
        problems=drawn_together([*unreadable_problems(sorted_frames.unreadable), *read.problems, *sorted_frames.against_rig,
                                 *overlap_warning((counted.frame for counted in sorted_frames.counted), taken_in, log.shown)]),
        strangers=kept_list.strangers if kept_list else 0,
        without_names=not options.with_names,
        told=(*read.told, *_without_measures(sorted_frames, options)),
    )  # fmt: skip
    after = table_text(log.table) if log.text or changes.new else ""
    return Prepared(gathering, log.path, log.shown, log.text, after, sorted_frames)


def _measured(
    read: ReadFrames, path: Path, rig: Rig | None, time_zone: str | None, today: date, recorded: RecordedRequest
) -> ReadFrames:
    """Every frame with what the grading table has of it."""
    measured = read_measures(path, (*read.frames, *read.table_rows), rig, time_zone, today, recorded)
    return replace(read, frames=with_measures(read.frames, measured), table_rows=with_measures(read.table_rows, measured),
                   told=(*read.told, *measured.told))  # fmt: skip


def _without_measures(sorted_frames: SortedFrames, options: GatherOptions) -> Iterable[str]:
    missing = sum(counted.exposure.measures is None for counted in sorted_frames.counted)
    if options.measures is not None and missing:
        yield f"{options.measures.name}: {missing} of {len(sorted_frames.counted)} light frames have no row"


def write_prepared(name: str, prepared: Prepared, folders: Folders, today: date, has_entry: bool) -> Gathering:
    """The log, where it changed, and its name in the entry; both can be taken back."""
    if prepared.after != prepared.before:
        write_over(prepared.path, prepared.after, prepared.shown)
    gathering, entry = prepared.gathering, None
    if has_entry:
        diary = config_of(folders.content, today)
        path = diary.folder.path(diary.folder.names[entry_path(name)])
        before = text_of(path)
        gathering = _named_in_entry(name, gathering, diary)
        entry = EntryChange(entry_path(name), before, text_of(path))
    if prepared.after != prepared.before:
        is_named_now = entry is not None and entry.before != entry.after
        try:
            Undo(folders.keep, name).keep(prepared.before, prepared.after, entry if is_named_now else None)
        except DiaryProblems as wrong:
            lost = (replace(problem, severity="warning", remedy=NO_UNDO) for problem in wrong.problems)
            gathering = replace(gathering, problems=(*gathering.problems, *lost))
    return gathering


def undo(name: str, folders: Folders, today: date) -> tuple[str, tuple[Problem, ...]]:
    """The log's path inside content/ and warnings. Raises DiaryProblems, with nothing changed, where it cannot be taken back."""
    diary = config_of(folders.content, today)
    relative = log_path(name)
    shown = diary.folder.shown(relative)
    last = Undo(folders.keep, name)
    problems = last.undo(diary.folder.path(relative), shown, diary.folder.root, relative, diary.folder.shown(entry_path(name)))
    return relative, problems


def remembered_clock(log: GatheredLog) -> str | None:
    """The zone in which most of the log's bare times were read; None for UTC."""
    clocks = Counter(sub.clock for sub in log.subs if sub.clock not in (None, "UTC"))
    return max(clocks, key=lambda clock: (clocks[clock], str(clock))) if clocks else None


def clock_of_site(name: str, folders: Folders, today: date) -> str | None:
    """The time zone of the entry's site, else of the diary's only one: the likeliest clock of a camera."""
    diary = config_of(folders.content, today)
    entry = known_entry(name, diary)
    sites = [entry.site] if entry is not None and entry.site is not None else list(diary.sites.values())
    return sites[0].time_zone if len(sites) == 1 else None


def longitude_of(read: ReadFrames, entry: KnownEntry | None, diary: DiaryConfig) -> float:
    """By which nights change: the entry's site, else what a header tells, else the diary's first site."""
    if entry is not None and entry.site is not None:
        return entry.site.longitude_deg
    header_longitudes = (frame.record.longitude_deg for frame in read.frames)
    sites = (site.longitude_deg for _, site in sorted(diary.sites.items()))
    return next((longitude for longitude in (*header_longitudes, *sites) if longitude is not None), 0.0)


def drawn_together(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Of what many frames share, the first with the number of the others."""
    alike: dict[tuple[str, str], list[Problem]] = {}
    for problem in in_order(problems):
        alike.setdefault((problem.wrong, problem.severity), []).append(problem)
    return in_order(problem for group in alike.values() for problem in _few(group))


def _few(group: list[Problem]) -> list[Problem]:
    if len(group) <= MOST_ALIKE:
        return group
    return [replace(group[0], wrong=f"{group[0].wrong} (so in {len(group) - 1} more files)")]


def filter_name_of(rig: Rig | None) -> FilterName:
    """The rig's own short name, where the log's word is one of the filter's names."""
    if rig is None:
        return lambda words: words or None
    short_names: dict[str | None, str | None] = {None: None, "": None}

    def name(words: str | None) -> str | None:
        if words not in short_names:
            short_names[words] = match_filter(words or "", rig) or words
        return short_names[words]

    return name


def rig_called(asked: str | None, diary: DiaryConfig) -> Rig | None:
    """None where none is asked for. Raises DiaryProblems where there is none of that name."""
    if asked is None or asked in diary.rigs:
        return diary.rigs.get(asked or "")
    remedy = hint_for(asked, diary.rigs) if diary.rigs else "describe it there"
    raise refuse(diary.folder.shown(f"rigs/{asked}.yaml"), "there is no rig of that name", remedy)


def _targets_of(entry: KnownEntry | None) -> tuple[Target, ...]:
    return tuple(_placed(target) for target in entry.targets) if entry is not None else ()


def _placed(target: DiaryTarget) -> Target:
    place = None if target.ra_deg is None or target.dec_deg is None else (target.ra_deg, target.dec_deg)
    return Target(target.name, place, (target.size_arcmin[0] if target.size_arcmin else 0.0) / 60)


def discarding_of(options: GatherOptions, kept_list: KeptList | None, diary: DiaryConfig) -> Discarding:
    settings = diary.settings or Settings("")
    patterns = (*options.discarded, *(pattern for pattern in settings.captures.discarded if pattern not in options.discarded))
    return Discarding(patterns, settings.language, kept_list.stems if kept_list else None)


def unreadable_problems(files: Iterable[Unreadable]) -> Iterable[Problem]:
    return (Problem(file.file.path, 1, 1, file.wrong, file.remedy) for file in files)


def _named_in_entry(name: str, gathering: Gathering, diary: DiaryConfig) -> Gathering:
    """The log is there by now, unless nothing was gathered, so a pattern of the entry's may find it already."""
    if gathering.log not in diary.folder.names:
        return replace(gathering, named=False)
    again = known_entry(name, diary)
    if again is not None and gathering.log in again.logs:
        return replace(gathering, named=True)
    try:
        name_log(name, gathering.log, diary)
    except DiaryProblems as wrong:
        return replace(gathering, named=False, problems=(*gathering.problems, *wrong.problems))
    return replace(gathering, named=True)
