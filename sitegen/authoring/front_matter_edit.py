"""One more log in an entry's front matter: a line or a word is put in, every other character stays as the author typed it."""

from collections.abc import Iterator

import yaml

from sitegen.reading.front_matter import FENCE
from sitegen.reading.yaml_text import FAST_LOADER


def with_log(text: str, log: str) -> str | None:
    """The entry's text naming `log`, too, under 'logs'; None where its front matter is none that can be added to safely."""
    lines = text.split("\n")
    closing = next((number for number, line in enumerate(lines) if number and line.rstrip() == FENCE), None)
    if closing is None:
        return None
    root = _composed(lines[1:closing])
    if not isinstance(root, yaml.MappingNode) or root.flow_style:
        return None
    logs = next((pair for pair in root.value if pair[0].value == "logs"), None)
    edited = _put_in(lines, closing, logs, log)
    return "\n".join(edited) if edited and log in _logs_named(edited) else None


def _put_in(lines: list[str], closing: int, logs: tuple[yaml.Node, yaml.Node] | None, log: str) -> list[str] | None:
    end = "\r" if lines[0].endswith("\r") else ""
    if logs is None:
        return [*lines[:closing], f"logs: [{log}]{end}", *lines[closing:]]
    key, value = logs
    if isinstance(value, yaml.SequenceNode) and value.flow_style:
        return _in_brackets(lines, value, log)
    if isinstance(value, yaml.SequenceNode):
        after = _last_line(value) + 2
        return [*lines[:after], f"{' ' * value.start_mark.column}- {log}{end}", *lines[after:]]
    if isinstance(value, yaml.ScalarNode) and value.value == "":
        row = key.end_mark.line + 1
        head, colon, rest = lines[row].partition(":")
        return [*lines[:row], f"{head}{colon} [{log}]{rest}", *lines[row + 1 :]]
    return None


def _in_brackets(lines: list[str], value: yaml.SequenceNode, log: str) -> list[str]:
    """Before the bracket that closes the list."""
    row, column = value.end_mark.line + 1, value.end_mark.column - 1
    before = lines[row][:column]
    comma = ", " if value.value and not before.rstrip().endswith(",") else ""
    added = f"{before.rstrip() if comma else before}{comma}{log}"
    return [*lines[:row], added + lines[row][column:], *lines[row + 1 :]]


def _last_line(node: yaml.Node) -> int:
    """Of the front matter, from 0. The end of a block node lies behind the comments that follow it; that of a leaf does not."""
    if isinstance(node, yaml.CollectionNode) and not node.flow_style and node.value:
        last = node.value[-1]
        return _last_line(last[1] if isinstance(last, tuple) else last)
    return int(node.end_mark.line)


def _logs_named(lines: list[str]) -> list[str]:
    closing = next(number for number, line in enumerate(lines) if number and line.rstrip() == FENCE)
    root = _composed(lines[1:closing])
    return [node.value for key, value in _pairs(root) if key.value == "logs" for node in value.value]


def _pairs(root: yaml.Node | None) -> Iterator[tuple[yaml.Node, yaml.Node]]:
    if isinstance(root, yaml.MappingNode):
        yield from root.value


def _composed(lines: list[str]) -> yaml.Node | None:
    try:
        return yaml.compose("\n".join(lines) + "\n", FAST_LOADER)
    except (yaml.YAMLError, ValueError, RecursionError):
        return None
