"""An entry's recalled totals: whether each is one, and of which filter and target."""

from msgspec.structs import replace

from sitegen.diary.recalled import Recalled
from sitegen.diary.rig import Rig
from sitegen.problems import hint_for
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.entry_checks import without_filter
from sitegen.reading.entry_targets import EntryTargets, target_number
from sitegen.reading.known import Known
from sitegen.reading.nodes import quoted
from sitegen.reading.value_types.group import Values

NEAR_S = 60.0
"""Old lists give whole minutes."""


def recalled_of(values: Values, targets: EntryTargets, records: Known, diagnostics: Diagnostics) -> tuple[Recalled, ...]:
    rig = records.rigs.get(values.get("rig"))
    items = (_recalled(item.value, targets, rig, diagnostics) for item in values.items_of("recalled"))
    return tuple(replace(item, rig=values.get("rig"), site=values.get("site")) for item in items if item is not None)


def _recalled(item: Values, targets: EntryTargets, rig: Rig | None, diagnostics: Diagnostics) -> Recalled | None:
    total_s = _total_s(item, diagnostics)
    _check_filter(item, rig, diagnostics)
    name = item.get("target")
    target = 0 if targets.targets else None
    if name is not None:
        target = target_number(name, item.place("target"), targets, diagnostics)
    if total_s is None:
        return None
    return Recalled(total_s, item.get("filter"), item.get("count"), item.get("exposure"), item.get("when"), target)


def _total_s(item: Values, diagnostics: Diagnostics) -> float | None:
    """As written, else count times exposure. None after a problem, which may be one of a value's own."""
    total_s, count, exposure_s = item.get("total"), item.get("count"), item.get("exposure")
    product_s = count * exposure_s if count is not None and exposure_s is not None else None
    if total_s is None and product_s is None:
        written = [name for name in ("total", "count", "exposure") if item.node.get(name) is not None]
        if all(item.get(name) is not None for name in written):
            diagnostics.error(item.node, "no total follows from this", "give 'total', or 'count' and 'exposure'")
        return None
    if total_s is not None and product_s is not None and abs(total_s - product_s) > NEAR_S:
        wrong = f"'total' is {total_s / 3600:.4g} h, but {count} × {exposure_s:g} s are {product_s / 3600:.4g} h"
        diagnostics.error(item.place("total"), wrong, "leave out 'total', or 'count' or 'exposure'")
        return None
    return product_s if total_s is None else total_s


def _check_filter(item: Values, rig: Rig | None, diagnostics: Diagnostics) -> None:
    """Where the entry names a rig, its filters are known."""
    name = item.get("filter")
    if name is None or rig is None:
        return
    shorts = [*rig.filters, without_filter(rig)]
    if name not in shorts:
        diagnostics.error(item.place("filter"), f"unknown filter {quoted(name)} in 'recalled'", hint_for(name, shorts))
