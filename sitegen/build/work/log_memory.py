"""Logs as they were read, kept an entry at a time: one that is seen again is not opened."""

from collections.abc import Collection, Mapping, Sequence
from contextlib import suppress
from datetime import date
from typing import Any, NamedTuple

from msgspec.structs import replace

from sitegen.build.store import UNREADABLE, digest_of
from sitegen.build.tables import Table, records_of, table_of
from sitegen.diary.sub import Sub
from sitegen.reading.capture_logs.registry import read_log
from sitegen.reading.capture_logs.request import LogReading, LogRequest
from sitegen.reading.entry_series import Exposure, ReadSeries, SeriesReading, SeriesRequest


class KeptLog(NamedTuple):
    """What was read, and what for: `asked` is the digest of all that shapes subs; place and day shape problems alone. `bare`:
    without its subs."""

    asked: str
    item_place: tuple[str, int, int]
    today: date
    bare: LogReading
    subs: Table

    def reading(self) -> LogReading:
        return replace(self.bare, subs=records_of(self.subs, Sub))

    def answers(self, request: LogRequest, asked: str) -> bool:
        if self.asked != asked or request.today < self.today:
            return False
        return not self.bare.problems or (self.item_place, self.today) == (request.item_place, request.today)


class KeptSeries(NamedTuple):
    """`asked` is the digest of all that shapes it, `sources` the files that it came from."""

    asked: str
    sources: tuple[str, ...]
    reading: SeriesReading


class SeriesMemory:
    """As `LogMemory`, of all the tables of one entry that instruments wrote beside its logs. What was read without a problem is
    kept."""

    def __init__(self, earlier: KeptSeries | None, unchanged: Collection[str], read: ReadSeries) -> None:
        self.earlier = earlier if earlier and set(earlier.sources) <= set(unchanged) else None
        self.read_anew = read
        self.now: KeptSeries | None = None

    def read(self, requests: Sequence[SeriesRequest], exposures: Sequence[Exposure]) -> SeriesReading:
        asked = digest_of(([request.shaping for request in requests], exposures))
        if self.earlier is not None and self.earlier.asked == asked:
            self.now = self.earlier
            return self.earlier.reading
        reading = self.read_anew(requests, exposures)
        sources = tuple(source for request in requests for source in request.sources)
        self.now = None if reading.problems else KeptSeries(asked, sources, reading)
        return reading


class LogMemory:
    """`earlier` are an entry's logs as they were read before, `unchanged` the files of which it is known that they are the same.
    `now` is filled as logs are read."""

    def __init__(self, earlier: Mapping[str, KeptLog], unchanged: Collection[str]) -> None:
        self.earlier = {source: log for source, log in earlier.items() if source in unchanged}
        self.now: dict[str, KeptLog] = {}
        self._asked: dict[tuple[Any, ...], tuple[str, LogRequest]] = {}

    def read(self, request: LogRequest) -> LogReading:
        asked, kept = self._digest(request), self.earlier.get(request.source)
        if kept is not None and kept.answers(request, asked):
            with suppress(*UNREADABLE):
                reading = kept.reading()
                self.now[request.source] = kept._replace(item_place=request.item_place, today=request.today)
                return reading
        reading = read_log(request)
        bare, subs = replace(reading, subs=()), table_of(reading.subs, Sub)
        self.now[request.source] = KeptLog(asked, request.item_place, request.today, bare, subs)
        return reading

    def _digest(self, request: LogRequest) -> str:
        """Taken once for all logs of one item; the request is kept beside it, so that the identities stay taken."""
        plain = request.target, request.filter, request.time_zone
        identity = (id(request.rig), id(request.site), id(request.columns), *plain)
        if identity not in self._asked:
            digest = digest_of((request.rig, request.site, sorted(request.columns.items()), plain))
            self._asked[identity] = digest, request
        return self._asked[identity][0]
