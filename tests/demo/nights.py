"""The nights of the demo diary: invented, but possible under the sky of their dates."""

from frames import Block, Calibration, Place, Session, Spoilt

HILL = Place("two-tanks-hill", -32.634, 139.018, "Australia/Adelaide")
PADDOCK = Place("far-paddock", -31.872, 138.664, "Australia/Adelaide")
COTTAGE = Place("lake-cottage", 60.243, 25.617, "Europe/Helsinki")

OMEGA_CENTAURI = (201.697, -47.480)
CORONA_CLOUD = (285.75, -37.10)
GALACTIC_CENTRE = (266.4, -28.9)
HELIX = (337.411, -20.837)
SCULPTOR_GALAXY = (11.888, -25.288)
CARINA = (161.265, -59.867)
ARA_RIM = (250.05, -48.66)
VEIL_EAST = (314.1, 31.45)
TARANTULA = (84.676, -69.101)


def _darks(start: str, exposure_s: float, count: int = 20) -> Calibration:
    return Calibration(start, "dark", exposure_s, count)


def _flats(start: str, name: str, exposure_s: float, count: int = 20) -> Calibration:
    return Calibration(start, "flat", exposure_s, count, name)


COUNTING = Session(
    "2025-03-28", "long-mono", HILL, *OMEGA_CENTAURI, seed=32801,
    blocks=(
        Block("21:40", "23:20", (("L", 60, 1),)),
        Block("23:45", "01:05", (("R", 60, 5), ("G", 60, 5), ("B", 60, 5))),
    ),
    spoilt=(
        Spoilt("21:40", "22:05", "focus not found yet"),
        Spoilt("22:50", "22:58", "the hall's lights on"),
        Spoilt("00:20", "00:24", "torch on, tally sheet dropped"),
    ),
    calibration=(
        _flats("19:30", "L", 2.5), _flats("19:33", "R", 4.0), _flats("19:36", "G", 3.6),
        _flats("19:39", "B", 4.4), _darks("01:12", 60), Calibration("01:40", "bias", 0.0, 50, gap_s=0.5),
    ),
    seeing_arcsec=3.1, elongation=1.1, guiding_arcsec=1.05, sensor_c=-5.0, one_in_discarded=22,
    reasons=("guiding lost", "satellite", "somebody bumped the pier"),
)

# The last with the flange clean: the tilt's blur is gone from the mean width.
CORNER_TESTS = tuple(
    Session(
        evening, "long-mono", HILL, 230.0, -42.0, seed=seed, blocks=(Block(start, end, (("L", 10, 1),)),),
        spoilt=(Spoilt("19:00", "23:59", "test of the corners"),),
        seeing_arcsec=seeing, elongation=1.05, guiding_arcsec=0.8, sensor_c=-15.0, binning=4, german_mount=False,
    )
    for evening, seed, start, end, seeing in (
        ("2025-08-02", 80201, "19:40", "19:44", 3.5),
        ("2025-08-23", 82301, "19:40", "19:44", 3.3),
        ("2025-08-23", 82302, "20:34", "20:38", 2.5),
    )
)

CORONA = (
    Session(
        "2025-07-24", "short-colour", PADDOCK, *CORONA_CLOUD, seed=72401,
        blocks=(Block("20:10", "02:50", (("C", 180, 1),)),),
        spoilt=(Spoilt("01:30", "01:44", "dew on the front glass"),),
        seeing_arcsec=2.9, guiding_arcsec=0.75, sensor_c=-15.0, one_in_discarded=60,
    ),
    Session(
        "2025-07-26", "short-colour", PADDOCK, *CORONA_CLOUD, seed=72601,
        blocks=(Block("19:40", "02:20", (("C", 180, 1),)),),
        spoilt=(Spoilt("21:05", "21:25", "headlights from the gate"),),
        calibration=(_darks("05:10", 180), _flats("06:45", "C", 0.8, 30)),
        seeing_arcsec=2.7, guiding_arcsec=0.7, sensor_c=-15.0, one_in_discarded=60,
    ),
)

WIDE_FIELD = Session(
    "2025-07-25", "camera-lens", PADDOCK, *GALACTIC_CENTRE, seed=72501,
    blocks=(Block("20:20", "22:20", (("", 120, 1),)),),
    gain=1600, seeing_arcsec=24, guiding_arcsec=9.0, sensor_c=4.0, german_mount=False, one_in_discarded=10_000,
)

