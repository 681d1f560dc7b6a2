"""One night's plan turned into the frames a capture program would have logged.

Nothing here is observed: the weather is drawn from fixed seeds. The times are
plain civil arithmetic, so that the logs come out the same with any version of
an astronomy library; ``check_logs.py`` then judges them with astropy.
"""

from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from math import cos, exp, radians, sin
from zoneinfo import ZoneInfo

import numpy as np

SIDEREAL_DEG_PER_DAY = 360.985647366


@dataclass(frozen=True)
class Place:
    """A site as the demo's scripts need it: degrees, north and east positive."""

    name: str
    latitude_deg: float
    longitude_deg: float
    time_zone: str


@dataclass(frozen=True)
class Block:
    """Subs taken one after another: ``cycle`` repeats from ``start`` to ``end``.

    Times are civil times of the place, ``HH:MM``; those before noon belong to
    the morning after. An entry of ``cycle`` is (filter, exposure_s, how many).
    """

    start: str
    end: str
    cycle: tuple[tuple[str, float, int], ...]


@dataclass(frozen=True)
class Spoilt:
    """Every sub that touches these civil times was discarded, and why."""

    start: str
    end: str
    reason: str


@dataclass(frozen=True)
class Calibration:
    """A run of equal frames, started at a civil time."""

    start: str
    kind: str
    exposure_s: float
    count: int
    filter: str = ""
    gap_s: float = 1.5


@dataclass(frozen=True)
class Session:
    """One rig, one place, one night."""

    evening: str
    rig: str
    place: Place
    ra_deg: float
    dec_deg: float
    blocks: tuple[Block, ...]
    seed: int
    spoilt: tuple[Spoilt, ...] = ()
    calibration: tuple[Calibration, ...] = ()
    seeing_arcsec: float = 2.3
    elongation: float = 1.09
    guiding_arcsec: float = 0.55
    sensor_c: float = -10.0
    gain: float = 100
    binning: int = 1
    german_mount: bool = True
    one_in_discarded: int = 40
    reasons: tuple[str, ...] = ("satellite through the object", "guiding lost on a gust", "aeroplane")


@dataclass
class Frame:
    """One row of a log; ``start`` is UTC."""

    start: datetime
    exposure_s: float
    filter: str
    kind: str = "light"
    kept: bool = True
    reason: str = ""
    binning: int = 1
    gain: float | None = None
    sensor_c: float | None = None
    fwhm_arcsec: float | None = None
    elongation: float | None = None
    guiding_rms_arcsec: float | None = None
    count: int = 1
    gap_s: float = 0.0
    note: str = ""
    end: datetime = field(init=False)

    def __post_init__(self) -> None:
        seconds = self.count * self.exposure_s + (self.count - 1) * self.gap_s
        self.end = self.start + timedelta(seconds=seconds)


def moment(evening: str, clock: str, zone: str) -> datetime:
    """The UTC instant of a civil ``HH:MM`` in the night that began that evening."""
    hour, minute = map(int, clock.split(":"))
    day = datetime.fromisoformat(evening) + timedelta(days=1 if hour < 12 else 0)
    return day.replace(hour=hour, minute=minute, tzinfo=ZoneInfo(zone)).astimezone(UTC)


def hour_angle_deg(when: datetime, place: Place, ra_deg: float) -> float:
    """Hour angle in (-180, 180], good to a few arcminutes, which a log needs no better."""
    days = (when - datetime(2000, 1, 1, 12, tzinfo=UTC)).total_seconds() / 86400
    sidereal = 280.46061837 + SIDEREAL_DEG_PER_DAY * days + place.longitude_deg
    return (sidereal - ra_deg + 180) % 360 - 180


def airmass(when: datetime, session: Session) -> float:
    """Plane-parallel airmass, held below 4: only the weather model uses it."""
    lat, dec = radians(session.place.latitude_deg), radians(session.dec_deg)
    angle = radians(hour_angle_deg(when, session.place, session.ra_deg))
    return 1 / max(sin(lat) * sin(dec) + cos(lat) * cos(dec) * cos(angle), 0.25)


def frames_of(session: Session) -> list[Frame]:
    """All frames of the night in time order."""
    rng = np.random.default_rng(session.seed)
    frames: list[Frame] = []
    for block in session.blocks:
        frames += _block_frames(block, session, rng)
    _spoil(frames, session, rng)
    frames += [_calibration_frame(run, session) for run in session.calibration]
    return sorted(frames, key=lambda frame: frame.start)


