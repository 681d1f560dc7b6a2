"""What a FITS header tells of its frame, but for the moment and the sensor's temperature, which no two frames share."""

import math

from msgspec import Struct

from sitegen.diary.sub import FrameKind
from sitegen.reading.capture_logs.columns import within_a_day
from sitegen.reading.capture_logs.fits_header import FitsHeader, Keywords
from sitegen.reading.capture_logs.frame_kind import frame_kind
from sitegen.reading.capture_logs.log_problems import ValueProblem
from sitegen.reading.nodes import quoted

EXPOSURES = (b"XPOSURE ", b"EXPTIME ", b"EXPOSURE")
KINDS = (b"IMAGETYP", b"OBSTYPE ")
_IN_RIG = (b"XBINNING", b"XPIXSZ  ", b"FOCALLEN", b"GAIN    ", b"FILTER  ", b"OBJECT  ")
_IN_FRAME = (b"ZIMAGE  ", b"ZNAXIS1 ", b"ZNAXIS2 ", b"BITPIX  ", b"PCOUNT  ", b"GCOUNT  ", b"NAXIS   ")
MOST_AXES = 9
_AXES = tuple(b"NAXIS%-3d" % number for number in range(1, MOST_AXES + 1))
TOLD_BY = Keywords((*EXPOSURES, *KINDS, *_IN_RIG, *_IN_FRAME, *_AXES, b"TIMESYS "))
_MOST_REMEMBERED = 2_000


class Told(Struct, frozen=True, eq=False):
    """`kind` is None for a word that names none, which `kind_words` quotes as the header has it. `exposure` is in seconds, or
    the reason why there is none; `frame_px` is in binned pixels; `data_bytes` what the header promises behind itself;
    `time_scale` '' where TIMESYS says nothing."""

    kind: FrameKind | None
    kind_words: tuple[str, str]
    exposure: float | ValueProblem
    filter_words: str
    binning: int | None
    pixel_um: float | None
    focal_length_mm: float | None
    frame_px: tuple[float | None, float | None]
    gain: float | None
    targets: tuple[str, ...]
    data_bytes: int
    time_scale: str


_remembered: dict[object, Told] = {}


def told_by(header: FitsHeader) -> Told:
    likeness = header.likeness(TOLD_BY)
    claims = _remembered.get(likeness)
    if claims is None:
        if len(_remembered) >= _MOST_REMEMBERED:
            _remembered.clear()
        claims = _remembered[likeness] = _told(header)
    return claims


def _told(header: FitsHeader) -> Told:
    kind_words = next(((_name(keyword), words) for keyword in KINDS if (words := header.text(keyword))), ("", ""))
    kind = frame_kind(kind_words[1]) if kind_words[1] else "light"
    return Told(
        kind=kind,
        kind_words=kind_words,
        exposure=_exposure(header, kind),
        filter_words=header.text(b"FILTER  "),
        binning=_binning(header),
        pixel_um=_length(header, b"XPIXSZ  "),
        focal_length_mm=_length(header, b"FOCALLEN"),
        frame_px=_frame_px(header),
        gain=header.number(b"GAIN    "),
        targets=(target,) if kind == "light" and (target := header.text(b"OBJECT  ")) else (),
        data_bytes=_data_bytes(header),
        time_scale=header.text(b"TIMESYS ").upper(),
    )


def _exposure(header: FitsHeader, kind: FrameKind | None) -> float | ValueProblem:
    for keyword in EXPOSURES:
        if header.text(keyword):
            return _exposure_from(header, keyword, kind)
    if kind == "bias":
        return 0.0
    return ValueProblem("has no exposure: neither XPOSURE, EXPTIME nor EXPOSURE", "log the frame in a table")


def _exposure_from(header: FitsHeader, keyword: bytes, kind: FrameKind | None) -> float | ValueProblem:
    name, seconds = _name(keyword), header.number(keyword)
    if seconds is None:
        return ValueProblem(f"{name} is {quoted(header.text(keyword))}, not a number of seconds")
    try:
        within_a_day(seconds)
    except ValueProblem as doubt:
        return ValueProblem(f"{name} is {seconds:g} s, {doubt.wrong}", "is it in milliseconds?" if seconds > 1 else "")
    if seconds == 0 and kind != "bias":
        return ValueProblem(f"{name} is 0 s", "only a bias frame has no exposure")
    return seconds


def _binning(header: FitsHeader) -> int | None:
    binning = header.number(b"XBINNING")
    return int(binning) if binning is not None and 1 <= binning <= 16 and binning.is_integer() else None


def _length(header: FitsHeader, keyword: bytes) -> float | None:
    """0 and -1 are how programs write nothing."""
    length = header.number(keyword)
    return length if length is not None and length > 0 else None


def _frame_px(header: FitsHeader) -> tuple[float | None, float | None]:
    if header.value(b"ZIMAGE  ") is True:
        return header.number(b"ZNAXIS1 "), header.number(b"ZNAXIS2 ")
    axes = header.number(b"NAXIS   ") or 0
    return (header.number(_AXES[0]), header.number(_AXES[1])) if axes >= 2 else (None, None)


def _data_bytes(header: FitsHeader) -> int:
    """Section 4.4.1 of the standard: 0 where there are none, or the header says nonsense."""
    count = header.number(b"NAXIS   ") or 0
    axes = [header.number(keyword) for keyword in _AXES[: int(min(max(count, 0), MOST_AXES))]]
    bits = header.number(b"BITPIX  ")
    if not axes or bits is None or any(axis is None or axis < 0 for axis in axes):
        return 0
    pixels = math.prod(int(axis) for axis in axes if axis is not None)
    groups, parameters = header.number(b"GCOUNT  "), header.number(b"PCOUNT  ")
    return abs(int(bits)) // 8 * int(1 if groups is None else groups) * (pixels + int(parameters or 0))


def _name(keyword: bytes) -> str:
    return keyword.decode().rstrip()
