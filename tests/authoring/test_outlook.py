"""What the outlook says beside its hours: advice, filters, season, first evening, and the published page."""

import re
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from sitegen.authoring.coming_nights import coming_nights, first_evening
from sitegen.diary.public_position import PublicSite
from sitegen.diary.settings import MoonRule
from sitegen.diary.target import Target
from sitegen.facts.outlook import FilterNeed, Outlook, Wish, common, outlook_of
from sitegen.folders import Folders
from sitegen.reading.reader import read_diary
from tests.authoring.conftest import TODAY

NEEDS = (
    FilterNeed("L", "broadband", 0.0, 7200.0),
    FilterNeed("Ha", "narrowband", 3600.0, 7200.0),
    FilterNeed("OIII", "narrowband", 7200.0, 7200.0),
    FilterNeed("R", "broadband", 600.0, None),
)


def site(latitude_deg: float | None, horizon: tuple[tuple[float, float], ...] = ()) -> PublicSite:
    longitude_deg = None if latitude_deg is None else 0.0
    return PublicSite("s", "S", latitude_deg, longitude_deg, 0.0, "UTC", None, 0.25, None, None, horizon)


def looked(
    latitude_deg: float | None, ra_deg: float, dec_deg: float, first: str, nights: int = 1, season: bool = False, **more: object
) -> Outlook:
    wish = Wish("e", "E", Target("t", "T", ra_deg, dec_deg), NEEDS)
    return outlook_of(wish, site(latitude_deg, **more), date.fromisoformat(first), nights, 30.0, MoonRule(), season)


def test_a_night_is_useful_from_an_hour_on() -> None:
    """A second less than the promised hour is not (common practice, no source), nor is an hour of civil twilight."""
    night = looked(50.0, 0.0, 60.0, "2026-11-01").nights[0]
    assert night.useful
    assert replace(night, target_s=3600.0).useful
    assert not replace(night, target_s=3599.0).useful
    assert not replace(night, hours_kind="sun below horizon").useful


def test_what_is_missing() -> None:
    """Never below nothing; unknown where nothing was wanted."""
    assert [need.missing_s for need in NEEDS] == [7200.0, 3600.0, 0.0, None]


def test_the_moon_decides_which_filters() -> None:
    """New Moon 9 December 2026: all that still want hours; full 24 December (USNO phases): the narrow ones of these."""
    new, full = (looked(-37.0, 84.7, -69.1, evening).nights[0] for evening in ("2026-12-08", "2026-12-23"))
    assert (new.advice, new.filters) == ("any", ("L", "Ha", "R"))
    assert (full.advice, full.filters) == ("narrowband", ("Ha",))


def test_a_target_that_stays_low_is_not_useful() -> None:
    """No hours, no filters; the night is told all the same."""
    (night,) = looked(-37.0, 210.8, 54.3, "2026-12-08").nights
    assert (night.target_s, night.filters, night.useful) == (0, (), False)
    assert night.dark_s > 4 * 3600


def test_the_horizon_takes_hours() -> None:
    """Roofs up to 60° all round leave less than a free horizon does."""
    free, roofs = (looked(-37.0, 84.7, -37.0, "2026-12-08", horizon=one).nights[0] for one in ((), ((0.0, 60.0), (180.0, 60.0))))
    assert 0 < roofs.target_s < free.target_s - 1800


def test_midsummer_in_the_north_falls_back_on_twilight() -> None:
    """At 52° the Sun stays above -18° on 21 June (common practice: nautical twilight is all there is)."""
    (night,) = looked(52.0, 280.0, 40.0, "2026-06-21").nights
    assert (night.dark_s, night.hours_kind) == (0.0, "nautical")
    assert night.useful


