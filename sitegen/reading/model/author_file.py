"""The contract of a kind of author file."""

from dataclasses import dataclass

from sitegen.reading.value_types.group import Group


@dataclass(frozen=True, slots=True)
class AuthorFile:
    """`pattern` says where such files lie in content/; `group` is what their YAML (or front matter) may hold."""

    name: str
    pattern: str
    explained: str
    group: Group
