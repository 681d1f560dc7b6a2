"""What the sky answers: one record a night, one a night and target, and columns for the subs.

Moments are aware UTC, rounded to the whole second; every duration is the difference of such moments,
so that what a page adds up is what it shows.
"""

from datetime import datetime

from msgspec import Struct

from sitegen.sky.arrays import Floats
from sitegen.sky.diurnal_path import DiurnalPath
from sitegen.sky.night_time import Interval


class NightCurve(Struct, frozen=True, eq=False):
    """Airless topocentric altitudes of Sun and Moon, noon to noon every ten minutes (145 points)."""

    times_s: Floats
    sun_altitude_deg: Floats
    moon_altitude_deg: Floats


class MoonNight(Struct, frozen=True):
    """The Moon of one night.

    illuminated (0-1, geocentric) and age_days (since the last new Moon) hold at NightSky.middle.
    phase: one of `phase.PHASE_NAMES`; a principal phase names the night that contains its instant.
    rise, set: first of each in the night, noon to noon; None where there is none.
    up_share_of_dark: part of the dark time with the Moon's centre above 0; None without dark.
    moon_down: the intervals both dark and moonless; dark_and_moonless_s their sum.
    """

    illuminated: float
    phase: str
    age_days: float
    rise: datetime | None
    set: datetime | None
    up_share_of_dark: float | None
    dark_and_moonless_s: float
    moon_down: tuple[Interval, ...]


class NightSky(Struct, frozen=True, eq=False):
    """The Sun and the Moon of one night.

    midnight: local mean solar midnight. middle: halfway between sunset and sunrise, else midnight.
    sunset, sunrise: ends of the time with the Sun down; None, both, where it never sets or rises.
        Either may lie up to an hour outside the night near the polar day or night.
    dark (Sun's centre below -18) and nautical (below -12): the interval round the Sun's lowest point,
        cut to the night; None where the Sun stays higher; the whole night where it stays lower.
    dark_s, nautical_dark_s: 0 without such an interval.
    """

    midnight: datetime
    middle: datetime
    sunset: datetime | None
    sunrise: datetime | None
    dark_start: datetime | None
    dark_end: datetime | None
    dark_s: float
    nautical_start: datetime | None
    nautical_end: datetime | None
    nautical_dark_s: float
    sun_never_sets: bool
    moon: MoonNight
    curve: NightCurve


class BodyLooks(Struct, frozen=True):
    """A body seen from the Earth's centre: astrometric place in ICRS degrees, angular diameter, angle from the Sun, lit
    fraction. None where a table does not tell."""

    ra_deg: float
    dec_deg: float
    size_arcsec: float | None
    elongation_deg: float
    illuminated: float | None


class TargetNight(Struct, frozen=True, eq=False):
    """A fixed direction, or the Moon or a planet, through one night.

    transit: the upper culmination within the night (the first, on the day a year that has two); None where the Moon has none.
    path, body: the one of a fixed direction, the other of what moves, at NightSky.middle.
    hours: the interval in which the target was judged, and hours_kind says which that is: "dark",
        without it "nautical", without that "sun down", and None, None where the Sun never sets.
    max_altitude_deg, min_airmass: over those hours; None without them, airmass also below the horizon.
    moon_separation_deg: topocentric distance from the Moon at NightSky.middle, Moon up or down.
    altitude_deg: airless, on the grid of the night's curve.
    """

    transit: datetime | None
    hours_kind: str | None
    hours: Interval | None
    max_altitude_deg: float | None
    min_airmass: float | None
    moon_separation_deg: float
    altitude_deg: Floats
    path: DiurnalPath | None
    body: BodyLooks | None = None

    def above(self, limit_deg: float) -> tuple[Interval, ...]:
        """Parts of `hours` with the target above both limit_deg and the site's horizon profile."""
        return () if self.hours is None or self.path is None else self.path.above(limit_deg, *self.hours)

    def above_s(self, limit_deg: float) -> float:
        """Seconds of `hours` with the target above both limit_deg and the site's horizon profile."""
        return sum((end - start).total_seconds() for start, end in self.above(limit_deg))


class SubSky(Struct, frozen=True, eq=False):
    """Columns as long as the request's subs, at mid-exposure; NaN is the published null.

    target_altitude_deg, airmass, moon_separation_deg: NaN without a direction.
    sky_brightening_mag: V, positive is brighter; 0 with the Moon down; NaN without a direction, with the
        target below the horizon, and with the Moon up over a site whose dark sky nobody measured.
    sun_altitude_deg: of the Sun's centre, airless and topocentric.
    """

    target_altitude_deg: Floats
    airmass: Floats
    moon_altitude_deg: Floats
    moon_separation_deg: Floats
    moon_illuminated: Floats
    sky_brightening_mag: Floats
    sun_altitude_deg: Floats


class SkyAnswer(Struct, frozen=True, eq=False):
    """Answers in the order of the request.

    earth_rotation_note: None, or one sentence for the author: nights lie outside the installed table
        of the Earth's rotation, and how much that can cost.
    """

    nights: tuple[NightSky, ...]
    night_targets: tuple[TargetNight, ...]
    body_nights: tuple[TargetNight, ...]
    subs: SubSky
    earth_rotation_note: str | None
