"""What is true of a disk of captures: every file with its fate and why, and the sums that follow.

Nothing here asks the package under test: sums, nights and altitudes are computed from the generator's own list.
"""

import math
from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import UTC, date, datetime, timedelta
from typing import Literal

from msgspec import Struct, field

Fate = Literal[
    "kept",
    "discarded",
    "calibration",
    "copy",
    "combined",
    "focus",
    "other_target",
    "other_train",
    "unreadable",
    "passed_over",
    "hidden",
]
FATES: tuple[Fate, ...] = (
    "kept", "discarded", "calibration", "copy", "combined", "focus", "other_target", "other_train", "unreadable", "passed_over"
)  # fmt: skip
NARROW = frozenset({"Ha", "OIII", "SII"})
HALF_A_SECOND = timedelta(seconds=0.5)


class Place(Struct, frozen=True):
    """An observing site: degrees, north and east positive."""

    site: str
    latitude_deg: float
    longitude_deg: float
    time_zone: str


class TrueFrame(Struct, frozen=True):
    """One exposure of the sky. `start` is aware UTC; `filter` the rig's short name, None for a rig without filters;
    `target` is the last part of its page's address."""

    start: datetime
    exposure_s: float
    rig: str
    place: Place
    target: str
    filter: str | None
    kept: bool

    @property
    def evening(self) -> date:
        """By local mean solar noon: four minutes of time for a degree of longitude."""
        return (self.start + timedelta(minutes=4 * self.place.longitude_deg) - timedelta(hours=12)).date()


class DiskFile(Struct, frozen=True):
    """One file below the disk's root. `project` is whose frame it is; `frame` is None where the file is no frame of the sky that
    counts, or only repeats one."""

    path: str
    project: str
    fate: Fate
    why: str
    frame: TrueFrame | None = None


class Sums(Struct, frozen=True):
    """Seconds and frames. By filter: (kept seconds, kept, discarded); by night: kept seconds by ISO evening."""

    total_s: float
    kept: int
    discarded: int
    discarded_s: float
    broadband_s: float
    narrowband_s: float
    by_filter: Mapping[str, tuple[float, int, int]]
    by_night: Mapping[str, float]


class EntryTruth(Struct, frozen=True):
    """All frames that the entry's logs tell of, each once."""

    name: str
    published: date
    frames: tuple[TrueFrame, ...]


class DiaryTruth(Struct, frozen=True):
    """`entries` in order of publication, earliest first."""

    entries: tuple[EntryTruth, ...]

    def frames(self) -> dict[TrueFrame, frozenset[str]]:
        """Every frame of the diary once, as the entry published last has it, with the entries that tell of it."""
        latest: dict[tuple[str, datetime, float], TrueFrame] = {}
        tellers: defaultdict[tuple[str, datetime, float], set[str]] = defaultdict(set)
        for entry in self.entries:
            for frame in entry.frames:
                identity = frame.rig, frame.start, frame.exposure_s
                latest[identity] = frame
                tellers[identity].add(entry.name)
        return {frame: frozenset(tellers[identity]) for identity, frame in latest.items()}

    def shared_s(self, name: str) -> float:
        """Kept seconds of the entry that entries published before it tell of, too."""
        at = next(number for number, entry in enumerate(self.entries) if entry.name == name)
        earlier = {(each.rig, each.start, each.exposure_s) for entry in self.entries[:at] for each in entry.frames}
        own = self.entries[at].frames
        return sum(each.exposure_s for each in own if each.kept and (each.rig, each.start, each.exposure_s) in earlier)

    def contradictions(self) -> tuple[TrueFrame, ...]:
        """Frames of which two entries say different things."""
        told: defaultdict[tuple[str, datetime, float], set[TrueFrame]] = defaultdict(set)
        for entry in self.entries:
            for frame in entry.frames:
                told[frame.rig, frame.start, frame.exposure_s].add(frame)
        return tuple(min(each, key=lambda frame: frame.kept) for each in told.values() if len(each) > 1)


