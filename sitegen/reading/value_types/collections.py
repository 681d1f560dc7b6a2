"""Lists of values, and mappings whose keys are the author's own."""

from typing import Any

from msgspec import Struct

from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import ListNode, MapNode, Node, TextNode, quoted, seen
from sitegen.reading.value_types.value_type import JsonSchema, Kept, ValueType, is_waiting, say_waiting


class ListOf(Struct, frozen=True):
    """Read as a tuple of `Kept` values, without those that have a problem; or one value alone where `or_one`."""

    item: ValueType
    or_one: bool = False

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> tuple[Kept, ...] | None:
        if isinstance(node, ListNode):
            kept = [Kept(self._item(item, f"an item of {label}", diagnostics), item) for item in node.items]
        elif self.or_one:
            kept = [Kept(self.item.read(node, label, diagnostics), node)]
        else:
            diagnostics.error(node, f"{label} is {seen(node)}, not a list", _as_list(node))
            return None
        return tuple(part for part in kept if part.value is not None)

    def _item(self, item: Node, label: str, diagnostics: Diagnostics) -> Any:
        """None for one that is still to be written."""
        if is_waiting(item):
            say_waiting(item, label, diagnostics)
            return None
        return self.item.read(item, label, diagnostics)

    def schema(self) -> JsonSchema:
        several: JsonSchema = {"type": "array", "items": self.item.schema()}
        return {"anyOf": [self.item.schema(), several]} if self.or_one else several

    def words(self) -> str:
        return f"{self.item.words()}; or a list of such" if self.or_one else f"list of: {self.item.words()}"


class MapOf(Struct, frozen=True):
    """Read as {key: `Kept` value}, without the pairs that have a problem. `key` reads the author's key."""

    key: ValueType
    value: ValueType
    key_words: str

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> dict[Any, Kept] | None:
        if not isinstance(node, MapNode):
            diagnostics.error(node, f"{label} is {seen(node)}, not a mapping", f"write '{self.key_words}: …' lines under it")
            return None
        return dict(self._pairs(node, label, diagnostics))

    def schema(self) -> JsonSchema:
        return {"type": "object", "additionalProperties": self.value.schema()}

    def words(self) -> str:
        return f"mapping of {self.key_words} to: {self.value.words()}"

    def _pairs(self, node: MapNode, label: str, diagnostics: Diagnostics) -> list[tuple[Any, Kept]]:
        pairs = []
        for key_node, value_node in node.entries:
            key = self.key.read(key_node, f"a key of {label}", diagnostics)
            value = self.value.read(value_node, f"{quoted(key_node.text)} in {label}", diagnostics)
            if key is not None and value is not None:
                pairs.append((key, Kept(value, key_node)))
        return pairs


class OneOf(Struct, frozen=True):
    """A short form as text, or the long one as a mapping."""

    short: ValueType
    long: ValueType

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> Any:
        return (self.long if isinstance(node, MapNode) else self.short).read(node, label, diagnostics)

    def schema(self) -> JsonSchema:
        return {"anyOf": [self.short.schema(), self.long.schema()]}

    def words(self) -> str:
        return f"{self.short.words()}; or {self.long.words()}"


def _as_list(node: Node) -> str:
    short = isinstance(node, TextNode) and len(node.text) < 40 and not set(node.text) & set(",[]{}:#")
    return f"write [{node.text}]" if short and isinstance(node, TextNode) else "begin each item with '- '"
