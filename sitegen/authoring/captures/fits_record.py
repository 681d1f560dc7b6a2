"""A FITS header -> what it says of its frame. Only header blocks are read, once."""

import re
from collections.abc import Hashable
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
from sitegen.reading.capture_logs.fits_told import TOLD_BY, Told, told_by
from sitegen.reading.capture_logs.log_problems import ValueProblem, system_reason

_FOCUSERS = Keywords((b"FOCUSPOS", b"FOCPOS  ", b"FOCUSER ", b"FOCUS   "))
_COLOURS = (b"BAYERPAT", b"CFAPAT  ", b"CFATYPE ", b"COLORTYP")
# Each counts what went into a combined frame; those of the second row may also count a planned sequence.
_INPUTS = (b"NCOMBINE", b"NCOMB   ", b"STACKCNT", b"NSTACK  ", b"NSTACKED", b"STACKNUM", b"NINPUTS ", b"NCOADD  ", b"NSUBS   ",
           b"SNAPSHOT")  # fmt: skip
_INPUTS_IF_PROCESSED = (b"NFRAMES ", b"NIMAGES ", b"NUMFRAME", b"NEXP    ")
_SECOND_INPUT = b"IMCMB002"
_CALIBRATIONS = (b"CALSTAT ", b"DARKCOR ", b"FLATCOR ", b"BIASCOR ", b"ZEROCOR ", b"DARKSUB ", b"FLATFILE", b"DARKFILE")
_HISTORY = b"HISTORY "
_TELESCOPE, _CAMERA = b"TELESCOP", b"INSTRUME"
_IN_COMMON = Keywords(tuple(dict.fromkeys(
    (*TOLD_BY.padded, *LATITUDES, *LONGITUDES, *SERIALS, _TELESCOPE, _CAMERA, *_COLOURS, *_INPUTS, *_INPUTS_IF_PROCESSED,
     _SECOND_INPUT, *_CALIBRATIONS, b"ZBITPIX "))))  # fmt: skip
_REGISTERED = re.compile(r"\b(?:co-?)?(?:regist|align|resampl|reproject|drizzl)\w*", re.I)
_CALIBRATED = re.compile(r"\b(?:calibrat\w*|debayer\w*|cosmetic\w*)|"
                         r"\b(?:dark|flat|bias)[\w -]{0,20}\b(?:subtract|divi|correct|appl)\w*", re.I)  # fmt: skip
_COMBINED = re.compile(r"\b(?:stack|combin|integrat|averag|median|sum|co-?add)\w*\D{0,20}?\b(\d{1,5})\s+"
                       r"(?:frames|images|subs|exposures|files|inputs)|\b(\d{1,5})\s+(?:frames|images|subs|exposures|files|inputs)"
                       r"\D{0,20}?\b(?:stack|combin|integrat|averag|summed|co-?add)\w*", re.I)  # fmt: skip
_MOST_REMEMBERED = 2_000


class _Alike(Struct, frozen=True):
    """What frames of one session have in common: their record but for moment, temperature, focus and pointing."""

    record: FrameRecord
    told: Told


def fits_record(path: Path | str) -> FrameRecord:
    try:
        header = read_header(path)  # type: ignore[arg-type]
    except OSError as trouble:
        return FrameRecord("fits", None, wrong=system_reason(trouble), refused=True)
    except ValueProblem as doubt:
        return FrameRecord("fits", None, wrong=doubt.wrong, remedy=doubt.remedy)
    return _record(header)


def _record(header: FitsHeader) -> FrameRecord:
    alike = _alike(header)
    claims = alike.told
    ra_deg, dec_deg = (pointing_of(header) if claims.kind in (None, "light") else None) or (None, None)
    record: FrameRecord = structs.replace(
        alike.record, **_start(header, claims.time_scale), sensor_c=header.number(b"CCD-TEMP"),
        focuser=header.first_number(_FOCUSERS), ra_deg=ra_deg, dec_deg=dec_deg,
    )  # fmt: skip
    return _cut_off(record, header, claims)


def _start(header: FitsHeader, scale: str) -> dict[str, object]:
    """The start, or what is wrong with it. It stays bare where nothing in the header tells its clock."""
    try:
        start = frame_start(header, scale)
    except ValueProblem as doubt:
        return {"exposure_s": None, "wrong": doubt.wrong, "remedy": doubt.remedy}
    return {"start": start, "local": scale == "LOCAL" and start.tzinfo is None}


_remembered: dict[Hashable, _Alike] = {}


def _alike(header: FitsHeader) -> _Alike:
    if _HISTORY in header.layout.cards:
        return _alike_told(header, _history(header))
    likeness = header.likeness(_IN_COMMON)
    alike = _remembered.get(likeness)
    if alike is None:
        if len(_remembered) >= _MOST_REMEMBERED:
            _remembered.clear()
        alike = _remembered[likeness] = _alike_told(header, "")
    return alike


def _alike_told(header: FitsHeader, history: str) -> _Alike:
    claims = told_by(header)
    packed_bits = header.number(b"ZBITPIX ")
    float_pixels = ((header.number(b"BITPIX  ") if packed_bits is None else packed_bits) or 0) < 0
    processed, sign = _processing(header, history)
    doubt = claims.exposure if isinstance(claims.exposure, ValueProblem) else None
    record = FrameRecord(
        source="fits",
        kind=claims.kind,
        kind_words="" if not claims.kind_words[1] else " is ".join((claims.kind_words[0], repr(claims.kind_words[1]))),
        exposure_s=None if isinstance(claims.exposure, ValueProblem) else claims.exposure,
        filter_words=claims.filter_words,
        binning=claims.binning,
        gain=claims.gain,
        object=header.text(b"OBJECT  ") if claims.kind in (None, "light") else "",
        focal_length_mm=claims.focal_length_mm or None,
        pixel_um=claims.pixel_um or None,
        width_px=_whole(claims.frame_px[0]),
        height_px=_whole(claims.frame_px[1]),
        colour=_colour(header),
        latitude_deg=latitude_of(header),
        longitude_deg=longitude_of(header),
        camera_id=camera_id_of(header),
        inputs=_inputs(header, history, bool(processed) or float_pixels),
        processed=processed,
        sign=sign,
        float_pixels=float_pixels,
        wrong=doubt.wrong if doubt else "",
        remedy=doubt.remedy if doubt else "",
        telescope=header.text(_TELESCOPE),
        camera=header.text(_CAMERA),
    )
    return _Alike(record, claims)


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


def _cut_off(record: FrameRecord, header: FitsHeader, claims: Told) -> FrameRecord:
    """The header is whole, so the frame counts; but its author will want to know."""
    if header.size_bytes is None or not claims.data_bytes or header.size_bytes - header.end >= claims.data_bytes:
        return record
    size = max(header.size_bytes - header.end, 0)
    warning = f"is truncated: its header promises {claims.data_bytes} bytes of pixels, the file has {size}"
    return structs.replace(record, warning=warning, warning_remedy="copy the frame again, if its pixels still matter")


def _whole(number: float | None) -> int | None:
    return int(number) if number is not None and 1 <= number <= 1e6 else None
