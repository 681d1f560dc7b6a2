"""A disk of captures -> the diary's logs, its missing rigs and sites, and one draft entry a project."""

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from sitegen.authoring.captures.discards import Discarding, language_of
from sitegen.authoring.captures.memory import FrameMemory
from sitegen.authoring.captures.reading import Progress, read_records
from sitegen.authoring.captures.record import Frame, FrameRecord
from sitegen.authoring.captures.sorting import Counted, LeftOut, sort_rig_frames
from sitegen.authoring.captures.walk import FoundFiles
from sitegen.authoring.entry_file import config_of, entry_path
from sitegen.authoring.gathering import drawn_together, unreadable_problems
from sitegen.authoring.harvest.disk_frames import DiskFrames, disk_frames
from sitegen.authoring.harvest.known_logs import KnownLogs, known_logs
from sitegen.authoring.harvest.lights import LightRequest, PlacedLights, place_lights
from sitegen.authoring.harvest.new_rigs import rig_text
from sitegen.authoring.harvest.planned import Planned, planned
from sitegen.authoring.harvest.project_files import ProjectFiles, WriteRequest, project_files
from sitegen.authoring.harvest.projects import projects_of
from sitegen.authoring.harvest.questions import CONFIRM, Answers, Question, to_confirm
from sitegen.authoring.harvest.report import Counts, Harvest, kinds_of, reasons_of, waiting
from sitegen.authoring.harvest.rigs import RigRequest, SortedRigs, sort_rigs
from sitegen.authoring.harvest.sites import Sites, place_of, site_text
from sitegen.authoring.harvest.trains import called_in
from sitegen.authoring.new_diary import bare_diary
from sitegen.authoring.new_files import write_new
from sitegen.diary.settings import Settings
from sitegen.folders import Folders
from sitegen.reading.diary_config import DiaryConfig
from sitegen.sky.solar_time import evening_at

_DESCRIBED = ("diary.yaml", "rigs/", "sites/", "entries/")
LEFT_AS_IT_IS = "harvest again"


class HarvestOptions(Struct, frozen=True):
    dry_run: bool = False
    with_names: bool = True


class _Diary(Struct, frozen=True):
    """The diary as it is; `config` is None where there is none yet, and `new_texts` begin it. `texts` are those of its settings,
    rigs, sites and entries, by path."""

    config: DiaryConfig | None
    settings: Settings
    logs: KnownLogs
    texts: Mapping[str, str]
    new_texts: Mapping[str, str]


def harvest(
    captures: FoundFiles, memory: FrameMemory, folders: Folders, today: date, options: HarvestOptions,
    jobs: int | None = None, progress: Progress | None = None, on_record: Callable[[FrameRecord], None] | None = None,
) -> Harvest:  # fmt: skip
    """Raises DiaryProblems, with nothing written, where the diary or one of its logs cannot be read."""
    diary = _diary(captures, folders, today)
    records = read_records(captures.frames, memory, jobs, progress, on_record)
    if not options.dry_run:
        memory.save()
    memory.forget()
    answers = Answers(diary.settings.captures.answers)
    disk = disk_frames(captures.frames, records, answers, diary.logs, today)
    del records
    rigs = _sorted_rigs(disk, diary, answers)
    places = Sites(disk.frames, diary.config.sites if diary.config else {}, diary.settings.privacy)
    new_texts = dict(diary.new_texts)
    new_texts |= {f"sites/{site.slug}.yaml": site_text(site) for site in places.new}
    new_texts |= {f"rigs/{rig.slug}.yaml": rig_text(rig) for rig in rigs.new}
    plan = planned(folders.content, new_texts, today)
    sorted_rigs = _sorted(disk, rigs, diary)
    request = LightRequest(plan.rigs, plan.sites, places, answers, diary.logs)
    placed = place_lights(sorted_rigs.lights, request)
    files = _project_files(placed, sorted_rigs, captures, diary, plan, options, today)
    new_texts = _without_idle_sites(new_texts, places, files)
    if not options.dry_run:
        _write(new_texts, files, folders)
    questions = (*disk.questions, *rigs.questions, *placed.questions, *to_confirm(_texts(diary, new_texts, files)))
    counts = _counts(disk, sorted_rigs, placed, files, captures, questions)
    unreadable = (replace(problem, severity="warning") for problem in unreadable_problems(disk.unreadable))
    problems = drawn_together([*unreadable, *disk.problems])
    written = (*new_texts, *(path for project in files for path in project.written))
    return Harvest(sum(kinds_of(counts).values()), kinds_of(counts), reasons_of(counts), questions,
                   tuple(project.report for project in files), written, problems)  # fmt: skip


