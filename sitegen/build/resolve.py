"""The one place where a name becomes a function, and the heavy rooms behind it are loaded: when something has to be made."""

from pkgutil import resolve_name
from typing import Any


def resolve(name: str) -> Any:
    """`name` is 'module:function'. `tests/gate` holds every such text of the package against the files."""
    return resolve_name(name)
