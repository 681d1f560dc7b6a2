"""Round values for the labels of an axis."""

from collections.abc import Callable, Iterator, Sequence

from sitegen.number_text import NumberText

TENTHS = (10, 20, 25, 50)
"""1, 2, 2.5 and 5, in tenths, as steps are counted: whole numbers have no last bits."""


def round_steps(low: float, high: float, most: int, above: float | None = None) -> list[float]:
    """Multiples of the least round step of which `most` span the stretch from `low` (0 or more) to `high`: those within it, or
    from `above` on where that is given. A step is 0.1, 0.2, 0.5, or 1, 2, 2.5, 5 times a power of ten."""
    step = next(step for step in _steps() if 10 * (high - low) <= step * most)
    least = low if above is None else above
    return [number * step / 10 for number in range(int(10 * high / step) + 1) if number * step / 10 >= least]


def _steps() -> Iterator[int]:
    """In tenths."""
    yield from (1, 2, 5)
    scale = 1
    while True:
        yield from (scale * step for step in TENTHS)
        scale *= 10


def hour_text(places: Sequence[float], numbers: NumberText, hour: str) -> Callable[[float], str]:
    """Labels in hours, with a decimal only where a step needs it."""
    decimals = 0 if all(float(place).is_integer() for place in places) else 1
    return lambda hours: f"{numbers.number(hours, decimals)}\u202f{hour}"
