"""One entry of the diary as it stands: what its front matter names, and the same file naming one more log."""

from datetime import date
from functools import partial
from pathlib import Path

from msgspec import Struct

from sitegen.authoring.front_matter_edit import with_log
from sitegen.authoring.new_files import refuse, write_over
from sitegen.diary.rig import Rig
from sitegen.diary.site import Site
from sitegen.diary.target import Target
from sitegen.problems import DiaryProblems, Problem
from sitegen.reading.diary_config import DiaryConfig, DiaryReading, read_config
from sitegen.reading.documents import document_of
from sitegen.reading.entry_targets import target_number, targets_of
from sitegen.reading.model.entry_file import ENTRY_FILE
from sitegen.reading.nodes import ListNode, TextNode
from sitegen.reading.value_types.group import Values


class KnownEntry(Struct, frozen=True):
    """`logs` are the files its front matter names; `rig` and `site` are None where it names none or a wrong one. Rig, site,
    targets and time zone are those of the log asked for, where its item has its own."""

    logs: frozenset[str]
    rig: Rig | None
    site: Site | None
    targets: tuple[Target, ...] = ()
    time_zone: str | None = None


def config_of(content: Path, today: date) -> DiaryConfig:
    """Raises DiaryProblems where there is no diary."""
    config = read_config(content, today, str(content))
    if isinstance(config, DiaryReading):
        raise DiaryProblems(config.problems)
    return config


def entry_path(name: str) -> str:
    return ENTRY_FILE.pattern.replace("NAME", name)


def known_entry(name: str, config: DiaryConfig, log: str = "") -> KnownEntry | None:
    """None where there is no such entry. `log` is the path inside content/ that the answer is for."""
    if entry_path(name) not in config.folder.names:
        return None
    document = document_of(ENTRY_FILE, entry_path(name), config.folder, config.today)
    values = document.values
    if values is None:
        return KnownEntry(frozenset(), None, None)
    item = _item_of(values, log)
    rig, site = (config.rigs.get(_own(item, values, "rig")), config.sites.get(_own(item, values, "site")))
    targets = document.diagnostics.until_full(partial(targets_of, values, document.diagnostics))
    listed = targets.targets if targets is not None else ()
    if targets is not None and item is not None and item.get("target"):
        find = partial(target_number, item.get("target"), values.node, targets, document.diagnostics)
        number = document.diagnostics.until_full(find)
        listed = (targets.targets[number],) if number is not None else listed
    return KnownEntry(frozenset(_logs(values)), rig, site, listed, item.get("time_zone") if item is not None else None)


def _item_of(values: Values, log: str) -> Values | None:
    """The log item that says more about this log than its name, also while there is no such file yet."""
    items = (item.value for item in values.items_of("logs") if isinstance(item.value, Values))
    return next((item for item in items if log in _named_by(item)), None)


def _named_by(item: Values) -> set[str]:
    node = item.node.get("files")
    written = node.items if isinstance(node, ListNode) else (node,)
    return {name for kept in item.items_of("files") for name in kept.value} | {
        text_node.text for text_node in written if isinstance(text_node, TextNode)
    }


def _own(item: Values | None, values: Values, key: str) -> str:
    return (item.get(key) if item is not None else None) or values.get(key) or ""


def _logs(values: Values) -> list[str]:
    items = (item.value for item in values.items_of("logs"))
    files = (kept.value for item in items if isinstance(item, Values) for kept in item.items_of("files"))
    plain = (item.value for item in values.items_of("logs") if not isinstance(item.value, Values))
    return [name for group in (*files, *plain) for name in group]


def name_log(name: str, log: str, config: DiaryConfig) -> None:
    """Puts the log into the entry's front matter. Raises DiaryProblems where that is the author's to do."""
    relative = entry_path(name)
    path, shown = config.folder.path(config.folder.names[relative]), config.folder.shown(relative)
    try:
        text = path.read_bytes().decode("utf-8")
    except (OSError, UnicodeDecodeError) as trouble:
        raise refuse(shown, "cannot be read, so its logs stay as they are", f"add {log} under 'logs' yourself") from trouble
    edited = with_log(text, log)
    if edited is None:
        raise DiaryProblems([Problem(shown, 1, 1, f"does not name {log} yet", "add it under 'logs' yourself")])
    write_over(path, edited, shown)
