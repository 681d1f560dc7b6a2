"""A FITS header -> what it says of its frame. Only header blocks are read, once."""

import re
from datetime import datetime
from pathlib import Path

from msgspec import Struct, structs

from sitegen.authoring.captures.record import FrameRecord, Processed
from sitegen.reading.capture_logs.fits_header import CARD, FitsHeader, Keywords, read_header
from sitegen.reading.capture_logs.fits_place import (
    LATITUDES,
    LONGITUDES,
    SERIALS,
    camera_id_of,
    latitude_of,
    longitude_of,
    pointing_of,
)
from sitegen.reading.capture_logs.fits_start import frame_start
from sitegen.reading.capture_logs.fits_told import Told, told_by
from sitegen.reading.capture_logs.log_problems import Doubt, system_reason

_FOCUSERS = (b"FOCUSPOS", b"FOCPOS  ", b"FOCUSER ", b"FOCUS   ")
_COLOURS = (b"BAYERPAT", b"CFAPAT  ", b"CFATYPE ", b"COLORTYP")
# Each counts what went into a combined frame; those of the second row may also count a planned sequence.
_INPUTS = (b"NCOMBINE", b"NCOMB   ", b"STACKCNT", b"NSTACK  ", b"NSTACKED", b"STACKNUM", b"NINPUTS ", b"NCOADD  ", b"NSUBS   ",
           b"SNAPSHOT")  # fmt: skip
_INPUTS_IF_PROCESSED = (b"NFRAMES ", b"NIMAGES ", b"NUMFRAME", b"NEXP    ")
_SECOND_INPUT = b"IMCMB002"
_CALIBRATIONS = (b"CALSTAT ", b"DARKCOR ", b"FLATCOR ", b"BIASCOR ", b"ZEROCOR ", b"DARKSUB ", b"FLATFILE", b"DARKFILE")
_HISTORY = b"HISTORY "
_CONSTANT = Keywords((*LATITUDES, *LONGITUDES, *SERIALS, *_COLOURS, *_INPUTS, *_INPUTS_IF_PROCESSED, _SECOND_INPUT,
                      *_CALIBRATIONS, b"BITPIX  ", b"ZBITPIX ", b"NAXIS3  "))  # fmt: skip
_REGISTERED = re.compile(r"\b(?:co-?)?(?:regist|align|resampl|reproject|drizzl)\w*", re.I)
_CALIBRATED = re.compile(r"\b(?:calibrat\w*|debayer\w*|cosmetic\w*)|"
                         r"\b(?:dark|flat|bias)[\w -]{0,20}\b(?:subtract|divi|correct|appl)\w*", re.I)  # fmt: skip
_COMBINED = re.compile(r"\b(?:stack|combin|integrat|averag|median|sum|co-?add)\w*\D{0,20}?\b(\d{1,5})\s+"
                       r"(?:frames|images|subs|exposures|files|inputs)|\b(\d{1,5})\s+(?:frames|images|subs|exposures|files|inputs)"
                       r"\D{0,20}?\b(?:stack|combin|integrat|averag|summed|co-?add)\w*", re.I)  # fmt: skip
_MOST_REMEMBERED = 2_000


class _Constant(Struct, frozen=True):
    """What frames of one camera, place and state of processing have in common."""

    colour: bool | None
    latitude_deg: float | None
    longitude_deg: float | None
    camera_id: str
    inputs: int | None
    processed: Processed
    sign: str
    float_pixels: bool


def fits_record(path: Path | str) -> FrameRecord:
    try:
        header = read_header(path)  # type: ignore[arg-type]
    except OSError as trouble:
        return FrameRecord("fits", None, wrong=system_reason(trouble), refused=True)
    except Doubt as doubt:
        return FrameRecord("fits", None, wrong=doubt.wrong, remedy=doubt.remedy)
    return _record(header)


def _record(header: FitsHeader) -> FrameRecord:
    told, constant = told_by(header), _constant_of(header)
    moment = _moment(header, told)
    ra_deg, dec_deg = (pointing_of(header) if told.kind in (None, "light") else None) or (None, None)
    record = FrameRecord(
        source="fits",
        kind=told.kind,
        kind_words="" if not told.kind_words[1] else " is ".join((told.kind_words[0], repr(told.kind_words[1]))),
        filter_words=told.filter_words,
        binning=told.binning,
        gain=told.gain,
        sensor_c=header.number(b"CCD-TEMP"),
        object=header.text(b"OBJECT  ") if told.kind in (None, "light") else "",
        focal_length_mm=told.focal_length_mm or None,
        pixel_um=told.pixel_um or None,
        width_px=_whole(told.frame_px[0]),
        height_px=_whole(told.frame_px[1]),
        colour=constant.colour,
        latitude_deg=constant.latitude_deg,
        longitude_deg=constant.longitude_deg,
        camera_id=constant.camera_id,
        inputs=constant.inputs,
        processed=constant.processed,
        sign=constant.sign,
        float_pixels=constant.float_pixels,
        focuser=next((number for keyword in _FOCUSERS if (number := header.number(keyword)) is not None), None),
        ra_deg=ra_deg,
        dec_deg=dec_deg,
        start=moment.start,
        local=moment.local,
        exposure_s=moment.exposure_s,
        wrong=moment.wrong,
        remedy=moment.remedy,
    )
    return _cut_off(record, header, told)


