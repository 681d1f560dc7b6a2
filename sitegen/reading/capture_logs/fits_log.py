"""Capture logs that are the frames' own FITS headers: plain, gzipped, tile-compressed."""

from datetime import datetime

from sitegen.diary.rig import Rig, Train
from sitegen.diary.sub import Sub
from sitegen.problems import hint_for
from sitegen.reading.capture_logs.filter_names import frame_filter
from sitegen.reading.capture_logs.fits_header import FitsHeader, read_header
from sitegen.reading.capture_logs.fits_origin import fits_origin
from sitegen.reading.capture_logs.fits_start import frame_start
from sitegen.reading.capture_logs.fits_told import Told, told_by
from sitegen.reading.capture_logs.frame_kind import KINDS
from sitegen.reading.capture_logs.log_problems import LogProblems, ValueProblem, system_reason
from sitegen.reading.capture_logs.moments import as_utc, odd_date
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
from sitegen.reading.capture_logs.wall_clock import Stamp, name_the_zone, settle, zone_of
from sitegen.reading.nodes import quoted

SUFFIXES = (".fits", ".fit", ".fts", ".fits.gz", ".fit.gz", ".fts.gz", ".fz")
_MOST_REMEMBERED = 2_000


def read_fits(request: LogRequest) -> LogReading:
    problems = LogProblems(request.shown_path)
    try:
        header = read_header(request.path)
    except OSError as trouble:
        problems.error(system_reason(trouble))
    except ValueProblem as doubt:
        problems.error(doubt.wrong, doubt.remedy)
    else:
        claims = told_by(header)
        sub = _frame(header, claims, request, problems)
        _warn_if_cut_off(header, claims, problems)
        return LogReading((sub,) if sub is not None else (), problems.all(), claims.targets)
    return LogReading(problems=problems.all())


def _frame(header: FitsHeader, claims: Told, request: LogRequest, problems: LogProblems) -> Sub | None:
    (start, clock), exposure_s = _start(header, claims, request, problems), _exposure_s(claims, problems)
    if claims.kind is None:
        _say_unknown_kind(claims, problems)
    if start is None or exposure_s is None or claims.kind is None:
        return None
    if odd := odd_date(start, request.today):
        problems.warn(*odd)
    binning = claims.binning
    if request.rig is not None:
        binning, disagreements = _compared(claims, request.rig, train_at(request.rig, request.site, start))
        for wrong, remedy in disagreements:
            problems.warn(wrong, remedy)
    return Sub(
        start=start,
        exposure_s=exposure_s,
        rig=request.rig.slug if request.rig else "",
        site=request.site.slug if request.site else "",
        target=request.target,
        filter=frame_filter(claims.filter_words, claims.kind, request, problems, "FILTER"),
        kind=claims.kind,
        binning=binning,
        gain=claims.gain,
        sensor_c=header.number(b"CCD-TEMP"),
        source=request.source,
        clock=clock,
        origin=fits_origin(header, claims),
    )


def _start(
    header: FitsHeader, claims: Told, request: LogRequest, problems: LogProblems
) -> tuple[datetime | None, str | None]:
    """The start in UTC, and the clock of a sub: the log item's time zone wins over the FITS default of UTC, and over nothing
    that the header says."""
    try:
        moment = frame_start(header, claims.time_scale)
    except ValueProblem as doubt:
        problems.error(doubt.wrong, doubt.remedy)
        return None, None
    if moment.tzinfo is not None:
        return moment, None
    if request.time_zone is not None:
        return settle([Stamp(moment)], zone_of(request, problems), problems)[0], request.time_zone
    if claims.time_scale != "LOCAL":
        return as_utc(moment), "UTC"
    problems.error("TIMESYS is 'LOCAL', and the log has no time zone", name_the_zone(request))
    return None, None


def _exposure_s(claims: Told, problems: LogProblems) -> float | None:
    if isinstance(claims.exposure, ValueProblem):
        problems.error(claims.exposure.wrong, claims.exposure.remedy)
        return None
    return claims.exposure


def _say_unknown_kind(claims: Told, problems: LogProblems) -> None:
    """A focus run or a test is nothing to count."""
    name, words = claims.kind_words
    problems.warn(f"{name} is {quoted(words)}, no kind of frame: left out", hint_for(words, KINDS))


_remembered: dict[tuple[int, int], tuple[Told, Train, int | None, tuple[Disagreement, ...]]] = {}


def _compared(claims: Told, rig: Rig, train: Train) -> tuple[int | None, tuple[Disagreement, ...]]:
    """The binning, which a header may tell by its pixels alone, and where header and rig disagree.

    What was found is kept beside what it was found for, so that the identities stay taken.
    """
    compared = _remembered.get((id(claims), id(train)))
    if compared is None:
        if len(_remembered) >= _MOST_REMEMBERED:
            _remembered.clear()
        binning = claims.binning or inferred_binning(claims.pixel_um, train.camera.pixel_um)
        compared = claims, train, binning, _disagreements(claims, binning or 1, rig, train)
        _remembered[id(claims), id(train)] = compared
    return compared[2], compared[3]


def _disagreements(claims: Told, binning: int, rig: Rig, train: Train) -> tuple[Disagreement, ...]:
    return (
        *focal_length_disagrees("FOCALLEN", claims.focal_length_mm, rig, train),
        *pixel_disagrees("XPIXSZ", claims.pixel_um, binning, rig, train),
        *frame_disagrees("NAXIS1 × NAXIS2", claims.frame_px, binning, rig, train),
    )


def _warn_if_cut_off(header: FitsHeader, claims: Told, problems: LogProblems) -> None:
    """The header is whole, so the frame counts; but its author will want to know."""
    if header.size_bytes is None or not claims.data_bytes:
        return
    size_bytes = max(header.size_bytes - header.end, 0)
    if size_bytes < claims.data_bytes:
        problems.warn(
            f"is truncated: its header promises {claims.data_bytes} bytes of pixels, the file has {size_bytes}",
            "copy the frame again, if its pixels still matter",
        )


READER = Reader("FITS headers", SUFFIXES, read_fits)
