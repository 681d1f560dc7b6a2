"""Which train stood when a frame was taken. Judge: the sky's own rule for nights, and the rig's own history."""

from datetime import UTC, date, datetime

from hypothesis import given
from hypothesis import strategies as st

from sitegen.diary.rig import Camera, Rig, Telescope, Train
from sitegen.diary.site import Site
from sitegen.reading.capture_logs.standing_train import train_at
from sitegen.sky.night_time import evening_of
from sitegen.sky.solar_time import evening_at

MOMENTS = st.datetimes(datetime(1990, 1, 1), datetime(2050, 1, 1)).map(lambda moment: moment.replace(tzinfo=UTC))  # noqa: DTZ001
LONGITUDES = st.floats(-180, 180)
CAMERA = Camera(None, 3.76, 100, 100, "mono")
TRAINS = tuple(Train(since, Telescope(None, None, None, 100.0), CAMERA) for since in (None, date(2026, 5, 1), date(2026, 5, 4)))
RIG = Rig("r", "R", TRAINS)


@given(MOMENTS, LONGITUDES)
def test_one_moment_has_the_evening_of_the_sky(moment, longitude_deg):
    """The quick form for one moment and the vectorised one agree everywhere on Earth."""
    assert evening_at(moment, longitude_deg) == evening_of(moment.timestamp(), longitude_deg).astype(date)


@given(st.integers(0, 10 * 24 * 60), LONGITUDES)
def test_the_rigs_history_decides(minutes, longitude_deg):
    """Minute by minute through the days round two changes."""
    moment = datetime.fromtimestamp(datetime(2026, 4, 27, tzinfo=UTC).timestamp() + 60 * minutes, UTC)
    site = Site("s", "S", 0.0, longitude_deg, 0.0, "UTC")
    assert train_at(RIG, site, moment) is RIG.train_on(evening_of(moment.timestamp(), longitude_deg).astype(date))


def test_a_gathered_log_is_compared_with_its_rig(read):
    """By its private columns, once for all its frames; a log that agrees is quiet, and so is one without such columns."""
    head = "start,exposure_s,filter,focal_length_mm,pixel_um,width_px,height_px\n"
    rows = [f"2026-06-18T11:{minute:02}:00Z,50,Ha,{{}},3.76,6248,4176\n" for minute in range(3)]
    assert read("a.csv", head + "".join(rows).format(800, 800, 800)).problems == ()
    assert [str(problem) for problem in read("a.csv", head + "".join(rows).format(800, 530, 530)).problems] == [
        "logs/a.csv:1:1: warning: focal_length_mm is 530 mm, the rig 'newtonian' had 800 mm that evening (so of 2 of 3 subs); "
        "correct 'focal_length_mm' or 'factor' in rigs/newtonian.yaml, or add the change of that evening to 'changes'"
    ]
