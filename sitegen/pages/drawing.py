"""The sums a template may ask for, so that it does none itself: heights, splits, shares, and sentences from records."""

from collections.abc import Callable
from itertools import accumulate
from typing import Any

from msgspec import Struct

from sitegen.cautions.registry import caution_of
from sitegen.charts.filter_colour import passbands_of, sign_of
from sitegen.diary.entry import NightNote
from sitegen.diary.public_position import PublicSite
from sitegen.diary.rig import CautionKind, Filter, Train
from sitegen.markdown.marks import without_marks
from sitegen.number_text import NumberText
from sitegen.pages.lanes import Block, Lane
from sitegen.pages.picture_words import alt_words, type_words, typed_words
from sitegen.pages.ribbon import Ribbon
from sitegen.pages.words import Words

BAND_PX, LANE_PX, AXIS_PX = 180, 22, 36


class Heights(Struct, frozen=True):
    """Where a large ribbon's rows lie, in px from its top; `heads`: the lines on which the names of trains stand, by lane."""

    lanes: tuple[int, ...]
    heads: tuple[int, ...]
    axis: int
    axis_end: int
    local: int
    utc: int
    all: int


def heights(ribbon: Ribbon) -> Heights:
    """A train's name stands above its first lane."""
    rows = list(accumulate(1 + lane.heads for lane in ribbon.lanes))
    axis = BAND_PX + 4 + LANE_PX * (rows[-1] if rows else 0)
    lanes = tuple(BAND_PX + 7 + LANE_PX * (row - 1) for row in rows)
    return Heights(lanes, tuple(lane - 8 for lane in lanes), axis, axis + 4, axis + 16, axis + 31, axis + AXIS_PX)


def share(length: float) -> str:
    """0..1 as a percentage of the width."""
    return f"{100 * length:.2f}%"


def helpers(words: Words, numbers: NumberText) -> dict[str, Callable[..., Any]]:
    """Everything above and the sentences below, by the name a template calls them."""
    return {
        "heights": heights,
        "sign": sign_of,
        "share": share,
        "bands_of": passbands_of,
        "sub_words": lambda lane, block: sub_words(lane, block, words, numbers),
        "basis_words": lambda kind: basis_words(kind, words),
        "note_words": lambda note: note_words(note, words, numbers),
        "train_words": lambda train: train_words(train, words, numbers),
        "passband_words": lambda rig_filter: passband_words(rig_filter, words, numbers),
        "type_words": lambda view: type_words(view, words),
        "alt_words": lambda view: alt_words(view, words),
        "typed_words": lambda view, said: typed_words(view, said, words),
        "position_words": lambda site, decimals: position_words(site, decimals, words, numbers),
    }


def sub_words(lane: Lane, block: Block, words: Words, numbers: NumberText) -> str:
    """One sub in a line: filter, times, exposure, and why it was discarded. Of subs in a row: filter, number, times of all."""
    subs = [light.sub for light in block.lights]
    if not subs:
        return ""
    state = _state_words(block, words)
    start, end = numbers.clock(min(sub.start for sub in subs)), numbers.clock(max(sub.end for sub in subs))
    if len(subs) > 1:
        number = words.count("entry.subs", len(subs))
        return words.say("ribbon.run", filter=lane.short, subs=number, start=start, end=end, state=state)
    exposure = numbers.exposure(subs[0].exposure_s)
    return words.say("ribbon.sub", filter=lane.short, start=start, end=end, exposure=exposure, state=state)


def _state_words(block: Block, words: Words) -> str:
    """With the reason where all were discarded for the same one."""
    if block.kept:
        return words["ribbon.kept"]
    reasons = {light.sub.reason for light in block.lights}
    reason = without_marks((reasons.pop() if len(reasons) == 1 else None) or "")
    return words.say("ribbon.discarded_because", reason=reason) if reason else words["ribbon.discarded"]


def basis_words(kind: CautionKind, words: Words) -> str:
    """What a caution rests on, and what of it was cited from memory."""
    caution = caution_of(kind)
    named = (words.phrase(standard) for standard in caution.basis)
    named = (words.say("caution.from_memory", standard=name) if name in caution.from_memory else name for name in named)
    return words.say("caution.basis", basis="; ".join(named))


def note_words(note: NightNote, words: Words, numbers: NumberText) -> str:
    """What the author noted of a night, as a line."""
    parts = (
        ("clouds", note.clouds),
        ("wind", note.wind),
        ("temperature", _with_unit(note.temperature_c, "°C", numbers)),
        ("humidity", _with_unit(note.humidity_percent, "%", numbers)),
        ("seeing", numbers.quantity(note.seeing_arcsec, "″") if note.seeing_arcsec is not None else None),
        ("polar_error", numbers.quantity(note.polar_error_arcmin, "′") if note.polar_error_arcmin is not None else None),
        ("ended_by", note.ended_by),
    )
    line = "; ".join(f"{words['note.' + key]}: {without_marks(value)}" for key, value in parts if value)
    return " ".join(part for part in (without_marks(note.note or ""), f"{line}." if line else None) if part)


def _with_unit(value: float | None, unit: str, numbers: NumberText) -> str | None:
    return None if value is None else f"{numbers.number(value, 0)}\u202f{unit}"


def train_words(train: Train, words: Words, numbers: NumberText) -> str:
    """Telescope and camera in a sentence."""
    telescope, camera = train.telescope, train.camera
    aperture = telescope.aperture_mm
    parts = [
        without_marks(telescope.design or "") or None,
        words.say("train.aperture", aperture=numbers.number(aperture, 0)) if aperture else None,
        numbers.quantity(telescope.focal_length_mm, "mm"),
        words.say("train.factor", factor=numbers.number(telescope.factor, 2)) if telescope.factor != 1 else None,
    ]
    sensor = words.say("train.sensor", width=numbers.number(camera.width_px, 0), height=numbers.number(camera.height_px, 0),
                       pixel=numbers.number(camera.pixel_um, 2))  # fmt: skip
    seen = [camera.name, sensor, words[f"train.{camera.colour}"]]
    return f"{', '.join(part for part in parts if part)}. {', '.join(part for part in seen if part)}."


def passband_words(rig_filter: Filter, words: Words, numbers: NumberText) -> str:
    centre = " + ".join(numbers.number(centre, 1 if centre % 1 else 0) for centre in rig_filter.centre_nm)
    width_nm = rig_filter.width_nm
    if width_nm is None:
        return f"{centre}\u202fnm"
    return words.say("train.narrow", centre=centre, width=numbers.number(width_nm, 1 if width_nm % 1 else 0))


def position_words(site: PublicSite, decimals: int, words: Words, numbers: NumberText) -> str:
    """'32.6° S, 139.0° E', with no more digits than were published."""
    if site.latitude_deg is None or site.longitude_deg is None:
        return words["site.hidden"]
    north_south = words["site.south" if site.latitude_deg < 0 else "site.north"]
    east_west = words["site.west" if site.longitude_deg < 0 else "site.east"]
    latitude, longitude = (numbers.number(abs(angle), decimals) for angle in (site.latitude_deg, site.longitude_deg))
    return words.say("site.position", latitude=f"{latitude}° {north_south}", longitude=f"{longitude}° {east_west}")
