"""YAML text -> nodes in their places. Built from the parser's events, with a stack of its own: no depth can exhaust Python's,
and a parser written in C is as good as one in Python."""

from collections.abc import Iterator
from typing import Any

import yaml
from msgspec import Struct, field

from sitegen.reading.diagnostics import Diagnostics, Place
from sitegen.reading.nodes import ListNode, MapNode, Node, TextNode, quoted
from sitegen.reading.yaml_mistakes import mistake_in

FAST_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
DEEPEST = 24
MOST_VALUES = 50_000
MOST_BY_ALIAS = 1_000


def read_yaml(text: str, diagnostics: Diagnostics, first_line: int = 1) -> Node | None:
    """The one document in the text; None after a problem or where the text holds nothing.

    `first_line` is the number of the text's first line in the author's file.
    """
    composer = _Composer(diagnostics, first_line)
    try:
        for event in yaml.parse(text, FAST_LOADER):
            composer.take(event)
    except _Refused:
        return None
    except (yaml.YAMLError, ValueError, OverflowError) as trouble:
        mistake = mistake_in(_plainer(text, trouble), text)
        diagnostics.error(Place(mistake.line + first_line, mistake.column + 1), mistake.wrong, mistake.remedy)
        return None
    return composer.root


def _plainer(text: str, trouble: Exception) -> Exception:
    """The same complaint from the parser in Python, whose words are the ones known here; the first one's where it has none."""
    if "nesting" in str(trouble):
        return trouble
    try:
        for _ in yaml.parse(text[:100_000], yaml.SafeLoader):
            pass
    except (yaml.YAMLError, ValueError, OverflowError) as plainer:
        return plainer
    return trouble


class _Refused(Exception):
    """The text goes beyond what a diary needs; the problem has been put down."""


class _Open(Struct):
    """A list or mapping not yet closed. `held` alternates keys and values in a mapping."""

    is_map: bool
    place: Place
    anchor: str | None
    count_before: int
    held: list[Node] = field(default_factory=list)


class _Composer:
    def __init__(self, diagnostics: Diagnostics, first_line: int) -> None:
        self.diagnostics = diagnostics
        self.first_line = first_line
        self.root: Node | None = None
        self.open: list[_Open] = []
        self.anchored: dict[str, tuple[Node, int]] = {}
        self.count = 0
        self.by_alias = 0

    def take(self, event: Any) -> None:
        handler = _HANDLERS.get(type(event))
        if handler is not None:
            handler(self, event)

    def document(self, event: Any) -> None:
        if self.root is not None:
            self._refuse(event, "a second document begins here", "keep one, without '---' between")

    def scalar(self, event: Any) -> None:
        self._refuse_tag(event)
        if self.count >= MOST_VALUES:
            self._refuse(event, f"this file holds more than {MOST_VALUES} values", "logs and tables belong into logs/")
        place = self._place(event)
        self._put(TextNode(event.value, place.line, place.column, not event.style), event.anchor, self.count)

    def begin(self, event: Any) -> None:
        self._refuse_tag(event)
        if len(self.open) == DEEPEST:
            self._refuse(event, f"lists and mappings nest deeper than {DEEPEST} levels here", "nothing in a diary needs that")
        is_map = isinstance(event, yaml.MappingStartEvent)
        self.open.append(_Open(is_map, self._place(event), event.anchor, self.count))

    def end(self, event: Any) -> None:
        done = self.open.pop()
        self._put(self._closed(done), done.anchor, done.count_before)

    def alias(self, event: Any) -> None:
        if event.anchor not in self.anchored:
            wrong = f"'*{event.anchor}' is a YAML alias with no matching anchor"
            self._refuse(event, wrong, "put quotes round text that begins with '*'")
        node, size = self.anchored[event.anchor]
        self.by_alias += size
        if self.by_alias > MOST_BY_ALIAS:
            self._refuse(event, f"YAML aliases expand to more than {MOST_BY_ALIAS} values up to here", "write them out")
        before, self.count = self.count, self.count + size - 1
        self._put(node, None, before)

    def _put(self, node: Node, anchor: str | None, count_before: int) -> None:
        self.count += 1
        if anchor is not None:
            self.anchored[anchor] = (node, self.count - count_before)
        if self.open:
            self.open[-1].held.append(node)
        else:
            self.root = node

    def _closed(self, done: _Open) -> Node:
        at = done.place
        if not done.is_map:
            return ListNode(tuple(done.held), at.line, at.column)
        pairs = zip(done.held[::2], done.held[1::2], strict=True)
        return MapNode(tuple(self._each_key_once(pairs)), at.line, at.column)

    def _each_key_once(self, pairs: Iterator[tuple[Node, Node]]) -> Iterator[tuple[TextNode, Node]]:
        first: dict[str, TextNode] = {}
        for key, value in pairs:
            if not isinstance(key, TextNode):
                remedy = "put quotes round text that begins with '[' or '{'"
                self.diagnostics.error(key, "a list or mapping stands where a key belongs", remedy)
            elif key.text in first:
                remedy = f"it is in line {first[key.text].line} already; keep one"
                self.diagnostics.error(key, f"the key {quoted(key.text)} stands here again", remedy)
            else:
                first[key.text] = key
                yield key, value

    def _refuse_tag(self, event: Any) -> None:
        if event.tag is not None:
            self._refuse(event, "a YAML tag ('!…') stands here", "put quotes round text that begins with '!'")

    def _refuse(self, event: Any, wrong: str, remedy: str) -> None:
        self.diagnostics.error(self._place(event), wrong, remedy)
        raise _Refused

    def _place(self, event: Any) -> Place:
        return Place(event.start_mark.line + self.first_line, event.start_mark.column + 1)


_HANDLERS: dict[type, Any] = {
    yaml.DocumentStartEvent: _Composer.document,
    yaml.ScalarEvent: _Composer.scalar,
    yaml.SequenceStartEvent: _Composer.begin,
    yaml.MappingStartEvent: _Composer.begin,
    yaml.SequenceEndEvent: _Composer.end,
    yaml.MappingEndEvent: _Composer.end,
    yaml.AliasEvent: _Composer.alias,
}
