"""Light gathered per filter against what was wanted, and per evening."""

from msgspec import Struct

from sitegen.facts.fact import Fact
from sitegen.facts.integration_recalled import recalled_by_filter
from sitegen.facts.integration_totals import LOG, seconds
from sitegen.facts.views import EntryView, SubInSky


class FilterTotals(Struct, frozen=True):
    """`wanted_s` is None where nothing was wanted; `recalled_s` has no log, and is in no other number."""

    total_s: float | int
    recalled_s: float | int
    kept: int
    discarded: int
    wanted_s: float | int | None


def by_filter(view: EntryView) -> dict[str, FilterTotals]:
    """Filters in the rig's order, then those only wanted, then those only recalled."""
    wanted_s = {short: hours * 3600.0 for short, hours in view.entry.wanted_hours.items()}
    shorts = [short for short, _ in view.filters]
    recalled_s = recalled_by_filter(view.entry.recalled)
    shorts = list(dict.fromkeys([*shorts, *wanted_s, *recalled_s]))
    return {short: _filter_row(view, short, wanted_s.get(short), recalled_s.get(short, 0.0)) for short in shorts}


def _filter_row(view: EntryView, short: str, wanted_s: float | None, recalled_s: float) -> FilterTotals:
    through = [light for light in view.lights if light.filter_key == short]
    kept = [light for light in through if light.sub.kept]
    return FilterTotals(round(seconds(kept), 3), round(recalled_s, 3), len(kept), len(through) - len(kept), wanted_s)


def by_night(view: EntryView) -> dict[str, float]:
    """Kept seconds by evening, over all sites."""
    totals: dict[str, list[SubInSky]] = {}
    for night in view.nights:
        totals.setdefault(night.evening.isoformat(), []).extend(night.kept)
    return {evening: round(seconds(lights), 3) for evening, lights in sorted(totals.items())}


BY_FILTER: Fact[EntryView] = Fact(
    "By filter",
    "",
    by_filter,
    "Kept light frames by filter, beside the hours wanted, and those recalled without a log.",
    LOG,
)
BY_NIGHT: Fact[EntryView] = Fact("By night", "", by_night, "Kept light frames by the date of the evening.", LOG)
