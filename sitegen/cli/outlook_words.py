"""Outlooks in words for a terminal, and as JSON."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import UTC, datetime
from typing import Any
from zoneinfo import ZoneInfo

from sitegen.facts.outlook import Outlook, OutlookNight, Season
from sitegen.number_text import NumberText

NUMBERS = NumberText("en", {"unit.h": "h", "unit.min": "min", "unit.s": "s", "unit.days": "days"})
NO_WEATHER = "No weather is known: these are the hours that clouds could spare."
HEADINGS = ("evening", "dark", "target", "from", "to", "high", "no Moon", "Moon", "advice", "still wanting")


def outlook_lines(outlooks: Sequence[Outlook]) -> Iterator[str]:
    if not outlooks:
        yield "No entry is still gathering (stage: gathering) with a target of a fixed place and a site."
        return
    for outlook in outlooks:
        yield from _lines(outlook)
        yield ""
    yield NO_WEATHER


def _lines(outlook: Outlook) -> Iterator[str]:
    wish = outlook.wish
    yield f"{wish.title} ({wish.entry})"
    limit = NUMBERS.quantity(outlook.minimum_altitude_deg, "°")
    yield f"  {wish.target.name} from {outlook.site.name}, above {limit} and the horizon"
    yield f"  still wanted: {_wanted(outlook) or 'nothing is named under wanted'}"
    yield f"  {_season(outlook.season)}"
    zone = ZoneInfo(outlook.site.time_zone)
    rows = [HEADINGS, *(_row(night, zone) for night in outlook.nights)]
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    for row in rows:
        yield "  " + "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()


def _wanted(outlook: Outlook) -> str:
    needs = [need for need in outlook.wish.needs if need.missing_s is not None]
    return ", ".join(f"{need.short} {NUMBERS.duration(need.missing_s) if need.missing_s else 'all in'}" for need in needs)


def _season(season: Season | None) -> str:
    if season is None:
        return "no useful night within a year"
    until = f"until {season.last}" if season.last else "for a year and more"
    moonless = f"{season.moonless} of them with an hour or more without the Moon"
    return f"{season.nights} useful nights from {season.first} {until}, {moonless}"


def _row(night: OutlookNight, zone: ZoneInfo) -> tuple[str, ...]:
    start, end = (night.target[0][0], night.target[-1][1]) if night.target else (None, None)
    return (
        f"{night.evening:%a} {night.evening}",
        NUMBERS.duration(night.dark_s) if night.dark_s else "none",
        NUMBERS.duration(night.target_s) if night.target else "none",
        NUMBERS.clock(start, zone),
        NUMBERS.clock(end, zone),
        NUMBERS.quantity(night.max_altitude_deg, "°"),
        NUMBERS.duration(night.moonless_s) if night.moonless_s else "none",
        f"{NUMBERS.percent(night.illuminated)} at {NUMBERS.quantity(night.moon_separation_deg, '°')}",
        (night.advice or "no dark hours").replace("-", " "),
        " ".join(night.filters),
    )


def outlook_json(outlooks: Iterable[Outlook]) -> dict[str, Any]:
    """Seconds, degrees, UTC; the keys are those of facts.json where there are such."""
    return {"weather": "not known", "outlooks": [_outlook_json(outlook) for outlook in outlooks]}


def _outlook_json(outlook: Outlook) -> dict[str, Any]:
    season = outlook.season
    return {
        "entry": outlook.wish.entry,
        "title": outlook.wish.title,
        "target": outlook.wish.target.name,
        "site": outlook.site.slug,
        "minimum_altitude_deg": outlook.minimum_altitude_deg,
        "wanted": {
            need.short: {"kind": need.kind, "total_s": need.gathered_s, "wanted_s": need.wanted_s, "missing_s": need.missing_s}
            for need in outlook.wish.needs
        },
        "season": season
        and {
            "first": str(season.first),
            "last": season.last and str(season.last),
            "nights": season.nights,
            "with_a_moonless_hour": season.moonless,
        },
        "nights": [_night_json(night) for night in outlook.nights],
    }


def _night_json(night: OutlookNight) -> dict[str, Any]:
    return {
        "evening_of": str(night.evening),
        "dark_s": night.dark_s,
        "hours_kind": night.hours_kind,
        "target": {
            "above_minimum": [[_utc(start), _utc(end)] for start, end in night.target],
            "above_minimum_s": night.target_s,
            "moonless_s": night.moonless_s,
            "max_altitude_deg": _rounded(night.max_altitude_deg, 2),
        },
        "moon": {
            "illuminated": _rounded(night.illuminated, 4),
            "phase": night.phase,
            "separation_deg": _rounded(night.moon_separation_deg, 2),
            "dark_and_moonless_s": night.dark_and_moonless_s,
        },
        "advice": night.advice,
        "filters": list(night.filters),
        "useful": night.useful,
    }


def _utc(moment: datetime) -> str:
    return moment.astimezone(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")


def _rounded(value: float | None, digits: int) -> float | None:
    return None if value is None else round(value, digits)
