"""One plain value or a list of such."""

from typing import Any

from msgspec import Struct

from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import ListNode, Node
from sitegen.reading.value_types.value_type import JsonSchema, ValueType


class OneOrMore(Struct, frozen=True):
    """Read as a tuple of plain values; None where any of them has a problem."""

    item: ValueType

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> tuple[Any, ...] | None:
        items = node.items if isinstance(node, ListNode) else (node,)
        values = tuple(self.item.read(item, label, diagnostics) for item in items)
        return None if any(value is None for value in values) else values

    def schema(self) -> JsonSchema:
        return {"anyOf": [self.item.schema(), {"type": "array", "items": self.item.schema()}]}

    def words(self) -> str:
        return f"{self.item.words()}; or a list of such"
