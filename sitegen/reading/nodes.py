"""What an author's structured file holds, before anyone asks what it means: text, lists and mappings, each in its place."""

from msgspec import Struct

EMPTY_WORDS = frozenset({"", "~", "null"})


class TextNode(Struct, frozen=True):
    """`plain` is False where the author put quotes round the text or wrote it as a block. Lines and columns count from 1."""

    text: str
    line: int
    column: int
    plain: bool = True

    @property
    def empty(self) -> bool:
        """A key with nothing behind it is as good as absent."""
        return self.plain and self.text in EMPTY_WORDS


class ListNode(Struct, frozen=True):
    items: tuple["Node", ...]
    line: int
    column: int


class MapNode(Struct, frozen=True):
    """`entries` in the author's order, each key once."""

    entries: tuple[tuple[TextNode, "Node"], ...]
    line: int
    column: int

    def get(self, name: str) -> "Node | None":
        return next((value for key, value in self.entries if key.text == name), None)


Node = TextNode | ListNode | MapNode


def seen(node: Node) -> str:
    """How a problem line calls what stands there."""
    if isinstance(node, ListNode):
        return "a list"
    if isinstance(node, MapNode):
        return "a mapping"
    return quoted(node.text) if node.text else "empty"


def quoted(text: str) -> str:
    return f"'{shortened(text)}'"


def shortened(text: str) -> str:
    """The author's words, few enough for one line."""
    short = " ".join(text[:300].split())
    return f"{short[:57]}…" if len(short) > 60 else short
