"""An entry's panels: each named once, its place whole."""

from sitegen.diary.addresses import slug_of
from sitegen.diary.panel import Panel
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.entry_targets import place_is_whole
from sitegen.reading.nodes import quoted
from sitegen.reading.value_types.group import Values


def panels_of(values: Values, diagnostics: Diagnostics) -> tuple[Panel, ...] | None:
    """None where the entry has no such key: then its frames are asked. An empty list says that it is no mosaic."""
    if values.node.get("panels") is None:
        return None
    panels: dict[str, Panel] = {}
    for item in (item.value for item in values.items_of("panels")):
        name = item.get("name")
        if name is None or not place_is_whole(item, diagnostics):
            continue
        if slug_of(name) in panels:
            diagnostics.error(item.place("name"), f"{quoted(name)} stands here twice", "give each panel a name of its own")
        panels[slug_of(name)] = Panel(name, item.get("ra"), item.get("dec"), item.get("rotation_deg"))
    return tuple(panels.values())
