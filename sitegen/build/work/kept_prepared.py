"""Prepared entries in the store: subs and lights as columns, nights as places among the lights.

The columns of facts.json are not kept: they stand in the site's files, and no page reads them.
"""

from msgspec import Struct
from msgspec.structs import replace

from sitegen.build.kept_entries import KeptEntry, kept_entry
from sitegen.build.store import UNREADABLE, CacheMiss, Store
from sitegen.build.tables import Table, records_of, table_of
from sitegen.facts.registry import SubFacts
from sitegen.facts.views import EntryView, NightView, SubInSky
from sitegen.pages.prepared import PreparedEntry

NO_COLUMNS = SubFacts(*((),) * len(SubFacts.__struct_fields__))


class KeptPrepared(Struct, frozen=True):
    """`bare`: without subs, lights and columns of facts. `lights` without their subs, which are the entry's light frames in
    order; `nights`: the places of each night's lights among them."""

    bare: PreparedEntry
    entry: KeptEntry
    lights: Table
    nights: tuple[tuple[int, ...], ...]

    def whole(self) -> PreparedEntry:
        entry = self.entry.whole()
        lights = records_of(self.lights, SubInSky, "sub", entry.lights)
        nights = zip(self.bare.view.nights, self.nights, strict=True)
        whole = tuple(replace(night, lights=tuple(map(lights.__getitem__, places))) for night, places in nights)
        return replace(self.bare, view=replace(self.bare.view, entry=entry, lights=lights, nights=whole))


def kept_prepared(prepared: PreparedEntry) -> KeptPrepared:
    view = prepared.view
    entry, places = kept_entry(view.entry), {id(light): place for place, light in enumerate(view.lights)}
    nights = tuple(tuple(places[id(light)] for light in night.lights) for night in view.nights)
    bare = replace(prepared, view=_bare(view, entry), facts=replace(prepared.facts, subs=NO_COLUMNS))
    return KeptPrepared(bare, entry, table_of(view.lights, SubInSky, "sub"), nights)


def _bare(view: EntryView, entry: KeptEntry) -> EntryView:
    return replace(view, entry=entry.bare, lights=(), nights=tuple(map(_without_lights, view.nights)))


def _without_lights(night: NightView) -> NightView:
    return replace(night, lights=())


def get_prepared(store: Store, name: str) -> PreparedEntry:
    """Raises CacheMiss where it is missing or damaged."""
    try:
        return store.get(name, KeptPrepared).whole()
    except UNREADABLE as trouble:
        raise CacheMiss(name) from trouble