class _Moment(Struct, frozen=True):
    start: datetime | None = None
    local: bool = False
    exposure_s: float | None = None
    wrong: str = ""
    remedy: str = ""


def _moment(header: FitsHeader, told: Told) -> _Moment:
    """Start and exposure, or what is wrong with them. The start stays bare where nothing in the header tells its clock."""
    scale = header.text(b"TIMESYS ").upper()
    try:
        start = frame_start(header, scale or "LOCAL")
    except Doubt as doubt:
        return _Moment(wrong=doubt.wrong, remedy=doubt.remedy)
    if isinstance(told.exposure, Doubt):
        return _Moment(start, wrong=told.exposure.wrong, remedy=told.exposure.remedy)
    return _Moment(start, scale == "LOCAL" and start.tzinfo is None, told.exposure)


_remembered: dict[object, _Constant] = {}


def _constant_of(header: FitsHeader) -> _Constant:
    if _HISTORY in header.layout.cards:
        return _constant(header, _history(header))
    likeness = header.likeness(_CONSTANT)
    constant = _remembered.get(likeness)
    if constant is None:
        if len(_remembered) >= _MOST_REMEMBERED:
            _remembered.clear()
        constant = _remembered[likeness] = _constant(header, "")
    return constant


def _constant(header: FitsHeader, history: str) -> _Constant:
    packed_bits = header.number(b"ZBITPIX ")
    float_pixels = ((header.number(b"BITPIX  ") if packed_bits is None else packed_bits) or 0) < 0
    processed, sign = _processing(header, history)
    return _Constant(
        colour=_colour(header),
        latitude_deg=latitude_of(header),
        longitude_deg=longitude_of(header),
        camera_id=camera_id_of(header),
        inputs=_inputs(header, history, bool(processed) or float_pixels),
        processed=processed,
        sign=sign,
        float_pixels=float_pixels,
    )


def _processing(header: FitsHeader, history: str) -> tuple[Processed, str]:
    """What was done to the pixels, and the header's words that say so."""
    if words := _REGISTERED.search(history):
        return "registered", f"HISTORY says '{words.group()}'"
    for keyword in _CALIBRATIONS:
        text = header.text(keyword)
        if text and text.casefold() not in ("none", "no", "raw", "f", "0"):
            return "calibrated", f"{keyword.decode().rstrip()} is '{text}'"
    if words := _CALIBRATED.search(history):
        return "calibrated", f"HISTORY says '{words.group()}'"
    return "", ""


def _inputs(header: FitsHeader, history: str, processed: bool) -> int | None:
    for keyword in (*_INPUTS, *(_INPUTS_IF_PROCESSED if processed else ())):
        count = header.number(keyword)
        if count is not None and count >= 2:
            return int(count)
    if header.text(_SECOND_INPUT):
        return 2
    if words := _COMBINED.search(history):
        count = int(words.group(1) or words.group(2))
        return count if count >= 2 else None
    return None


def _colour(header: FitsHeader) -> bool | None:
    for keyword in _COLOURS:
        if text := header.text(keyword):
            return text.casefold() not in ("none", "mono", "monochrome")
    return True if header.number(b"NAXIS3  ") == 3 else None


def _history(header: FitsHeader) -> str:
    """All HISTORY cards one behind the other: a sentence may go on in the next."""
    raw = header.raw
    cards = (raw[at : at + CARD] for at in range(0, min(len(raw), header.end), CARD))
    return " ".join(card[8:].decode("ascii", "replace").strip() for card in cards if card.startswith(_HISTORY))


def _cut_off(record: FrameRecord, header: FitsHeader, told: Told) -> FrameRecord:
    """The header is whole, so the frame counts; but its author will want to know."""
    if header.size_bytes is None or not told.data_bytes or header.size_bytes - header.end >= told.data_bytes:
        return record
    size = max(header.size_bytes - header.end, 0)
    warning = f"is truncated: its header promises {told.data_bytes} bytes of pixels, the file has {size}"
    return structs.replace(record, warning=warning, warning_remedy="copy the frame again, if its pixels still matter")


def _whole(number: float | None) -> int | None:
    return int(number) if number is not None and 1 <= number <= 1e6 else None
