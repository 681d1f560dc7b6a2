"""The contract of a fact: how it is obtained, from which source, and how it is shown.

Its place and its type stand in the registry.
"""

from collections.abc import Callable
from typing import Any, Generic, TypeAlias, TypeVar

from msgspec import Struct

Row = TypeVar("Row", contravariant=False)
COMMON_PRACTICE = "common practice, no source"
Quantity: TypeAlias = float | int | None
"""A whole number is published without a point."""
Text: TypeAlias = str | None
Truth: TypeAlias = bool | None
Pair: TypeAlias = tuple[float | int, float | int] | None
Numbers: TypeAlias = tuple[float | int | None, ...]


class Fact(Generic[Row], Struct, frozen=True):
    """`compute` takes the scope's row (see views.py) and gives what JSON can hold; None where it is not known. A fact of a sub
    gives the whole column at once. `decimals` is how many a published number keeps; None for what is not rounded (text, counts).
    `unit` is how a reader sees it ('' for none).
    """

    title: str
    unit: str
    compute: Callable[[Row], Any]
    explained: str
    source: str
    decimals: int | None = None
