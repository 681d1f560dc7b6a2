"""Entries in the store: their subs as columns, each once, though a view names them three times."""

from msgspec import Struct
from msgspec.structs import replace

from sitegen.build.store import UNREADABLE, CacheMiss, Store
from sitegen.build.tables import Table, records_of, table_of
from sitegen.diary.entry import Entry
from sitegen.diary.sub import Sub


class KeptEntry(Struct, frozen=True):
    """`bare`: without its subs."""

    bare: Entry
    subs: Table

    def whole(self) -> Entry:
        return replace(self.bare, subs=records_of(self.subs, Sub))


def kept_entry(entry: Entry) -> KeptEntry:
    return KeptEntry(replace(entry, subs=()), table_of(entry.subs, Sub))


def put_entry(store: Store, entry: Entry) -> str:
    """Its name in the store."""
    return store.put(kept_entry(entry))


def get_entry(store: Store, name: str) -> Entry:
    """Raises CacheMiss where it is missing or damaged."""
    try:
        return store.get(name, KeptEntry).whole()
    except UNREADABLE as trouble:
        raise CacheMiss(name) from trouble
