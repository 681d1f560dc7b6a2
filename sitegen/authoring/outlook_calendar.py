"""The useful nights as iCalendar (RFC 5545), by the library of that name."""

from collections.abc import Iterable, Iterator
from datetime import datetime
from urllib.parse import urlsplit

from icalendar import Calendar, Event

from sitegen import __version__
from sitegen.facts.outlook import Outlook, OutlookNight
from sitegen.number_text import NumberText

NOBODYS_HOST = "sitegen.invalid"


def calendar_text(outlooks: Iterable[Outlook], address: str | None, now: datetime, numbers: NumberText) -> bytes:
    """One event a night and target, under an id that stays the same, so that a calendar moves it and does not double it."""
    calendar = Calendar()
    calendar.add("prodid", f"-//sitegen//outlook {__version__}//EN")
    calendar.add("version", "2.0")
    host = (urlsplit(address).hostname if address else None) or NOBODYS_HOST
    for outlook in outlooks:
        for event in _events(outlook, host, now, numbers):
            calendar.add_component(event)
    content: bytes = calendar.to_ical()
    return content


def _events(outlook: Outlook, host: str, now: datetime, numbers: NumberText) -> Iterator[Event]:
    for night in outlook.nights:
        if not night.useful:
            continue
        event = Event()
        event.add("uid", f"{outlook.wish.entry}.{outlook.wish.target.slug}.{night.evening}@{host}")
        event.add("dtstamp", now)
        event.add("dtstart", night.target[0][0])
        event.add("dtend", night.target[-1][1])
        event.add("summary", f"{outlook.wish.target.name}: {numbers.duration(night.target_s)}")
        event.add("description", _description(outlook, night, numbers))
        event.add("transp", "TRANSPARENT")
        yield event


def _description(outlook: Outlook, night: OutlookNight, numbers: NumberText) -> str:
    moonless = numbers.duration(night.moonless_s) if night.moonless_s else "none"
    shoot = f"\nStill wanting hours, and suited to the Moon: {', '.join(night.filters)}" if night.filters else ""
    return (
        f"{outlook.wish.title}, from {outlook.site.name}: {numbers.duration(night.target_s)} above "
        f"{numbers.quantity(outlook.minimum_altitude_deg, '°')}, {moonless} of it without the Moon"
        f" ({numbers.percent(night.illuminated)} lit).{shoot}\nNo weather is known."
    )
