"""The whole sky of a ten-year diary against bare ERFA calls for the same subs.

    python tests/bench/sky.py

5,000 nights at 3 sites, 20 subs each (100,000), 12 targets. The engine answers nights (events, phases, curves), targets a
night and all columns of the subs; the bare calls only give directions to Sun, Moon and target for those subs, one vectorised
ERFA call each. Ten night-curve points for every sub come on top for the engine, and are not charged to the other side.
"""

import resource
import sys
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path
from time import perf_counter

import erfa
import numpy as np

sys.path.insert(0, str(Path(__file__).parents[2]))

from sitegen.sky.earth_rotation import UNIX_EPOCH_JD, terrestrial_time, ut1_minus_utc_s
from sitegen.sky.engine import sky_pass
from sitegen.sky.night_time import midnight_s
from sitegen.sky.place import Place
from sitegen.sky.request import SkyRequest

NIGHTS, SUBS_A_NIGHT, TARGETS = 5000, 20, 12
SITES = (Place(-32.4, 20.8, 1800.0, 0.2, 21.8), Place(60.2, 10.4, 120.0, 0.25, 20.9), Place(48.1, -4.6, 60.0, 0.3, 20.1))
RUNS = 2
TIMES_ALLOWED, MEGABYTES_ALLOWED = 3.0, 500.0


def ten_year_diary() -> SkyRequest:
    """The request; every number from one seed."""
    rng = np.random.default_rng(5)
    nights = tuple((i % len(SITES), date(2013, 1, 1) + timedelta(days=i)) for i in range(NIGHTS))
    night = np.repeat(np.arange(NIGHTS), SUBS_A_NIGHT)
    middle = np.array([midnight_s(evening, SITES[site].longitude_deg) for site, evening in nights])
    return SkyRequest(
        places=SITES,
        nights=nights,
        directions=tuple((float(rng.uniform(0, 360)), float(rng.uniform(-60, 70))) for _ in range(TARGETS)),
        night_targets=tuple((i, i % TARGETS) for i in range(NIGHTS)),
        sub_mid_s=middle[night] + rng.uniform(-4 * 3600, 4 * 3600, night.size),
        sub_night=night,
        sub_direction=night % TARGETS,
    )


def bare_calls(request: SkyRequest) -> dict[str, Callable[[], object]]:
    """One vectorised ERFA call for each body and sub."""
    tt, moments = terrestrial_time(request.sub_mid_s), request.sub_mid_s
    site = np.array([place for place, _ in request.nights])[request.sub_night]
    longitude, latitude, height = (
        np.array([getattr(place, name) for place in SITES])[site] for name in ("longitude_deg", "latitude_deg", "elevation_m")
    )
    ra, dec = np.radians(np.array(request.directions)[request.sub_direction]).T
    dut1, weather = ut1_minus_utc_s(moments), (0.0, 0.0, 0.0, 0.5)

    def target() -> object:
        astrom, _ = erfa.apco13(
            UNIX_EPOCH_JD, moments / 86400.0, dut1, np.radians(longitude), np.radians(latitude), height, 0.0, 0.0, *weather
        )
        return erfa.atioq(*erfa.atciqz(ra, dec, astrom), astrom)

    return {
        "Sun (epv00)": lambda: erfa.epv00(*tt),
        "Moon (moon98)": lambda: erfa.moon98(*tt),
        "target (apco13, atciqz, atioq)": target,
    }


def fastest_s(call: Callable[[], object]) -> float:
    """Shortest of a few runs."""
    return min(timed_s(call) for _ in range(RUNS))


def timed_s(call: Callable[[], object]) -> float:
    """Seconds of one run."""
    start = perf_counter()
    call()
    return perf_counter() - start


def megabytes() -> float:
    """Peak memory of this process so far."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0


def main() -> int:
    """Print both sides; 1 where a bound is missed."""
    request = ten_year_diary()
    first_s = timed_s(lambda: sky_pass(request))
    engine_s, peak = fastest_s(lambda: sky_pass(request)), megabytes()
    bare = {name: fastest_s(call) for name, call in bare_calls(request).items()}
    # apco13 computes the Earth, and with it the Sun, itself: the side of bare calls is charged for it once only.
    leanest_s = sum(bare.values()) - bare["Sun (epv00)"]
    print(f"{NIGHTS} nights x {SUBS_A_NIGHT} subs, {len(SITES)} sites, {TARGETS} targets; best of {RUNS}")
    for name, seconds in bare.items():
        print(f"  bare ERFA, {name:32} {seconds:7.2f} s")
    print(f"  bare ERFA, {'all, the Sun taken from apco13':32} {leanest_s:7.2f} s")
    print(f"  engine, {'everything':35} {engine_s:7.2f} s   (first run, Earth-rotation table read: {first_s:.2f} s)")
    print(f"  engine / bare ERFA {engine_s / leanest_s:.2f} (at most {TIMES_ALLOWED})")
    print(f"  peak memory of the engine {peak:.0f} MB (under {MEGABYTES_ALLOWED:.0f})")
    return int(engine_s > TIMES_ALLOWED * leanest_s or peak >= MEGABYTES_ALLOWED)


if __name__ == "__main__":
    sys.exit(main())
