"""FITS logs made by astropy: plain, gzipped, tile-compressed, header only; every keyword and every mistake."""

import gzip
from datetime import UTC, date, datetime
from pathlib import Path

import numpy as np
import pytest
from astropy.io import fits

MINIMAL = {"DATE-OBS": "2026-06-18T11:12:13.250", "EXPTIME": 300.0, "FILTER": "Ha"}


def lines_of(reading):
    return [str(problem) for problem in reading.problems]


def write(path: Path, cards: dict, pixels=None) -> None:
    header = fits.Header()
    for keyword, value in cards.items():
        if value is not None:
            header[keyword] = value
    fits.PrimaryHDU(pixels, header).writeto(path, overwrite=True)


@pytest.fixture
def frame(read, tmp_path):
    """Read a frame with these cards over the minimal ones; None takes a card out."""

    def frame_of(pixels=None, asked=None, **cards):
        write(tmp_path / "a.fits", MINIMAL | {name.replace("_", "-"): value for name, value in cards.items()}, pixels)
        return read("a.fits", **(asked or {}))

    return frame_of


def test_a_capture_programs_header_reaches_the_sub(frame):
    """What a sub holds, and nothing of the place or the people."""
    reading = frame(
        IMAGETYP="Light Frame", OBJECT="NGC 6188 ", XBINNING=2, YBINNING=2, GAIN=100, CCD_TEMP=-10.2, XPIXSZ=7.52, FOCALLEN=800,
        SITELAT="-32 38 03", SITELONG=139.018, OBSERVER="somebody", TELESCOP="newtonian", INSTRUME="camera",
    )  # fmt: skip
    assert reading.problems == ()
    assert reading.header_targets == ("NGC 6188",)
    (sub,) = reading.subs
    assert (sub.start, sub.exposure_s) == (datetime(2026, 6, 18, 11, 12, 13, 250000, UTC), 300.0)
    assert (sub.filter, sub.kind, sub.kept, sub.binning, sub.gain, sub.sensor_c) == ("Ha", "light", True, 2, 100.0, -10.2)
    assert (sub.rig, sub.site, sub.target, sub.source) == ("newtonian", "plain", 0, "logs/a.fits")
    assert "somebody" not in repr(reading) and "32 38" not in repr(reading) and "139.018" not in repr(reading)


WAYS = ["a.fits", "a.FIT", "a.fts", "a.fits.gz", "a.fits.fz", "b.fz", "header-only.fits", "second.fits"]


@pytest.mark.parametrize("name", WAYS)
def test_every_way_a_frame_is_stored(read, tmp_path, name):
    """The same frame from a plain, packed or tile-compressed file, from a second unit, or from a header without pixels."""
    header, pixels = fits.Header(MINIMAL | {"XBINNING": 1}), np.zeros((4176, 6248), np.uint8)
    path = tmp_path / name
    if name.endswith(".fz"):
        fits.HDUList([fits.PrimaryHDU(), fits.CompImageHDU(pixels, header, tile_shape=(348, 6248))]).writeto(path)
    elif name.startswith("second"):
        first = fits.PrimaryHDU(header=fits.Header({"FILTER": "OIII", "GAIN": 7}))
        fits.HDUList([first, fits.ImageHDU(pixels, header)]).writeto(path)
    else:
        fits.PrimaryHDU(None if name.startswith("header") else pixels, header).writeto(tmp_path / "plain.fits")
        whole = (tmp_path / "plain.fits").read_bytes()
        path.write_bytes(gzip.compress(whole, 1) if name.endswith("gz") else whole)
    reading = read(name)
    assert reading.problems == ()
    (sub,) = reading.subs
    assert (sub.exposure_s, sub.filter, sub.binning, sub.start.minute) == (300.0, "Ha", 1, 12)
    assert sub.gain == (7.0 if name.startswith("second") else None)


def test_the_start_has_its_order(frame):
    """DATE-BEG before DATE-OBS before MJD; a separate clock; the old form; an offset that the standard does not know."""
    assert frame(DATE_BEG="2026-06-18T11:00:00").subs[0].start.hour == 11


