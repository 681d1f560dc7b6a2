"""Facts computed on diaries built by hand."""

import json
import random
from datetime import UTC, date, datetime
from typing import Any

import numpy as np
import pytest
from msgspec.structs import replace

from sitegen.diary.entry import Entry, NightNote
from sitegen.diary.settings import Privacy
from sitegen.diary.target import Positions, Target
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import as_json, facts_of, plain
from sitegen.facts.integration_dark_equivalent import dark_equivalent_s, sub_worths_s
from sitegen.facts.night_use import covered_s
from sitegen.facts.views import EntryView
from tests.diaries import HILL, SCULPTOR, diary, entry, run, sub

# facts.json of schema 1 once more, every key at every level: who takes one away or moves it breaks what others wrote for it
ENTRY_KEYS = """schema entry title stage target optics integration nights subs pictures mosaic panels star_shapes star_rings
cautions""".split()
OPTICS_KEYS = """rig from binning focal_length_mm f_ratio scale_arcsec_px field_deg field_diagonal_deg rayleigh_arcsec
dawes_arcsec seeing_arcsec sampling_px_per_fwhm sampling measured_scale_arcsec_px measured_focal_length_mm
simulated_scale_arcsec_px simulated_focal_length_mm
integration_s by_filter""".split()
INTEGRATION_KEYS = """total_s recalled_s kept discarded discarded_s broadband_s narrowband_s dark_equivalent_s shared_s by_filter
by_night""".split()
NIGHT_KEYS = """evening_of site sunset sunrise dark_start dark_end dark_s nautical_dark_s moon target integration_s first_start
last_end used_share_of_dark advice moon_down followed""".split()
MOON_KEYS = "illuminated phase age_days rise set up_share_of_dark dark_and_moonless_s".split()
TARGET_OF_NIGHT_KEYS = """transit max_altitude_deg min_airmass positions_from ra_deg dec_deg size_arcsec elongation_deg
illuminated""".split()
SUB_KEYS = """start exposure_s filter kept target_altitude_deg airmass moon_altitude_deg moon_separation_deg moon_illuminated
sky_brightening_mag sun_altitude_deg""".split()
TARGET_KEYS = "name ra_deg dec_deg constellation kind size_arcmin magnitude".split()


def facts(one: Entry, **settings: Any) -> dict[str, Any]:
    book = diary(one, **settings)
    return as_json(facts_of(views_of(book, book.entries)[0]))


def kept_of(record: dict[str, Any], keys: list[str]) -> list[str]:
    """Those of schema 1 that stand in it, in its order: a new fact may join them."""
    return [key for key in record if key in keys]


def test_facts_have_the_keys_of_schema_1() -> None:
    """facts.json keeps every key of schema 1, each in its place."""
    found = facts(entry(run("2026-09-12 12:00", 3)))
    assert kept_of(found, ENTRY_KEYS) == ENTRY_KEYS
    assert kept_of(found["optics"][0], OPTICS_KEYS) == OPTICS_KEYS
    assert kept_of(found["integration"], INTEGRATION_KEYS) == INTEGRATION_KEYS
    assert kept_of(found["nights"][0], NIGHT_KEYS) == NIGHT_KEYS
    assert kept_of(found["nights"][0]["moon"], MOON_KEYS) == MOON_KEYS
    assert kept_of(found["nights"][0]["target"], TARGET_OF_NIGHT_KEYS) == TARGET_OF_NIGHT_KEYS
    assert kept_of(found["subs"], SUB_KEYS) == SUB_KEYS
    assert kept_of(found["target"], TARGET_KEYS) == TARGET_KEYS


def test_facts_are_plain_json() -> None:
    """Nothing in the facts needs a special encoder, and no NaN hides among the numbers."""
    found = facts(entry(run("2026-09-12 12:00", 3, target=None), targets=()))
    assert json.loads(json.dumps(found, allow_nan=False)) == found


