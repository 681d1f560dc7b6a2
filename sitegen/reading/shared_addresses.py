"""Targets and topics of different names that would share an address, and with it a page."""

from collections.abc import Iterable, Iterator
from functools import lru_cache

from msgspec import Struct

from sitegen.catalogue.lookup import find_object
from sitegen.catalogue.sky_object import SkyObject
from sitegen.diary import addresses
from sitegen.diary.target import Target
from sitegen.problems import Problem
from sitegen.reading.diagnostics import Placed
from sitegen.reading.nodes import quoted
from sitegen.reading.value_types.group import Values


class AddressedName(Struct, frozen=True, gc=False):
    """`address` of the page that `name` gets; `same_as` is equal for names of one thing; where the author wrote it."""

    address: str
    name: str
    same_as: str
    path: str
    line: int
    column: int


def addressed_names(values: Values, targets: tuple[Target, ...], shown: str) -> tuple[AddressedName, ...]:
    """Of one entry whose targets all could be made out."""
    of_targets = zip(targets, values.items_of("target"), strict=True)
    of_topics = ((kept.value, kept) for kept in values.items_of("topics"))
    return (
        *(_named(addresses.target(target.slug), target.name, _thing(target), shown, at) for target, at in of_targets),
        *(_named(addresses.topic(addresses.slug_of(topic)), topic, topic, shown, at) for topic, at in of_topics),
    )


def _named(address: str, name: str, same_as: str, shown: str, at: Placed) -> AddressedName:
    return AddressedName(address, name, same_as, shown, at.line, at.column)


def _thing(target: Target) -> str:
    """One object of the catalogues has many names."""
    listed = _in_catalogues(target.name)
    return listed.name if listed is not None and addresses.slug_of(listed.name) == target.slug else target.name


@lru_cache(maxsize=4_000)
def _in_catalogues(name: str) -> SkyObject | None:
    return find_object(name)


def shared_addresses(names: Iterable[AddressedName]) -> Iterator[Problem]:
    """An error for each name whose address another name took before it, in the order given."""
    first: dict[str, AddressedName] = {}
    for named in names:
        earlier = first.setdefault(named.address, named)
        if earlier.same_as != named.same_as:
            other = f"{quoted(earlier.name)} of {earlier.path}:{earlier.line}"
            wrong = f"{quoted(named.name)} and {other} would share the page {named.address}"
            remedy = f"write {quoted(earlier.name)} here too if they are one, else rename one of them"
            yield Problem(named.path, named.line, named.column, wrong, remedy)
