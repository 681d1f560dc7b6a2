"""What was taken with one train, and on which days an entry without subs used one."""

from collections.abc import Iterable, Sequence
from datetime import date

from sitegen.diary.entry import Entry
from sitegen.diary.sub import Sub
from sitegen.facts.views import TrainLight


def train_light(subs: Iterable[tuple[str, Sub]]) -> tuple[TrainLight, ...]:
    """By filter, as they first occur; each sub with what its total is filed under."""
    through: dict[str, list[Sub]] = {}
    for short, sub in subs:
        through.setdefault(short, []).append(sub)
    return tuple(_light(short, its_subs) for short, its_subs in through.items())


def _light(short: str, subs: Sequence[Sub]) -> TrainLight:
    kept = [sub.exposure_s for sub in subs if sub.kept]
    return TrainLight(short, len(kept), sum(kept, 0.0), len(subs) - len(kept))


def days_recalled(entry: Entry) -> list[date]:
    """The first and the last day of each time that it recalls; without one, when it was published."""
    whens = [item.when for item in entry.recalled if item.when is not None]
    return [day for when in whens for day in (when.first, when.last)] or [entry.published]
