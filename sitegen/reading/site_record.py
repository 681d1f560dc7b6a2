"""sites/NAME.yaml -> Site."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from sitegen.diary.site import Site
from sitegen.reading.documents import Document
from sitegen.reading.value_types.group import Values, bare

SEA_LEVEL_M = 0.0
# The widest land zone puts clocks three hours from the Sun; one more for summer time.
FARTHEST_FROM_SUN_H = 4.5


def site_of(document: Document) -> Site | None:
    """None where the file has an error."""
    values = document.values
    if values is None:
        return None
    _check_horizon(values, document)
    _check_clock(values, document)
    if not document.diagnostics.clean:
        return None
    elevation_m = values.get("elevation_m")
    horizon = tuple(sorted(bare(values.items_of("horizon"))))
    return values.into(Site, slug=document.slug, elevation_m=SEA_LEVEL_M if elevation_m is None else elevation_m, horizon=horizon)


def _check_horizon(values: Values, document: Document) -> None:
    seen: dict[float, tuple[float, float]] = {}
    for point in values.items_of("horizon"):
        azimuth_deg, altitude_deg = point.value
        earlier = seen.setdefault(azimuth_deg % 360, point.value)
        if earlier is point.value:
            continue
        if earlier[0] == azimuth_deg:
            document.diagnostics.error(point, f"'horizon' has the azimuth {azimuth_deg:g} twice", "keep one of them")
        elif earlier[1] != altitude_deg:
            wrong = f"'horizon' has {earlier[1]:g}° at azimuth {earlier[0]:g} and {altitude_deg:g}° at {azimuth_deg:g}"
            remedy = "0 and 360 are one direction, north: give both the same altitude, or keep one"
            document.diagnostics.error(point, wrong, remedy)


def _check_clock(values: Values, document: Document) -> None:
    """A longitude with the wrong sign shows in the clock: its zone would be hours away from the Sun."""
    longitude_deg, zone = values.get("longitude_deg"), values.get("time_zone")
    if longitude_deg is None or zone is None:
        return
    offset = datetime(document.diagnostics.today.year, 1, 1, tzinfo=UTC).astimezone(ZoneInfo(zone)).utcoffset() or timedelta()
    ahead_h = (offset.total_seconds() / 3600 - longitude_deg / 15 + 12) % 24 - 12
    if abs(ahead_h) > FARTHEST_FROM_SUN_H:
        wrong = f"the clocks of {zone} are {abs(ahead_h):.0f} h away from the Sun at longitude {longitude_deg:g}"
        document.diagnostics.warn(values.place("longitude_deg"), wrong, "east is positive, west negative")
