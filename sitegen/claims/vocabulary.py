"""The words of one language by which claims are found. All folded."""

from collections.abc import Mapping

from msgspec import Struct

Words = frozenset[str]


class Vocabulary(Struct, frozen=True):
    """`aside`: a sentence with such a word speaks of a plan, of what is usual, of another time, or of what somebody else did.
    `several`: of more nights than one. `at_times`: of a part of the night. `hedges` and `parts` stand before a number that is no
    exact one, or that counts some of more. `whole`: phrases of a sum. `gathering`: verbs of taking subs. `all_night`: phrases of
    the whole night. `habits`: verbs in the present, of what is
    so in general. `clauses` begin another part of a sentence. `in_picture`: a sentence with such a word may speak of places in a
    picture. `taking`: those of `gathering` that mean nothing else."""

    numbers: Mapping[str, int]
    ordinals: Mapping[str, int]
    months: Mapping[str, int]
    weekdays: Mapping[str, int]
    on_a_day: Words
    before_day: Words
    aside: Words
    negations: Words
    several: Words
    at_times: Words
    hedges: Words
    parts: Words
    between: Words
    seasons: Words
    habits: Words
    clauses: Words
    in_picture: Words
    taking: Words
    subs: Words
    hours: Words
    nights: Words
    night: Words
    half_more: tuple[tuple[str, ...], ...]
    whole: tuple[str, ...]
    over: Words
    of: Words
    belonging: Words
    light: Words
    gathering: Words
    kept: Words
    discarded: Words
    filters: Mapping[str, Words]
    joining: Words
    all_night: tuple[str, ...]
    moon: Words
    moon_up: tuple[str, ...]
    moon_down: tuple[str, ...]
    moon_waning: tuple[str, ...]
    no_moon: tuple[str, ...]
    moonless: Words
    target: Words
    low: tuple[str, ...]
    high: tuple[str, ...]
    overhead: tuple[str, ...]
    directions: Mapping[str, str]
    in_the: tuple[tuple[str, ...], ...]
    calm: Words
    calm_phrases: tuple[str, ...]
    clear: Words
    throughout: Words
    wind: tuple[str, ...]
    cloud: tuple[str, ...]
    added: Words
    ago: Mapping[tuple[str, ...], float]


def words(text: str) -> Words:
    return frozenset(text.split())


def numbered(text: str, first: int) -> dict[str, int]:
    """'first second,zweite …' to their places; variants of one are joined by commas."""
    return {variant: number for number, group in enumerate(text.split(), first) for variant in group.split(",")}


def phrases(text: str) -> tuple[str, ...]:
    """Parted by bars."""
    return tuple(part.strip() for part in text.split("|"))
