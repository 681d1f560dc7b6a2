"""Small diaries built by hand, for tests that need no files."""

from datetime import UTC, date, datetime, timedelta
from typing import Any

from msgspec.structs import replace

from sitegen.diary.diary import Diary
from sitegen.diary.entry import Entry
from sitegen.diary.rig import Camera, Filter, Rig, Telescope, Train, Work
from sitegen.diary.settings import Privacy, Settings
from sitegen.diary.site import Site
from sitegen.diary.sub import Sub
from sitegen.diary.target import Target

PLAIN = Privacy()
HILL = Site("hill", "The hill", -32.64, 139.03, 310.0, "Australia/Adelaide", 21.4, 0.22, 2.4)
SCULPTOR = Target("ngc-253", "NGC 253", 11.888, -25.288, "galaxy", (26.8, 4.6), None, "Sculptor")
FILTERS = {
    "L": Filter("L", "Luminance", "broadband", (550.0,), 300.0),
    "Ha": Filter("Ha", "Hα", "narrowband", (656.3,), 5.0),
    "Duo": Filter("Duo", "Two lines", "dual-band", (500.7, 656.3), 7.0),
}
LONG = Train(None, Telescope("reflector", 250.0, 80.0, 1000.0), Camera("mono camera", 3.76, 6248, 4176, "mono"))
REDUCED = replace(LONG, from_evening=date(2026, 9, 20), telescope=replace(LONG.telescope, factor=0.8))
WORK = (
    Work(date(2026, 8, 1), "mirrors", "collimated", caution="laser"),
    Work(date(2026, 11, 1), "mains", "new box", caution="electrical"),
)
RIG = Rig("long", "The long train", (LONG, REDUCED), FILTERS, work=WORK)


def sub(start: str, exposure_s: float = 300.0, **changes: Any) -> Sub:
    """A light frame on the hill; `start` ISO UTC without a zone."""
    plain = Sub(datetime.fromisoformat(start).replace(tzinfo=UTC), exposure_s, "long", "hill", 0, "L")
    return replace(plain, **changes)


def run(start: str, count: int, exposure_s: float = 300.0, gap_s: float = 10.0, **changes: Any) -> list[Sub]:
    """Equal frames one after the other."""
    first = sub(start, exposure_s, **changes)
    return [replace(first, start=first.start + timedelta(seconds=(exposure_s + gap_s) * index)) for index in range(count)]


def entry(subs: list[Sub] | tuple[Sub, ...] = (), **changes: Any) -> Entry:
    plain = Entry("five-nights", "Five nights", date(2026, 10, 20), "Text.", targets=(SCULPTOR,), rig="long", site="hill")
    return replace(plain, subs=tuple(sorted(subs, key=lambda one: one.start)), **changes)


def diary(*entries: Entry, site: Site = HILL, privacy: Privacy = PLAIN, rig: Rig = RIG) -> Diary:
    newest_first = tuple(sorted(entries, key=lambda one: (one.published, one.slug), reverse=True))
    return Diary(Settings("A diary", privacy=privacy), {site.slug: site}, {rig.slug: rig}, newest_first)
