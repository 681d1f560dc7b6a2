"""What facts.json must say of one entry that is small enough to work out by hand: a value for every fact, with its source.

The entry is built in tests/facts/test_published_facts.py. SKYFIELD values were computed with Skyfield 1.49 and JPL's DE421 for the
public place (32.6° S, 139.0° E, 300 m) by tests/facts/build_facts_by_hand.py; they are computed, not printed anywhere.
"""

from datetime import datetime
from typing import Any

from tests.published_values.sky_published import Published

SKYFIELD = "computed with Skyfield and DE421"
EVENT_S = 2.0
"""Rise, set and twilight: the engine's own limit against DE421 (tests/sky/test_against_skyfield.py)."""
AUTHOR = "as the author wrote it"
ADDED_UP = "added up by hand from the entry's four subs"


class Moment:
    """A time of day printed to the second."""

    def __init__(self, text: str, source: str, tolerance_s: float = EVENT_S) -> None:
        self.when, self.source, self.tolerance_s = datetime.fromisoformat(text), source, tolerance_s

    def agrees(self, computed: Any) -> bool:
        return abs((datetime.fromisoformat(computed) - self.when).total_seconds()) <= self.tolerance_s


class Exactly:
    """Text, a truth value, or what is copied and counted: there is nothing to be near to."""

    def __init__(self, value: Any, source: str) -> None:
        self.value, self.source = value, source

    def agrees(self, computed: Any) -> bool:
        return bool(computed == self.value)


class Numbers:
    """Several numbers, each with the same tolerance."""

    def __init__(self, values: tuple[float, ...], tolerance: float, source: str, why: str = "the last digit printed") -> None:
        self.parts = tuple(Published(value, tolerance, source, why) for value in values)
        self.source = source

    def agrees(self, computed: Any) -> bool:
        return len(computed) == len(self.parts) and all(p.agrees(c) for p, c in zip(self.parts, computed, strict=True))


GEOMETRY = "worked out by hand: 206.264806″ × 3.76 µm over 800 mm, and the arc tangent of half a side over the focal length"
ENGINE_DEG = "the engine's limit against DE421 is 0.003°, and a half of the last digit"

