"""Capture logs that are the frames' own FITS headers: plain, gzipped, tile-compressed."""

from collections.abc import Iterator
from datetime import datetime

from sitegen.diary.rig import Rig
from sitegen.diary.sub import FrameKind, Sub
from sitegen.problems import hint_for
from sitegen.reading.capture_logs.columns import within_a_day
from sitegen.reading.capture_logs.filter_names import frame_filter
from sitegen.reading.capture_logs.fits_header import FitsHeader, read_header
from sitegen.reading.capture_logs.fits_start import frame_start
from sitegen.reading.capture_logs.frame_kind import KINDS, frame_kind
from sitegen.reading.capture_logs.log_problems import Doubt, LogProblems, system_reason
from sitegen.reading.capture_logs.moments import odd_date
from sitegen.reading.capture_logs.reader import Reader
from sitegen.reading.capture_logs.request import LogReading, LogRequest
from sitegen.reading.capture_logs.standing_train import (
    Disagreement,
    focal_length_disagrees,
    frame_disagrees,
    inferred_binning,
    pixel_disagrees,
    train_at,
)
from sitegen.reading.capture_logs.wall_clock import Stamp, settle, zone_of
from sitegen.reading.nodes import quoted

_EXPOSURES = (b"XPOSURE ", b"EXPTIME ", b"EXPOSURE")
_KINDS = (b"IMAGETYP", b"OBSTYPE ")
SUFFIXES = (".fits", ".fit", ".fts", ".fits.gz", ".fit.gz", ".fts.gz", ".fz")


def read_fits(request: LogRequest) -> LogReading:
    problems = LogProblems(request.shown_path)
    try:
        header = read_header(request.path)
        sub = _frame(header, request, problems)
    except OSError as trouble:
        problems.error(system_reason(trouble))
    except Doubt as doubt:
        problems.error(doubt.wrong, doubt.remedy)
    else:
        _warn_if_cut_off(header, problems)
        target = header.text(b"OBJECT  ") if sub is not None and sub.kind == "light" else ""
        return LogReading((sub,) if sub is not None else (), problems.all(), (target,) if target else ())
    return LogReading(problems=problems.all())


def _frame(header: FitsHeader, request: LogRequest, problems: LogProblems) -> Sub | None:
    kind = _kind(header, problems)
    start, exposure_s = _start(header, request, problems), _exposure_s(header, kind)
    if kind is None or start is None:
        return None
    if odd := odd_date(start, request.today):
        problems.warn(*odd)
    binning = _binning(header, request.rig)
    if request.rig is not None:
        _compare(header, request, start, binning or 1, problems)
    return Sub(
        start=start,
        exposure_s=exposure_s,
        rig=request.rig.slug if request.rig else "",
        site=request.site.slug if request.site else "",
        target=request.target,
        filter=frame_filter(header.text(b"FILTER  "), kind, request, problems, "FILTER is "),
        kind=kind,
        binning=binning,
        gain=header.number(b"GAIN    "),
        sensor_c=header.number(b"CCD-TEMP"),
        source=request.source,
    )


def _kind(header: FitsHeader, problems: LogProblems) -> FrameKind | None:
    """A frame of a kind unknown here (a focus run, a test) is nothing to count."""
    for keyword in _KINDS:
        if words := header.text(keyword):
            kind = frame_kind(words)
            if kind is None:
                name = keyword.decode().rstrip()
                problems.warn(f"{name} is {quoted(words)}, no kind of frame: left out", hint_for(words, KINDS))
            return kind
    return "light"


def _start(header: FitsHeader, request: LogRequest, problems: LogProblems) -> datetime | None:
    moment, scale = frame_start(header)
    if scale != "LOCAL":
        return moment
    zone = zone_of(request, problems)
    if zone is None and moment.tzinfo is None:
        raise Doubt("TIMESYS is 'LOCAL', and the log has no time zone", "write 'time_zone' in the entry's log item")
    return settle([Stamp(moment)], zone, problems)[0]


def _exposure_s(header: FitsHeader, kind: FrameKind | None) -> float:
    for keyword in _EXPOSURES:
        text, name = header.text(keyword), keyword.decode().rstrip()
        if not text:
            continue
        seconds = header.number(keyword)
        if seconds is None:
            raise Doubt(f"{name} is {quoted(text)}, not a number of seconds")
        try:
            within_a_day(seconds)
        except Doubt as doubt:
            raise Doubt(f"{name} is {seconds:g} s, {doubt.wrong}", "is it in milliseconds?" if seconds > 0 else "") from None
        if seconds == 0 and kind == "light":
            raise Doubt(f"{name} is 0, and the frame a light frame")
        return seconds
    if kind == "bias":
        return 0.0
    raise Doubt("has no exposure: neither XPOSURE, EXPTIME nor EXPOSURE", "log the frame in a table")


def _binning(header: FitsHeader, rig: Rig | None) -> int | None:
    found = header.number(b"XBINNING")
    if found is not None and 1 <= found <= 16 and found.is_integer():
        return int(found)
    pixel_um = header.number(b"XPIXSZ  ")
    return inferred_binning(pixel_um, rig.trains[0].camera.pixel_um) if rig is not None and len(rig.trains) == 1 else None


def _compare(header: FitsHeader, request: LogRequest, start: datetime, binning: int, problems: LogProblems) -> None:
    assert request.rig is not None
    for wrong, remedy in _disagreements(header, request.rig, request, start, binning):
        problems.warn(wrong, remedy)


def _disagreements(
    header: FitsHeader, rig: Rig, request: LogRequest, start: datetime, binning: int
) -> Iterator[Disagreement]:
    train = train_at(rig, request.site, start)
    yield from focal_length_disagrees("FOCALLEN", header.number(b"FOCALLEN"), rig, train)
    yield from pixel_disagrees("XPIXSZ", header.number(b"XPIXSZ  "), binning, rig, train)
    yield from frame_disagrees("NAXIS1 × NAXIS2", _frame_px(header), binning, rig, train)


def _frame_px(header: FitsHeader) -> tuple[float | None, float | None]:
    if header.value(b"ZIMAGE  ") is True:
        return header.number(b"ZNAXIS1 "), header.number(b"ZNAXIS2 ")
    return (header.number(b"NAXIS1  "), header.number(b"NAXIS2  ")) if header.number(b"NAXIS   ") else (None, None)


def _warn_if_cut_off(header: FitsHeader, problems: LogProblems) -> None:
    """The header is whole, so the frame counts; but its author will want to know."""
    wanted = header.data_bytes()
    if header.size_bytes is not None and wanted and header.size_bytes < header.end + wanted:
        problems.warn(
            f"is truncated: its header promises {wanted} bytes of pixels, the file has {max(header.size_bytes - header.end, 0)}",
            "copy the frame again, if its pixels still matter",
        )


READER = Reader("FITS headers", SUFFIXES, read_fits)
