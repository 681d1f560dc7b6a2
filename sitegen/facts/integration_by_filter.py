"""Light gathered per filter against what was wanted, and per evening."""

from msgspec import Struct

from sitegen.facts.fact import Fact
from sitegen.facts.integration_totals import LOG, seconds
from sitegen.facts.views import EntryView, SubInSky


class FilterTotals(Struct, frozen=True):
    """`wanted_s` is None where nothing was wanted."""

    total_s: float | int
    kept: int
    discarded: int
    wanted_s: float | int | None


def by_filter(view: EntryView) -> dict[str, FilterTotals]:
    """Filters in the rig's order, then those only wanted."""
    wanted_s = {short: hours * 3600.0 for short, hours in view.entry.wanted_hours.items()}
    shorts = [short for short, _ in view.filters]
    shorts += [short for short in wanted_s if short not in shorts]
    return {short: _filter_row(view, short, wanted_s.get(short)) for short in shorts}


def _filter_row(view: EntryView, short: str, wanted_s: float | None) -> FilterTotals:
    through = [light for light in view.lights if light.filter_key == short]
    kept = [light for light in through if light.sub.kept]
    return FilterTotals(round(seconds(kept), 3), len(kept), len(through) - len(kept), wanted_s)


def by_night(view: EntryView) -> dict[str, float]:
    """Kept seconds by evening, over all sites."""
    totals: dict[str, list[SubInSky]] = {}
    for night in view.nights:
        totals.setdefault(night.evening.isoformat(), []).extend(night.kept)
    return {evening: round(seconds(lights), 3) for evening, lights in sorted(totals.items())}


BY_FILTER: Fact[EntryView] = Fact("By filter", "", by_filter, "Kept light frames by filter, beside the hours wanted.", LOG)
BY_NIGHT: Fact[EntryView] = Fact("By night", "", by_night, "Kept light frames by the date of the evening.", LOG)
