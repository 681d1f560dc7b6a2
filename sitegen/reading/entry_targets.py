"""What an entry points at: the author's own keys laid over the catalogue's."""

from functools import lru_cache
from typing import Any

from msgspec import Struct

from sitegen.catalogue.lookup import find_object, separation_deg, suggest_name
from sitegen.catalogue.sky_object import SkyObject
from sitegen.diary.addresses import slug_of
from sitegen.diary.target import Positions, Target
from sitegen.problems import hint_for
from sitegen.reading.diagnostics import Diagnostics, Placed
from sitegen.reading.nodes import ListNode, quoted
from sitegen.reading.position_table import positions_in
from sitegen.reading.value_types.group import Values

MOVING = "moving"
_WANDERERS = frozenset(
    {"sun", "moon", "mercury", "venus", "mars", "jupiter", "saturn", "uranus", "neptune", "pluto", "sonne", "mond", "merkur"}
)
# Farther than any catalogue's centre of a large nebula is from another's; hours read as degrees are farther still.
FAR_FROM_CATALOGUE_DEG = 3.0


class EntryTargets(Struct, frozen=True):
    """`whole` is False where one of them could not be made out: then their numbers mean nothing."""

    targets: tuple[Target, ...]
    whole: bool


def targets_of(values: Values, diagnostics: Diagnostics) -> EntryTargets:
    listed = values.items_of("target")
    node = values.node.get("target")
    written = len(node.items) if isinstance(node, ListNode) else len(listed)
    targets: list[Target] = []
    for kept in listed:
        target = _own(kept.value, diagnostics) if isinstance(kept.value, Values) else _catalogued(kept.value, kept, diagnostics)
        if target is not None and target.slug in {earlier.slug for earlier in targets}:
            diagnostics.error(kept, f"{quoted(target.name)} stands here twice", "name each target once")
        elif target is not None:
            targets.append(target)
    return EntryTargets(tuple(targets), whole=len(targets) == written)


def target_number(name: str, at: Placed, among: EntryTargets, diagnostics: Diagnostics) -> int | None:
    """The index of the entry's target that a log names, by any name it has."""
    wanted = {name.casefold(), slug_of(name)}
    sky_object = _found(name)
    for number, target in enumerate(among.targets):
        names = {word.casefold() for word in (target.name, target.slug, *target.aliases)}
        if names & wanted or (sky_object is not None and slug_of(sky_object.name) == target.slug):
            return number
    if among.whole:
        names_given = [target.name for target in among.targets]
        remedy = hint_for(name, names_given) if names_given else "name it under 'target' of the entry too"
        diagnostics.error(at, f"{quoted(name)} is none of the entry's targets", remedy)
    return None


def _catalogued(name: str, at: Placed, diagnostics: Diagnostics) -> Target | None:
    sky_object = _found(name)
    if sky_object is None:
        diagnostics.error(at, f"{quoted(name)} is in no catalogue here", _remedy(name))
        return None
    return _target(sky_object.name, sky_object, {})


def _own(values: Values, diagnostics: Diagnostics) -> Target | None:
    """A mapping: without a place of its own it has the catalogue's."""
    name = values.get("name")
    if name is None or not place_is_whole(values, diagnostics):
        return None
    own: dict[str, Any] = dict(values.values)
    if _moving(values):
        return Target(slug_of(name), name, None, None, MOVING, own.get("size_arcmin"), positions=_positions(values, diagnostics))
    if own.get("positions") is not None:
        diagnostics.error(values.place("positions"), "only what is moving has 'positions'", "add 'kind: moving', or drop it")
    sky_object = _found(name)
    if sky_object is None and "ra" not in own:
        if values.node.get("ra") is None and values.node.get("dec") is None:
            diagnostics.error(values.place("name"), f"{quoted(name)} is in no catalogue here", _remedy(name))
        return None
    _compare(values, sky_object, diagnostics)
    return _target(name, sky_object, own)


def _positions(values: Values, diagnostics: Diagnostics) -> Positions | None:
    file = values.get("positions")
    return None if file is None else positions_in(file, diagnostics.content, diagnostics)


def _moving(values: Values) -> bool:
    kind = values.get("kind")
    return kind is not None and kind.casefold() == MOVING


def place_is_whole(values: Values, diagnostics: Diagnostics) -> bool:
    given = [axis for axis in ("ra", "dec") if values.node.get(axis) is not None]
    if _moving(values) and given:
        diagnostics.error(values.place(given[0]), "what is moving has no fixed place", "leave out 'ra' and 'dec', or the kind")
        return False
    if len(given) == 1:
        other = "dec" if given == ["ra"] else "ra"
        diagnostics.error(values.place(given[0]), f"'{given[0]}' stands without '{other}'", f"give '{other}' too, or neither")
        return False
    return True


def _compare(values: Values, sky_object: SkyObject | None, diagnostics: Diagnostics) -> None:
    """Hours typed as degrees, or a lost sign, show in the distance from the catalogue's place."""
    ra_deg, dec_deg = values.get("ra"), values.get("dec")
    if sky_object is None or ra_deg is None or dec_deg is None:
        return
    apart_deg = separation_deg(ra_deg, dec_deg, sky_object.ra_deg, sky_object.dec_deg)
    if apart_deg > FAR_FROM_CATALOGUE_DEG:
        wrong = f"this is {apart_deg:.0f}° from where the catalogue has {sky_object.name}"
        diagnostics.warn(values.place("ra"), wrong, "a plain number is degrees; hours are written as 19 09 46")


def _target(name: str, sky_object: SkyObject | None, own: dict[str, Any]) -> Target:
    """`own` are the author's keys, which win. The address follows the catalogue, so that one object has one page."""
    ra_deg, dec_deg = own.get("ra", sky_object and sky_object.ra_deg), own.get("dec", sky_object and sky_object.dec_deg)
    return Target(
        slug=slug_of(sky_object.name if sky_object else name),
        name=name,
        ra_deg=ra_deg,
        dec_deg=dec_deg,
        kind=own.get("kind", sky_object and sky_object.kind),
        size_arcmin=own.get("size_arcmin", sky_object and sky_object.size_arcmin),
        magnitude=sky_object.magnitude if sky_object else None,
        aliases=tuple(other for other in (sky_object.name, *sky_object.aliases) if other != name) if sky_object else (),
        position_angle_deg=sky_object.position_angle_deg if sky_object else None,
    )


@lru_cache(maxsize=4_000)
def _found(name: str) -> SkyObject | None:
    return find_object(name)


def _remedy(name: str) -> str:
    if name.casefold() in _WANDERERS:
        return f"write 'target: {{name: {name}, kind: moving}}'"
    near = suggest_name(name)
    own = "give its ra and dec, or 'kind: moving' for what wanders"
    return f"did you mean '{near}'? else {own}" if near else own
