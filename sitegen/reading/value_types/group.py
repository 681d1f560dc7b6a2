"""A mapping whose keys the diary knows: each described once, as data."""

from collections.abc import Callable
from typing import Any, TypeVar

from msgspec import NODEFAULT, Struct
from msgspec.structs import fields

from sitegen.problems import hint_for
from sitegen.reading.diagnostics import Diagnostics, Place, Placed
from sitegen.reading.nodes import MapNode, Node, TextNode, quoted, seen
from sitegen.reading.value_types.value_type import JsonSchema, Kept, ValueType, is_waiting, say_waiting

Record = TypeVar("Record")


class Key(Struct, frozen=True):
    """One key of an author's file. `default` says in words what holds without it; `example` is what may stand behind it."""

    name: str
    type: ValueType
    explained: str
    example: str
    required: bool = False
    default: str | None = None


class Values(Struct, frozen=True):
    """The valid values of a group by key. `node` is where the group stands."""

    values: dict[str, Any]
    node: MapNode

    def get(self, name: str) -> Any:
        return self.values.get(name)

    def items_of(self, name: str) -> tuple[Kept, ...]:
        """Of a list; empty where there is none."""
        return self.values.get(name) or ()

    def place(self, name: str) -> Placed:
        """Where the value of the key stands, or else the group."""
        return self.node.get(name) or self.node

    def into(self, record: Callable[..., Record], **more: Any) -> Record:
        """The record whose fields are called like the keys; those absent keep its own defaults, or are None without one."""
        given = {name: bare(value) for name, value in self.values.items()}
        return record(**(_absent(record) | given | more))


class Group(Struct, frozen=True):
    """`called` stands for it in sentences; `remedies` answers foreign keys that people do try better than the nearest word."""

    keys: tuple[Key, ...]
    called: str
    remedies: tuple[tuple[str, str], ...] = ()

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> Values | None:
        if not isinstance(node, MapNode):
            diagnostics.error(node, f"{label} is {seen(node)}, not a mapping", self._example())
            return None
        keys = {key.name: key for key in self.keys}
        present = {key.text: (key, value) for key, value in node.entries if not (isinstance(value, TextNode) and value.empty)}
        for key_node, _ in node.entries:
            if key_node.text not in keys:
                diagnostics.error(key_node, f"unknown key {quoted(key_node.text)} in {self.called}", self._remedy(key_node.text))
        for key in self.keys:
            if key.required and key.name not in present:
                self._say_missing(key, node, label, diagnostics)
        waiting = {name for name in present.keys() & keys.keys() if self._waits(keys[name], present[name][1], diagnostics)}
        written = {name: value for name, (_, value) in present.items() if name in keys and name not in waiting}
        read = {name: keys[name].type.read(value, f"'{name}'", diagnostics) for name, value in written.items()}
        return Values({name: value for name, value in read.items() if value is not None}, node)

    def schema(self) -> JsonSchema:
        properties = {key.name: _described(key) for key in self.keys}
        required = [key.name for key in self.keys if key.required]
        schema: JsonSchema = {"type": "object", "properties": properties, "additionalProperties": False}
        return schema | ({"required": required} if required else {})

    def words(self) -> str:
        return "mapping of " + ", ".join(f"`{key.name}`" for key in self.keys)

    def _waits(self, key: Key, value: Node, diagnostics: Diagnostics) -> bool:
        """Whether the value is marked as still to be written; a required one cannot wait."""
        if not is_waiting(value):
            return False
        if key.required:
            diagnostics.error(value, f"'{key.name}' is still to be written", f"give it as in '{key.name}: {key.example}'")
        else:
            say_waiting(value, f"'{key.name}'", diagnostics)
        return True

    def _say_missing(self, key: Key, node: MapNode, label: str, diagnostics: Diagnostics) -> None:
        empty = next((key_node for key_node, _ in node.entries if key_node.text == key.name), None)
        at: Placed = empty or (node if node.entries else Place(node.line, node.column))
        wrong = f"'{key.name}' is empty" if empty else f"'{key.name}' is missing in {self.called}"
        diagnostics.error(at, wrong, f"give it as in '{key.name}: {key.example}'")

    def _remedy(self, name: str) -> str:
        if name.isdigit():
            return "a decimal number has a point, not a comma"
        return dict(self.remedies).get(name) or hint_for(name, (key.name for key in self.keys))

    def _example(self) -> str:
        shown = [key for key in self.keys if key.required][:2] or list(self.keys[:1])
        more = "" if len(shown) == len(self.keys) else ", …"
        return "write it as {" + ", ".join(f"{key.name}: {key.example}" for key in shown) + more + "}"


def _absent(record: Any) -> dict[str, None]:
    """The record's fields that have no default of their own."""
    bare_fields = (f for f in fields(record) if f.default is NODEFAULT and f.default_factory is NODEFAULT)
    return dict.fromkeys(f.name for f in bare_fields)


def bare(value: Any) -> Any:
    """The value alone, without the places it was kept with."""
    if isinstance(value, tuple):
        return tuple(bare(item) for item in value)
    return bare(value.value) if isinstance(value, Kept) else value


def _described(key: Key) -> JsonSchema:
    """With its explanation; a key that need not be there may also be left empty."""
    about: JsonSchema = {"description": f"{key.explained} Example: {key.name}: {key.example}"}
    return about | (key.type.schema() if key.required else {"anyOf": [key.type.schema(), {"type": "null"}]})