def _block_frames(block: Block, session: Session, rng: np.random.Generator) -> list[Frame]:
    zone = session.place.time_zone
    now = moment(session.evening, block.start, zone) + timedelta(seconds=int(rng.integers(5, 50)))
    end = moment(session.evening, block.end, zone)
    turns = [(name, seconds) for name, seconds, number in block.cycle for _ in range(number)]
    frames: list[Frame] = []
    focused = now
    while True:
        name, seconds = turns[len(frames) % len(turns)]
        if now - focused > timedelta(minutes=85):
            now, focused = now + timedelta(seconds=130), now
        now = _after_meridian(now, seconds, session)
        if now + timedelta(seconds=seconds) > end:
            return frames
        frames.append(_light(now, name, seconds, session, rng))
        pause = int(rng.integers(4, 8)) if len(frames) % 3 else int(rng.integers(14, 26))
        now += timedelta(seconds=round(seconds) + pause)


def _after_meridian(now: datetime, seconds: float, session: Session) -> datetime:
    """A German mount changes sides: wait until the target is past, then five minutes."""
    if not session.german_mount:
        return now
    before = hour_angle_deg(now, session.place, session.ra_deg)
    after = hour_angle_deg(now + timedelta(seconds=seconds), session.place, session.ra_deg)
    if before > 0.3 or after < 0 or after - before > 90:
        return now
    wait = (0.3 - before) / SIDEREAL_DEG_PER_DAY * 86400
    return now + timedelta(seconds=round(wait) + 290)


def _light(now: datetime, name: str, seconds: float, session: Session, rng: np.random.Generator) -> Frame:
    thickness = airmass(now, session)
    hours = (now - moment(session.evening, "18:00", session.place.time_zone)).total_seconds() / 3600
    wander = 1 + 0.07 * sin(1.1 * hours + session.seed) + 0.10 * exp(-hours / 2)
    fwhm = session.seeing_arcsec * thickness**0.6 * wander * rng.normal(1, 0.035)
    rms = session.guiding_arcsec * thickness**0.3 * rng.normal(1, 0.08)
    return Frame(
        start=now,
        exposure_s=seconds,
        filter=name,
        binning=session.binning,
        gain=session.gain,
        sensor_c=round(session.sensor_c + rng.normal(0, 0.08), 1),
        fwhm_arcsec=round(fwhm, 2),
        elongation=round(1 + (session.elongation - 1) * rng.lognormal(0, 0.22), 2),
        guiding_rms_arcsec=round(rms, 2),
    )


def _spoil(frames: list[Frame], session: Session, rng: np.random.Generator) -> None:
    for frame in frames:
        if rng.integers(session.one_in_discarded) == 0:
            _discard(frame, str(rng.choice(session.reasons)), rng)
        for spell in session.spoilt:
            if _touches(frame, spell, session):
                _discard(frame, spell.reason, rng)


def _touches(frame: Frame, spell: Spoilt, session: Session) -> bool:
    zone = session.place.time_zone
    begin, end = (moment(session.evening, clock, zone) for clock in (spell.start, spell.end))
    return frame.start < end and frame.end > begin


def _discard(frame: Frame, reason: str, rng: np.random.Generator) -> None:
    frame.kept, frame.reason = False, reason
    assert frame.fwhm_arcsec and frame.guiding_rms_arcsec and frame.elongation
    if any(word in reason for word in ("gust", "wind", "bumped")):
        frame.guiding_rms_arcsec = round(frame.guiding_rms_arcsec * rng.uniform(2.0, 3.5), 2)
        frame.elongation = round(frame.elongation + rng.uniform(0.2, 0.5), 2)
    if any(word in reason for word in ("cloud", "fog", "dew", "focus", "haze")):
        frame.fwhm_arcsec = round(frame.fwhm_arcsec * rng.uniform(1.25, 1.7), 2)


def _calibration_frame(run: Calibration, session: Session) -> Frame:
    return Frame(
        start=moment(session.evening, run.start, session.place.time_zone),
        exposure_s=run.exposure_s,
        filter=run.filter,
        kind=run.kind,
        binning=session.binning,
        gain=session.gain,
        sensor_c=session.sensor_c,
        count=run.count,
        gap_s=run.gap_s,
    )