@pytest.mark.parametrize(
    ("cards", "wanted"),
    [
        ({"DATE-BEG": "2026-06-18T11:00:00"}, datetime(2026, 6, 18, 11, tzinfo=UTC)),
        ({"DATE-OBS": "2026-06-18", "TIME-OBS": "11:12:13.5"}, datetime(2026, 6, 18, 11, 12, 13, 500000, UTC)),
        ({"DATE-OBS": "2026-06-18", "UT": "1:12:13"}, datetime(2026, 6, 18, 1, 12, 13, 0, UTC)),
        ({"DATE-OBS": "18/06/97", "TIME-OBS": "11:12:13"}, datetime(1997, 6, 18, 11, 12, 13, 0, UTC)),
        ({"DATE-OBS": "2026-06-18T11:12:13Z"}, datetime(2026, 6, 18, 11, 12, 13, 0, UTC)),
        ({"DATE-OBS": None, "MJD-OBS": 61209.5}, datetime(2026, 6, 18, 12, tzinfo=UTC)),
        ({"DATE-OBS": "2026-06-18T11:12:50.184", "TIMESYS": "TAI"}, datetime(2026, 6, 18, 11, 12, 13, 184000, UTC)),
        ({"DATE-OBS": "2026-06-18T11:13:22.184", "TIMESYS": "TT"}, datetime(2026, 6, 18, 11, 12, 13, 0, UTC)),
        ({"DATE-OBS": "2026-06-18T11:12:13", "TIMESYS": "ut1"}, datetime(2026, 6, 18, 11, 12, 13, 0, UTC)),
    ],
)
def test_moments(read, tmp_path, cards, wanted):
    """FITS Standard 4.0, section 9; MJD 61209 is 2026-06-18; TAI is 37 s and TT 69.184 s ahead of UTC in 2026."""
    write(tmp_path / "a.fits", MINIMAL | cards)
    (sub,) = read("a.fits").subs
    assert sub.start == wanted


@pytest.mark.parametrize(
    ("cards", "start", "clock"),
    [
        ({}, datetime(2026, 6, 18, 5, 42, 13, 250000, UTC), "Asia/Kolkata"),
        ({"DATE-OBS": "2026-06-18", "TIME-OBS": "11:12:13"}, datetime(2026, 6, 18, 5, 42, 13, 0, UTC), "Asia/Kolkata"),
        ({"DATE-OBS": "2026-06-18", "UT": "11:12:13"}, datetime(2026, 6, 18, 11, 12, 13, 0, UTC), None),
        ({"TIMESYS": "UTC"}, datetime(2026, 6, 18, 11, 12, 13, 250000, UTC), None),
        ({"DATE-OBS": "2026-06-18T11:12:13Z"}, datetime(2026, 6, 18, 11, 12, 13, 0, UTC), None),
        ({"DATE-OBS": "2026-06-18T11:12:13-03:00"}, datetime(2026, 6, 18, 14, 12, 13, 0, UTC), None),
        ({"DATE-OBS": None, "MJD-OBS": 61209.5}, datetime(2026, 6, 18, 12, tzinfo=UTC), None),
    ],
)
def test_the_items_zone_wins_over_the_default_alone(read, tmp_path, cards, start, clock):
    """A date without a scale counts in UTC (FITS Standard 4.0, section 9.2.1) unless the author says otherwise; what the header
    says itself stands."""
    write(tmp_path / "a.fits", MINIMAL | cards)
    (sub,) = read("a.fits", time_zone="Asia/Kolkata").subs
    assert (sub.start, sub.clock) == (start, clock)
    assert read("a.fits").subs[0].clock == ("UTC" if clock else None)


def test_what_the_header_says_of_its_frame_is_remembered(frame):
    """The words and numbers that recognise a frame, the place to a tenth of a degree; two frames of one session apart."""
    cards = {
        "OBJECT": "NGC 6188", "SITELAT": "-32 38 03", "SITELONG": 139.018, "FOCALLEN": 800.0, "XPIXSZ": 3.76, "CAMERAID": "A17",
        "RA": "16 40 05.5", "DEC": "-48 39 44",
    }  # fmt: skip
    origin = frame(**cards).subs[0].origin
    assert (origin.object, origin.filter_told, origin.focal_length_mm, origin.pixel_um) == ("NGC 6188", "Ha", 800.0, 3.76)
    assert (origin.latitude_deg, origin.longitude_deg, origin.camera_id) == (-32.6, 139.0, "A17")
    assert origin.ra_deg == pytest.approx(15 * (16 + 40 / 60 + 5.5 / 3600), abs=1e-4)  # the digits remembered
    assert origin.dec_deg == pytest.approx(-(48 + 39 / 60 + 44 / 3600), abs=1e-4)
    again = frame(**cards | {"RA": 250.5, "DEC": -48.5}).subs[0].origin
    assert (again.ra_deg, again.dec_deg, again.latitude_deg) == (250.5, -48.5, -32.6)
    wcs = {"CTYPE1": "RA---TAN", "CTYPE2": "DEC--TAN", "CRVAL1": 251.0, "CRVAL2": -48.0}
    solved = frame(**cards | wcs | {"RA": None, "DEC": None})
    assert (solved.subs[0].origin.ra_deg, solved.subs[0].origin.dec_deg) == (251.0, -48.0)
    assert frame(IMAGETYP="dark", **cards).subs[0].origin.ra_deg is None