def test_totals_count_kept_light_frames_only() -> None:
    """Discarded subs and calibration frames are in no total."""
    subs = [
        *run("2026-09-12 12:00", 4),
        *run("2026-09-12 13:00", 2, kept=False, reason="cloud"),
        *run("2026-09-12 14:00", 3, 600.0, filter="Ha"),
        *run("2026-09-12 16:00", 1, 120.0, filter="Duo"),
        *run("2026-09-12 18:00", 9, kind="dark", filter=None),
    ]
    totals = facts(entry(subs, wanted_hours={"L": 2.0}))["integration"]
    assert totals["total_s"] == 4 * 300 + 3 * 600 + 120
    assert (totals["kept"], totals["discarded"], totals["discarded_s"]) == (8, 2, 600)
    assert (totals["broadband_s"], totals["narrowband_s"]) == (1200, 1920)
    assert totals["by_filter"] == {
        "L": {"total_s": 1200.0, "recalled_s": 0, "kept": 4, "discarded": 2, "wanted_s": 7200.0},
        "Ha": {"total_s": 1800.0, "recalled_s": 0, "kept": 3, "discarded": 0, "wanted_s": None},
        "Duo": {"total_s": 120.0, "recalled_s": 0, "kept": 1, "discarded": 0, "wanted_s": None},
    }


def test_a_night_is_not_split_at_midnight() -> None:
    """Subs on both sides of local and of UTC midnight belong to one evening; the next noon begins another night."""
    found = facts(entry([sub("2026-09-12 13:00"), sub("2026-09-12 20:00"), sub("2026-09-13 13:00")]))
    assert [night["evening_of"] for night in found["nights"]] == ["2026-09-12", "2026-09-13"]
    assert found["integration"]["by_night"] == {"2026-09-12": 600.0, "2026-09-13": 300.0}


def test_two_sites_of_one_evening_are_two_rows_and_one_total() -> None:
    """A night is a row per site; by_night adds them up."""
    away = replace(HILL, slug="away", name="Away", latitude_deg=-30.0)
    book = diary(entry([sub("2026-09-12 13:00"), sub("2026-09-12 14:00", site="away")]))
    book = replace(book, sites={**book.sites, "away": away})
    found = as_json(facts_of(views_of(book, book.entries)[0]))
    assert [(night["evening_of"], night["site"]) for night in found["nights"]] == [("2026-09-12", "away"), ("2026-09-12", "hill")]
    assert found["integration"]["by_night"] == {"2026-09-12": 600.0}


def test_the_train_is_the_one_that_stood_that_evening() -> None:
    """A reducer from 20 September on gives a second row of optics with 0.8 of the focal length."""
    found = facts(entry([sub("2026-09-19 13:00"), sub("2026-09-20 13:00"), sub("2026-09-20 14:00", binning=2)]))
    rows = [(row["from"], row["binning"], row["focal_length_mm"], row["f_ratio"]) for row in found["optics"]]
    assert rows == [(None, 1, 1000, 4), ("2026-09-20", 1, 800, 3.2), ("2026-09-20", 2, 800, 3.2)]
    assert found["optics"][2]["scale_arcsec_px"] == pytest.approx(2 * found["optics"][1]["scale_arcsec_px"], abs=1e-4)


def test_an_entry_about_gear_shows_its_rig() -> None:
    """No subs, no nights, no target: the train of its rig stands all the same."""
    found = facts(entry(targets=()))
    assert found["target"] is None
    assert found["nights"] == []
    assert [row["from"] for row in found["optics"]] == ["2026-09-20"]
    assert found["integration"]["dark_equivalent_s"] == 0


