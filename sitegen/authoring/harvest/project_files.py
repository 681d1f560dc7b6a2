"""A project -> its log, changed or new, and its draft entry."""

from collections.abc import Mapping, Sequence
from datetime import date
from math import fsum
from pathlib import Path

from msgspec import Struct

from sitegen.authoring.captures.places import TargetSorting
from sitegen.authoring.captures.sorting import LeftOut, SortedFrames
from sitegen.authoring.entry_file import entry_path
from sitegen.authoring.entry_text import EntryDraft, entry_text
from sitegen.authoring.gather_report import nights_of
from sitegen.authoring.gather_undo import Undo
from sitegen.authoring.gathered_changes import ChangeRequest, Changes, change_log
from sitegen.authoring.gathered_log import ALWAYS, MARK, GatheredLog, log_path
from sitegen.authoring.gathering import filter_name_of
from sitegen.authoring.harvest.panels import panels_of
from sitegen.authoring.harvest.projects import Project
from sitegen.authoring.harvest.report import ProjectReport
from sitegen.authoring.log_table import new_table, table_text
from sitegen.authoring.new_files import write_new, write_over
from sitegen.authoring.rig_fit import RigFit
from sitegen.authoring.site_fit import SiteFit
from sitegen.diary.rig import Rig
from sitegen.diary.site import Site
from sitegen.diary.sub import Sub
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems
from sitegen.sky.solar_time import evening_at


class WriteRequest(Struct, frozen=True):
    """`removed` are frames that are known to be no subs, and leave logs that had them."""

    rigs: Mapping[str, Rig]
    sites: Mapping[str, Site]
    scopes: Mapping[str, str]
    removed: Sequence[LeftOut]
    with_names: bool
    has_patterns: bool
    today: date


class ProjectFiles(Struct, frozen=True):
    """`log` is its log's new text, None where nothing of it changes: the texts of all logs together are many. `entry` is None for
    one that exists. `kept_now` counts its frames on this disk."""

    project: Project
    report: ProjectReport
    kept_now: int
    log: str | None
    entry: str | None

    @property
    def written(self) -> list[str]:
        log = [log_path(self.project.name)] if self.log is not None else []
        return [*log, *([entry_path(self.project.name)] if self.entry is not None else [])]

    def write(self, folders: Folders) -> None:
        name = self.project.name
        log, entry = log_path(name), entry_path(name)
        if self.log is not None:
            path = folders.content / log
            before = path.read_bytes().decode("utf-8", "replace") if self.project.log is not None else ""
            write_over(path, self.log, f"{folders.content}/{log}")
            if before:
                _remember(folders, name, before, self.log)
        if self.entry is not None:
            write_new(folders.content / entry, self.entry, f"{folders.content}/{entry}", "harvest again")


def _remember(folders: Folders, name: str, before: str, after: str) -> None:
    """So that 'gather --undo' can take it back; a disk that cannot be written only loses that."""
    try:
        Undo(folders.keep, name).keep(before, after, None)
    except DiaryProblems:
        return


def project_files(project: Project, request: WriteRequest) -> ProjectFiles:
    log = project.log.read() if project.log is not None else _new_log(project.name)
    before = log.text
    sorted_frames = SortedFrames(
        tuple(light.counted for light in project.lights), (), tuple(request.removed) if before else (), (),
        TargetSorting({}, 0, None), (),
    )  # fmt: skip
    rig = request.rigs.get(project.rig)
    wanted = ChangeRequest(filter_name_of(rig), request.scopes, None, request.with_names, has_patterns=request.has_patterns)
    changes = change_log(log, sorted_frames, wanted)
    after = table_text(log.table)
    lights = [sub for sub in changes.subs if sub.kind == "light"]
    kept_now = sum(changes.kept[id(light.frame)] for light in project.lights)
    draft = _draft(project, lights, request) if project.log is None else None
    entry = entry_text(draft, request.today) if draft is not None else None
    report = _report(project, lights, changes, draft, request)
    return ProjectFiles(project, report, kept_now, after if after != before else None, entry)


def _new_log(name: str) -> GatheredLog:
    return GatheredLog(log_path(name), Path(), log_path(name), "", new_table(ALWAYS, MARK), ())


def _draft(project: Project, lights: Sequence[Sub], request: WriteRequest) -> EntryDraft:
    rig, site = request.rigs[project.rig], request.sites[project.site]
    nights = nights_of(lights, site.longitude_deg)
    log = log_path(project.name)
    is_guessed = all(light.is_guessed for light in project.lights)
    evenings = [evening_at(sub.start, site.longitude_deg) for sub in lights]
    return EntryDraft(
        project.name, (log,), RigFit(rig, sure=True), SiteFit(site, not is_guessed, "the other frames of its rig"),
        project.target, nights, last_night=project.evenings[-1], gathered=log,
        panels=panels_of(lights, evenings, project.target, rig),
    )  # fmt: skip


def _report(
    project: Project, lights: Sequence[Sub], changes: Changes, draft: EntryDraft | None, request: WriteRequest
) -> ProjectReport:
    kept = [sub for sub in lights if sub.kept]
    entry = project.log.entry if project.log is not None and project.log.entry is not None else project.name
    evenings = set(project.evenings) | set(project.log.evenings if project.log is not None else ())
    return ProjectReport(
        entry, project.target.name if project.target is not None else None, project.rig, project.site, tuple(sorted(evenings)),
        len(kept), len(lights) - len(kept), fsum(sub.exposure_s for sub in kept), len(changes.new),
        sum(changes.judged_anew.values()), changes.gone.count, draft is not None,
        len(draft.panels) if draft is not None else 0,
    )  # fmt: skip
