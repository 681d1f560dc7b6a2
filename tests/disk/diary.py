"""The content/ folder that goes with the disk, and what is true of the diary once every project is gathered."""

from collections.abc import Iterable
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

from msgspec.structs import replace

from tests.disk.frames import Train
from tests.disk.projects import (
    FILTERS,
    PAIR,
    PAIR_PUBLISHED,
    PAIR_SKIES,
    PLACES,
    PROGRESS,
    PROGRESS_PUBLISHED,
    PROJECTS,
    SCHOOL,
    TRAINS,
    UNKNOWN_FILTER,
    UNKNOWN_IS,
    Project,
)
from tests.disk.truth import DiaryTruth, DiskTruth, EntryTruth, Place, TrueFrame, gathered

PASSBANDS = {
    "L": "{name: Luminance, kind: broadband, centre_nm: 550, width_nm: 300}",
    "R": "{name: Red, kind: broadband, centre_nm: 640, width_nm: 100}",
    "G": "{name: Green, kind: broadband, centre_nm: 535, width_nm: 85}",
    "B": "{name: Blue, kind: broadband, centre_nm: 450, width_nm: 100}",
    "Ha": "{name: Hα, kind: narrowband, centre_nm: 656.3, width_nm: 5}",
    "OIII": '{name: "[O III]", kind: narrowband, centre_nm: 500.7, width_nm: 5}',
}
SPELT = f", spelt: [{UNKNOWN_FILTER}]}}"


def write_diary(content: Path, truth: DiskTruth, projects: Iterable[Project] = PROJECTS, spelt: bool = True) -> None:
    """German, so that both words for a folder of thrown-away frames are understood. `spelt` names the odd filter in the rig."""
    _write(content / "diary.yaml", "title: Nächte über dem Schuldach\nlanguage: de\n")
    for place in PLACES:
        _write(content / f"sites/{place.site}.yaml", site_yaml(place))
    for train in TRAINS:
        _write(content / f"rigs/{train.rig}.yaml", rig_yaml(train, spelt))
    for project in projects:
        _write(content / f"entries/{project.name}.md", entry_text(project.name, project.published, project))
    final = next((each for each in projects if each.name == "tarantula"), None)
    if final is not None:
        write_tables(content, truth, final)


def write_tables(content: Path, truth: DiskTruth, final: Project) -> None:
    """What was kept by hand: the progress of a project whose frames were gathered later, and an entry of two targets."""
    _write(content / f"logs/{PROGRESS}.csv", table(progress_frames(truth)))
    _write(content / f"entries/{PROGRESS}.md", entry_text(PROGRESS, PROGRESS_PUBLISHED, final, f"logs/{PROGRESS}.csv"))
    items = []
    for sky in PAIR_SKIES:
        log = f"logs/{PAIR}-{sky.page}.csv"
        _write(content / log, table(frame for frame in pair_frames() if frame.target == sky.page))
        items.append(f"{{files: {log}, target: {sky.object}}}")
    both = replace(final, target=f"[{', '.join(sky.object for sky in PAIR_SKIES)}]")
    _write(content / f"entries/{PAIR}.md", entry_text(PAIR, PAIR_PUBLISHED, both, ", ".join(items)))


def site_yaml(place: Place) -> str:
    return (
        f"name: The {place.site}\nlatitude_deg: {place.latitude_deg}\nlongitude_deg: {place.longitude_deg}\nelevation_m: 120\n"
        f"time_zone: {place.time_zone}\nsky_mag_arcsec2: 21.2\n"
    )


def rig_yaml(train: Train, spelt: bool) -> str:
    lines = [
        f"name: The {train.telescope}",
        f"telescope: {{design: refractor, aperture_mm: {train.aperture_mm:g}, focal_length_mm: {train.focal_length_mm:g}}}",
        f"camera: {{name: {train.camera}, pixel_um: {train.pixel_um:g}, width_px: {train.width_px}, "
        f"height_px: {train.height_px}, colour: {train.colour}}}",
    ]
    shorts = FILTERS.get(train.rig, "").split()
    lines += ["filters:"] if shorts else []
    for short in shorts:
        told = PASSBANDS[short]
        lines.append(f"  {short}: {told.removesuffix('}') + SPELT if spelt and short == UNKNOWN_IS else told}")
    return "\n".join(lines) + "\n"


def entry_text(name: str, published: str, project: Project, log: str = "") -> str:
    logs = f"logs: [{log}]\n" if log else ""
    front = f"title: {name.replace('-', ' ').capitalize()}\npublished: {published}\ntarget: {project.target}\n"
    return f"---\n{front}rig: {project.rig}\nsite: {project.place.site}\n{logs}---\n\nWhat the school saw.\n"


def progress_frames(truth: DiskTruth) -> tuple[TrueFrame, ...]:
    """The first two nights, all of them kept: what was known when the progress entry was written."""
    final = gathered(truth, "tarantula", ("tarantula",)).frames
    return tuple(replace(each, kept=True) for each in final if each.evening < date(2025, 12, 12))


def pair_frames() -> tuple[TrueFrame, ...]:
    """One night, first the main target, then the other, which has a discarded sub."""
    first = datetime(2025, 11, 10, 11, 30, tzinfo=UTC)
    return tuple(
        TrueFrame(first + timedelta(minutes=6 * number), 300.0, "long", SCHOOL, PAIR_SKIES[number // 8].page, "R", number != 12)
        for number in range(14)
    )


def table(frames: Iterable[TrueFrame]) -> str:
    """The canonical columns, starts to the millisecond in UTC."""
    lines = ["start,exposure_s,filter,kept"]
    for each in frames:
        start = each.start.isoformat(timespec="milliseconds").replace("+00:00", "Z")
        lines.append(f"{start},{each.exposure_s:g},{each.filter or ''},{'yes' if each.kept else 'no'}")
    return "\n".join(lines) + "\n"


def log_by_hand(content: Path, project: Project, frames: Iterable[TrueFrame]) -> None:
    """A table in the place of the gathered log, named in the entry."""
    log = f"logs/{project.name}.csv"
    _write(content / log, table(frames))
    _write(content / f"entries/{project.name}.md", entry_text(project.name, project.published, project, log))


def diary_truth(truth: DiskTruth, projects: Iterable[Project] = PROJECTS) -> DiaryTruth:
    entries = [
        EntryTruth(each.name, date.fromisoformat(each.published), gathered(truth, each.name, each.folders).frames)
        for each in projects
    ]
    if any(each.name == "tarantula" for each in projects):
        entries.append(EntryTruth(PAIR, date.fromisoformat(PAIR_PUBLISHED), pair_frames()))
        entries.append(EntryTruth(PROGRESS, date.fromisoformat(PROGRESS_PUBLISHED), progress_frames(truth)))
    return DiaryTruth(tuple(sorted(entries, key=lambda each: (each.published, each.name))))


def _write(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")
