"""Frames lying anywhere -> logs/NAME.ecsv, and what came new."""

from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import date
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from sitegen.authoring.entry_file import KnownEntry, frame_of, known_entry, name_log
from sitegen.authoring.frame_reading import Progress, ReadFrame, read_frames
from sitegen.authoring.gathered_log import log_text, subs_gathered, to_milliseconds
from sitegen.authoring.known_frames import FilterName, KnownFrames
from sitegen.authoring.new_files import write_over
from sitegen.authoring.rig_fit import disagreements
from sitegen.diary.rig import Rig
from sitegen.diary.sub import Sub
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems, Problem, errors_in, in_order
from sitegen.reading.capture_logs.filter_names import match_filter
from sitegen.reading.capture_logs.joining import MOST_ALIKE
from sitegen.reading.frame import Frame
from sitegen.sky.solar_time import evening_at


class NewOfNight(Struct, frozen=True):
    """`what` is a filter's name, or the kind of a calibration frame."""

    evening: date
    what: str
    count: int
    exposure_s: float


class Gathering(Struct, frozen=True):
    """`log` is the path inside content/. `named` tells whether the entry names it now, None where there is no entry."""

    log: str
    new: tuple[NewOfNight, ...]
    new_count: int
    known_count: int
    unreadable: int
    named: bool | None
    problems: tuple[Problem, ...]


def log_path(name: str) -> str:
    return f"logs/{name}.ecsv"


def gather(
    name: str,
    paths: Sequence[Path],
    folders: Folders,
    today: date,
    time_zone: str | None = None,
    jobs: int | None = None,
    progress: Progress | None = None,
) -> Gathering:
    """Reads, writes the log where anything is new, and names it in the entry. An unreadable file is a problem in the answer.

    Raises DiaryProblems, with nothing written, where there is no diary or the log is not one that may be written again.
    """
    frame = frame_of(folders.content, today)
    entry = known_entry(name, frame)
    read = read_frames(paths, today, time_zone, jobs, progress)
    gathering = write_gathered(name, read, frame, entry.rig if entry else None, longitude_of(read, entry, frame))
    return _named_in_entry(name, gathering, entry, frame_of(folders.content, today))


def write_gathered(name: str, read: Sequence[ReadFrame], frame: Frame, rig: Rig | None, longitude_deg: float) -> Gathering:
    relative = log_path(name)
    path, shown = frame.folder.path(relative), frame.folder.shown(relative)
    filter_name = _filter_name(rig)
    before = subs_gathered(path, shown, frame.today)
    known = KnownFrames(before, filter_name)
    subs = [replace(to_milliseconds(sub), filter=filter_name(sub.filter)) for one in read for sub in one.subs]
    new = [sub for sub in subs if known.take(sub)]
    if new:
        write_over(path, log_text([*before, *new]), shown)
    return Gathering(
        log=relative,
        new=nights_of(new, longitude_deg),
        new_count=len(new),
        known_count=len(subs) - len(new),
        unreadable=sum(one.unreadable for one in read),
        named=None,
        problems=drawn_together([*(problem for one in read for problem in one.problems), *_against_rig(read, rig)]),
    )


def longitude_of(read: Iterable[ReadFrame], entry: KnownEntry | None, frame: Frame) -> float:
    """By which nights change: the entry's site, else what a header tells, else the diary's first site."""
    if entry is not None and entry.site is not None:
        return entry.site.longitude_deg
    told = (one.hints.longitude_deg for one in read if one.hints is not None)
    sites = (site.longitude_deg for _, site in sorted(frame.sites.items()))
    return next((each for each in (*told, *sites) if each is not None), 0.0)


def drawn_together(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Of a warning that many frames share, the first with the number of the others; every error."""
    alike: dict[str, list[Problem]] = {}
    found = in_order(problems)
    for problem in found:
        if problem.severity == "warning":
            alike.setdefault(problem.wrong, []).append(problem)
    return in_order([*errors_in(found), *(each for group in alike.values() for each in _few(group))])


def _few(group: list[Problem]) -> list[Problem]:
    if len(group) <= MOST_ALIKE:
        return group
    return [replace(group[0], wrong=f"{group[0].wrong} (so in {len(group) - 1} more files)")]


def _named_in_entry(name: str, gathering: Gathering, entry: KnownEntry | None, frame: Frame) -> Gathering:
    """The log is there by now, so a pattern of the entry's may find it already."""
    if entry is None or gathering.log not in frame.folder.names:
        return gathering
    again = known_entry(name, frame)
    if again is not None and gathering.log in again.logs:
        return replace(gathering, named=True)
    try:
        name_log(name, gathering.log, frame)
    except DiaryProblems as wrong:
        return replace(gathering, named=False, problems=(*gathering.problems, *wrong.problems))
    return replace(gathering, named=True)


def _filter_name(rig: Rig | None) -> FilterName:
    """The rig's own short name, where the log's word is one of the filter's names."""
    if rig is None:
        return lambda words: words or None
    return lambda words: (match_filter(words, rig) or words) if words else None


def _against_rig(read: Iterable[ReadFrame], rig: Rig | None) -> list[Problem]:
    """Here alone headers and rig are compared: the gathered log no longer has what is needed for it."""
    if rig is None:
        return []
    return [
        Problem(str(one.path), 1, 1, wrong, remedy, "warning")
        for one in read
        for sub in one.subs
        if one.hints is not None
        for wrong, remedy in disagreements(one.hints, rig, sub.start)
    ]


def nights_of(subs: Iterable[Sub], longitude_deg: float) -> tuple[NewOfNight, ...]:
    """Frames counted by evening, filter or kind, and exposure."""
    counted = Counter((evening_at(sub.middle, longitude_deg), _what(sub), sub.exposure_s) for sub in subs)
    return tuple(NewOfNight(evening, what, count, each_s) for (evening, what, each_s), count in sorted(counted.items()))


def _what(sub: Sub) -> str:
    return (sub.filter or "light") if sub.kind == "light" else sub.kind
