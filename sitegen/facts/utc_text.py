"""A moment as facts.json and subs.ecsv write it."""

from datetime import datetime


def utc_text(moment: datetime) -> str:
    """ISO 8601 UTC with Z; fractions of a second only where there are any, to the millisecond."""
    text = moment.isoformat(timespec="milliseconds" if moment.microsecond else "seconds")
    return text.replace("+00:00", "Z")
