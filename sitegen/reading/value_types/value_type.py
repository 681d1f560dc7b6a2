"""The contract of a value's type, and what most of them share."""

from typing import Any, Protocol

from msgspec import Struct

from sitegen.diary.to_write import GAP, is_gap, without_gaps
from sitegen.reading.diagnostics import Diagnostics, Placed
from sitegen.reading.nodes import Node, TextNode, seen

JsonSchema = dict[str, Any]


class ValueType(Protocol):
    """`read` gives the value, or None after a problem was put down; no type has None among its values.

    `label` is how the problem line calls the value: the key in quotes, or what stands for it in a list.
    """

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> Any: ...

    def schema(self) -> JsonSchema:
        """JSON Schema (draft 2020-12) of what an editor may accept: what `read` accepts and, where that cannot be said, more."""

    def words(self) -> str:
        """For the page of keys: 'number, mm, 1 to 20000'."""


class Kept(Struct, frozen=True):
    """A value beside the node it was read from, so that a later check can point at it."""

    value: Any
    node: Node

    @property
    def line(self) -> int:
        return self.node.line

    @property
    def column(self) -> int:
        return self.node.column


def is_waiting(node: Node) -> bool:
    """Whether nothing stands there but text that is still to be written."""
    return isinstance(node, TextNode) and is_gap(node.text) and not without_gaps(node.text)


def say_waiting(at: Placed, label: str, diagnostics: Diagnostics) -> None:
    diagnostics.warn(at, f"{label} is still to be written, and not published until it is", f"write it, without '{GAP}'")


def text_of(node: Node, label: str, diagnostics: Diagnostics, wanted: str, remedy: str = "") -> str | None:
    """The words of a scalar without the blanks round them; None after saying that something else stands there."""
    if isinstance(node, TextNode) and not node.empty and node.text.strip():
        return node.text.strip()
    if isinstance(node, TextNode):
        diagnostics.error(node, f"{label} is empty", remedy or f"give {wanted}")
    else:
        diagnostics.error(node, f"{label} is {seen(node)}, not {wanted}", remedy)
    return None
