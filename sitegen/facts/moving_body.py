"""What a moving target is followed by: the bundled theory of the Moon and the planets, or the author's table."""

from sitegen.diary.target import Target
from sitegen.sky.bodies import MOON, PLANETS
from sitegen.sky.body import Body, PlaceTable

_IN_GERMAN = {"mond": MOON, "merkur": "mercury", "neptun": "neptune"}
_NAMES = {MOON: MOON, **{planet: planet for planet in PLANETS}, **_IN_GERMAN}


def body_of(target: Target | None) -> Body | None:
    """The author's table wins, then its name, English or German; None for what has a fixed place, and for what nobody here can
    follow."""
    if target is None or target.kind != "moving":
        return None
    table = target.positions
    if table is not None:
        return PlaceTable(table.times_s, table.ra_deg, table.dec_deg)
    return _NAMES.get(target.name.casefold().removeprefix("the "))


def followed_by(target: Target | None) -> str | None:
    """The source of its places."""
    body = body_of(target)
    if target is None or body is None:
        return None
    if target.positions is not None:
        return target.positions.file
    return "ERFA moon98" if body == MOON else "ERFA plan94"
