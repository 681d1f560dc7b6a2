"""Witnesses against a log: Sun, horizon, clock, place, target; each heard where something is wrong, silent where nothing is."""

import shlex
from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import numpy as np
import pytest
from msgspec.structs import replace
from skyfield.api import Star, wgs84

from sitegen.diary.frame_origin import FrameOrigin
from sitegen.diary.site import Site
from sitegen.diary.target import Target
from sitegen.facts.witnesses import witnesses
from sitegen.sky.rough_altitude import fixed_altitude_deg, sun_altitude_deg
from tests.diaries import RIG, SCULPTOR, entry, sub
from tests.sky.independent_sky import IndependentSky

KNOLL = Site("hill", "Knoll", -36.85, 174.76, 80.0, "Pacific/Auckland")
PLAIN = Site("hill", "Plain", -32.64, 139.03, 310.0, "Australia/Adelaide")
PLATEAU = Site("hill", "Plateau", 17.4, 78.5, 500.0, "Asia/Kolkata")
SOUND = Site("hill", "Sound", 60.0, 24.9, 10.0, "Europe/Helsinki")
MEADOW = Site("hill", "Meadow", 50.1, 8.7, 100.0, "Europe/Berlin")
SITES = [KNOLL, PLAIN, PLATEAU, SOUND, MEADOW]
POLE_NORTH, POLE_SOUTH = Target("n", "NGC 188", 12.1, 85.3), Target("s", "NGC 2573", 25.0, -89.3)


def night_of(site, day=date(2026, 10, 12), hours=4.0, count=40, **changes):
    """Frames round local mean solar midnight, evenly spaced."""
    midnight = datetime(day.year, day.month, day.day, tzinfo=UTC) + timedelta(hours=24 - site.longitude_deg / 15)
    starts = [midnight + timedelta(hours=hours * (index / count - 0.5)) for index in range(count)]
    return [replace(sub("2026-01-01T00:00:00", source="logs/a.csv", clock="UTC", **changes), start=start) for start in starts]


def told(subs, site, **changes):
    target = POLE_SOUTH if site.latitude_deg < 0 else POLE_NORTH
    kept = entry(subs, **({"targets": (target,)} | changes))
    return [(each.source, each.wrong, each.remedy) for each in witnesses(kept, {"hill": site}, {"long": RIG})]


def as_local(subs, site, clock="UTC"):
    """The same frames logged by the wall clock of the site, and read as UTC."""
    zone = ZoneInfo(site.time_zone)
    return [replace(one, start=one.start.astimezone(zone).replace(tzinfo=UTC), clock=clock) for one in subs]


@pytest.mark.parametrize("site", SITES, ids=lambda site: site.name)
def test_a_sound_log_is_quiet(site):
    """Both hemispheres, half-hour zones, zones with summer time: nothing to say."""
    assert told(night_of(site), site) == []


@pytest.mark.parametrize(("site", "bad"), [(KNOLL, 40), (PLAIN, 40), (PLATEAU, 20), (MEADOW, 6)])
def test_local_time_read_as_utc(site, bad):
    """The site's own zone mends it, and is proposed as a line to paste."""
    subs = night_of(site, hours=11.0) if site is MEADOW else night_of(site)
    ((source, wrong, remedy),) = told(as_local(subs, site), site)
    assert (source, wrong) == ("logs/a.csv", f"{bad} of 40 subs lie in daylight (the Sun above -6°)")
    zone = site.time_zone
    assert remedy == f"with time_zone: {zone} none would; '- {{files: logs/a.csv, time_zone: {zone}}}' under 'logs'"


def test_utc_read_in_a_zone():
    """Where the item names a zone already, UTC is tried."""
    zone = ZoneInfo("Pacific/Auckland")
    subs = [replace(one, start=one.start.replace(tzinfo=zone).astimezone(UTC), clock=str(zone)) for one in night_of(KNOLL)]
    ((_, wrong, remedy),) = told(subs, KNOLL)
    assert wrong == "40 of 40 subs lie in daylight (the Sun above -6°)"
    assert remedy == "with time_zone: UTC none would; '- {files: logs/a.csv, time_zone: UTC}' under 'logs'"


def test_a_clock_that_called_itself_utc():
    """No zone would help: the shift is told, and the site's own offset is the likeliest (daylight saving time: 13 h)."""
    ((_, _, remedy),) = told(as_local(night_of(KNOLL), KNOLL, None), KNOLL)
    assert remedy == "the camera's clock seems 13 h ahead of UTC; set right, none would"


def test_a_gathered_log_is_gathered_again():
    """Its times stand in it already; the command names log, folder and zone, and a shell reads it."""
    origin = FrameOrigin(file="a/1.fits", folder="old disk")
    subs = [replace(one, source="logs/ngc-2573.ecsv", origin=origin) for one in as_local(night_of(KNOLL), KNOLL)]
    ((_, _, remedy),) = told(subs, KNOLL)
    command = remedy.partition("; ")[2]
    assert shlex.split(command) == ["sitegen", "gather", "ngc-2573", "old disk", "--time-zone", "Pacific/Auckland"]


def test_frames_of_a_folder_are_one_log():
    """Files of one frame each are told together, in the first one's name."""
    subs = [replace(one, source=f"logs/june/{number:03}.fits.gz") for number, one in enumerate(night_of(KNOLL))]
    ((source, wrong, remedy),) = told(as_local(subs, KNOLL), KNOLL)
    assert (source, wrong[:13]) == ("logs/june/000.fits.gz", "40 of 40 subs")
    assert "{files: logs/june/*.fits.gz, time_zone: Pacific/Auckland}" in remedy


