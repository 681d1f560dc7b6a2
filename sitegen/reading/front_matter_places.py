"""Where a text of an entry's front matter stands, looked up in its file once more: few are asked for, no record keeps them."""

from collections.abc import Sequence
from datetime import date

from sitegen.reading.content_folder import ContentFolder
from sitegen.reading.diagnostics import Diagnostics, Place
from sitegen.reading.front_matter import split_entry
from sitegen.reading.nodes import ListNode, MapNode, Node, TextNode
from sitegen.reading.text_file import read_text
from sitegen.reading.yaml_text import read_yaml


def front_matter_of(relative: str, content: ContentFolder) -> Node | None:
    """What an entry's file holds above its text; None where it cannot be read any more."""
    diagnostics = Diagnostics(content.shown(relative), content, date.min)
    text = read_text(content.path(content.names.get(relative, relative)), diagnostics)
    parts = split_entry(text, diagnostics) if text is not None else None
    return read_yaml(parts.front_matter, diagnostics, 2) if parts else None


def place_in(node: Node | None, key: Sequence[str | int]) -> Place:
    """Of the deepest part of the key that is there: ('pictures', 0, 'caption'). Quoted text begins behind its quotation mark."""
    for step in key:
        inner = _inner(node, step)
        if inner is None:
            break
        node = inner
    if node is None:
        return Place()
    is_quoted = isinstance(node, TextNode) and not node.plain
    return Place(node.line, node.column + is_quoted)


def _inner(node: Node | None, step: str | int) -> Node | None:
    if isinstance(node, MapNode) and isinstance(step, str):
        return node.get(step)
    if isinstance(node, ListNode) and isinstance(step, int) and step < len(node.items):
        return node.items[step]
    return None