class DiskTruth(Struct, frozen=True):
    """Every file written, in the order of writing."""

    files: tuple[DiskFile, ...]

    def under(self, folders: Sequence[str]) -> tuple[DiskFile, ...]:
        return tuple(each for each in self.files if any(each.path.startswith(f"{folder}/") for folder in folders))


class Gathered(Struct, frozen=True):
    """What one gathering must report: files by fate, hidden ones left out, and the frames that it takes in."""

    counts: Mapping[str, int]
    frames: tuple[TrueFrame, ...] = field(default=())


def gathered(truth: DiskTruth, project: str, folders: Sequence[str]) -> Gathered:
    """Another project's frames are foreign here, whatever they are at home."""
    counts: Counter[str] = Counter()
    frames = []
    for each in truth.under(folders):
        if each.fate == "hidden":
            continue
        foreign = each.project != project and each.frame is not None
        fate = "other_target" if foreign else each.fate
        counts[fate] += 1
        if fate in ("kept", "discarded") and each.frame is not None:
            frames.append(each.frame)
    return Gathered({fate: counts[fate] for fate in FATES}, tuple(sorted(frames, key=lambda frame: frame.start)))


def sums(frames: Iterable[TrueFrame]) -> Sums:
    every = list(frames)
    kept = [each for each in every if each.kept]
    return Sums(
        total_s=_seconds(kept),
        kept=len(kept),
        discarded=len(every) - len(kept),
        discarded_s=_seconds(each for each in every if not each.kept),
        broadband_s=_seconds(each for each in kept if each.filter not in NARROW),
        narrowband_s=_seconds(each for each in kept if each.filter in NARROW),
        by_filter={name: _of_filter(every, name) for name in sorted({each.filter for each in every if each.filter})},
        by_night={night: _seconds(each for each in kept if each.evening.isoformat() == night) for night in nights(every)},
    )


def nights(frames: Iterable[TrueFrame]) -> list[str]:
    return sorted({each.evening.isoformat() for each in frames})


def _of_filter(frames: list[TrueFrame], name: str) -> tuple[float, int, int]:
    through = [each for each in frames if each.filter == name]
    kept = [each for each in through if each.kept]
    return _seconds(kept), len(kept), len(through) - len(kept)


def _seconds(frames: Iterable[TrueFrame]) -> float:
    return math.fsum(each.exposure_s for each in frames)


def sun_altitude_deg(moment: datetime, place: Place) -> float:
    """Low precision (0.01°): Astronomical Almanac, page C5, 'low-precision formulas for the Sun'."""
    days = _days(moment)
    mean_long, anomaly = 280.460 + 0.9856474 * days, math.radians(357.528 + 0.9856003 * days)
    ecliptic_long = math.radians(mean_long + 1.915 * math.sin(anomaly) + 0.020 * math.sin(2 * anomaly))
    obliquity = math.radians(23.439 - 4e-7 * days)
    ra = math.atan2(math.cos(obliquity) * math.sin(ecliptic_long), math.cos(ecliptic_long))
    dec = math.asin(math.sin(obliquity) * math.sin(ecliptic_long))
    return altitude_deg(math.degrees(ra), math.degrees(dec), moment, place)


def altitude_deg(ra_deg: float, dec_deg: float, moment: datetime, place: Place) -> float:
    """Airless; places of J2000, so up to 0.4° off in 2025. Meeus, Astronomical Algorithms, chapters 12 and 13."""
    sidereal_deg = 280.46061837 + 360.98564736629 * _days(moment) + place.longitude_deg
    hour_angle, dec, lat = (math.radians(each) for each in (sidereal_deg - ra_deg, dec_deg, place.latitude_deg))
    sine = math.sin(lat) * math.sin(dec) + math.cos(lat) * math.cos(dec) * math.cos(hour_angle)
    return math.degrees(math.asin(sine))


def _days(moment: datetime) -> float:
    """Since J2000.0."""
    return (moment - datetime(2000, 1, 1, 12, tzinfo=UTC)).total_seconds() / 86400
