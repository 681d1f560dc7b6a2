"""A camera file's EXIF -> what it says of its frame."""

from pathlib import Path

from sitegen.authoring.captures.record import FrameRecord, Source
from sitegen.reading.capture_logs.exif_log import exif_number, exif_text, exposure_of, written_start
from sitegen.reading.capture_logs.exif_tags import Tags, exif_tags
from sitegen.reading.capture_logs.log_problems import ValueProblem, system_reason


def camera_record(path: Path | str, source: Source) -> FrameRecord:
    """Of a raw file or a picture: a camera writes no kind, so it is a light unless its folder says otherwise."""
    try:
        return _record(exif_tags(Path(path)), source)
    except OSError as trouble:
        return FrameRecord(source, None, wrong=system_reason(trouble), refused=True)
    except ValueProblem as doubt:
        return FrameRecord(source, None, wrong=doubt.wrong, remedy=doubt.remedy)


def _record(tags: Tags, source: Source) -> FrameRecord:
    width, height = exif_number(tags, "EXIF ExifImageWidth"), exif_number(tags, "EXIF ExifImageLength")
    return FrameRecord(
        source,
        start=written_start(tags),
        exposure_s=exposure_of(tags),
        gain=exif_number(tags, "EXIF ISOSpeedRatings"),
        focal_length_mm=exif_number(tags, "EXIF FocalLength") or None,
        width_px=int(width) if width and width >= 1 else None,
        height_px=int(height) if height and height >= 1 else None,
        colour=True,
        camera_id=exif_text(tags, "EXIF BodySerialNumber"),
        camera=exif_text(tags, "Image Model"),
    )
