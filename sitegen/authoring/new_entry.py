"""Logs -> a new entry that passes check, with gaps where only its author knows."""

from collections.abc import Iterable, Sequence
from datetime import date
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from sitegen.authoring.entry_file import entry_path, frame_of
from sitegen.authoring.entry_text import EntryDraft, entry_text, patterns_of
from sitegen.authoring.frame_hints import FrameHints
from sitegen.authoring.frame_reading import Progress, ReadFrame, read_frames
from sitegen.authoring.gathering import Gathering, drawn_together, longitude_of, nights_of, write_gathered
from sitegen.authoring.new_files import refuse, write_new, write_over
from sitegen.authoring.rig_fit import RigFit, rig_of
from sitegen.authoring.schemas import FOLDER, schema_files
from sitegen.authoring.site_fit import SiteFit, site_of
from sitegen.authoring.target_fit import TargetFit, targets_of
from sitegen.diary.sub import Sub
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems, Problem
from sitegen.reading.capture_logs.filter_names import match_filter
from sitegen.reading.frame import Frame

ADD_TO_IT = "'sitegen gather' adds frames to it"


class Beginning(Struct, frozen=True):
    """`entry` is the path inside content/; `gathering` is None where every log lay inside content/ already."""

    entry: str
    draft: EntryDraft
    gathering: Gathering | None
    problems: tuple[Problem, ...]


def begin(
    name: str,
    paths: Sequence[Path],
    folders: Folders,
    today: date,
    time_zone: str | None = None,
    jobs: int | None = None,
    progress: Progress | None = None,
) -> Beginning:
    """Raises DiaryProblems, with nothing written, where the entry exists, there is no diary, or no log holds a frame."""
    frame = frame_of(folders.content, today)
    relative = entry_path(name)
    if relative in frame.folder.names:
        raise refuse(frame.folder.shown(relative), "exists already and is left as it is", ADD_TO_IT)
    read = read_frames(paths, today, time_zone, jobs, progress)
    if not any(one.subs for one in read):
        problems = drawn_together(problem for one in read for problem in one.problems)
        raise DiaryProblems([*problems, *refuse(str(paths[0]), "no frame could be read, so no entry was begun").problems])
    beginning = _begun(name, read, frame)
    write_new(frame.folder.path(relative), entry_text(beginning.draft, today), frame.folder.shown(relative), ADD_TO_IT)
    return beginning


def _begun(name: str, read: Sequence[ReadFrame], frame: Frame) -> Beginning:
    lights = [(one.hints, sub) for one in read for sub in one.subs if sub.kind == "light"]
    rig = rig_of([(hints, sub.start) for hints, sub in _told_apart(lights)], (sub.filter or "" for _, sub in lights), frame.rigs)
    site = site_of((one.hints for one in read), frame.sites)
    targets = targets_of(hints for hints, _ in lights)
    outside = [one for one in read if _inside(one.path, frame) is None]
    longitude_deg = site.site.longitude_deg if site and site.sure else longitude_of(read, None, frame)
    gathering = write_gathered(name, outside, frame, rig.rig if rig else None, longitude_deg) if outside else None
    inside = [found for one in read if (found := _inside(one.path, frame)) is not None]
    logs = (*patterns_of(inside, frame.folder.names.values()), *((gathering.log,) if gathering else ()))
    nights = nights_of([_short(sub, rig) for _, sub in lights], longitude_deg)
    draft = EntryDraft(name, logs, rig, site, targets[0][0] if targets else None, nights, refresh_schemas(frame),
                       _unknown((sub.filter or "" for _, sub in lights), rig))  # fmt: skip
    own = drawn_together(problem for one in read if one not in outside for problem in one.problems)
    problems = (*(gathering.problems if gathering else ()), *own, *_other_targets(name, targets, frame))
    return Beginning(entry_path(name), draft, gathering, problems)


def refresh_schemas(frame: Frame) -> bool:
    """Brings the schemas that 'start' wrote up to this version's keys; False where the diary holds none."""
    root = frame.folder.root
    if not (root / FOLDER).is_dir():
        return False
    for name, text in schema_files().items():
        path = root / name
        if not path.is_file() or path.read_text("utf-8", "replace") != text:
            write_over(path, text, frame.folder.shown(name))
    return True


def _told_apart(lights: Sequence[tuple[FrameHints | None, Sub]]) -> list[tuple[FrameHints | None, Sub]]:
    """One of each kind of header and evening: the others say the same."""
    kinds = {(_of_rig(hints), sub.start.date()): (hints, sub) for hints, sub in lights}
    return list(kinds.values())


def _of_rig(hints: FrameHints | None) -> object:
    return hints and (hints.focal_length_mm, hints.pixel_um, hints.frame_px, hints.binning, hints.filter)


def _short(sub: Sub, rig: RigFit | None) -> Sub:
    if rig is None or sub.filter is None:
        return sub
    return replace(sub, filter=match_filter(sub.filter, rig.rig) or sub.filter)


def _unknown(filters: Iterable[str], rig: RigFit | None) -> tuple[str, ...]:
    words = sorted({word for word in filters if word})
    return tuple(word for word in words if rig is not None and match_filter(word, rig.rig) is None)


def _inside(path: Path, frame: Frame) -> str | None:
    """The path inside content/; None for a file elsewhere, or one that the reader passes over there."""
    resolved = path.resolve()
    if not resolved.is_relative_to(frame.folder.root):
        return None
    relative = resolved.relative_to(frame.folder.root).as_posix()
    return relative if relative in frame.folder.names.values() else None


def _other_targets(name: str, targets: Sequence[tuple[TargetFit, int]], frame: Frame) -> list[Problem]:
    """An entry's logs show one target unless their items say otherwise."""
    shown = frame.folder.shown(entry_path(name))
    return [
        Problem(shown, 1, 1, f"{count} of the frames show {other.name}, not {targets[0][0].name}",
                "begin an entry of its own with them, or name both targets and give each log its own", "warning")
        for other, count in targets[1:]
    ]  # fmt: skip


def recognised(draft: EntryDraft) -> tuple[tuple[str, str | None, bool, str], ...]:
    """What was made out: (what, as what, whether surely, what speaks against it)."""
    target: TargetFit | None = draft.target
    rig: RigFit | None = draft.rig
    site: SiteFit | None = draft.site
    return (
        ("target", target.name if target else None, target is not None and target.catalogued, ""),
        ("rig", rig.rig.slug if rig else None, rig is not None and rig.sure, rig.against if rig else ""),
        ("site", site.site.slug if site else None, site is not None and site.sure, ""),
    )
