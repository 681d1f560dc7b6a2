"""The model -> a page of every key, in Markdown."""

from collections.abc import Iterator

from sitegen.reading.model.author_file import AuthorFile
from sitegen.reading.model.registry import AUTHOR_FILES
from sitegen.reading.value_types.collections import ListOf, MapOf, OneOf
from sitegen.reading.value_types.group import Group, Key
from sitegen.reading.value_types.value_type import ValueType

HEADINGS = "| key | value | meaning | example |\n|---|---|---|---|"


def key_reference() -> str:
    """Every file an author writes, every key it may hold, what may stand behind it, and an example."""
    return "\n\n".join(["# Keys", *(_of_file(model) for model in AUTHOR_FILES)]) + "\n"


def _of_file(model: AuthorFile) -> str:
    parts = [f"## {model.pattern}", model.explained, _table(model.group)]
    for keys, group in _groups_once(model.group):
        parts += [f"### {' and '.join(keys)} of {model.pattern}", _table(group)]
    return "\n\n".join(parts)


def _table(group: Group) -> str:
    return "\n".join([HEADINGS, *(_row(key) for key in group.keys)])


def _row(key: Key) -> str:
    need = " *required*" if key.required else f" Without it: {_cell(key.default)}." if key.default else ""
    return f"| `{key.name}` | {_cell(key.type.words())} | {_cell(key.explained)}{need} | `{_cell(key.example)}` |"


def _cell(text: str) -> str:
    """A bar would end the cell."""
    return text.replace("\\|", "|").replace("|", "\\|")


def _groups_once(group: Group) -> list[tuple[list[str], Group]]:
    """Each with every key that leads to it: a group that two keys share is described once."""
    described: list[tuple[list[str], Group]] = []
    for key, inner in _groups_in(group):
        keys = next((keys for keys, other in described if other is inner), None)
        if keys is None:
            described.append(([key], inner))
        else:
            keys.append(key)
    return described


def _groups_in(group: Group) -> Iterator[tuple[str, Group]]:
    """The groups inside a group by the key that leads to them, outer ones first."""
    for key in group.keys:
        for inner in _inner_groups(key.type):
            yield f"`{key.name}`", inner
            yield from ((f"{path} in `{key.name}`", deeper) for path, deeper in _groups_in(inner))


def _inner_groups(type_: ValueType) -> Iterator[Group]:
    match type_:
        case Group():
            yield type_
        case ListOf():
            yield from _inner_groups(type_.item)
        case MapOf():
            yield from _inner_groups(type_.value)
        case OneOf():
            yield from _inner_groups(type_.long)
