"""When a frame began, from its FITS header (FITS Standard 4.0, section 9; older forms: section 4.4.2.1 and its predecessors)."""

import re
from datetime import UTC, datetime, timedelta

from sitegen.reading.capture_logs.fits_header import FitsHeader
from sitegen.reading.capture_logs.log_problems import ValueProblem
from sitegen.reading.capture_logs.moments import IN_NO_YEAR, LOOK_AT_CLOCK, POSSIBLE_YEARS, as_utc, read_moment
from sitegen.reading.capture_logs.time_scales import KNOWN_SCALES, utc_from
from sitegen.reading.nodes import quoted

_DATES = (b"DATE-BEG", b"DATE-OBS")
_DAY_NUMBERS = (b"MJD-BEG ", b"MJD-OBS ")
_UNIVERSAL_CLOCKS = (b"UT      ", b"UTC     ", b"UTSTART ", b"UTC-OBS ", b"UT-START")
_CLOCKS = (b"TIME-BEG", b"TIME-OBS", *_UNIVERSAL_CLOCKS)
_OLD = re.compile(r"(\d{2})/(\d{2})/(\d{2})", re.ASCII)
_DAY = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)
_LENGTH_OF_DAY = len("2026-04-18")
_MJD_0 = datetime(1858, 11, 17)  # noqa: DTZ001 - its scale is TIMESYS, not known yet


def frame_start(header: FitsHeader, scale: str) -> datetime:
    """The start in UTC, aware; bare where the scale is LOCAL or not told, and neither an offset nor the keyword says that it is
    universal time. Raises ValueProblem with a whole sentence.

    `scale` is what TIMESYS says, in capitals, '' where it says nothing.
    """
    moment, is_universal = _written_start(header)
    if moment.tzinfo is not None:
        return moment.astimezone(UTC)
    if scale == "UTC" or (not scale and is_universal):
        return as_utc(moment)
    if scale in ("", "LOCAL"):
        return moment
    if scale not in KNOWN_SCALES:
        scales = f"known: {', '.join(sorted(KNOWN_SCALES))}, LOCAL"
        raise ValueProblem(f"TIMESYS is {quoted(scale)}, which is no time scale known here", scales)
    return utc_from(moment, scale).replace(tzinfo=UTC)


def _written_start(header: FitsHeader) -> tuple[datetime, bool]:
    """The moment, and whether its keyword counts in universal time unless TIMESYS says otherwise."""
    for keyword in _DATES:
        if text := header.text(keyword):
            return _dated(text, keyword, header), len(text) <= _LENGTH_OF_DAY and _clock_keyword(header) in _UNIVERSAL_CLOCKS
    for keyword in _DAY_NUMBERS:
        if (days := header.number(keyword)) is not None:
            return _from_mjd(days, _name(keyword)), True
    raise ValueProblem("has no date: neither DATE-BEG nor DATE-OBS", "keep such a frame out of 'logs', or log it in a table")


def _dated(text: str, keyword: bytes, header: FitsHeader) -> datetime:
    if len(text) <= _LENGTH_OF_DAY:
        text = _with_clock(text, _name(keyword), header)
    try:
        return read_moment(text)
    except ValueProblem as doubt:
        wrong = f"{_name(keyword)} is {quoted(text)}, {doubt.wrong}"
        raise ValueProblem(wrong, "it is written as in 2026-04-18T21:03:12.000") from None


def _with_clock(text: str, name: str, header: FitsHeader) -> str:
    if old := _OLD.fullmatch(text):
        text = "19{2}-{1}-{0}".format(*old.groups())
    return f"{text}T{_clock(text, name, header)}" if _DAY.fullmatch(text) else text


def _clock(day: str, name: str, header: FitsHeader) -> str:
    keyword = _clock_keyword(header)
    if keyword is None:
        wrong = f"{name} is '{day}', a date without a time of day"
        raise ValueProblem(wrong, "the time would stand behind it, or in TIME-OBS or UT")
    hours, colon, rest = header.text(keyword).partition(":")
    return f"{hours.strip():0>2}{colon}{rest}"


def _clock_keyword(header: FitsHeader) -> bytes | None:
    return next((keyword for keyword in _CLOCKS if ":" in header.text(keyword)), None)


def _from_mjd(days: float, name: str) -> datetime:
    try:
        moment = _MJD_0 + timedelta(days=days)
    except OverflowError:
        moment = datetime.min  # noqa: DTZ901 - in no year either
    if moment.year not in POSSIBLE_YEARS:
        raise ValueProblem(f"{name} is {days:.10g}, {IN_NO_YEAR}", LOOK_AT_CLOCK)
    return moment


def _name(keyword: bytes) -> str:
    return keyword.decode().rstrip()
