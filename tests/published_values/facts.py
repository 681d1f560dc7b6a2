"""What facts.json must say of one entry that is small enough to work out by hand: a value for every fact, with its source.

The entry is built in tests/facts/test_published_facts.py. SKYFIELD values were computed with Skyfield 1.49 and JPL's DE421 for the
public place (32.6° S, 139.0° E, 300 m) by tests/facts/build_facts_by_hand.py; they are computed, not printed anywhere.
"""

from dataclasses import dataclass

from tests.published_values.record import COMMON_PRACTICE, Exactly, Moment, Numbers, Published

SKYFIELD = "computed with Skyfield and DE421"
ENGINE_EVENT = "rise, set and twilight: the engine's own limit against DE421 (tests/sky/test_against_skyfield.py)"
AUTHOR = "as the author wrote it"
ADDED_UP = "added up by hand from the entry's four subs"
OF_MOSAIC = "added up by hand from the mosaic's five subs"
HANDED_IN = "as the test hands it in"
LOG = "as the log has it"
SOLUTION = "worked by hand from the solution that the test hands in"
PLAN94 = "plan94 states 17″ for Mars seen from the Sun, from here 1.6 times that at most"
FOUR_DIGITS, THREE_DIGITS, ONE_DIGIT = "four digits published", "three digits published", "one digit published"


@dataclass(frozen=True, slots=True)
class At:
    """Where in facts.json a fact is looked up, and what must stand there."""

    place: tuple[str | int, ...]
    expected: Published | Moment | Exactly | Numbers


def event(utc: str) -> Moment:
    return Moment(utc, 2.0, SKYFIELD, ENGINE_EVENT)


GEOMETRY = "worked out by hand: 206.264806″ × 3.76 µm over 800 mm, and the arc tangent of half a side over the focal length"
ENGINE_DEG = "the engine's limit against DE421 is 0.003°, and a half of the last digit"
MIDDLE_OF_TWO = "worked by hand: the median of the two subs that were handed in with readings"
TURNED = "worked by hand: 1.5′ × 7.292e-5 rad/s; over 300 s at 25.288° S, times 3757.5 px; and 2/π of that"