HELIX_NIGHTS = tuple(
    Session(
        evening, "long-mono", HILL, *HELIX, seed=seed, blocks=blocks, spoilt=spoilt, calibration=calibration,
        seeing_arcsec=seeing, guiding_arcsec=0.6, sensor_c=-15.0, binning=2, one_in_discarded=30,
    )
    for evening, seed, blocks, spoilt, calibration, seeing in (
        ("2025-08-08", 80801, (Block("21:15", "04:20", (("Ha", 300, 1),)),),
         (Spoilt("02:30", "02:55", "thin cloud"),), (), 2.4),
        ("2025-08-10", 81001, (Block("21:05", "04:10", (("OIII", 300, 1),)),), (), (), 2.7),
        ("2025-08-12", 81201, (Block("21:00", "00:40", (("OIII", 300, 1),)),
                               Block("00:45", "03:50", (("Ha", 300, 1),))),
         (Spoilt("03:15", "03:50", "fog from the dam"),),
         (_darks("04:30", 300, 15), _flats("06:24", "Ha", 9.0), _flats("06:29", "OIII", 11.0)), 2.2),
    )
)

FIRST_SEASON = tuple(
    Session(
        evening, "short-colour", HILL, *SCULPTOR_GALAXY, seed=seed,
        blocks=(Block(start, end, (("C", 300, 1),)),), spoilt=spoilt,
        seeing_arcsec=2.8, guiding_arcsec=0.7, sensor_c=-10.0, gain=120, one_in_discarded=35,
    )
    for evening, seed, start, end, spoilt in (
        ("2025-10-18", 101801, "21:10", "03:05", (Spoilt("00:40", "01:05", "high cloud"),)),
        ("2025-10-24", 102401, "21:20", "02:35", ()),
        ("2025-10-26", 102601, "21:30", "01:10", (Spoilt("22:10", "22:35", "wind against the shed"),)),
    )
)

CARINA_LONG = tuple(
    Session(
        evening, "long-mono", HILL, *CARINA, seed=seed, blocks=(Block(start, end, ((name, seconds, 1),)),),
        spoilt=spoilt, calibration=calibration, seeing_arcsec=seeing, guiding_arcsec=0.55, binning=2,
        sensor_c=-10.0, one_in_discarded=30,
    )
    for evening, seed, name, seconds, start, end, spoilt, calibration, seeing in (
        ("2026-03-28", 32802, "Ha", 300, "20:40", "01:30", (), (), 2.3),
        ("2026-03-31", 33101, "Ha", 300, "20:45", "23:20",
         (Spoilt("22:35", "23:20", "cloud bank from the gulf"),), (), 2.6),
        ("2026-04-04", 40401, "SII", 300, "21:15", "03:20", (), (), 2.1),
        ("2026-04-12", 41201, "OIII", 300, "19:30", "00:55",
         (Spoilt("21:20", "21:42", "ground shook, trucks on the road"),), (), 2.2),
        ("2026-04-14", 41401, "SII", 300, "19:25", "22:40", (),
         (_darks("23:10", 300, 15), _flats("06:05", "Ha", 8.5), _flats("06:10", "OIII", 10.5),
          _flats("06:15", "SII", 9.5)), 2.5),
    )
)

CARINA_SHORT = tuple(
    Session(
        evening, "short-colour", HILL, *CARINA, seed=seed, blocks=(Block(start, end, (("HO", 240, 1),)),),
        spoilt=spoilt, seeing_arcsec=2.7, guiding_arcsec=0.7, sensor_c=-10.0, gain=120, one_in_discarded=40,
    )
    for evening, seed, start, end, spoilt in (
        ("2026-04-12", 41202, "19:35", "00:40", ()),
        ("2026-04-14", 41402, "19:30", "23:55", (Spoilt("23:20", "23:55", "mist over the saddle"),)),
    )
)

ARA_NIGHTS = tuple(
    Session(
        evening, "short-colour", HILL, *ARA_RIM, seed=seed, blocks=(Block(start, end, (("HO", 300, 1),)),),
        calibration=calibration, seeing_arcsec=2.7, guiding_arcsec=0.65, sensor_c=-10.0, gain=120,
        one_in_discarded=10_000,
    )
    for evening, seed, start, end, calibration in (
        ("2026-05-09", 50901, "22:15", "00:20", ()),
        ("2026-05-13", 51301, "21:30", "00:15", ()),
        ("2026-05-24", 52401, "20:40", "23:05",
         (Calibration("23:30", "dark", 300, 4, "HO"), Calibration("06:40", "flat", 1.2, 4, "HO"))),
    )
)