def test_a_season_ends() -> None:
    """Every night of it is useful, the night after it is not."""
    outlook = looked(-37.0, 84.7, -5.4, "2026-11-25", season=True)
    season = outlook.season
    assert season is not None
    assert season.last is not None
    assert season.nights == (season.last - season.first).days + 1
    assert 0 < season.moonless < season.nights
    last, after = looked(-37.0, 84.7, -5.4, str(season.last), nights=2).nights
    assert (last.useful, after.useful) == (True, False)


def test_a_season_that_goes_on() -> None:
    """A target round the pole of a place with darkness all year has no end in sight."""
    season = looked(-37.0, 0.0, -89.0, "2026-11-25", season=True).season
    assert season is not None
    assert (season.last, season.nights) == (None, 366)


def test_a_hidden_site_tells_nothing() -> None:
    """Neither nights nor a season."""
    outlook = looked(None, 84.7, -5.4, "2026-11-25", season=True)
    assert (outlook.nights, outlook.season) == ((), None)


def test_common_parts() -> None:
    """What two sets of intervals share."""
    moments = [datetime(2026, 1, 1, hour, tzinfo=UTC) for hour in range(6)]
    one, other = [(moments[0], moments[2]), (moments[3], moments[5])], [(moments[1], moments[4])]
    assert common(one, other) == ((moments[1], moments[2]), (moments[3], moments[4]))
    assert common(one, []) == ()


@pytest.mark.parametrize(("hour_utc", "evening"), [(12, "2026-11-25"), (17, "2026-11-25"), (20, "2026-11-26")])
def test_the_first_evening(hour_utc: int, evening: str) -> None:
    """In Auckland, 11.7 h ahead of UTC by the Sun: the night in progress until six in the morning, then the next."""
    assert str(first_evening(datetime(2026, 11, 25, hour_utc, tzinfo=UTC), 174.76)) == evening


def test_only_what_gathers_is_looked_at(folders: Folders) -> None:
    """A finished entry wants no more nights."""
    entry = folders.content / "entries/first-light.md"
    now = datetime(2026, 11, 25, tzinfo=UTC)
    diary = read_diary(folders.content, TODAY).diary
    assert diary is not None
    assert [one.wish.entry for one in coming_nights(diary, now, nights=1)] == ["first-light"]
    entry.write_text(entry.read_text("utf-8").replace("stage: gathering", "stage: finished"), "utf-8")
    diary = read_diary(folders.content, TODAY).diary
    assert diary is not None
    assert coming_nights(diary, now, nights=1) == ()


def test_the_true_place_is_used(folders: Folders) -> None:
    """In the terminal a private place counts to the last digit; the rounded one would be 6 s of the Sun elsewhere."""
    diary = read_diary(folders.content, TODAY).diary
    assert diary is not None
    (outlook,) = coming_nights(diary, datetime(2026, 11, 25, tzinfo=UTC), nights=1)
    assert (outlook.site.latitude_deg, outlook.site.longitude_deg) == (-36.85, 174.76)


def test_the_published_page(demo_site: Path) -> None:
    """From the newest day the diary knows, whatever day it is built on; no weather is promised; the menu leads there."""
    page = (demo_site / "outlook/index.html").read_text("utf-8")
    assert "Reckoned from 20 November 2026 on" in page
    assert "No weather is known" in page
    evenings = re.findall(r'<th scope="row"><time datetime="(.+?)">', page)
    assert evenings == [str(date(2026, 11, 20) + timedelta(days=number)) for number in range(30)]
    seasons = re.findall(r"<p>(.*useful nights?.*)</p>", page)
    assert len(seasons) == page.count("<h2 id=\"outlook-")
    told = re.search(r"leaves (\d+) useful nights, from 20 November 2026 until (.+?); (\d+) of them", page)
    assert told is not None
    assert int(told[1]) == (datetime.strptime(told[2], "%d %B %Y").replace(tzinfo=UTC).date() - date(2026, 11, 20)).days + 1
    assert int(told[3]) <= int(told[1])
    assert 'href="outlook/index.html"' in (demo_site / "index.html").read_text("utf-8")
