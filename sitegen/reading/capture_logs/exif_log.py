"""Capture logs that are a camera's pictures, by their EXIF (CIPA DC-008; JPEG, TIFF and raw files built on them)."""

import re
from datetime import UTC, datetime

from sitegen.diary.frame_origin import FrameOrigin
from sitegen.diary.rig import Rig
from sitegen.diary.sub import Sub
from sitegen.reading.capture_logs.columns import within_a_day
from sitegen.reading.capture_logs.exif_tags import Tags, exif_tags
from sitegen.reading.capture_logs.filter_names import frame_filter
from sitegen.reading.capture_logs.fits_place import PLACE_DIGITS
from sitegen.reading.capture_logs.log_problems import LogProblems, ValueProblem, system_reason
from sitegen.reading.capture_logs.moments import IN_NO_YEAR, LOOK_AT_CLOCK, POSSIBLE_YEARS, odd_date
from sitegen.reading.capture_logs.reader import Reader
from sitegen.reading.capture_logs.request import LogReading, LogRequest
from sitegen.reading.capture_logs.standing_train import focal_length_disagrees, frame_disagrees, train_at
from sitegen.reading.capture_logs.wall_clock import Stamp, name_the_zone, settle, zone_of
from sitegen.reading.nodes import quoted

_OFFSET = re.compile(r"[+-]\d{2}:\d{2}", re.ASCII)
RAW = (".dng", ".cr2", ".cr3", ".nef", ".nrw", ".arw", ".orf", ".pef", ".raf", ".rw2", ".iiq")
SUFFIXES = (".jpg", ".jpeg", ".tif", ".tiff", *RAW)


def read_exif(request: LogRequest) -> LogReading:
    problems = LogProblems(request.shown_path)
    try:
        sub = _frame(exif_tags(request.path), request, problems)
    except OSError as trouble:
        problems.error(system_reason(trouble))
    except ValueProblem as doubt:
        problems.error(doubt.wrong, doubt.remedy)
    else:
        return LogReading((sub,) if sub is not None else (), problems.all())
    return LogReading(problems=problems.all())


def _frame(tags: Tags, request: LogRequest, problems: LogProblems) -> Sub | None:
    moment = written_start(tags)
    exposure_s = exposure_of(tags)
    start, clock = _start(moment, request, problems)
    if start is None:
        return None
    if odd := odd_date(start, request.today):
        problems.warn(*odd)
    if request.rig is not None:
        _compare(tags, request.rig, request, start, problems)
    return Sub(
        start=start,
        exposure_s=exposure_s,
        rig=request.rig.slug if request.rig else "",
        site=request.site.slug if request.site else "",
        target=request.target,
        filter=frame_filter("", "light", request, problems, ""),
        gain=exif_number(tags, "EXIF ISOSpeedRatings"),
        source=request.source,
        clock=clock,
        origin=_origin(tags),
    )


def _origin(tags: Tags) -> FrameOrigin:
    width, height = exif_number(tags, "EXIF ExifImageWidth"), exif_number(tags, "EXIF ExifImageLength")
    return FrameOrigin(
        focal_length_mm=exif_number(tags, "EXIF FocalLength") or None,
        width_px=int(width) if width else None,
        height_px=int(height) if height else None,
        latitude_deg=_place_deg(tags, "GPS latitude"),
        longitude_deg=_place_deg(tags, "GPS longitude"),
        camera_id=exif_text(tags, "EXIF BodySerialNumber") or None,
    )


def _place_deg(tags: Tags, name: str) -> float | None:
    """Rounded to a tenth: nothing finer is remembered of an observer's place."""
    angle = exif_number(tags, name)
    return None if angle is None else round(angle, PLACE_DIGITS) + 0.0


def _start(moment: datetime, request: LogRequest, problems: LogProblems) -> tuple[datetime | None, str | None]:
    """In UTC, and the clock of a sub."""
    if moment.tzinfo is not None:
        return moment.astimezone(UTC), None
    if request.time_zone is None:
        problems.warn("its EXIF has no offset: read as UTC", name_the_zone(request))
    return settle([Stamp(moment)], zone_of(request, problems), problems)[0], request.time_zone or "UTC"


def written_start(tags: Tags) -> datetime:
    """By the camera's clock; aware where the EXIF has its offset."""
    stamp = exif_text(tags, "EXIF DateTimeOriginal")
    if not stamp.strip(" :0"):
        raise ValueProblem("has no date: no DateTimeOriginal in its EXIF", "log the frame in a table")
    try:
        moment = datetime.strptime(stamp, "%Y:%m:%d %H:%M:%S")  # noqa: DTZ007 - the offset stands in a tag of its own
    except ValueError:
        raise ValueProblem(f"DateTimeOriginal is {quoted(stamp)}, not a date and time") from None
    if moment.year not in POSSIBLE_YEARS:
        raise ValueProblem(f"DateTimeOriginal is {quoted(stamp)}, {IN_NO_YEAR}", LOOK_AT_CLOCK)
    part = exif_text(tags, "EXIF SubSecTimeOriginal")
    if part.isascii() and part.isdigit():
        moment = moment.replace(microsecond=int(f"{part:0<6}"[:6]))
    offset = exif_text(tags, "EXIF OffsetTimeOriginal")
    if _OFFSET.fullmatch(offset):
        return datetime.fromisoformat(f"{moment.isoformat()}{offset}")
    return moment


def exposure_of(tags: Tags) -> float:
    seconds = exif_number(tags, "EXIF ExposureTime")
    if not seconds:
        raise ValueProblem("has no exposure: no ExposureTime in its EXIF", "log the frame in a table")
    try:
        return within_a_day(seconds)
    except ValueProblem as doubt:
        raise ValueProblem(f"ExposureTime is {seconds:g} s, {doubt.wrong}") from None


def _compare(tags: Tags, rig: Rig, request: LogRequest, start: datetime, problems: LogProblems) -> None:
    train = train_at(rig, request.site, start)
    frame_px = exif_number(tags, "EXIF ExifImageWidth"), exif_number(tags, "EXIF ExifImageLength")
    for wrong, remedy in (
        *focal_length_disagrees("FocalLength", exif_number(tags, "EXIF FocalLength"), rig, train),
        *frame_disagrees("the frame", frame_px, 1, rig, train, any_way_up=True),
    ):
        problems.warn(wrong, remedy)


def exif_text(tags: Tags, name: str) -> str:
    value = tags.get(name)
    return value if isinstance(value, str) else ""


def exif_number(tags: Tags, name: str) -> float | None:
    """None where there is none."""
    value = tags.get(name)
    return value if isinstance(value, float) else None


READER = Reader("camera pictures", SUFFIXES, read_exif)