FACTS_BY_HAND: dict[str, At] = {
    "entry": At(("entry",), Exactly("by-hand", AUTHOR)),
    "title": At(("title",), Exactly("Two nights by hand", AUTHOR)),
    "stage": At(("stage",), Exactly("gathering", AUTHOR)),
    "target.name": At(("target", "name"), Exactly("NGC 253", AUTHOR)),
    "target.ra_deg": At(("target", "ra_deg"), Published(11.888, 1e-9, AUTHOR, "a copy")),
    "target.dec_deg": At(("target", "dec_deg"), Published(-25.288, 1e-9, AUTHOR, "a copy")),
    "target.constellation": At(
        ("target", "constellation"),
        Exactly("Sculptor", "N. G. Roman, PASP 99, 695 (1987); every catalogue puts NGC 253 there"),
    ),
    "target.kind": At(("target", "kind"), Exactly("galaxy", AUTHOR)),
    "target.size_arcmin": At(("target", "size_arcmin"), Exactly([26.8, 4.6], AUTHOR)),
    "target.magnitude": At(("target", "magnitude"), Exactly(7.1, AUTHOR)),
    "optics.rig": At(("optics", 0, "rig"), Exactly("long", AUTHOR)),
    "optics.from": At(("optics", 0, "from"), Exactly("2026-09-20", AUTHOR)),
    "optics.binning": At(("optics", 0, "binning"), Exactly(1, f"{LOG}: it says none, so 1")),
    "optics.focal_length_mm": At(("optics", 0, "focal_length_mm"), Exactly(800, "worked by hand: 1000 mm × 0.8")),
    "optics.f_ratio": At(("optics", 0, "f_ratio"), Exactly(3.2, "worked by hand: 800 mm ÷ 250 mm")),
    "optics.scale_arcsec_px": At(("optics", 0, "scale_arcsec_px"), Published(0.96944, 5e-5, GEOMETRY, FOUR_DIGITS)),
    "optics.field_deg": At(("optics", 0, "field_deg"), Numbers((1.68239, 1.12451), 6e-5, GEOMETRY, FOUR_DIGITS)),
    "optics.field_diagonal_deg": At(
        ("optics", 0, "field_diagonal_deg"),
        Published(2.02352, 6e-5, GEOMETRY, FOUR_DIGITS),
    ),
    "optics.rayleigh_arcsec": At(
        ("optics", 0, "rayleigh_arcsec"),
        Published(0.554, 1e-3, "worked by hand: 138.4″ ÷ D in mm at 550 nm, here 250 mm; any optics textbook", THREE_DIGITS),
    ),
    "optics.dawes_arcsec": At(
        ("optics", 0, "dawes_arcsec"),
        Published(0.464, 5e-4, "W. R. Dawes, Memoirs of the RAS 35, 137 (1867): 116″ ÷ D in mm", "half of the third digit"),
    ),
    "optics.seeing_arcsec": At(("optics", 0, "seeing_arcsec"), Exactly(2.4, AUTHOR)),
    "optics.sampling_px_per_fwhm": At(
        ("optics", 0, "sampling_px_per_fwhm"),
        Published(2.4757, 6e-4, "worked by hand: 2.4″ ÷ 0.96944″", THREE_DIGITS),
    ),
    "optics.sampling": At(("optics", 0, "sampling"), Exactly("good", f"{COMMON_PRACTICE}: 2 to 4 px over a star")),
    "optics.measured_scale_arcsec_px": At(
        ("optics", 0, "measured_scale_arcsec_px"),
        Published(0.97, 5e-5, SOLUTION, FOUR_DIGITS),
    ),
    "optics.measured_focal_length_mm": At(
        ("optics", 0, "measured_focal_length_mm"),
        Published(799.54, 0.06, "worked by hand: 206.264806 × 3.76 ÷ 0.97", ONE_DIGIT),
    ),
    "optics.simulated_scale_arcsec_px": At(
        ("optics", 0, "simulated_scale_arcsec_px"),
        Published(0.96, 5e-5, SOLUTION, FOUR_DIGITS),
    ),
    "optics.simulated_focal_length_mm": At(
        ("optics", 0, "simulated_focal_length_mm"),
        Published(807.87, 0.06, "worked by hand: 206.264806 × 3.76 ÷ 0.96", ONE_DIGIT),
    ),
    "optics.integration_s": At(("optics", 0, "integration_s"), Exactly(900, ADDED_UP)),
    "optics.by_filter": At(
        ("optics", 0, "by_filter"),
        Exactly(
            {"L": {"total_s": 300, "kept": 1, "discarded": 1}, "Ha": {"total_s": 600, "kept": 2, "discarded": 0}}, ADDED_UP
        ),
    ),
    "integration.total_s": At(("integration", "total_s"), Exactly(900, ADDED_UP)),
    "integration.recalled_s": At(
        ("integration", "recalled_s"), Exactly(36600, "added up by hand: 40 × 600 s, 3 h 20 min and ten minutes of no filter")
    ),
    "integration.kept": At(("integration", "kept"), Exactly(3, ADDED_UP)),
    "integration.discarded": At(("integration", "discarded"), Exactly(1, ADDED_UP)),
    "integration.discarded_s": At(("integration", "discarded_s"), Exactly(300, ADDED_UP)),
    "integration.broadband_s": At(("integration", "broadband_s"), Exactly(300, ADDED_UP)),
    "integration.narrowband_s": At(("integration", "narrowband_s"), Exactly(600, ADDED_UP)),
    "integration.by_filter": At(
        ("integration", "by_filter"),
        Exactly(
            {
                "L": {"total_s": 300, "recalled_s": 0, "kept": 1, "discarded": 1, "wanted_s": 7200},
                "Ha": {"total_s": 600, "recalled_s": 24000, "kept": 2, "discarded": 0, "wanted_s": None},
                "OIII": {"total_s": 0, "recalled_s": 12000, "kept": 0, "discarded": 0, "wanted_s": None},
            },
            ADDED_UP,
        ),
    ),
    "integration.by_night": At(("integration", "by_night"), Exactly({"2026-09-20": 600, "2026-09-29": 300}, ADDED_UP)),
    "integration.dark_equivalent_s": At(
        ("integration", "dark_equivalent_s"),
        Published(
            80.414,
            0.4,
            "worked by hand: 300 s × 10^(−0.4 × 1.2288) × 10^(−0.8 × 0.22 × 0.45605), moonlight as below",
            "0.004 mag of moonlight",
        ),
    ),
    "integration.shared_s": At(("integration", "shared_s"), Exactly(0, f"{HANDED_IN}: no other entry tells of these frames")),
    "nights.evening_of": At(
        ("nights", 0, "evening_of"),
        Exactly("2026-09-20", "worked by hand: 12:00 UTC is 21:16 of local mean time"),
    ),
    "nights.site": At(("nights", 0, "site"), Exactly("hill", AUTHOR)),
    "nights.sunset": At(("nights", 0, "sunset"), event("2026-09-20T08:38:48Z")),
    "nights.sunrise": At(("nights", 0, "sunrise"), event("2026-09-20T20:35:29.7Z")),
    "nights.dark_start": At(("nights", 0, "dark_start"), event("2026-09-20T10:00:46.9Z")),
    "nights.dark_end": At(("nights", 0, "dark_end"), event("2026-09-20T19:13:36.1Z")),
    "nights.dark_s": At(("nights", 0, "dark_s"), Published(33169.2, 4.0, SKYFIELD, "two events")),
    "nights.nautical_dark_s": At(("nights", 0, "nautical_dark_s"), Published(36627.7, 4.0, SKYFIELD, "two events")),
    "nights.moon.illuminated": At(
        ("nights", 0, "moon", "illuminated"),
        Published(0.66383, 1e-4, SKYFIELD, "another ephemeris, and four digits published"),
    ),
    "nights.moon.phase": At(
        ("nights", 0, "moon", "phase"),
        Exactly("waxing gibbous", "elongation 109.03° computed with Skyfield and DE421: between first quarter and full"),
    ),
    "nights.moon.age_days": At(
        ("nights", 0, "moon", "age_days"),
        Published(
            9.4654,
            0.001,
            "new Moon 2026-09-11 03:27 UTC computed with Skyfield and DE421, as almanacs print",
            "a minute of rounding",
        ),
    ),
    "nights.moon.rise": At(("nights", 1, "moon", "rise"), event("2026-09-29T11:39:29.3Z")),
    "nights.moon.set": At(("nights", 0, "moon", "set"), event("2026-09-20T17:16:43.3Z")),
    "nights.moon.up_share_of_dark": At(
        ("nights", 0, "moon", "up_share_of_dark"),
        Published(0.78022, 2e-4, SKYFIELD, "four seconds of 33,169 and four digits published"),
    ),
    "nights.moon.dark_and_moonless_s": At(
        ("nights", 0, "moon", "dark_and_moonless_s"),
        Published(7289.8, 4.0, SKYFIELD, "two events"),
    ),
    "nights.moon_down": At(("nights", 0, "moon_down", 0, 0), event("2026-09-20T17:12:06.3Z")),
    "nights.target.transit": At(("nights", 0, "target", "transit"), event("2026-09-20T15:34:43.6Z")),
    "nights.target.max_altitude_deg": At(
        ("nights", 0, "target", "max_altitude_deg"),
        Published(82.5385, 0.003, SKYFIELD, ENGINE_DEG),
    ),
    "nights.target.min_airmass": At(
        ("nights", 0, "target", "min_airmass"),
        Published(1.0082, 1e-4, "computed from Kasten & Young (1989) written out again at 82.5385°", FOUR_DIGITS),
    ),
    "nights.target.positions_from": At(
        ("nights", 1, "target", "positions_from"), Exactly("ERFA plan94", "J. L. Simon et al., A&A 282, 663 (1994), by ERFA's name")
    ),
    "nights.target.ra_deg": At(("nights", 1, "target", "ra_deg"), Published(122.92984, 0.008, SKYFIELD, PLAN94)),
    "nights.target.dec_deg": At(("nights", 1, "target", "dec_deg"), Published(21.00903, 0.008, SKYFIELD, PLAN94)),
    "nights.target.size_arcsec": At(
        ("nights", 1, "target", "size_arcsec"), Published(5.59146, 0.006, SKYFIELD, "two digits published, and a radius of 3396.19 km")
    ),
    "nights.target.elongation_deg": At(
        ("nights", 1, "target", "elongation_deg"), Published(65.59994, 0.013, SKYFIELD, f"{PLAN94}; two digits published")
    ),
    "nights.target.illuminated": At(
        ("nights", 1, "target", "illuminated"), Published(0.90512, 1e-4, SKYFIELD, "another ephemeris, and four digits published")
    ),
    "nights.integration_s": At(("nights", 0, "integration_s"), Exactly(600, ADDED_UP)),
    "nights.first_start": At(("nights", 0, "first_start"), Exactly("2026-09-20T12:00:00Z", LOG)),
    "nights.last_end": At(("nights", 0, "last_end"), Exactly("2026-09-20T16:35:00Z", LOG)),
    "nights.used_share_of_dark": At(
        ("nights", 0, "used_share_of_dark"),
        Published(0.01809, 1e-4, "worked by hand: 600 s ÷ 33,169 s", FOUR_DIGITS),
    ),
    "nights.advice": At(
        ("nights", 0, "advice"),
        Exactly("narrowband", f"{COMMON_PRACTICE}: 66 % lit and up for 78 % of the dark hours"),
    ),
    "nights.followed": At(("nights", 0, "followed"), Exactly(False, f"{LOG}: a sub through L was kept")),
    "nights.polar.error_arcmin": At(("nights", 0, "polar", "error_arcmin"), Exactly(1.5, AUTHOR)),
    "nights.polar.drift_arcsec_min": At(
        ("nights", 0, "polar", "drift_arcsec_min"), Published(0.39377, 6e-4, TURNED, "three digits published")
    ),
    "nights.polar.corner_smear_px": At(
        ("nights", 0, "polar", "corner_smear_px"), Published(0.039668, 6e-4, TURNED, "three digits published")
    ),
    "nights.polar.typical_corner_smear_px": At(
        ("nights", 0, "polar", "typical_corner_smear_px"), Published(0.025253, 6e-4, TURNED, "three digits published")
    ),
    "next_hour_gain": At(
        ("next_hour_gain",),
        Published(2.605551, 6e-4, "worked by hand: √(1 + 3600 s ÷ 300 s) − 1, as one sub alone counts", "three digits published"),
    ),
    "nights.conditions.guiding_rms_arcsec": At(
        ("nights", 0, "conditions", "guiding_rms_arcsec"),
        Published(0.608276, 6e-4, "worked by hand: √((0.5² + 0.7²)/2), two subs of one length", "three digits published"),
    ),
    "nights.conditions.temperature_c": At(("nights", 0, "conditions", "temperature_c"), Exactly(5, MIDDLE_OF_TWO)),
    "nights.conditions.humidity_percent": At(("nights", 0, "conditions", "humidity_percent"), Exactly(62, MIDDLE_OF_TWO)),
    "nights.conditions.wind_m_s": At(("nights", 0, "conditions", "wind_m_s"), Exactly(2.5, MIDDLE_OF_TWO)),
    "nights.conditions.cloud_percent": At(("nights", 0, "conditions", "cloud_percent"), Exactly(10, MIDDLE_OF_TWO)),
    "nights.conditions.sky_mag_arcsec2": At(("nights", 0, "conditions", "sky_mag_arcsec2"), Exactly(20.91, MIDDLE_OF_TWO)),
    "subs.reason": At(("subs", "reason"), Exactly([None, "cloud", None, None], LOG)),
    "subs.fwhm_arcsec": At(("subs", "fwhm_arcsec"), Exactly([2.8, None, None, None], LOG)),
    "subs.elongation": At(("subs", "elongation"), Exactly([1.08, None, None, None], LOG)),
    "subs.stars": At(("subs", "stars"), Exactly([640, None, None, None], LOG)),
    "subs.guiding_rms_arcsec": At(("subs", "guiding_rms_arcsec"), Exactly([0.5, None, 0.7, None], LOG)),
    "subs.guiding_ra_rms_arcsec": At(("subs", "guiding_ra_rms_arcsec"), Exactly([0.3, 0.3, None, None], HANDED_IN)),
    "subs.guiding_dec_rms_arcsec": At(("subs", "guiding_dec_rms_arcsec"), Exactly([0.4, 0.4, None, None], HANDED_IN)),
    "subs.guiding_drift_arcsec_min": At(("subs", "guiding_drift_arcsec_min"), Exactly([0.12, 0.12, None, None], HANDED_IN)),
    "subs.sky_mag_arcsec2": At(("subs", "sky_mag_arcsec2"), Exactly([20.91, 20.91, None, None], HANDED_IN)),
    "subs.start": At(("subs", "start", 0), Exactly("2026-09-20T12:00:00Z", LOG)),
    "subs.exposure_s": At(("subs", "exposure_s"), Exactly([300, 300, 300, 300], LOG)),
    "subs.filter": At(("subs", "filter"), Exactly(["L", "L", "Ha", "Ha"], LOG)),
    "subs.kept": At(("subs", "kept"), Exactly([True, False, True, True], LOG)),
    "subs.target_altitude_deg": At(("subs", "target_altitude_deg", 0), Published(43.2910, 0.0035, SKYFIELD, ENGINE_DEG)),
    "subs.airmass": At(
        ("subs", "airmass", 0),
        Published(1.45605, 3e-4, "computed from Kasten & Young (1989) written out again at 43.291°", "0.003° of altitude"),
    ),
    "subs.moon_altitude_deg": At(("subs", "moon_altitude_deg", 0), Published(61.1980, 0.0035, SKYFIELD, ENGINE_DEG)),
    "subs.moon_separation_deg": At(("subs", "moon_separation_deg", 0), Published(75.5103, 0.0035, SKYFIELD, ENGINE_DEG)),
    "subs.moon_illuminated": At(
        ("subs", "moon_illuminated", 0),
        Published(0.65418, 1e-4, SKYFIELD, "another ephemeris, and four digits published"),
    ),
    "subs.sky_brightening_mag": At(
        ("subs", "sky_brightening_mag", 0),
        Published(
            1.2288,
            0.004,
            "computed from Krisciunas & Schaefer (1991), equations 1 to 20, written out again",
            "the Moon's place to 0.003°",
        ),
    ),
    "subs.sun_altitude_deg": At(("subs", "sun_altitude_deg", 0), Published(-41.7779, 0.0035, SKYFIELD, ENGINE_DEG)),
    "pictures.file": At(("pictures", 0, "file"), Exactly("pictures/a.fits", AUTHOR)),
    "pictures.type": At(("pictures", 1, "type"), Exactly("simulation", AUTHOR)),
    "pictures.solved_by": At(("pictures", 0, "solved_by"), Exactly("header", HANDED_IN)),
    "pictures.not_solved": At(("pictures", 1, "not_solved"), Exactly("too few stars", HANDED_IN)),
    "pictures.ra_deg": At(
        ("pictures", 0, "ra_deg"),
        Published(11.9, 1e-5, SOLUTION, "half of the fourth digit, and the middle of an even picture"),
    ),
    "pictures.dec_deg": At(
        ("pictures", 0, "dec_deg"),
        Published(-25.3, 1e-5, SOLUTION, "half of the fourth digit, and the middle of an even picture"),
    ),
    "pictures.field_deg": At(
        ("pictures", 0, "field_deg"),
        Numbers(
            (1.68337, 1.12517), 6e-5, "worked by hand: 2 · atan(half the side at 0.97″/px on the tangent plane)", FOUR_DIGITS
        ),
    ),
    "pictures.scale_arcsec_px": At(("pictures", 0, "scale_arcsec_px"), Published(0.97, 5e-5, SOLUTION, FOUR_DIGITS)),
    "pictures.rotation_deg": At(("pictures", 0, "rotation_deg"), Exactly(90, f"{SOLUTION}: east is up")),
    "pictures.mirrored": At(
        ("pictures", 0, "mirrored"),
        Exactly(False, f"{SOLUTION}: with east up, north is right, as the sky is"),
    ),
    "pictures.stars_matched": At(("pictures", 0, "stars_matched"), Exactly(42, HANDED_IN)),
    "pictures.residual_arcsec": At(
        ("pictures", 0, "residual_arcsec"), Published(0.9, 5e-3, HANDED_IN, "half of the second digit")
    ),
    "pictures.corners_sure": At(
        ("pictures", 0, "corners_sure"),
        Exactly(True, "worked by hand: 0.9″ are 0.93 px of 0.97″, of the 2.6 px that are one where 6,248 are seen as 2,400"),
    ),
    "mosaic.field_deg": At(
        ("mosaic", "field_deg"),
        Numbers(
            (1.68255, 1.92451), 6e-5,
            "worked by hand: 0.8° between the middles and 1.12451° of height on one meridian; a corner of 0.84120° half the width, seen "
            "from 0.4° + 0.56226° below its edge: tangent ÷ (cos 0.4° − tan 0.56226° · sin 0.4°)",
            FOUR_DIGITS,
        ),
    ),
    "mosaic.turned_by": At(("mosaic", "turned_by"), Exactly("author", AUTHOR)),
    "mosaic.elsewhere_s": At(("mosaic", "elsewhere_s"), Exactly(300, OF_MOSAIC)),
    "mosaic.elsewhere": At(("mosaic", "elsewhere"), Exactly(1, OF_MOSAIC)),
    "panels.name": At(("panels", 0, "name"), Exactly("north", AUTHOR)),
    "panels.told_by": At(("panels", 0, "told_by"), Exactly("author", AUTHOR)),
    "panels.ra_deg": At(("panels", 1, "ra_deg"), Exactly(11.888, AUTHOR)),
    "panels.dec_deg": At(("panels", 1, "dec_deg"), Exactly(-25.688, AUTHOR)),
    "panels.field_deg": At(("panels", 0, "field_deg"), Numbers((1.68239, 1.12451), 6e-5, GEOMETRY, FOUR_DIGITS)),
    "panels.rotation_deg": At(("panels", 0, "rotation_deg"), Exactly(0, AUTHOR)),
    "panels.integration_s": At(("panels", 0, "integration_s"), Exactly(600, OF_MOSAIC)),
    "panels.kept": At(("panels", 0, "kept"), Exactly(2, OF_MOSAIC)),
    "panels.discarded": At(("panels", 0, "discarded"), Exactly(1, OF_MOSAIC)),
    "panels.by_filter": At(("panels", 1, "by_filter"), Exactly({"Ha": {"total_s": 600, "kept": 1, "discarded": 0}}, OF_MOSAIC)),
    "star_shapes": At(("star_shapes", 0, "fwhm_px"), Published(3.0, 5e-4, f"{HANDED_IN}: every zone is 3 px wide", THREE_DIGITS)),
    "star_rings": At(
        ("star_rings", 0, "offset_percent"),
        Published(5.0, 5e-4, "worked by hand: 6 px of a disc of 120 px", THREE_DIGITS),
    ),
    "cautions": At(("cautions",), Exactly(["laser", "cold"], f"{AUTHOR}: work with a laser on 1 August; −3 °C noted")),
}
"""By the fact's path."""