def test_a_few_subs_at_dawn_are_told_without_a_guess():
    """Three of forty: no clock is blamed where the zone would spoil the others."""
    late = [replace(one, start=one.start + timedelta(hours=9)) for one in night_of(KNOLL, count=3, hours=0.2)]
    ((_, wrong, remedy),) = told([*night_of(KNOLL), *late], KNOLL)
    assert wrong == "3 of 43 subs lie in daylight (the Sun above -6°)"
    assert remedy == "look at the camera's clock, and at the kind of these frames"


def test_nautical_twilight_of_a_northern_summer_is_night_enough():
    """At 60° N around midsummer the Sun stays above -7°; subs of the deepest hour are sound."""
    assert told(night_of(SOUND, date(2026, 6, 21), 1.0), SOUND) == []


def test_what_may_lie_in_daylight():
    """Discarded and calibration frames, entries about gear, the Sun, Moon and planets."""
    day = as_local(night_of(KNOLL), KNOLL)
    assert told([replace(one, kept=False) for one in day], KNOLL) == []
    assert told([replace(one, kind="flat") for one in day], KNOLL) == []
    assert told([replace(one, target=None) for one in day], KNOLL, targets=()) == []
    assert told(day, KNOLL, targets=(Target("sun", "Sun", None, None, "moving"),)) == []
    assert told([], KNOLL) == []
    assert told(day, KNOLL, targets=(Target("c", "A comet", None, None, "moving"),)) != []


def test_a_target_below_the_horizon():
    """The northern pole from the south, with a clock that cannot mend it; the other pole is quiet."""
    ((_, wrong, remedy),) = told(night_of(KNOLL), KNOLL, targets=(POLE_NORTH,))
    assert wrong == "40 of 40 subs have their target below the horizon"
    assert remedy == "look at the camera's clock, and at the kind of these frames"
    assert told(night_of(KNOLL), KNOLL, targets=(POLE_SOUTH,)) == []


@pytest.mark.parametrize(
    ("latitude_deg", "longitude_deg", "apart"),
    [(48.2, 16.4, "161"), (-36.9, 173.4, "1"), (-36.8, 174.8, None), (-36.9, -174.8, None), (0.0, 0.0, None), (None, 16.4, None),
     (-36.3, 174.8, None), (-36.2, 174.8, "1")],
)  # fmt: skip
def test_the_headers_place(latitude_deg, longitude_deg, apart):
    """Farther than half a degree, its rounding allowed for; west counted positive and zeros of a program that knows no place are
    quiet. The place itself is not printed."""
    origin = FrameOrigin(latitude_deg=latitude_deg, longitude_deg=longitude_deg)
    found = told(night_of(KNOLL, origin=origin), KNOLL)
    assert [wrong for _, wrong, _ in found] == ([f"40 of 40 subs carry a place {apart}° from the site 'hill'"] if apart else [])


def test_frames_of_another_target():
    """Pointing first, OBJECT where there is none; unknown words, mosaics in steps, and mounts in the equinox of date belong."""
    here = night_of(PLAIN, count=8)

    def pointed(*places, objects=()):
        origins = [FrameOrigin(ra_deg=ra, dec_deg=dec) for ra, dec in places] + [FrameOrigin(object=name) for name in objects]
        return told([replace(one, origin=origin) for one, origin in zip(here, origins, strict=False)], PLAIN, targets=(SCULPTOR,))

    away = pointed((11.9, -25.3), (161.285, -59.867))
    assert [wrong for _, wrong, _ in away] == ["1 of 2 subs points 91.2° or more from NGC 253"]
    assert away[0][2] == (
        "if another target, add it to 'target' and write '- {files: logs/a.csv, target: NAME}' under 'logs'; "
        "if none, leave the files out"
    )
    named = pointed(objects=("NGC 3372", "NGC 253", "a test"))
    assert [wrong for _, wrong, _ in named] == ["1 of 3 subs points 91.2° or more from NGC 253 (OBJECT: NGC 3372)"]
    assert pointed((12.3, -24.0), (12.3, -22.6), (12.3, -21.2)) == []
    assert pointed((0.793, -25.29), (0, 0), (10, 90)) == []


@pytest.mark.parametrize("site", SITES, ids=lambda site: site.name)
def test_altitudes_against_skyfield(site):
    """Skyfield with DE421, apparent and airless, over a generation: within 0.05°, which is enough to doubt at -6° and at 0°."""
    independent = IndependentSky()
    first_s = datetime(2000, 1, 1, tzinfo=UTC).timestamp()
    unix_s = first_s + np.arange(200) * 86400 * 50.0137
    here = (independent.bodies["earth"] + wgs84.latlon(site.latitude_deg, site.longitude_deg)).at(independent.time(unix_s))
    sun = here.observe(independent.bodies["sun"]).apparent().altaz()[0].degrees
    assert np.max(np.abs(sun_altitude_deg(unix_s, site.latitude_deg, site.longitude_deg) - sun)) < 0.05
    known = here.observe(Star(ra_hours=SCULPTOR.ra_deg / 15, dec_degrees=SCULPTOR.dec_deg)).apparent().altaz()[0].degrees
    for some in np.array_split(np.arange(200), 40):
        near = fixed_altitude_deg(unix_s[some], SCULPTOR.ra_deg, SCULPTOR.dec_deg, site.latitude_deg, site.longitude_deg)
        assert np.max(np.abs(near - known[some])) < 0.05
