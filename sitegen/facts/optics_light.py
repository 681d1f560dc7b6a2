"""Light gathered with each train, where an entry used several."""

from msgspec import Struct

from sitegen.facts.fact import Fact
from sitegen.facts.integration_totals import LOG
from sitegen.facts.views import OpticsView, TrainLight


class TrainFilter(Struct, frozen=True):
    total_s: float | int
    kept: int
    discarded: int


def integration_s(view: OpticsView) -> float:
    return sum((light.kept_s for light in view.light), 0.0)


def by_filter(view: OpticsView) -> dict[str, TrainFilter]:
    return {light.filter_key: _row(light) for light in view.light}


def _row(light: TrainLight) -> TrainFilter:
    return TrainFilter(round(light.kept_s, 3), light.kept, light.discarded)


INTEGRATION_S: Fact[OpticsView] = Fact(
    "Integration with this train", "s", integration_s, "Sum of the kept light frames taken with this train.", LOG, 3
)
BY_FILTER: Fact[OpticsView] = Fact(
    "By filter with this train", "", by_filter, "Light frames taken with this train, by filter.", LOG
)
