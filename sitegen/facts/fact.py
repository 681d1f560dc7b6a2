"""The contract of a fact: where it stands in facts.json, how it is obtained, and from which source."""

from collections.abc import Callable
from typing import Any, Generic, Literal, TypeVar

from msgspec import Struct

Row = TypeVar("Row", contravariant=False)
Scope = Literal["entry", "target", "optics", "integration", "night", "sub", "picture", "entry_end"]
COMMON_PRACTICE = "common practice, no source"


class Fact(Generic[Row], Struct, frozen=True):
    """`key` is the place inside its scope's object in facts.json, dotted where it is nested.

    `compute` takes the scope's row (see views.py) and gives what JSON can hold; None where it is not known. A fact of
    scope 'sub' gives the whole column at once. `decimals` is how many a published number keeps; None for what is not
    rounded (text, counts). `unit` is how a reader sees it ('' for none).
    """

    key: str
    title: str
    unit: str
    compute: Callable[[Row], Any]
    explained: str
    source: str
    decimals: int | None = None