def test_local_time_needs_the_logs_zone(frame, read):
    """TIMESYS LOCAL is told in the item's zone, and refused without."""
    assert lines_of(frame(TIMESYS="LOCAL")) == [
        "logs/a.fits:1:1: error: TIMESYS is 'LOCAL', and the log has no time zone; "
        "write 'time_zone: Australia/Adelaide' in the log item"
    ]
    assert read("a.fits", time_zone="Australia/Adelaide").subs[0].start == datetime(2026, 6, 18, 1, 42, 13, 250000, UTC)


@pytest.mark.parametrize(
    ("cards", "wanted"),
    [
        ({"XPOSURE": 299.5}, 299.5),
        ({"EXPTIME": None, "EXPOSURE": 60}, 60.0),
        ({"EXPTIME": "120.5"}, 120.5),
        ({"EXPTIME": None, "IMAGETYP": "Bias"}, 0.0),
        ({"EXPTIME": 0.0, "IMAGETYP": "BIAS FRAME"}, 0.0),
    ],
)
def test_exposures(read, tmp_path, cards, wanted):
    """XPOSURE before EXPTIME before EXPOSURE; a bias frame may have none."""
    write(tmp_path / "a.fits", MINIMAL | cards)
    assert [sub.exposure_s for sub in read("a.fits").subs] == [wanted]


@pytest.mark.parametrize(
    ("cards", "wanted"),
    [
        ({"DATE-OBS": None}, "error: has no date: neither DATE-BEG nor DATE-OBS; keep such a frame out of 'logs', "
         "or log it in a table"),
        ({"EXPTIME": None}, "error: has no exposure: neither XPOSURE, EXPTIME nor EXPOSURE; log the frame in a table"),
        ({"DATE-OBS": "2026-06-18"}, "error: DATE-OBS is '2026-06-18', a date without a time of day; "
         "the time would stand behind it, or in TIME-OBS or UT"),
        ({"DATE-OBS": "last night"}, "error: DATE-OBS is 'last night', not a date and time; it "
         "is written as in 2026-04-18T21:03:12.000"),
        *(({"MJD-OBS": days, "DATE-OBS": None}, f"error: MJD-OBS is {told}, in no year of this diary; look at the camera's clock")
          for days, told in ((1e12, "1e+12"), (2973483.0, "2973483"), (-678500.0, "-678500"))),
        ({"TIMESYS": "TCB"}, "error: TIMESYS is 'TCB', which is no time scale known here; "
         "known: ET, GMT, GPS, IAT, TAI, TDB, TDT, TT, UT, UT1, UTC, Z, ZULU, LOCAL"),
        ({"EXPTIME": "long"}, "error: EXPTIME is 'long', not a number of seconds"),
        ({"EXPTIME": 90000000.0}, "error: EXPTIME is 9e+07 s, longer than a day; is it in milliseconds?"),
        ({"EXPTIME": -1.0}, "error: EXPTIME is -1 s, below zero"),
        ({"EXPTIME": 0.0}, "error: EXPTIME is 0 s; only a bias frame has no exposure"),
        ({"IMAGETYP": "FOCUS"}, "warning: IMAGETYP is 'FOCUS', no kind of frame: left out; known: bias, dark, dark-flat, "
         "flat, light"),
        ({"DATE-OBS": "1985-01-01T01:00:00"}, "warning: starts in 1985, before 1990; look at the camera's clock"),
        ({"DATE-OBS": "2031-01-01T01:00:00"}, "warning: starts on 2031-01-01, in the future; look at the camera's clock"),
        ({"FILTER": "Hx"}, "warning: FILTER is 'Hx', no filter of the rig 'newtonian': counted without "
         "one; add the line 'Hx: {kind: broadband}' under 'filters' in rigs/newtonian.yaml, or 'spelt: [Hx]' to one of its "
         "filters: Ha, L, OIII, R"),
        ({"FOCALLEN": 760.0}, "warning: FOCALLEN is 760 mm, the rig 'newtonian' had 800 mm that evening; "
         "correct 'focal_length_mm' or 'factor' in rigs/newtonian.yaml, or add the change of that evening to 'changes'"),
        ({"XPIXSZ": 4.63}, "warning: XPIXSZ is 4.63 µm at binning 1, the camera of 'newtonian' "
         "had pixels of 3.76 µm that evening; "
         "correct 'pixel_um' in rigs/newtonian.yaml, or add the change of that evening to 'changes'"),
    ],
)  # fmt: skip
def test_each_mistake_has_its_own_sentence(read, tmp_path, cards, wanted):
    """Keyword, what it says, and what to do."""
    write(tmp_path / "a.fits", MINIMAL | cards)
    assert lines_of(read("a.fits")) == [f"logs/a.fits:1:1: {wanted}"]


