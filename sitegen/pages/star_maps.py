"""Whisker maps and ring sketches as a theme draws them: marks in units of a panel 400 wide, y downwards, and their words.

Everything that is shown side by side has one scale: a line twice as long, a ground as dark, means the same in each of them.
"""

import math
from collections.abc import Sequence

from msgspec import Struct

from sitegen.number_text import NumberText
from sitegen.pages.words import Words
from sitegen.stars.measured import RingedFrame, SurveyedFrame
from sitegen.stars.records import StarRing, Zone
from sitegen.stars.zones import COLUMNS, ROWS

WIDTH = 400.0
LABEL = 20.0  # room for the zone's number, under its whisker
KEY = 30.0  # room for the key, under the map
DARKEST = 0.34  # of the ink: what is written on it keeps its contrast
LEAST_SPAN = 1.25  # widest over narrowest FWHM: an even field must not look like a bad one
LONGEST = 0.25  # elongation − 1 that a whisker's full length stands for at least
KEY_ELONGATION = 0.1

SKETCH_HEIGHT = 320.0
DISC = 128.0
CROSS = 9.0
EXAGGERATIONS = (1, 2, 5, 10, 20, 50)
INSIDE = 0.94  # of the room between shadow and rim that an exaggerated offset may take


class ZoneMark(Struct, frozen=True):
    """`shade` 0 to 1 of the ink; `whisker` (x1, y1, x2, y2), None for round stars (`dot`) and for zones without a measurement."""

    x: float
    y: float
    width: float
    height: float
    shade: float
    whisker: tuple[float, float, float, float] | None
    dot: tuple[float, float] | None
    label: str
    label_at: tuple[float, float]
    said: str
    cells: tuple[str, ...]


class WhiskerMap(Struct, frozen=True):
    """`key` is a line (x1, y, x2) as long as a whisker of KEY_ELONGATION more, with its words at `key_at`."""

    height: float
    full_height: float
    zones: tuple[ZoneMark, ...]
    key: tuple[float, float, float]
    key_at: tuple[float, float]
    key_words: str


class RingSketch(Struct, frozen=True):
    """Circles as (x, y, r); `shadow` at its exaggerated place; `cross` a path over the disc's middle."""

    height: float
    disc: tuple[float, float, float]
    shadow: tuple[float, float, float]
    cross: str
    exaggeration: int
    words: str


def whisker_maps(frames: Sequence[SurveyedFrame], words: Words, numbers: NumberText) -> tuple[WhiskerMap, ...]:
    """One map a frame, all to one scale."""
    return tuple(_map(frame, _Scale.of(frames), words, numbers) for frame in frames)


class _Scale(Struct, frozen=True):
    """In ″ where every frame has a scale, else in px."""

    in_arcsec: bool
    least: float
    most: float
    longest: float

    @staticmethod
    def of(frames: Sequence[SurveyedFrame]) -> "_Scale":
        in_arcsec = all(frame.survey.scale_arcsec_px is not None for frame in frames)
        zones = [zone for frame in frames for zone in frame.survey.zones if zone.fwhm_px is not None]
        widths = [_fwhm(zone, in_arcsec) for zone in zones] or [1.0]
        longest = max([(zone.elongation or 1) - 1 for zone in zones] or [0.0])
        return _Scale(in_arcsec, min(widths), max(max(widths), LEAST_SPAN * min(widths)), max(longest, LONGEST))

    def shade(self, zone: Zone) -> float:
        share = (_fwhm(zone, self.in_arcsec) - self.least) / (self.most - self.least)
        return round(0.03 + (DARKEST - 0.03) * share, 3)


def _fwhm(zone: Zone, in_arcsec: bool) -> float:
    return (zone.fwhm_arcsec if in_arcsec else zone.fwhm_px) or 0.0


def _map(frame: SurveyedFrame, scale: _Scale, words: Words, numbers: NumberText) -> WhiskerMap:
    survey = frame.survey
    height = WIDTH * survey.height_px / survey.width_px
    room = min(WIDTH / COLUMNS, height / ROWS - LABEL) * 0.86
    teller = _Teller(scale, words, numbers)
    marks = tuple(_mark(index, zone, height, room, teller) for index, zone in enumerate(survey.zones))
    end = round(4 + room * KEY_ELONGATION / scale.longest, 1)
    line = round(height + 20, 1)
    key_words = words.say("stars.key", percent=numbers.percent(KEY_ELONGATION))
    return WhiskerMap(
        round(height, 1), round(height + KEY, 1), marks, (4.0, line, end), (round(end + 8, 1), round(line + 4.5, 1)), key_words
    )


