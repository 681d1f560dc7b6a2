"""What a gathering brought, in words and as JSON."""

from collections.abc import Iterator, Mapping
from itertools import groupby
from typing import Any

from msgspec.structs import asdict, replace

from sitegen.authoring.entry_text import NIGHT_LINES, frames_words, logs_value, nights_before, summed_words, waiting_for
from sitegen.authoring.gather_report import Gathering, NewOfNight, Totals
from sitegen.authoring.new_entry import Beginning, recognised
from sitegen.cli.retyped import Typed
from sitegen.cli.sorted_words import frames_counted, sorted_lines, sorting_json
from sitegen.folders import Folders

_REMOVED = {"copy": "copies", "combined": "combined frames", "focus run": "frames of focus runs",
            "other target": "frames of other targets", "other train": "frames of another train",
            "passed over": "frames of no kind"}  # fmt: skip


def gathering_lines(done: Gathering, typed: Typed, folders: Folders, time_zone: str | None, is_dry: bool) -> Iterator[str]:
    totals = done.totals
    calibration = f", {totals.calibration} calibration" if totals.calibration else ""
    kept = f"{frames_counted(totals.kept + totals.discarded)}, {totals.kept} kept, {totals.discarded} discarded{calibration}"
    earlier = f", {done.known_count} there already" if done.known_count else ""
    unreadable = f", {done.unreadable} not readable" if done.unreadable else ""
    dry = " (nothing was written)" if is_dry else ""
    yield f"{folders.content}/{done.log}: {kept}; {done.new_count} new{earlier}{unreadable}{dry}"
    yield from (f"  {line}" for line in done.told)
    yield from (f"  {line}" for line in _night_lines(done.new))
    yield from (f"  {line}" for line in _changed_lines(done))
    clock_cure = typed.again("--time-zone", time_zone) if time_zone else None
    yield from (f"  {line}" for line in sorted_lines(done.sorting, typed, folders, clock_cure))
    yield from (f"  {line}" for line in _gone_lines(done, typed))
    if done.strangers:
        names = "1 name of the kept list meets" if done.strangers == 1 else f"{done.strangers} names of the kept list meet"
        yield f"  {names} no frame gathered"
    if done.without_names:
        yield "  without names: frames that were moved or are no longer there cannot be told"
    if done.named is None and not is_dry and totals != Totals(0, 0, 0):
        begin = replace(typed, command="begin", logs=(f"{folders.content}/{done.log}",), options=())
        yield f"no entry is called {typed.name} yet; to begin it: {begin.again()}"


def again(done: Gathering) -> Gathering:
    """What the same gathering finds when nothing has changed since: everything there already."""
    still_gone = replace(done.gone, count=done.gone.count - done.gone.discarded, discarded=0)
    return replace(done, new=(), new_count=0, known_count=done.known_count + done.new_count, judged_anew={}, moved_clock=0,
                   removed={}, gone=still_gone)  # fmt: skip


def _night_lines(nights: tuple[NewOfNight, ...]) -> Iterator[str]:
    """A line each night; of very many, those before the newest in one."""
    by_night = [(evening, list(rows)) for evening, rows in groupby(nights, key=lambda row: row.evening)]
    shown = by_night[-NIGHT_LINES:]
    if left := by_night[: len(by_night) - len(shown)]:
        yield f"{nights_before(len(left))}: {', '.join(summed_words(row for _, rows in left for row in rows))}"
    for evening, rows in shown:
        yield f"{evening}  {', '.join(map(frames_words, rows))}"


def _changed_lines(done: Gathering) -> Iterator[str]:
    for verdict, count in sorted(done.judged_anew.items()):
        yield f"{verdict} now: {count}"
    if done.moved_clock:
        yield f"starts corrected to the clock {done.sorting.read_as}: {done.moved_clock}"
    if done.removed:
        yield f"taken out of the log: {', '.join(f'{count} {_REMOVED[kind]}' for kind, count in sorted(done.removed.items()))}"


def _gone_lines(done: Gathering, typed: Typed) -> Iterator[str]:
    gone = done.gone
    if gone.discarded:
        yield f"no longer there, and discarded: {gone.discarded}"
    elif gone.count and "--gone" not in typed.options:
        discard, keep = typed.again("--gone", "discard"), typed.again("--gone", "keep")
        yield f"no longer there: {gone.count} gathered before; to discard them: {discard}; to keep them: {keep}"
    if gone.unplugged:
        yield f"not judged: {gone.unplugged} gathered before from folders of which no frame is there; is a disk not plugged in?"


def gathering_json(done: Gathering) -> dict[str, Any]:
    return {
        "log": done.log,
        "new": done.new_count,
        "known": done.known_count,
        "unreadable": done.unreadable,
        "totals": asdict(done.totals),
        "judged_anew": dict(done.judged_anew),
        "starts_corrected": done.moved_clock,
        "removed": dict(done.removed),
        "gone": asdict(done.gone),
        "named_in_entry": done.named,
        "names_not_met": done.strangers,
        "understood": list(done.told),
        "nights": [asdict(row) | {"evening": row.evening.isoformat()} for row in done.new],
        **sorting_json(done.sorting),
    }


def beginning_lines(
    done: Beginning, typed: Typed, folders: Folders, time_zone: str | None, is_dry: bool = False
) -> Iterator[str]:
    yield f"{folders.content}/{done.entry}: {'would be begun (nothing was written)' if is_dry else 'begun'}"
    for what, name, sure, doubt in recognised(done.draft):
        yield f"  {what:<7} {name or 'not recognised'}{'' if sure or not name else f' (to be confirmed: {doubt})'}"
    kept, discarded = done.sorting.kept, done.sorting.discarded
    yield f"  {frames_counted(kept + discarded)}, {kept} kept, {discarded} discarded"
    yield from (f"  {line}" for line in _night_lines(done.draft.nights))
    clock_cure = _clock_cure(done, typed, time_zone, is_dry) if time_zone else None
    yield from (f"  {line}" for line in sorted_lines(done.sorting, typed, folders, clock_cure))
    yield from (f"  {line}" for line in waiting_for(done.draft))
    if not done.draft.whole:
        yield "its logs wait behind a '#', which says what for"
    yield "what only you can write is marked 'To write:' in it"


def _clock_cure(done: Beginning, typed: Typed, time_zone: str, is_dry: bool) -> str:
    """An entry is begun once: after that its gathered log is gathered again, and logs of the diary get a line."""
    if is_dry:
        return typed.again("--time-zone", time_zone)
    inside = done.draft.logs_inside
    line = f"write 'logs: {logs_value(replace(done.draft, time_zone=time_zone))}' in {done.entry}"
    if done.gathering is None:
        return line
    again = replace(typed, command="gather").again("--time-zone", time_zone)
    return f"{again}{f', and {line}' if inside else ''}"


def beginning_json(done: Beginning) -> Mapping[str, Any]:
    return {
        "entry": done.entry,
        "logs": list(done.draft.logs),
        "recognised": {
            what: {"found": name, "sure": sure} | ({"guess": doubt} if name and doubt and not sure else {})
            for what, name, sure, doubt in recognised(done.draft)
        },
        "nights": [asdict(row) | {"evening": row.evening.isoformat()} for row in done.draft.nights],
        "waiting": waiting_for(done.draft),
        **sorting_json(done.sorting),
        "gathered": gathering_json(done.gathering) if done.gathering else None,
    }