@pytest.mark.parametrize("nothing", [0.0, -1.0])
def test_lengths_that_are_none(frame, nothing):
    """A train without a focal length is written as 0 or -1: nothing is compared."""
    reading = frame(FOCALLEN=nothing, XPIXSZ=nothing)
    assert lines_of(reading) == []
    assert (reading.subs[0].origin.focal_length_mm, reading.subs[0].origin.pixel_um) == (None, None)


def test_numbers_that_name_something_keep_all_digits(frame):
    """Two cameras of one batch: their serial numbers as numbers of nine digits."""
    serials = [frame(CAMSER=number).subs[0].origin.camera_id for number in (123456789, 123456790)]
    assert serials == ["123456789", "123456790"]
    assert frame(OBJECT=2070).subs[0].origin.object == "2070"


def test_a_string_that_goes_on_in_the_next_card(frame):
    """FITS Standard 4.0, section 4.2.1.2, as astropy writes it; two that begin alike stay two."""
    names = [f"{'a long name of a filter, ' * 5}number {number}" for number in (1, 2)]
    assert [frame(FILTER=name).subs[0].origin.filter_told for name in names] == names
    assert frame(FILTER="Ha &").subs[0].origin.filter_told == "Ha &"


def test_two_mistakes_of_one_header_are_both_told(frame):
    """No date and no exposure."""
    assert len(frame(DATE_OBS=None, EXPTIME=None).problems) == 2


def test_header_and_rig_are_compared_as_the_rig_stood_that_evening(frame):
    """In April 2026 the corrector was in: 760 mm. A header that gives the tube's 800 mm is told so."""
    assert frame(DATE_OBS="2026-04-30T20:00:00", FOCALLEN=760).problems == ()


def test_a_nominal_focal_length_is_recognised(frame):
    """The remedy differs: the header is wrong, not the rig."""
    assert lines_of(frame(DATE_OBS="2026-04-20T12:00:00", FOCALLEN=800)) == [
        "logs/a.fits:1:1: warning: FOCALLEN is 800 mm, the rig 'newtonian' had 760 mm that evening; "
        "it seems to leave out the factor 0.95: tell the capture program"
    ]


@pytest.mark.parametrize(
    ("when", "problems"), [("2026-05-01T02:30:00", 1), ("2026-05-01T03:30:00", 0)], ids=["night of April 30", "May 1"]
)
def test_the_night_changes_at_mean_solar_noon(frame, when, problems):
    """At 139° east local mean noon is 02:44 UTC; the change holds from the evening of 2026-05-01 on."""
    assert len(frame(DATE_OBS=when, FOCALLEN=800).problems) == problems


@pytest.mark.parametrize(
    ("binning", "pixel_um", "told"), [(2, 7.52, 2), (2, 3.76, 2), (None, 7.52, 2), (None, 3.76, 1), (None, None, None), (3, 0, 3)]
)
def test_binned_pixels(frame, binning, pixel_um, told):
    """XPIXSZ counts binned pixels, a minority writes the unbinned; without XBINNING it tells the binning."""
    reading = frame(XBINNING=binning, XPIXSZ=pixel_um)
    assert (reading.problems, reading.subs[0].binning) == ((), told)


def test_a_frame_of_another_size_is_told(frame):
    """Binned pixels are counted as such; 1 % is allowed for rows that programs cut off."""
    assert frame(np.zeros((2088, 3124), np.uint8), XBINNING=2).problems == ()


def test_a_subframe_is_told(frame):
    """A header that disagrees with the rig is a warning."""
    assert lines_of(frame(np.zeros((100, 200), np.uint8))) == [
        "logs/a.fits:1:1: warning: NAXIS1 × NAXIS2 is 200 × 100 px at binning 1, the camera of 'newtonian' "
         "had 6248 × 4176 px that "
        "evening; correct 'width_px' and 'height_px' in rigs/newtonian.yaml, or add the change of that evening to 'changes'"
    ]