MIDSUMMER = tuple(
    Session(
        evening, "short-colour", COTTAGE, *VEIL_EAST, seed=seed, blocks=(Block(start, end, (("HO", seconds, 1),)),),
        spoilt=spoilt, calibration=calibration, seeing_arcsec=2.6, guiding_arcsec=0.8, sensor_c=0.0, gain=120,
        german_mount=False, one_in_discarded=30, reasons=("satellite, sunlit all night", "wind on the jetty"),
    )
    for evening, seed, seconds, start, end, spoilt, calibration in (
        ("2026-06-21", 62101, 60, "00:50", "01:50",
         (Spoilt("00:50", "01:08", "sky too bright"), Spoilt("01:32", "01:50", "sky too bright")), ()),
        ("2026-06-23", 62301, 60, "00:45", "02:00",
         (Spoilt("00:45", "01:04", "sky too bright"), Spoilt("01:36", "02:00", "sky too bright")), ()),
        ("2026-08-07", 80701, 180, "00:35", "02:15", (), ()),
        ("2026-08-10", 81002, 180, "00:20", "02:30", (Spoilt("02:05", "02:30", "mist off the lake"),),
         (Calibration("03:40", "dark", 180, 15),)),
    )
)

GALAXY_NIGHTS = tuple(
    Session(
        evening, "long-mono", HILL, *SCULPTOR_GALAXY, seed=seed, blocks=blocks, spoilt=spoilt,
        calibration=calibration, seeing_arcsec=seeing, guiding_arcsec=guiding, binning=2, sensor_c=-10.0,
        one_in_discarded=28,
    )
    for evening, seed, blocks, spoilt, calibration, seeing, guiding in (
        ("2026-09-12", 91201, (Block("20:45", "00:50", (("L", 180, 1),)),),
         (Spoilt("00:15", "00:50", "high cloud, haloes round the stars"),), (), 2.1, 0.5),
        ("2026-09-19", 91901, (Block("22:40", "01:50", (("R", 180, 4), ("G", 180, 4))),
                               Block("02:00", "04:20", (("L", 180, 1),))), (), (), 2.4, 0.55),
        ("2026-09-28", 92801, (Block("20:10", "01:15", (("R", 120, 6), ("G", 120, 6), ("B", 120, 6))),),
         (Spoilt("21:50", "22:20", "gusts from the north"),), (), 2.8, 0.8),
        ("2026-10-03", 100301, (Block("20:40", "01:20", (("L", 180, 1),)),
                                Block("01:30", "04:10", (("B", 180, 1),))), (), (), 2.0, 0.5),
        ("2026-10-09", 100901, (Block("20:50", "23:55", (("L", 180, 1),)),
                                Block("00:00", "02:30", (("G", 180, 3), ("B", 180, 3)))),
         (Spoilt("02:05", "02:30", "fog"),),
         (_darks("03:00", 180, 30), _flats("06:08", "L", 2.2), _flats("06:11", "R", 3.9),
          _flats("06:14", "G", 3.5), _flats("06:17", "B", 4.2)), 2.2, 0.55),
    )
)

TARANTULA_NIGHTS = tuple(
    Session(
        evening, "long-mono", HILL, *TARANTULA, seed=seed, blocks=(Block(start, end, ((name, 300, 1),)),),
        spoilt=spoilt, seeing_arcsec=2.3, guiding_arcsec=0.5, binning=2, sensor_c=-10.0, one_in_discarded=30,
    )
    for evening, seed, name, start, end, spoilt in (
        ("2026-11-06", 110601, "Ha", "22:30", "02:10", ()),
        ("2026-11-11", 111101, "OIII", "22:10", "01:15", (Spoilt("00:40", "01:15", "smoke haze"),)),
        ("2026-11-14", 111401, "OIII", "22:20", "23:50", (Spoilt("23:30", "23:50", "cloud"),)),
    )
)

ALL = (
    COUNTING, *CORNER_TESTS, *CORONA, WIDE_FIELD, *HELIX_NIGHTS, *FIRST_SEASON, *CARINA_LONG, *CARINA_SHORT,
    *ARA_NIGHTS, *MIDSUMMER, *GALAXY_NIGHTS, *TARANTULA_NIGHTS,
)