def test_a_hidden_site_publishes_nothing_that_depends_on_position() -> None:
    """Every position-dependent fact is null; the totals and the Moon's lit fraction stay."""
    found = facts(entry(run("2026-09-12 12:00", 3)), privacy=Privacy("hidden"))
    night = found["nights"][0]
    known = {"evening_of", "site", "integration_s", "first_start", "last_end", "moon", "target"}
    assert all(night[key] is None for key in NIGHT_KEYS if key not in known)
    assert all(value is None for value in [*night["moon"].values(), *night["target"].values()])
    for key in set(SUB_KEYS) - {"start", "exposure_s", "filter", "kept", "moon_illuminated"}:
        assert found["subs"][key] == [None] * 3
    assert found["integration"]["total_s"] == 900
    assert found["integration"]["dark_equivalent_s"] is None
    assert all(0 < lit < 0.1 for lit in found["subs"]["moon_illuminated"])


def test_two_gardens_in_one_rounding_cell_publish_the_same() -> None:
    """What differs only inside one cell of 0.1 degrees and 100 m never reaches a fact (100 random pairs)."""
    chance = random.Random(20261125)
    one = entry([*run("2026-09-12 12:00", 2), *run("2026-10-01 13:00", 2, filter="Ha")])
    reference = facts(one, site=replace(HILL, latitude_deg=-32.6, longitude_deg=139.0, elevation_m=300.0))
    for _ in range(100):
        garden = replace(
            HILL,
            latitude_deg=-32.6 + chance.uniform(-0.0499, 0.0499),
            longitude_deg=139.0 + chance.uniform(-0.0499, 0.0499),
            elevation_m=300.0 + chance.uniform(-49.0, 49.0),
        )
        assert facts(one, site=garden) == reference


def test_a_moving_target_has_no_place() -> None:
    """kind 'moving': what depends on a fixed place is null, the Moon is not."""
    found = facts(entry(run("2026-09-12 12:00", 2), targets=(Target("comet", "A comet", None, None, "moving"),)))
    assert found["subs"]["target_altitude_deg"] == [None, None]
    assert found["subs"]["moon_altitude_deg"][0] is not None
    assert found["nights"][0]["target"] == dict.fromkeys(TARGET_OF_NIGHT_KEYS)


def test_a_planet_and_a_table_are_followed() -> None:
    """By its name in either language, or by the author's table, whose file is named and which tells no size."""
    table = Positions("logs/places.csv", (1.78e9, 1.80e9), (10.0, 20.0), (-20.0, -10.0))
    comet = Target("comet", "A comet", None, None, "moving", positions=table)
    for target, source in ((Target("saturn", "Saturn", None, None, "moving"), "ERFA plan94"), (comet, "logs/places.csv"),
                           (Target("mond", "Mond", None, None, "moving"), "ERFA moon98")):  # fmt: skip
        found = facts(entry(run("2026-09-12 12:00", 2), targets=(target,)))
        night = found["nights"][0]["target"]
        assert night["positions_from"] == source
        assert (night["size_arcsec"] is None) == (target is comet)
        assert None not in (night["transit"], night["max_altitude_deg"], night["elongation_deg"])
        assert None not in found["subs"]["target_altitude_deg"]
        assert found["target"]["ra_deg"] is None


def test_used_share_counts_overlapping_rigs_once() -> None:
    """Two rigs side by side use an hour once; what lies outside the dark does not count."""
    hour = [datetime(2026, 9, 12, hour, tzinfo=UTC) for hour in range(24)]
    dark = (hour[11], hour[19])
    assert covered_s([(hour[12], hour[13]), (hour[12], hour[13])], dark) == 3600
    assert covered_s([(hour[10], hour[12]), (hour[18], hour[20])], dark) == 7200
    assert covered_s([(hour[12], hour[15]), (hour[13], hour[14])], dark) == 3 * 3600


def test_dark_equivalent_halves_where_the_sky_is_twice_as_bright() -> None:
    """A brightening of 2.5·log10(2) mag halves what 600 s are worth; narrowband and discarded subs do not enter."""
    subs = [sub("2026-09-12 12:00", 600.0), sub("2026-09-12 13:00", filter="Ha"), sub("2026-09-12 14:00", kept=False)]
    book = diary(entry(subs))
    view = views_of(book, book.entries)[0]
    overhead = under(view, target_altitude_deg=90.0, sun_altitude_deg=-30.0)
    brighter = under(overhead, sky_brightening_mag=[0.752575, np.nan, 5.0])
    assert dark_equivalent_s(brighter) == pytest.approx(300, abs=0.1)
    assert sub_worths_s(brighter)[1:] == (0.0, 0.0)