def test_a_frame_without_a_filter(frame, bare_rig):
    """An error where the rig has filters, told where it is mended; the item's filter serves; darks need none."""
    wanted = "entries/e.md:7:5: error: frames of this log name no filter, and the rig 'newtonian' has some; "
    assert lines_of(frame(FILTER=None)) == [wanted + "write 'filter' in the log item: Ha, L, OIII, R"]


@pytest.mark.parametrize(
    ("cards", "asked", "wanted"),
    [
        ({"FILTER": None}, {"filter": "oiii"}, "OIII"),
        ({"FILTER": "Hx"}, {"filter": "OIII"}, "OIII"),
        ({"FILTER": "h-alpha"}, {"filter": "OIII"}, "Ha"),
        ({"FILTER": None, "IMAGETYP": "Dark"}, {}, None),
        ({"FILTER": "Hx", "IMAGETYP": "Bias"}, {}, None),
    ],
)
def test_filters_of_headers(frame, cards, asked, wanted):
    """The header's own name first, by any of its names, then the item's."""
    reading = frame(asked=asked, **cards)
    assert (reading.problems, [sub.filter for sub in reading.subs]) == ((), [wanted])


def test_an_items_unknown_filter_is_told_in_the_entry(frame):
    """Where it is written."""
    assert lines_of(frame(FILTER=None, asked={"filter": "Hx"})) == [
        "entries/e.md:7:5: error: 'Hx' is no filter of the rig 'newtonian'; known: Ha, L, OIII, R"
    ]


GOOD = bytes(fits.PrimaryHDU(header=fits.Header(MINIMAL)).header.tostring(), "ascii")


@pytest.mark.parametrize(
    ("name", "content", "wanted"),
    [
        ("a.fits", b"", "error: is empty; copy the frame again"),
        ("a.fits", b"\xff\xd8\xff\xe0" * 2000, "error: is not FITS; copy the frame again"),
        ("a.fits", GOOD[:1000], "error: is truncated: the header ends before its END card; copy the frame again"),
        ("a.fits", GOOD.replace(b"END     ", b"        "), "error: is truncated: the header ends before its END card; "
         "copy the frame again"),
        ("a.fits", GOOD.replace(b"END     ", b"        ") * 501, "error: has no END card in its first 500 blocks; "
         "copy the frame again"),
        ("a.fits.gz", gzip.compress(GOOD)[:60], "error: is truncated: the header ends before its END card; copy the frame again"),
        ("a.fits.gz", b"\x1f\x8b" + b"x" * 500, "error: is damaged: gzip cannot unpack it"),
    ],
    ids=["empty", "jpeg", "cut", "no end", "endless", "gzip cut", "gzip damaged"],
)
def test_what_is_no_header(read, name, content, wanted):
    """Truncated, not FITS, damaged: each its own sentence."""
    assert lines_of(read(name, content)) == [f"logs/{name}:1:1: {wanted}"]


def test_a_missing_file(read):
    """The system's reason, without a path of this machine."""
    assert lines_of(read("a.fits")) == ["logs/a.fits:1:1: error: cannot be read: No such file or directory"]


def test_a_header_that_lies_about_its_size_is_told(frame, tmp_path, read):
    """The frame still counts: its header is whole."""
    write(tmp_path / "b.fits", MINIMAL, np.zeros((4176, 6248), np.int16))
    whole = (tmp_path / "b.fits").read_bytes()
    reading = read("b.fits", whole[: 2 * 2880])
    assert len(reading.subs) == 1
    assert lines_of(reading) == [
        "logs/b.fits:1:1: warning: is truncated: its header promises 52183296 bytes of pixels, the file has 2880; "
        "copy the frame again, if its pixels still matter"
    ]


@pytest.mark.parametrize("axis", ["9" * 19, "1E300", "-5", "'wide'", "T", ""])
def test_absurd_axes_harm_nothing(read, axis):
    """No size a header can claim is allocated or believed."""
    header = GOOD.replace(b"NAXIS   =                    0", b"NAXIS   =                    3")
    for number in (1, 2, 3):
        card = f"NAXIS{number}  = {axis:>20}".ljust(80).encode()
        header = header.replace(b"FILTER  ", card + b"FILTER  ", 1)
    header = header[: 2880 * (len(header) // 2880)]
    reading = read("a.fits", header)
    assert len(reading.subs) == 1
    assert all(problem.severity == "warning" for problem in reading.problems)


def test_the_day_it_is_comes_from_outside(frame):
    """A frame of tomorrow is no problem, whatever the clock of this machine says."""
    assert frame(asked={"today": date(2026, 6, 17)}).problems == ()
    assert len(read_again := frame(DATE_OBS="2026-06-19T00:00:01", asked={"today": date(2026, 6, 17)}).problems) == 1, read_again
