"""Records of one kind as columns, for the store: what many of them share is kept once, and is one object when they are read.

An entry's subs have twenty fields, of which most say the same in every sub of a night.
"""

from collections.abc import Iterable, Sequence
from functools import cache
from itertools import repeat
from typing import Any, Generic, TypeVar

from msgspec import Struct, structs

from sitegen.build.records import dump, load

Record = TypeVar("Record", bound=Struct)
Value = TypeVar("Value")
MOST_SHARED = 256
"""A byte tells so many values apart."""


class Column(Struct, Generic[Value], frozen=True, array_like=True):
    """`codes`: of each record the place of its value among few `values`; b'' where all have the one value, or each its own."""

    values: tuple[Value, ...]
    codes: bytes


class Table(Struct, frozen=True, array_like=True):
    """`columns` are the bytes of a `Column` each, in the order of the record's fields."""

    count: int
    columns: tuple[bytes, ...]


def table_of(records: Sequence[Record], kind: type[Record], without: str = "") -> Table:
    """`without`: a field that is not kept."""
    names = [name for name, _ in _typed_fields(kind) if name != without]
    return Table(len(records), tuple(dump(_column([getattr(record, name) for record in records])) for name in names))


def records_of(table: Table, kind: type[Record], without: str = "", values: Iterable[Any] = ()) -> tuple[Record, ...]:
    """`values` of the field that was not kept. Raises a ValueError for what is damaged."""
    fields = _typed_fields(kind)
    if len(table.columns) != sum(name != without for name, _ in fields):
        raise ValueError("columns of another record")
    kept = iter(table.columns)
    columns = [values if name == without else _values(load(next(kept), column), table.count) for name, column in fields]
    records = tuple(map(kind, *columns))
    if len(records) != table.count:
        raise ValueError("columns of different lengths")
    return records


def _column(values: list[Any]) -> Column[Any]:
    shared = tuple(dict.fromkeys(values))
    if len(shared) <= 1:
        return Column(shared, b"")
    if len(shared) > MOST_SHARED:
        return Column(tuple(values), b"")
    places = {value: place for place, value in enumerate(shared)}
    return Column(shared, bytes(map(places.__getitem__, values)))


def _values(column: Column[Any], count: int) -> Iterable[Any]:
    if column.codes:
        return map(column.values.__getitem__, column.codes)
    return repeat(column.values[0], count) if len(column.values) == 1 else column.values


@cache
def _typed_fields(kind: type[Struct]) -> tuple[tuple[str, Any], ...]:
    return tuple((field.name, Column[field.type]) for field in structs.fields(kind))  # type: ignore[name-defined] # made at run time
