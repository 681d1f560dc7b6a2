"""Everything a diary asks of the sky, in one record, so that it is answered in one pass."""

from datetime import date

from msgspec import Struct

from sitegen.sky.arrays import Floats, Indices
from sitegen.sky.body import Body
from sitegen.sky.place import Place

NO_DIRECTION = -1


class SkyRequest(Struct, frozen=True, eq=False):
    """Places, nights, directions and subs; the rest are indices into those tuples.

    nights: (index into places, date of the evening).
    directions: ICRS (ra_deg, dec_deg).
    night_targets: (index into nights, index into directions).
    sub_mid_s: UTC unix seconds of mid-exposure, float64, one a sub.
    sub_night, sub_direction: integer arrays as long as sub_mid_s; NO_DIRECTION (-1) for a sub of
        something that has no fixed place.
    body_nights: (index into nights, what moves). sub_bodies: (index into subs, what moves).
    A sub must lie in its night, two hours either side allowed.
    """

    places: tuple[Place, ...]
    nights: tuple[tuple[int, date], ...]
    directions: tuple[tuple[float, float], ...]
    night_targets: tuple[tuple[int, int], ...]
    sub_mid_s: Floats
    sub_night: Indices
    sub_direction: Indices
    body_nights: tuple[tuple[int, Body], ...] = ()
    sub_bodies: tuple[tuple[int, Body], ...] = ()
