"""Every reader is registered, keeps what reader.py asks, and answers whatever it gets with problems instead of a traceback."""

from collections.abc import Iterable
from pathlib import Path

import pytest
from astropy.io import fits
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image
from PIL.ExifTags import IFD, Base
from PIL.TiffImagePlugin import IFDRational

from sitegen.reading.capture_logs import registry
from sitegen.reading.capture_logs.reader import Reader
from sitegen.reading.capture_logs.registry import READERS, is_log, reader_of
from sitegen.reading.capture_logs.request import LogReading

GOOD = {"a.fits": 300.0, "a.jpg": 30.0, "a.csv": 300.0, "a.ecsv": 300.0}
"""A sound file of every reader, by its name, and the exposure of its first sub in seconds; `good_files` makes them."""
SUFFIXES = [suffix for reader in READERS for suffix in reader.suffixes]
FUZZ = settings(
    max_examples=150, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


def test_every_log_file_is_registered():
    """A file *_log.py without a line in the registry is forgotten work."""
    written = {path.stem for path in Path(registry.__file__).parent.glob("*_log.py")}
    registered = {reader.read.__module__.rpartition(".")[2] for reader in READERS}
    forgotten = written - registered
    assert not forgotten, f"add to READERS in registry.py: {', '.join(f'{name}.READER' for name in sorted(forgotten))}"


def unsampled(readers: Iterable[Reader]) -> list[str]:
    return sorted({reader.name for reader in readers} - {found.name for name in GOOD if (found := reader_of(name))})


def test_every_reader_has_a_sample() -> None:
    """Else nothing shows that it reads what it is for."""
    assert unsampled(READERS) == [], "add a sound file to GOOD and good_files"


def test_a_reader_without_a_sample_is_told() -> None:
    """By its name."""
    assert unsampled((*READERS, Reader("table with tabs", (".tsv",), READERS[0].read))) == ["table with tabs"]


def test_suffixes_are_lower_case_and_belong_to_one_reader():
    """Else the order of the registry would decide."""
    assert len(SUFFIXES) == len(set(SUFFIXES))
    assert all(suffix == suffix.lower() and suffix.startswith(".") for suffix in SUFFIXES)


@pytest.mark.parametrize(
    ("name", "reader"),
    [("a.b.FITS.GZ", "FITS headers"), ("x.fits.fz", "FITS headers"), ("x.ecsv", "ECSV table"), ("x.gz", None), ("x", None)],
)
def test_a_name_finds_its_reader(name, reader):
    """By its longest known end, in any case."""
    found = reader_of(name)
    assert (found.name if found else None) == reader
    assert is_log(name) == (found is not None)


def test_an_unknown_kind_of_log(read):
    """Says what would be known."""
    (problem,) = read("a.xlsx", b"PK").problems
    assert problem.wrong == "is no kind of log known here"
    assert problem.remedy.startswith("known: .arw .cr2 .cr3 .csv")


@pytest.mark.parametrize("suffix", SUFFIXES)
@pytest.mark.parametrize("byte", [b"", b"\0", b"\xff", b"a", b"\n"])
def test_what_is_no_log_at_all(read, suffix, byte):
    """An error and no sub, from every reader, for every suffix."""
    reading = read(f"a{suffix}", byte * 10_000)
    assert reading.subs == ()
    assert [problem for problem in reading.problems if problem.severity == "error"]


def _mutated(data: st.DataObject, whole: bytes) -> bytes:
    """A few bytes of a good file replaced, and maybe its end cut off."""
    spoilt = bytearray(whole)
    for place, byte in data.draw(st.lists(st.tuples(st.integers(0, len(whole) - 1), st.integers(0, 255)), max_size=12)):
        spoilt[place] = byte
    return bytes(spoilt[: data.draw(st.one_of(st.just(len(whole)), st.integers(0, len(whole))))])


@pytest.fixture(scope="module")
def good_files(tmp_path_factory) -> dict[str, bytes]:
    folder = tmp_path_factory.mktemp("good")
    header = fits.Header({"DATE-OBS": "2026-06-18T11:12:13", "EXPTIME": 300.0, "FILTER": "Ha", "XPIXSZ": 3.76, "TIMESYS": "TAI"})
    fits.PrimaryHDU(header=header).writeto(folder / "a.fits")
    exif = Image.Exif()
    exif.get_ifd(IFD.Exif).update({Base.DateTimeOriginal: "2026:06:18 21:12:13", Base.ExposureTime: IFDRational(30, 1)})
    Image.new("RGB", (4, 4)).save(folder / "a.jpg", exif=exif)
    (folder / "a.csv").write_text('start,exposure_s,filter,count\n2026-04-05 02:30:00,5m,Ha,3\n"2026-04-18T21:00Z",1/4,L,1\n')
    (folder / "a.ecsv").write_text(
        "# %ECSV 1.0\n# ---\n# datatype:\n# - {name: exposure_s, unit: min, datatype: float64}\n# delimiter: ','\n"
        "start,exposure_s,filter\n2026-04-05T02:30:00,5,Ha\n"
    )
    return {path.name: path.read_bytes() for path in sorted(folder.iterdir())}


@pytest.mark.parametrize("name", GOOD)
def test_good_files_are_read_before_they_are_spoilt(read, good_files, name):
    """So that the fuzz below starts from something."""
    assert read(name, good_files[name], filter="L").subs[0].exposure_s == GOOD[name]


@pytest.mark.parametrize("name", GOOD)
@given(data=st.data())
@FUZZ
def test_spoilt_files_never_raise(read, good_files, name, data):
    """Subs or problems, and every sub a possible one."""
    reading = read(name, _mutated(data, good_files[name]), time_zone="Australia/Adelaide")
    assert isinstance(reading, LogReading)
    assert reading.subs or reading.problems
    for sub in reading.subs:
        assert 0 <= sub.exposure_s <= 86_400
        assert sub.end >= sub.start
        assert sub.start.utcoffset() is not None


@pytest.mark.parametrize("suffix", [".csv", ".ecsv", ".fits", ".jpg"])
@given(content=st.binary(max_size=3000), columns=st.dictionaries(st.text(max_size=8), st.text(max_size=8), max_size=2))
@FUZZ
def test_any_bytes_never_raise(read, suffix, content, columns):
    """From nothing at all."""
    assert isinstance(read(f"a{suffix}", content, columns=columns), LogReading)
