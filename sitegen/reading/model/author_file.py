"""The contract of a kind of author file."""

from msgspec import Struct

from sitegen.reading.value_types.group import Group


class AuthorFile(Struct, frozen=True):
    """`pattern` says where such files lie in content/; `group` is what their YAML (or front matter) may hold."""

    name: str
    pattern: str
    explained: str
    group: Group