class _Teller(Struct, frozen=True):
    scale: _Scale
    words: Words
    numbers: NumberText

    def label(self, zone: Zone) -> str:
        if zone.fwhm_px is None:
            return self.words["stars.none"]
        return self.numbers.figures(_fwhm(zone, self.scale.in_arcsec), 2) + ("″" if self.scale.in_arcsec else "")

    def said(self, index: int, zone: Zone) -> str:
        place = self.place(index)
        if zone.fwhm_px is None:
            return self.words.count("stars.zone_empty", zone.stars, place=place)
        key = "stars.zone" if zone.angle_deg is not None else "stars.zone_round"
        _, stars, px, arcsec, long, angle = self.cells(index, zone)
        return self.words.say(key, place=place, stars=stars, px=px, arcsec=arcsec, elongation=long, angle=angle)

    def place(self, index: int) -> str:
        row, column = divmod(index, COLUMNS)
        return self.words.say("stars.place", row=self.words[f"stars.row.{row}"], column=column + 1)

    def cells(self, index: int, zone: Zone) -> tuple[str, ...]:
        number = self.numbers
        arcsec = "—" if zone.fwhm_arcsec is None else f"{number.number(zone.fwhm_arcsec, 2)}″"
        px = "—" if zone.fwhm_px is None else f"{number.number(zone.fwhm_px, 2)}\u202fpx"
        angle = "—" if zone.angle_deg is None else f"{number.number(zone.angle_deg, 0)}°"
        return self.place(index), str(zone.stars), px, arcsec, number.number(zone.elongation, 2), angle


def _mark(index: int, zone: Zone, height: float, room: float, teller: _Teller) -> ZoneMark:
    row, column = divmod(index, COLUMNS)
    wide, high = WIDTH / COLUMNS, height / ROWS
    x, y = column * wide, height - (row + 1) * high
    middle = x + wide / 2, y + (high - LABEL) / 2 + 3
    measured = zone.fwhm_px is not None
    whisker = _whisker(zone, middle, room / teller.scale.longest) if measured and zone.angle_deg is not None else None
    return ZoneMark(
        round(x, 1),
        round(y, 1),
        round(wide, 1),
        round(high, 1),
        teller.scale.shade(zone) if measured else 0.0,
        whisker,
        (round(middle[0], 1), round(middle[1], 1)) if measured and whisker is None else None,
        teller.label(zone),
        (round(x + wide / 2, 1), round(y + high - 7, 1)),
        teller.said(index, zone),
        teller.cells(index, zone),
    )


def _whisker(zone: Zone, middle: tuple[float, float], per_unit: float) -> tuple[float, float, float, float]:
    """From end to end; y of the page runs down, the frame's up."""
    half = ((zone.elongation or 1) - 1) * per_unit / 2
    turn = math.radians(zone.angle_deg or 0.0)
    across, up = half * math.cos(turn), half * math.sin(turn)
    ends = middle[0] - across, middle[1] + up, middle[0] + across, middle[1] - up
    return tuple(round(end, 1) for end in ends)  # type: ignore[return-value]  # four in, four out


def ring_sketches(frames: Sequence[RingedFrame], words: Words, numbers: NumberText) -> tuple[RingSketch, ...]:
    """One sketch a frame, all exaggerated alike."""
    exaggeration = min((_exaggeration(frame.ring) for frame in frames), default=1)
    return tuple(_sketch(frame.ring, exaggeration, words, numbers) for frame in frames)


def _exaggeration(ring: StarRing) -> int:
    """The largest at which the shadow stays inside its disc."""
    room = INSIDE * (ring.outer_px - ring.inner_px) / 2
    return max(factor for factor in EXAGGERATIONS if factor == 1 or factor * (ring.offset_px + ring.uncertainty_px) <= room)


def _sketch(ring: StarRing, exaggeration: int, words: Words, numbers: NumberText) -> RingSketch:
    per_px = 2 * DISC / ring.outer_px
    x, y = WIDTH / 2, SKETCH_HEIGHT / 2
    length = 0.0 if ring.direction_deg is None else ring.offset_px * per_px * exaggeration
    turn = math.radians(ring.direction_deg or 0.0)
    shadow = x + length * math.cos(turn), y - length * math.sin(turn), ring.inner_px * per_px / 2
    return RingSketch(
        SKETCH_HEIGHT,
        (x, y, DISC),
        (round(shadow[0], 1), round(shadow[1], 1), round(shadow[2], 1)),
        f"M{x - CROSS:g} {y:g}h{2 * CROSS:g}M{x:g} {y - CROSS:g}v{2 * CROSS:g}",
        exaggeration,
        ring_words(ring, words, numbers),
    )


def ring_words(ring: StarRing, words: Words, numbers: NumberText) -> str:
    """The offset with its error, and the direction where it has one."""
    key = "ring.measured" if ring.direction_deg is not None else "ring.measured_centred"
    return words.say(
        key,
        px=numbers.number(ring.offset_px, 1),
        error=numbers.number(ring.uncertainty_px, 1),
        percent=percent_words(ring, numbers),
        direction=numbers.number(ring.direction_deg, 0),
    )


def percent_words(ring: StarRing, numbers: NumberText) -> str:
    return f"{numbers.number(ring.offset_percent, 1)}\u202f%"
