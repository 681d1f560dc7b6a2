"""Names by which one author file speaks of another."""

from collections.abc import Mapping
from typing import Any

from sitegen.problems import hint_for
from sitegen.reading.diagnostics import Diagnostics, Placed
from sitegen.reading.nodes import quoted


def check_named(name: str, at: Placed, what: str, records: Mapping[str, Any], diagnostics: Diagnostics) -> bool:
    """Whether there is such a file. `known` maps names to records, None for a file that has problems of its own."""
    if name in records:
        return True
    by_title = {record.name.casefold(): slug for slug, record in records.items() if record is not None}
    slug = by_title.get(name.casefold())
    remedy = f"did you mean '{slug}'?" if slug else hint_for(name, records)
    if not records:
        remedy = f"describe it in {diagnostics.content.shown(f'{what}s/NAME.yaml')}"
    diagnostics.error(at, f"unknown {what} {quoted(name)}", remedy)
    return False
