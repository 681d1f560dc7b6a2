"""The reader's model -> YAML that shows every key and what it means: those with a value as they are, the others behind '#'."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from sitegen.reading.value_types.collections import ListOf, MapOf, OneOf
from sitegen.reading.value_types.group import Group, Key
from sitegen.reading.value_types.value_type import ValueType

COMMENT_AT = 46
STEP = "  "


def sample_yaml(group: Group, values: Mapping[str, Any]) -> str:
    """`values` holds, by key, text as YAML has it, a mapping for a group, or a list of mappings.

    A line that begins with '#' comes to life when that one character is taken away.
    """
    return "\n".join(_group_lines(group, values, "")) + "\n"


def _group_lines(group: Group, values: Mapping[str, Any], indent: str) -> Iterator[str]:
    for key in group.keys:
        yield from _key_lines(key, values[key.name], indent) if key.name in values else _asleep(_example_lines(key, indent))


def _key_lines(key: Key, value: Any, indent: str) -> Iterator[str]:
    inner = _inner(key.type)
    if isinstance(value, str) or inner is None:
        yield _explained(f"{indent}{key.name}: {value}", key.explained)
        return
    yield _explained(f"{indent}{key.name}:", key.explained)
    if isinstance(key.type, Group):
        yield from _group_lines(inner, value, indent + STEP)
    elif isinstance(value, Mapping):
        yield from _named_lines(inner, value, indent + STEP)
    else:
        for item in value:
            yield from _as_item(list(_group_lines(inner, item, indent + STEP + STEP)), indent + STEP)


def _named_lines(inner: Group, named: Mapping[str, Mapping[str, Any]], indent: str) -> Iterator[str]:
    """What stands under names of the author's own."""
    for name, values in named.items():
        yield f"{indent}{name}:"
        yield from _group_lines(inner, values, indent + STEP)


def _example_lines(key: Key, indent: str) -> Iterator[str]:
    """The key with its example; where a group stands behind it, every key of the group with its own."""
    inner = _inner(key.type)
    if inner is None or isinstance(key.type, OneOf):
        yield _explained(f"{indent}{key.name}: {key.example}", key.explained)
        return
    yield _explained(f"{indent}{key.name}:", key.explained)
    if isinstance(key.type, MapOf):
        yield f"{indent}{STEP}{_first_name(key)}:"
    deeper = indent + (STEP if isinstance(key.type, Group) else STEP + STEP)
    lines = [line for inner_key in inner.keys for line in _example_lines(inner_key, deeper)]
    yield from _as_item(lines, indent + STEP) if isinstance(key.type, ListOf) else lines


def _as_item(lines: Sequence[str], indent: str) -> Iterator[str]:
    """The first living line carries the dash; where none lives, the first."""
    first = next((number for number, line in enumerate(lines) if not line.startswith("#")), 0)
    for number, line in enumerate(lines):
        yield f"{indent}- {line[len(indent) + 2 :]}" if number == first else line


def _asleep(lines: Iterator[str]) -> Iterator[str]:
    """What is said of the keys stays in its column."""
    for line in lines:
        head, _, said = line.partition("   # ")
        yield f"#{head}  # {said}" if said else f"#{line}"


def _explained(line: str, explained: str) -> str:
    return f"{line:<{COMMENT_AT}}  # {explained}"


def _first_name(key: Key) -> str:
    """The name in the key's example: '{Ha: {kind: narrowband}}' shows 'Ha'."""
    return key.example.strip("{").partition(":")[0]


def _inner(type_: ValueType) -> Group | None:
    """The group behind a key: its own, of its items, or under its names."""
    match type_:
        case Group():
            return type_
        case ListOf():
            return _inner(type_.item)
        case MapOf():
            return _inner(type_.value)
        case OneOf():
            return type_.long if isinstance(type_.long, Group) else None
    return None
