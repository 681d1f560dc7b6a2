"""Short ways to ask the engine, for tests."""

from collections.abc import Sequence
from datetime import UTC, date, datetime, timedelta

import numpy as np

from sitegen.sky.answer import NightSky, SkyAnswer
from sitegen.sky.engine import sky_pass
from sitegen.sky.place import Place
from sitegen.sky.request import SkyRequest


def unix(text: str) -> float:
    """UTC unix seconds of an ISO moment without a zone."""
    return datetime.fromisoformat(text).replace(tzinfo=UTC).timestamp()


def ask(
    place: Place,
    evenings: Sequence[date],
    directions: Sequence[tuple[float, float]] = (),
    moments_s: Sequence[float] = (),
    sub_night: Sequence[int] | None = None,
    sub_direction: Sequence[int] | None = None,
) -> SkyAnswer:
    """One place, every direction on every night; subs default to night 0 and direction 0 (none where there are none)."""
    count = len(moments_s)
    return sky_pass(
        SkyRequest(
            places=(place,),
            nights=tuple((0, evening) for evening in evenings),
            directions=tuple(directions),
            night_targets=tuple((n, d) for n in range(len(evenings)) for d in range(len(directions))),
            sub_mid_s=np.array(moments_s, float),
            sub_night=np.array([0] * count if sub_night is None else sub_night, dtype=np.int64),
            sub_direction=np.array([0 if directions else -1] * count if sub_direction is None else sub_direction, dtype=np.int64),
        )
    )


def night_at(place: Place, evening: str) -> NightSky:
    """One night's record."""
    return ask(place, [date.fromisoformat(evening)]).nights[0]


def evenings_of(year: int) -> list[date]:
    """Every date of a year."""
    first = date(year, 1, 1)
    return [first + timedelta(days=i) for i in range((date(year + 1, 1, 1) - first).days)]
