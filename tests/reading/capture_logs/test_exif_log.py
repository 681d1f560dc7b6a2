"""Camera pictures whose EXIF Pillow wrote: dates with and without offsets, exposures, the rig's lens and frame, damage."""

import struct
from datetime import UTC, datetime
from fractions import Fraction

import pytest
from PIL import Image
from PIL.ExifTags import GPS, IFD, Base
from PIL.TiffImagePlugin import IFDRational

NO_EXIF = "error: carries no EXIF; log the frame in a table, or keep the camera's original file"
NO_DATE = "error: has no date: no DateTimeOriginal in its EXIF; log the frame in a table"
MINIMAL = {Base.DateTimeOriginal: "2026:06:18 21:12:13", Base.ExposureTime: IFDRational(30, 1)}
MINIMAL |= {Base.OffsetTimeOriginal: "+00:00"}
NO_OFFSET = {Base.OffsetTimeOriginal: None}


def lines_of(reading):
    return [str(problem) for problem in reading.problems]


@pytest.fixture
def picture(read, tmp_path, bare_rig):
    """Read a small picture with these EXIF tags over the minimal ones; None takes a tag out."""

    def picture_of(tags=None, name="a.jpg", **asked):
        exif = Image.Exif()
        exif[Base.Make], exif[Base.Artist] = "Camera", "Somebody Private"
        exif.get_ifd(IFD.Exif).update({tag: value for tag, value in (MINIMAL | (tags or {})).items() if value is not None})
        # Pillow writes the part of a TIFF only where it is told that there is one.
        exif[IFD.Exif] = exif.get_ifd(IFD.Exif)
        latitude = (IFDRational(32), IFDRational(38), IFDRational(3))
        exif.get_ifd(IFD.GPSInfo).update({GPS.GPSLatitudeRef: "S", GPS.GPSLatitude: latitude})
        Image.new("RGB", (60, 40)).save(tmp_path / name, exif=exif)
        return read(name, **({"rig": bare_rig} | asked))

    return picture_of


@pytest.mark.parametrize("name", ["a.jpg", "A.JPEG", "a.tif", "a.tiff"])
def test_every_kind_of_picture(picture, name):
    """The same tags from each container that cameras and converters write."""
    reading = picture({Base.ISOSpeedRatings: 800}, name)
    assert reading.problems == ()
    (sub,) = reading.subs
    assert (sub.start, sub.exposure_s, sub.gain) == (datetime(2026, 6, 18, 21, 12, 13, tzinfo=UTC), 30.0, 800.0)
    assert (sub.kind, sub.kept, sub.filter) == ("light", True, None)
    assert (sub.rig, sub.site, sub.source) == ("lens", "plain", f"logs/{name}")
    assert "Private" not in repr(reading)


@pytest.mark.parametrize(
    ("tags", "zone", "wanted"),
    [
        (NO_OFFSET, None, datetime(2026, 6, 18, 21, 12, 13, 0, UTC)),
        (NO_OFFSET, "Australia/Adelaide", datetime(2026, 6, 18, 11, 42, 13, 0, UTC)),
        ({Base.OffsetTimeOriginal: "+02:00"}, "Australia/Adelaide", datetime(2026, 6, 18, 19, 12, 13, 0, UTC)),
        ({Base.SubsecTimeOriginal: "25"}, None, datetime(2026, 6, 18, 21, 12, 13, 250000, UTC)),
        ({Base.OffsetTimeOriginal: "   :  "}, None, datetime(2026, 6, 18, 21, 12, 13, 0, UTC)),
    ],
    ids=["utc", "zone", "offset", "sub-second", "blank offset"],
)
def test_moments(picture, tags, zone, wanted):
    """An offset of the camera wins over the log's zone, which wins over UTC (EXIF 2.32, tags 9003, 9011, 9291)."""
    assert [sub.start for sub in picture(tags, time_zone=zone).subs] == [wanted]


def test_a_clock_without_an_offset_is_told(picture, site):
    """Read as UTC with a line to write that holds the site's own zone; quiet once the log item names one."""
    reading = picture(NO_OFFSET)
    assert lines_of(reading) == [
        "logs/a.jpg:1:1: warning: its EXIF has no offset: read as UTC; write 'time_zone: Australia/Adelaide' in the log item"
    ]
    assert reading.subs[0].clock == "UTC"
    for zone in ("UTC", "Asia/Kolkata"):
        reading = picture(NO_OFFSET, time_zone=zone)
        assert (reading.problems, reading.subs[0].clock) == ((), zone)
    assert picture(time_zone="Asia/Kolkata").subs[0].clock is None


def test_what_the_camera_says_of_itself(picture):
    """Lens, frame, place to a tenth of a degree, serial number; nothing finer of the place is remembered."""
    origin = picture({Base.FocalLength: IFDRational(50), Base.BodySerialNumber: "007"}).subs[0].origin
    assert (origin.focal_length_mm, origin.latitude_deg, origin.longitude_deg, origin.camera_id) == (50.0, -32.6, None, "007")


def test_short_exposures_are_fractions(picture):
    """1/250 s arrives exactly."""
    assert picture({Base.ExposureTime: IFDRational(1, 250)}).subs[0].exposure_s == float(Fraction(1, 250))