def under(view: EntryView, **columns: Any) -> EntryView:
    """The view with other skies over its subs, one value for all or one for each."""
    arrays = {name: np.broadcast_to(np.asarray(value, float), len(view.lights)) for name, value in columns.items()}
    return replace(view, sub_sky=replace(view.sub_sky, **arrays))


def three_subs(**settings: Any) -> EntryView:
    """Three broadband subs of a moonless evening, the target some 38 deg up."""
    book = diary(entry(run("2026-09-12 12:00", 3)), **settings)
    return views_of(book, book.entries)[0]


def test_a_dark_hour_is_worth_its_exposure_less_the_air() -> None:
    """Without Moon and twilight a sub counts exposure × 10^(−0.8 k (X − 1)): the published airmass, the site's k of 0.22."""
    view = three_subs()
    columns = as_json(facts_of(view))["subs"]
    assert all(sun < -18 for sun in columns["sun_altitude_deg"])
    assert max(columns["moon_altitude_deg"]) < 0
    expected = sum(300 * 10 ** (-0.8 * 0.22 * (air - 1)) for air in columns["airmass"])
    assert facts_of(view).integration.dark_equivalent_s == pytest.approx(expected, abs=0.1)
    assert 0.75 * 900 < expected < 0.8 * 900


def test_a_sub_below_the_horizon_counts_nothing_and_hides_nothing() -> None:
    """One of three subs with its target down: the other two still have their worth."""
    view = three_subs()
    altitudes = view.sub_sky.target_altitude_deg.copy()
    altitudes[1] = -3.0
    brightening = view.sub_sky.sky_brightening_mag.copy()
    brightening[1] = np.nan  # as the model of moonlight says below the horizon
    sunk = under(view, target_altitude_deg=altitudes, sky_brightening_mag=brightening)
    first, _, third = sub_worths_s(view)
    assert sub_worths_s(sunk) == (first, 0.0, third)
    assert dark_equivalent_s(sunk) == pytest.approx(first + third)


def test_subs_in_daylight_count_nothing() -> None:
    """Three subs at noon are worth no dark hour, though the Moon is down."""
    view = views_of(book := diary(entry(run("2026-09-12 03:00", 3))), book.entries)[0]
    assert min(view.sub_sky.sun_altitude_deg) > 30
    assert facts_of(view).integration.dark_equivalent_s == 0
    assert facts_of(view).integration.total_s == 900


def test_one_sub_of_which_nothing_is_known_makes_the_sum_unknown() -> None:
    """The others keep their worth; the sum is no claim any more."""
    view = three_subs()
    moonlit = under(view, sky_brightening_mag=[0.0, np.nan, 0.0])
    assert [worth is None for worth in sub_worths_s(moonlit)] == [False, True, False]
    assert dark_equivalent_s(moonlit) is None


def test_an_unmeasured_sky_is_worth_its_dark_hours() -> None:
    """Without `sky_mag_arcsec2` dark, moonless subs have a worth; in twilight nobody can say."""
    unmeasured = replace(HILL, sky_mag_arcsec2=None)
    dark = three_subs(site=unmeasured)
    assert sub_worths_s(dark) == sub_worths_s(three_subs())
    assert dark_equivalent_s(under(dark, sun_altitude_deg=[-30.0, -15.0, -30.0])) is None


def test_subs_of_two_sites_are_weighed_by_their_own_air() -> None:
    """Each light takes the extinction of the site it was taken at."""
    away = replace(HILL, slug="away", name="Away", extinction_mag=0.0)
    book = diary(entry([sub("2026-09-12 13:00"), sub("2026-09-12 14:00", site="away")]))
    book = replace(book, sites={**book.sites, "away": away})
    near, far = sub_worths_s(views_of(book, book.entries)[0])
    assert near < 300 == far


