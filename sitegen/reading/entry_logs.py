"""Which logs an entry names, each once, with what the entry says about it."""

from collections.abc import Iterator, Mapping
from typing import TypeVar

from sitegen.diary.rig import Rig
from sitegen.problems import hint_for
from sitegen.reading.capture_logs.request import LogRequest
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.entry_targets import EntryTargets, target_number
from sitegen.reading.known import Known
from sitegen.reading.named import check_named
from sitegen.reading.nodes import quoted
from sitegen.reading.value_types.group import Values
from sitegen.reading.value_types.value_type import Kept

Record = TypeVar("Record")


def log_requests(values: Values, targets: EntryTargets, records: Known, diagnostics: Diagnostics) -> tuple[LogRequest, ...]:
    """One request a file. A log matched twice belongs to the item that says more about it, else to the first."""
    items = values.items_of("logs")
    if not items:
        return ()
    _check_default(values, items, "rig", diagnostics)
    _check_default(values, items, "site", diagnostics)
    taken: dict[str, LogRequest] = {}
    for item in sorted(items, key=lambda item: not isinstance(item.value, Values)):
        for request in _of_item(item, values, targets, records, diagnostics):
            taken.setdefault(request.source, request)
    return tuple(taken.values())


def rigs_named(values: Values) -> tuple[str, ...]:
    """Every rig the entry speaks of."""
    of_items = (item.value.get("rig") for item in values.items_of("logs") if isinstance(item.value, Values))
    return tuple(sorted({name for name in (values.get("rig"), *of_items) if name is not None}))


def _check_default(values: Values, items: tuple[Kept, ...], what: str, diagnostics: Diagnostics) -> None:
    """Each log needs a rig and a site, its own or the entry's."""
    own = [isinstance(item.value, Values) and item.value.node.get(what) is not None for item in items]
    if values.node.get(what) is None and not all(own):
        remedy = f"add '{what}: NAME' to the entry, or to the log"
        diagnostics.error(items[own.index(False)], f"no {what} is named for this log", remedy)


def _of_item(item: Kept, entry: Values, targets: EntryTargets, records: Known, diagnostics: Diagnostics) -> Iterator[LogRequest]:
    own = item.value if isinstance(item.value, Values) else Values({"files": (item,)}, entry.node)
    rig = _record(own, entry, "rig", records.rigs, diagnostics)
    site = _record(own, entry, "site", records.sites, diagnostics)
    target = _target(own, targets, diagnostics)
    filter_name = _filter(own, rig, diagnostics)
    for source in (name for files in own.items_of("files") for name in files.value):
        yield LogRequest(
            path=diagnostics.content.path(source),
            shown_path=diagnostics.content.shown(source),
            source=source,
            rig=rig,
            site=site,
            target=target,
            filter=filter_name,
            time_zone=own.get("time_zone"),
            item_place=(diagnostics.shown, item.line, item.column),
            today=diagnostics.today,
            columns=own.get("columns").values if own.get("columns") else {},
        )


def _record(
    own: Values, entry: Values, what: str, records: Mapping[str, Record | None], diagnostics: Diagnostics
) -> Record | None:
    """The log's own rig or site, else the entry's; a wrong name of the entry's has been told once, where it stands."""
    name = own.get(what)
    if name is not None and not check_named(name, own.place(what), what, records, diagnostics):
        return None
    name = name or entry.get(what)
    return records.get(name) if name is not None else None


def _target(own: Values, targets: EntryTargets, diagnostics: Diagnostics) -> int | None:
    name = own.get("target")
    if name is not None:
        return target_number(name, own.place("target"), targets, diagnostics)
    return 0 if targets.targets else None


def _filter(own: Values, rig: Rig | None, diagnostics: Diagnostics) -> str | None:
    name: str | None = own.get("filter")
    if name is None or rig is None or name in rig.filters:
        return name
    diagnostics.error(own.place("filter"), f"unknown filter {quoted(name)}", _filter_remedy(name, rig))
    return None


def _filter_remedy(name: str, rig: Rig) -> str:
    return hint_for(name, rig.filters) if rig.filters else f"the rig '{rig.slug}' has no filters"
