"""A camera file's EXIF -> what it says of its frame."""

import re
from datetime import datetime
from pathlib import Path

from sitegen.authoring.captures.record import FrameRecord, Source
from sitegen.reading.capture_logs import exif_log
from sitegen.reading.capture_logs.exif_log import Tags
from sitegen.reading.capture_logs.log_problems import Doubt, system_reason
from sitegen.reading.nodes import quoted

_OFFSET = re.compile(r"[+-]\d{2}:\d{2}", re.ASCII)
_SERIALS = ("EXIF BodySerialNumber", "MakerNote SerialNumber", "Image CameraSerialNumber", "Image Tag 0xC62F")


def camera_record(path: Path | str, source: Source) -> FrameRecord:
    """Of a raw file or a picture: a camera writes no kind, so it is a light unless its folder says otherwise."""
    try:
        tags = exif_log._tags(Path(path))
        return _record(tags, source)
    except OSError as trouble:
        return FrameRecord(source, None, wrong=system_reason(trouble))
    except Doubt as doubt:
        return FrameRecord(source, None, wrong=doubt.wrong, remedy=doubt.remedy)


def _record(tags: Tags, source: Source) -> FrameRecord:
    width, height = (exif_log._number(tags, f"EXIF ExifImage{side}") for side in ("Width", "Length"))
    return FrameRecord(
        source,
        start=_start(tags),
        exposure_s=exif_log._exposure_s(tags),
        gain=exif_log._number(tags, "EXIF ISOSpeedRatings"),
        focal_length_mm=exif_log._number(tags, "EXIF FocalLength") or None,
        width_px=int(width) if width and width >= 1 else None,
        height_px=int(height) if height and height >= 1 else None,
        colour=True,
        camera_id=next((text for name in _SERIALS if (text := exif_log._text(tags, name))), ""),
    )


def _start(tags: Tags) -> datetime:
    """Aware where the camera wrote its offset, else bare."""
    stamp = exif_log._text(tags, "EXIF DateTimeOriginal")
    if not stamp.strip(" :0"):
        raise Doubt("has no date: no DateTimeOriginal in its EXIF", "log the frame in a table")
    try:
        moment = datetime.strptime(stamp, "%Y:%m:%d %H:%M:%S")  # noqa: DTZ007 - the offset stands in a tag of its own
    except ValueError:
        raise Doubt(f"DateTimeOriginal is {quoted(stamp)}, not a date and time") from None
    part = exif_log._text(tags, "EXIF SubSecTimeOriginal")
    if part.isascii() and part.isdigit():
        moment = moment.replace(microsecond=int(f"{part:0<6}"[:6]))
    offset = exif_log._text(tags, "EXIF OffsetTimeOriginal")
    return datetime.fromisoformat(f"{moment.isoformat()}{offset}") if _OFFSET.fullmatch(offset) else moment