def test_the_clock_put_forward_and_back(picture):
    """A skipped time is an error, a double one a warning, as in tables."""
    zone = {"time_zone": "Australia/Adelaide"}
    for stamp, severity in (("2026:10:04 02:30:00", "error"), ("2026:04:05 02:30:00", "warning")):
        tags = NO_OFFSET | {Base.DateTimeOriginal: stamp}
        assert [problem.severity for problem in picture(tags, **zone).problems] == [severity]


@pytest.mark.parametrize(
    ("tags", "wanted"),
    [
        ({Base.DateTimeOriginal: None}, NO_DATE),
        ({Base.DateTimeOriginal: "0000:00:00 00:00:00"}, NO_DATE),
        *(
            (
                {Base.DateTimeOriginal: stamp, Base.OffsetTimeOriginal: offset},
                f"error: DateTimeOriginal is '{stamp}', in no year of this diary; look at the camera's clock",
            )
            for stamp, offset in (("0001:01:01 00:00:00", "+02:00"), ("9999:12:31 23:59:59", "-02:00"))
        ),
        ({Base.DateTimeOriginal: "yesterday"}, "error: DateTimeOriginal is 'yesterday', not a date and time"),
        ({Base.ExposureTime: None}, "error: has no exposure: no ExposureTime in its EXIF; log the frame in a table"),
        ({Base.ExposureTime: IFDRational(0, 1)}, "error: has no exposure: no ExposureTime in its EXIF; log the frame in a table"),
        ({Base.ExposureTime: IFDRational(100_000, 1)}, "error: ExposureTime is 100000 s, longer than a day"),
        ({Base.DateTimeOriginal: "1980:01:01 00:00:00"}, "warning: starts in 1980, before 1990; look at the camera's clock"),
        (
            {Base.DateTimeOriginal: "2036:01:01 00:00:00"},
            "warning: starts on 2036-01-01, in the future; look at the camera's clock",
        ),
        (
            {Base.FocalLength: IFDRational(85, 1)},
            "warning: FocalLength is 85 mm, the rig 'lens' had 50 mm that evening; correct 'focal_length_mm' or 'factor' in "
            "rigs/lens.yaml, or add the change of that evening to 'changes'",
        ),
        (
            {Base.ExifImageWidth: 3000, Base.ExifImageHeight: 2000},
            "warning: the frame is 3000 × 2000 px at binning 1, the camera of 'lens' had 6000 × 4000 px that evening; "
            "correct 'width_px' and 'height_px' in rigs/lens.yaml, or add the change of that evening to 'changes'",
        ),
    ],
)
def test_each_mistake_has_its_own_sentence(picture, tags, wanted):
    """Tag, what it says, and what to do."""
    assert lines_of(picture(tags)) == [f"logs/a.jpg:1:1: {wanted}"]


@pytest.mark.parametrize(
    "tags",
    [
        {Base.FocalLength: IFDRational(0, 1)},
        {Base.FocalLength: IFDRational(0, 0)},
        {Base.FocalLength: IFDRational(49, 1)},
        {Base.ExifImageWidth: 4000, Base.ExifImageHeight: 6000},
    ],
    ids=["no lens", "nothing", "nominal", "upright"],
)
def test_what_is_no_disagreement(picture, tags):
    """A telescope has no lens to tell of; 3 % is nominal; a camera may stand upright."""
    assert picture(tags).problems == ()


def test_a_rig_with_filters_needs_the_items(picture, rig):
    """A camera knows of no filter: the log item says which."""
    assert [problem.path for problem in picture(rig=rig).problems] == ["entries/e.md"]
    reading = picture(rig=rig, filter="Ha")
    assert ([sub.filter for sub in reading.subs], reading.problems) == (["Ha"], ())


def tiff(entries: int, tag: int = 0x9003, kind: int = 2, count: int = 1, value: int = 8) -> bytes:
    """A TIFF whose one directory claims so many entries, all alike."""
    return b"II*\0" + struct.pack("<IH", 8, entries) + struct.pack("<HHII", tag, kind, count, value) * min(entries, 4000)


@pytest.mark.parametrize(
    ("content", "wanted"),
    [
        (b"", NO_EXIF),
        (b"\xff\xd8\xff\xd9", NO_EXIF),
        (b"plain text, whatever it is called", NO_EXIF),
        (tiff(60_000, kind=5, count=999), "error: its EXIF is damaged"),
        (tiff(1, count=2**32 - 1), "error: its EXIF is damaged"),
    ],
    ids=["empty", "bare jpeg", "text", "endless tags", "endless text"],
)
def test_what_carries_no_exif(read, content, wanted):
    """No EXIF and damaged EXIF are told apart; what claims to be endless ends."""
    lines = lines_of(read("a.jpg", content))
    assert f"logs/a.jpg:1:1: {wanted}" in lines


def test_a_picture_without_exif(read, tmp_path):
    """As a picture that went through a messenger."""
    Image.new("RGB", (60, 40)).save(tmp_path / "a.jpg")
    assert lines_of(read("a.jpg")) == [f"logs/a.jpg:1:1: {NO_EXIF}"]


def test_nothing_is_said_on_the_terminal(read, capfd):
    """The library's own complaints do not reach the author."""
    read("a.jpg", b"\xff\xd8\xff\xe1\x00\x20Exif\0\0II*\0" + b"\xff" * 40)
    assert capfd.readouterr() == ("", "")