FACTS_BY_HAND: dict[str, tuple[tuple[Any, ...], Published | Moment | Exactly | Numbers]] = {
    "entry": (("entry",), Exactly("by-hand", AUTHOR)),
    "title": (("title",), Exactly("Two nights by hand", AUTHOR)),
    "stage": (("stage",), Exactly("gathering", AUTHOR)),
    "target.name": (("target", "name"), Exactly("NGC 253", AUTHOR)),
    "target.ra_deg": (("target", "ra_deg"), Published(11.888, 1e-9, AUTHOR)),
    "target.dec_deg": (("target", "dec_deg"), Published(-25.288, 1e-9, AUTHOR)),
    "target.constellation": (
        ("target", "constellation"),
        Exactly("Sculptor", "N. G. Roman, PASP 99, 695 (1987); every catalogue puts NGC 253 there"),
    ),
    "target.kind": (("target", "kind"), Exactly("galaxy", AUTHOR)),
    "target.size_arcmin": (("target", "size_arcmin"), Exactly([26.8, 4.6], AUTHOR)),
    "target.magnitude": (("target", "magnitude"), Exactly(7.1, AUTHOR)),
    "optics.rig": (("optics", 0, "rig"), Exactly("long", AUTHOR)),
    "optics.from": (("optics", 0, "from"), Exactly("2026-09-20", AUTHOR)),
    "optics.binning": (("optics", 0, "binning"), Exactly(1, "the log says none: 1")),
    "optics.focal_length_mm": (("optics", 0, "focal_length_mm"), Exactly(800, "1000 mm × 0.8")),
    "optics.f_ratio": (("optics", 0, "f_ratio"), Exactly(3.2, "800 mm ÷ 250 mm")),
    "optics.scale_arcsec_px": (("optics", 0, "scale_arcsec_px"), Published(0.96944, 5e-5, GEOMETRY, "four digits published")),
    "optics.field_deg": (("optics", 0, "field_deg"), Numbers((1.68239, 1.12451), 6e-5, GEOMETRY, "four digits published")),
    "optics.field_diagonal_deg": (
        ("optics", 0, "field_diagonal_deg"),
        Published(2.02352, 6e-5, GEOMETRY, "four digits published"),
    ),
    "optics.rayleigh_arcsec": (
        ("optics", 0, "rayleigh_arcsec"),
        Published(0.554, 1e-3, "any optics textbook: 138.4″ ÷ D in mm at 550 nm, here 250 mm"),
    ),
    "optics.dawes_arcsec": (
        ("optics", 0, "dawes_arcsec"),
        Published(0.464, 5e-4, "W. R. Dawes, Memoirs of the RAS 35, 137 (1867): 116″ ÷ D in mm"),
    ),
    "optics.seeing_arcsec": (("optics", 0, "seeing_arcsec"), Exactly(2.4, AUTHOR)),
    "optics.sampling_px_per_fwhm": (
        ("optics", 0, "sampling_px_per_fwhm"),
        Published(2.4757, 6e-4, "2.4″ ÷ 0.96944″", "three digits published"),
    ),
    "optics.sampling": (("optics", 0, "sampling"), Exactly("good", "common practice, no source: 2 to 4 px over a star")),
    "optics.measured_scale_arcsec_px": (
        ("optics", 0, "measured_scale_arcsec_px"),
        Published(0.97, 5e-5, "the scale of the picture's own solution"),
    ),
    "optics.measured_focal_length_mm": (
        ("optics", 0, "measured_focal_length_mm"),
        Published(799.54, 0.06, "206.264806 × 3.76 ÷ 0.97", "one digit published"),
    ),
    "integration.total_s": (("integration", "total_s"), Exactly(900, ADDED_UP)),
    "integration.kept": (("integration", "kept"), Exactly(3, ADDED_UP)),
    "integration.discarded": (("integration", "discarded"), Exactly(1, ADDED_UP)),
    "integration.discarded_s": (("integration", "discarded_s"), Exactly(300, ADDED_UP)),
    "integration.broadband_s": (("integration", "broadband_s"), Exactly(300, ADDED_UP)),
    "integration.narrowband_s": (("integration", "narrowband_s"), Exactly(600, ADDED_UP)),
    "integration.by_filter": (
        ("integration", "by_filter"),
        Exactly(
            {
                "L": {"total_s": 300, "kept": 1, "discarded": 1, "wanted_s": 7200},
                "Ha": {"total_s": 600, "kept": 2, "discarded": 0, "wanted_s": None},
            },
            ADDED_UP,
        ),
    ),
    "integration.by_night": (("integration", "by_night"), Exactly({"2026-09-20": 600, "2026-09-29": 300}, ADDED_UP)),
    "integration.dark_equivalent_s": (
        ("integration", "dark_equivalent_s"),
        Published(
            80.414,
            0.4,
            "300 s × 10^(−0.4 × 1.2288) × 10^(−0.8 × 0.22 × 0.45605), Krisciunas & Schaefer (1991) written out again",
            "0.004 mag of moonlight",
        ),
    ),
    "integration.shared_s": (("integration", "shared_s"), Exactly(0, "no other entry tells of these frames")),
    "nights.evening_of": (("nights", 0, "evening_of"), Exactly("2026-09-20", "12:00 UTC is 21:16 of local mean time")),
    "nights.site": (("nights", 0, "site"), Exactly("hill", AUTHOR)),
    "nights.sunset": (("nights", 0, "sunset"), Moment("2026-09-20T08:38:48Z", SKYFIELD)),
    "nights.sunrise": (("nights", 0, "sunrise"), Moment("2026-09-20T20:35:29.7Z", SKYFIELD)),
    "nights.dark_start": (("nights", 0, "dark_start"), Moment("2026-09-20T10:00:46.9Z", SKYFIELD)),
    "nights.dark_end": (("nights", 0, "dark_end"), Moment("2026-09-20T19:13:36.1Z", SKYFIELD)),
    "nights.dark_s": (("nights", 0, "dark_s"), Published(33169.2, 2 * EVENT_S, SKYFIELD, "two events")),
    "nights.nautical_dark_s": (("nights", 0, "nautical_dark_s"), Published(36627.7, 2 * EVENT_S, SKYFIELD, "two events")),
    "nights.moon.illuminated": (
        ("nights", 0, "moon", "illuminated"),
        Published(0.66383, 1e-4, SKYFIELD, "another ephemeris, and four digits published"),
    ),
    "nights.moon.phase": (
        ("nights", 0, "moon", "phase"),
        Exactly("waxing gibbous", "elongation 109.03° by Skyfield and DE421: between first quarter and full"),
    ),
    "nights.moon.age_days": (
        ("nights", 0, "moon", "age_days"),
        Published(9.4654, 0.001, "new Moon 2026-09-11 03:27 UTC by Skyfield and DE421, as almanacs print", "a minute of rounding"),
    ),
    "nights.moon.rise": (("nights", 1, "moon", "rise"), Moment("2026-09-29T11:39:29.3Z", SKYFIELD)),
    "nights.moon.set": (("nights", 0, "moon", "set"), Moment("2026-09-20T17:16:43.3Z", SKYFIELD)),
    "nights.moon.up_share_of_dark": (
        ("nights", 0, "moon", "up_share_of_dark"),
        Published(0.78022, 2e-4, SKYFIELD, "four seconds of 33,169 and four digits published"),
    ),
    "nights.moon.dark_and_moonless_s": (
        ("nights", 0, "moon", "dark_and_moonless_s"),
        Published(7289.8, 2 * EVENT_S, SKYFIELD, "two events"),
    ),
    "nights.moon_down": (("nights", 0, "moon_down", 0, 0), Moment("2026-09-20T17:12:06.3Z", SKYFIELD)),
    "nights.target.transit": (("nights", 0, "target", "transit"), Moment("2026-09-20T15:34:43.6Z", SKYFIELD)),
    "nights.target.max_altitude_deg": (
        ("nights", 0, "target", "max_altitude_deg"),
        Published(82.5385, 0.003, SKYFIELD, ENGINE_DEG),
    ),
    "nights.target.min_airmass": (
        ("nights", 0, "target", "min_airmass"),
        Published(1.0082, 1e-4, "Kasten & Young (1989) written out again at 82.5385°", "four digits published"),
    ),
    "nights.integration_s": (("nights", 0, "integration_s"), Exactly(600, ADDED_UP)),
    "nights.first_start": (("nights", 0, "first_start"), Exactly("2026-09-20T12:00:00Z", "the log")),
    "nights.last_end": (("nights", 0, "last_end"), Exactly("2026-09-20T16:35:00Z", "the log")),
    "nights.used_share_of_dark": (
        ("nights", 0, "used_share_of_dark"),
        Published(0.01809, 1e-4, "600 s ÷ 33,169 s", "four digits published"),
    ),
    "nights.advice": (
        ("nights", 0, "advice"),
        Exactly("narrowband", "common practice, no source: 66 % lit and up for 78 % of the dark hours"),
    ),
    "nights.followed": (("nights", 0, "followed"), Exactly(False, "a sub through L was kept")),
    "subs.start": (("subs", "start", 0), Exactly("2026-09-20T12:00:00Z", "the log")),
    "subs.exposure_s": (("subs", "exposure_s"), Exactly([300, 300, 300, 300], "the log")),
    "subs.filter": (("subs", "filter"), Exactly(["L", "L", "Ha", "Ha"], "the log")),
    "subs.kept": (("subs", "kept"), Exactly([True, False, True, True], "the log")),
    "subs.target_altitude_deg": (("subs", "target_altitude_deg", 0), Published(43.2910, 0.0035, SKYFIELD, ENGINE_DEG)),
    "subs.airmass": (
        ("subs", "airmass", 0),
        Published(1.45605, 3e-4, "Kasten & Young (1989) written out again at 43.291°", "0.003° of altitude"),
    ),
    "subs.moon_altitude_deg": (("subs", "moon_altitude_deg", 0), Published(61.1980, 0.0035, SKYFIELD, ENGINE_DEG)),
    "subs.moon_separation_deg": (("subs", "moon_separation_deg", 0), Published(75.5103, 0.0035, SKYFIELD, ENGINE_DEG)),
    "subs.moon_illuminated": (
        ("subs", "moon_illuminated", 0),
        Published(0.65418, 1e-4, SKYFIELD, "another ephemeris, and four digits published"),
    ),
    "subs.sky_brightening_mag": (
        ("subs", "sky_brightening_mag", 0),
        Published(1.2288, 0.004, "Krisciunas & Schaefer (1991), equations 1 to 20, written out again", "the Moon's place to 0.003°"),
    ),
    "subs.sun_altitude_deg": (("subs", "sun_altitude_deg", 0), Published(-41.7779, 0.0035, SKYFIELD, ENGINE_DEG)),
    "pictures.file": (("pictures", 0, "file"), Exactly("pictures/a.fits", AUTHOR)),
    "pictures.type": (("pictures", 1, "type"), Exactly("simulation", AUTHOR)),
    "pictures.solved_by": (("pictures", 0, "solved_by"), Exactly("header", "as handed in")),
    "pictures.not_solved": (("pictures", 1, "not_solved"), Exactly("too few stars", "as handed in")),
    "pictures.ra_deg": (("pictures", 0, "ra_deg"), Published(11.9, 1e-5, "the solution's own centre")),
    "pictures.dec_deg": (("pictures", 0, "dec_deg"), Published(-25.3, 1e-5, "the solution's own centre")),
    "pictures.field_deg": (
        ("pictures", 0, "field_deg"),
        Numbers((1.68337, 1.12517), 6e-5, "2 · atan(half the side at 0.97″/px on the tangent plane)", "four digits published"),
    ),
    "pictures.scale_arcsec_px": (("pictures", 0, "scale_arcsec_px"), Published(0.97, 5e-5, "the solution's own matrix")),
    "pictures.rotation_deg": (("pictures", 0, "rotation_deg"), Exactly(90, "east is up in the solution's own matrix")),
    "pictures.mirrored": (("pictures", 0, "mirrored"), Exactly(False, "with east up, north is right: as the sky is")),
    "pictures.stars_matched": (("pictures", 0, "stars_matched"), Exactly(42, "as handed in")),
    "pictures.residual_arcsec": (("pictures", 0, "residual_arcsec"), Published(0.4, 5e-3, "as handed in")),
    "star_shapes": (("star_shapes", 0, "fwhm_px"), Published(3.0, 5e-4, "every zone handed in is 3 px wide")),
    "star_rings": (("star_rings", 0, "offset_percent"), Published(5.0, 5e-4, "6 px of a disc of 120 px")),
    "cautions": (("cautions",), Exactly(["laser", "cold"], "work with a laser on 1 August; −3 °C noted")),
}
"""By the fact's path: where in facts.json it is looked up, and what must stand there."""
