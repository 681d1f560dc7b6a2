"""One entry of the diary as it stands: what its front matter names, and the same file naming one more log."""

from datetime import date
from pathlib import Path

from msgspec import Struct

from sitegen.authoring.front_matter_edit import with_log
from sitegen.authoring.new_files import refuse, write_over
from sitegen.diary.rig import Rig
from sitegen.diary.site import Site
from sitegen.problems import DiaryProblems, Problem
from sitegen.reading.documents import document_of
from sitegen.reading.frame import DiaryReading, Frame, read_frame
from sitegen.reading.model.entry_file import ENTRY_FILE
from sitegen.reading.value_types.group import Values


class KnownEntry(Struct, frozen=True):
    """`logs` are the files its front matter names; `rig` and `site` are None where it names none or a wrong one."""

    logs: frozenset[str]
    rig: Rig | None
    site: Site | None


def frame_of(content: Path, today: date) -> Frame:
    """Raises DiaryProblems where there is no diary."""
    frame = read_frame(content, today, str(content))
    if isinstance(frame, DiaryReading):
        raise DiaryProblems(frame.problems)
    return frame


def entry_path(name: str) -> str:
    return ENTRY_FILE.pattern.replace("NAME", name)


def known_entry(name: str, frame: Frame) -> KnownEntry | None:
    """None where there is no such entry."""
    if entry_path(name) not in frame.folder.names:
        return None
    values = document_of(ENTRY_FILE, entry_path(name), frame.folder, frame.today).values
    if values is None:
        return KnownEntry(frozenset(), None, None)
    rig, site = frame.rigs.get(values.get("rig") or ""), frame.sites.get(values.get("site") or "")
    return KnownEntry(frozenset(_logs(values)), rig, site)


def _logs(values: Values) -> list[str]:
    items = (item.value for item in values.items_of("logs"))
    files = (kept.value for item in items if isinstance(item, Values) for kept in item.items_of("files"))
    plain = (item.value for item in values.items_of("logs") if not isinstance(item.value, Values))
    return [name for group in (*files, *plain) for name in group]


def name_log(name: str, log: str, frame: Frame) -> None:
    """Puts the log into the entry's front matter. Raises DiaryProblems where that is the author's to do."""
    relative = entry_path(name)
    path, shown = frame.folder.path(frame.folder.names[relative]), frame.folder.shown(relative)
    try:
        text = path.read_bytes().decode("utf-8")
    except (OSError, UnicodeDecodeError) as trouble:
        raise refuse(shown, "cannot be read, so its logs stay as they are", f"add {log} under 'logs' yourself") from trouble
    edited = with_log(text, log)
    if edited is None:
        raise DiaryProblems([Problem(shown, 1, 1, f"does not name {log} yet", "add it under 'logs' yourself")])
    write_over(path, edited, shown)