@pytest.mark.parametrize(
    ("start", "filter_name", "advice", "followed"),
    [
        ("2026-09-12 13:00", "L", "any", None),  # new Moon 2026-09-11 03:27 UTC (published_values/sky_moon.py)
        ("2026-09-26 13:00", "L", "narrowband", False),  # full Moon 2026-09-26 16:49 UTC
        ("2026-09-26 13:00", "Duo", "narrowband", True),
        ("2026-10-02 18:00", "L", "broadband-while-moon-down", False),  # last quarter 2026-10-03 13:25: up after midnight
        ("2026-10-02 12:00", "L", "broadband-while-moon-down", True),
    ],
)
def test_the_moon_s_rule(start: str, filter_name: str, advice: str, followed: bool | None) -> None:
    """The advice and whether the subs kept to it, on nights whose phase published_values/sky_moon.py has."""
    night = facts(entry([sub(start, filter=filter_name)]))["nights"][0]
    assert (night["advice"], night["followed"]) == (advice, followed)


def test_cautions_come_from_work_topics_and_cold() -> None:
    """Work since the entry before with this rig, topics that name a caution, nights below freezing."""
    earlier = entry(slug="earlier", published=date(2026, 7, 1))
    later = entry(topics=("electrical",), night_notes={date(2026, 9, 12): NightNote(temperature_c=-3.0)})
    book = diary(earlier, later)
    newest, oldest = (as_json(facts_of(view)) for view in views_of(book, book.entries))
    assert newest["cautions"] == ["laser", "electrical", "cold"]
    assert oldest["cautions"] == []


def test_a_filterless_camera_is_filed_under_colour() -> None:
    """One-shot colour without a filter has a total of its own name, and is broadband."""
    rig_camera = replace(diary().rigs["long"].trains[0].camera, colour="colour")
    train = replace(diary().rigs["long"].trains[0], camera=rig_camera)
    rig = replace(diary().rigs["long"], trains=(train,), filters={})
    totals = facts(entry([sub("2026-09-12 12:00", filter=None)]), rig=rig)["integration"]
    assert list(totals["by_filter"]) == ["colour"]
    assert totals["broadband_s"] == 300


def test_plain_values() -> None:
    """Times end in Z, NaN is null, booleans stay booleans, whole numbers lose their point."""
    moment = datetime(2026, 9, 12, 20, 0, 0, 250_000, UTC)
    assert plain(moment, None) == "2026-09-12T20:00:00.250Z"
    assert plain([float("nan"), 1.23456, 2.0, True], 2) == [None, 1.23, 2, True]


def test_subs_stand_in_time_order() -> None:
    """Columns are of equal length and sorted by start, whatever the logs' order."""
    columns = facts(entry([sub("2026-09-13 13:00"), sub("2026-09-12 13:00"), sub("2026-09-12 12:00")]))["subs"]
    assert {len(column) for column in columns.values()} == {3}
    assert columns["start"] == sorted(columns["start"])


def test_the_target_is_the_author_s() -> None:
    """Name and place as the valid diary holds them."""
    assert facts(entry())["target"]["name"] == SCULPTOR.name


def test_nights_beyond_the_earth_rotation_table_are_told_once() -> None:
    """A night long after the installed table's end gives one sentence with the size of the error, on one entry only."""
    near, far = entry(run("2026-09-12 12:00", 1)), entry(run("2040-09-12 12:00", 1), slug="far", published=date(2040, 10, 1))
    book = diary(near, far)
    notes = {view.entry.slug: view.sky_note for view in views_of(book, book.entries)}
    assert notes["five-nights"] is None
    assert notes["far"] is not None
    assert "outside the installed table of the Earth's rotation: rise, set and transit may be off by" in notes["far"]
