"""Which rigs entries used, and since when."""

from collections.abc import Iterable
from datetime import date

from sitegen.diary.entry import Entry


def published_before(entries: Iterable[tuple[str, date, tuple[str, ...]]]) -> dict[str, dict[str, date]]:
    """For each entry (slug, published, rigs), when the entry before it with each of its rigs was published."""
    latest: dict[str, date] = {}
    dates: dict[str, dict[str, date]] = {}
    for slug, published, rigs in sorted(entries, key=lambda entry: (entry[1], entry[0])):
        dates[slug] = {rig: latest[rig] for rig in rigs if rig in latest}
        latest.update(dict.fromkeys(rigs, published))
    return dates


def rigs_of(entry: Entry) -> tuple[str, ...]:
    """Slugs of the rigs an entry used or is about, sorted."""
    return tuple(sorted({sub.rig for sub in entry.lights} | ({entry.rig} if entry.rig else set())))