def _diary(captures: FoundFiles, folders: Folders, today: date) -> _Diary:
    if not (folders.content / "diary.yaml").is_file():
        language, by = language_of(captures.frames)
        begun = bare_diary(language, f"{CONFIRM} {by}" if by else "")
        return _Diary(None, Settings("", language=language), KnownLogs(()), {}, begun)
    config = config_of(folders.content, today)
    texts = {name: config.folder.path(name).read_text("utf-8", "replace") for name in sorted(config.folder.names)
             if name.startswith(_DESCRIBED) and name.endswith((".yaml", ".md"))}  # fmt: skip
    return _Diary(config, config.settings or Settings(""), known_logs(config), texts, {})


def _texts(diary: _Diary, new_texts: Mapping[str, str], files: Iterable[ProjectFiles]) -> dict[str, str]:
    entries = {entry_path(project.project.name): project.entry for project in files if project.entry is not None}
    return {**diary.texts, **new_texts, **entries}


def _without_idle_sites(texts: Mapping[str, str], places: Sites, files: Iterable[ProjectFiles]) -> dict[str, str]:
    """A place of which every frame waits for an answer may be none."""
    used = {project.project.site for project in files}
    idle = {f"sites/{site.slug}.yaml" for site in places.new if site.slug not in used}
    return {path: text for path, text in texts.items() if path not in idle}


def _sorted_rigs(disk: DiskFrames, diary: _Diary, answers: Answers) -> SortedRigs:
    texts = {path.removeprefix("rigs/").removesuffix(".yaml"): text for path, text in diary.texts.items()}
    rigs = diary.config.rigs if diary.config else {}
    return sort_rigs(disk.frames, RigRequest(rigs, called_in(texts), answers, diary.logs, disk.clockless, _evening))


def _evening(frame: Frame) -> date:
    place = place_of(frame)
    return evening_at(frame.start, place[1] if place is not None else 0.0)


class _Sorted(Struct):
    """`lights` with their rig; `calibration` counts frames, also those that were discarded."""

    lights: list[tuple[Counted, str]]
    calibration: int
    left_out: list[LeftOut]


def _sorted(disk: DiskFrames, rigs: SortedRigs, diary: _Diary) -> _Sorted:
    """What has no rig yet waits for an answer, and is not looked at further."""
    settings = diary.settings
    discarding = Discarding(settings.captures.discarded, settings.language)
    result = _Sorted([], 0, list(disk.left_out))
    groups: dict[tuple[str, str | None], list[Frame]] = {}
    for frame, group, slug in zip(disk.frames, rigs.groups, rigs.slugs, strict=True):
        if slug is not None or frame.kind != "light":
            groups.setdefault((group, slug), []).append(frame)
    for (_, slug), frames in groups.items():
        lights, calibration, left_out = sort_rig_frames(frames, discarding)
        result.lights += ((light, slug) for light in lights if slug is not None)
        result.calibration += len(calibration)
        result.left_out += left_out
    return result


def _project_files(
    placed: PlacedLights, sorted_rigs: _Sorted, captures: FoundFiles, diary: _Diary, plan: Planned, options: HarvestOptions,
    today: date,
) -> list[ProjectFiles]:  # fmt: skip
    names = diary.config.folder.names if diary.config else {}
    taken = {name.rpartition("/")[2].rpartition(".")[0] for name in names if name.startswith(("entries/", "logs/"))}
    removed = [left_out for left_out in sorted_rigs.left_out if left_out.kind in ("combined", "focus run")]
    request = WriteRequest(plan.rigs, plan.sites, captures.scopes, removed, options.with_names,
                           bool(diary.settings.captures.discarded), today)  # fmt: skip
    return [project_files(project, request) for project in projects_of(placed.lights, diary.logs, taken)]


def _write(texts: Mapping[str, str], files: Iterable[ProjectFiles], folders: Folders) -> None:
    """Logs before the entries that name them: whatever breaks off leaves a diary that can be read."""
    for name, text in texts.items():
        write_new(folders.content / name, text, f"{folders.content}/{name}", LEFT_AS_IT_IS)
    for project in files:
        project.write(folders)


def _counts(
    disk: DiskFrames, sorted_rigs: _Sorted, placed: PlacedLights, files: Sequence[ProjectFiles], captures: FoundFiles,
    questions: Iterable[Question],
) -> Counts:  # fmt: skip
    by = Counter(light.counted.discard.by for light in placed.lights if light.counted.discard is not None)
    return Counts(
        counted=sum(project.kept_now for project in files),
        discarded=sum(len(project.project.lights) - project.kept_now for project in files),
        calibration=sorted_rigs.calibration,
        left_out=tuple(sorted_rigs.left_out),
        set_aside=disk.set_aside,
        passed_over=captures.passed_over,
        hidden=captures.hidden,
        unreadable=Counter(file.wrong for file in disk.unreadable),
        unclear=waiting(questions),
        discarded_by=by,
    )
