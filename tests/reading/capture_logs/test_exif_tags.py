"""EXIF in every container that cameras write, by the standards' words: TIFF 6.0, TIFF/EP (ISO 12234-2), EXIF 2.32 (CIPA DC-008).

Real raw files are too large to lie here. Those of three public test suites (182 JPEG, 18 TIFF, 2 DNG, 2 CR2, 1 NEF) were read
once beside a second reader, and the heads of a CR2, CR3, DNG, IIQ, NEF, RAF and RW2 that another suite keeps; NRW, ARW, ORF and
PEF were tried with structures made here alone.
"""

import io
import struct
import subprocess
import sys
from datetime import UTC, datetime

import pytest
from PIL.ExifTags import IFD, Base
from PIL.TiffImagePlugin import IFDRational, ImageFileDirectory_v2

from sitegen.reading.capture_logs.exif_log import SUFFIXES
from sitegen.reading.capture_logs.exif_tags import exif_tags
from sitegen.reading.capture_logs.log_problems import ValueProblem

RAW = tuple(suffix for suffix in SUFFIXES if suffix not in (".jpg", ".jpeg"))
EXPOSED = {Base.DateTimeOriginal: "2026:06:18 21:12:13", Base.ExposureTime: IFDRational(30, 1), Base.ISOSpeedRatings: 800}
LITTLE, BIG = b"II*\0\x08\0\0\0", b"MM\0*\0\0\0\x08"


def structure(tags, head=LITTLE, inside=True) -> bytes:
    """A TIFF structure without pixels: the tags in an EXIF directory of their own, or in the first one."""
    first = ImageFileDirectory_v2(head)
    first[Base.Make] = "Camera"
    if inside:
        first[IFD.Exif] = dict(tags)
        first.tagtype[IFD.Exif] = 4
    else:
        for number, value in tags.items():
            first[number] = value
    target = io.BytesIO(head)
    target.seek(0, io.SEEK_END)
    first.save(target)
    return target.getvalue()


def tags_of(tmp_path, content):
    (tmp_path / "a").write_bytes(content)
    return exif_tags(tmp_path / "a")


@pytest.mark.parametrize("head", [LITTLE, BIG], ids=["little", "big"])
@pytest.mark.parametrize("suffix", RAW)
def test_raw_files_are_tiff_structures(read, suffix, head):
    """Whatever the maker calls them, and in both byte orders; nothing of a picture need be in them."""
    reading = read(f"a{suffix}", structure(EXPOSED, head), rig=None)
    assert {problem.wrong for problem in reading.problems} <= {"its EXIF has no offset: read as UTC"}
    (sub,) = reading.subs
    assert (sub.start, sub.exposure_s, sub.gain) == (datetime(2026, 6, 18, 21, 12, 13, tzinfo=UTC), 30.0, 800.0)


@pytest.mark.parametrize(("magic", "head"), [(b"IIRO", LITTLE), (b"IIRS", LITTLE), (b"MMOR", BIG)])
def test_orf_has_letters_where_tiff_has_42(read, magic, head):
    """Such files are TIFF but for their first four bytes (from memory of the format; no published standard)."""
    assert [sub.exposure_s for sub in read("a.orf", magic + structure(EXPOSED, head)[4:], rig=None).subs] == [30.0]


def box(name: bytes, content: bytes) -> bytes:
    return struct.pack(">I", len(content) + 8) + name + content


CANON = bytes.fromhex("85c0b687820f11e08111f4ce462b6a48")
SIZED = EXPOSED | {Base.ExifImageWidth: 1440, Base.ExifImageHeight: 1080}


def cr3(*inside: bytes) -> bytes:
    """Boxes as cameras nest them (ISO/IEC 14496-12); the first moov box of the real file holds a uuid of the maker's."""
    other = box(b"uuid", b"\1" * 16 + b"other")
    return box(b"ftyp", b"crx \0\0\0\1") + other + box(b"moov", box(b"uuid", CANON + b"".join(inside)) + box(b"mvhd", b"\0" * 8))


def test_a_cr3_holds_its_structures_in_boxes(tmp_path):
    """Picture, exposure and place each in one, whose directories are the first of theirs."""
    place = ImageFileDirectory_v2(LITTLE)
    place[1], place[2], place[3], place[4] = "S", (IFDRational(36, 1), IFDRational(30, 1), IFDRational(0, 1)), "E", (
        IFDRational(174, 1), IFDRational(45, 1), IFDRational(0, 1))  # fmt: skip
    target = io.BytesIO(LITTLE)
    target.seek(0, io.SEEK_END)
    place.save(target)
    content = cr3(box(b"CNCV", b"name"), box(b"CMT1", structure({})), box(b"CMT2", structure(SIZED, inside=False)),
                  box(b"CMT4", target.getvalue()))  # fmt: skip
    assert tags_of(tmp_path, content) == {
        "EXIF ExposureTime": 30.0, "EXIF ISOSpeedRatings": 800.0, "EXIF DateTimeOriginal": "2026:06:18 21:12:13",
        "EXIF ExifImageWidth": 1440.0, "EXIF ExifImageLength": 1080.0, "GPS latitude": -36.5, "GPS longitude": 174.75,
    }  # fmt: skip


@pytest.mark.parametrize("size", [b"\0\0\0\0", b"\0\0\0\7", b"\0\0\0\1", b"\xff\xff\xff\xff"])
def test_boxes_without_an_end_end(tmp_path, size):
    """A box of no size, of less than its own head, of more than the file."""
    with pytest.raises(ValueProblem, match="carries no EXIF"):
        tags_of(tmp_path, box(b"ftyp", b"crx \0\0\0\1") + size + b"free" * 400)


def test_a_raf_tells_by_its_jpeg_and_not_its_size(tmp_path):
    """A table leads to the preview, whose width is not the frame's."""
    exif = b"Exif\0\0" + structure(SIZED)
    jpeg = b"\xff\xd8\xff\xe1" + struct.pack(">H", len(exif) + 2) + exif + b"\xff\xd9"
    tags = tags_of(tmp_path, b"FUJIFILMCCD-RAW " + b"0" * 68 + struct.pack(">II", 148, len(jpeg)) + b"\0" * 56 + jpeg)
    assert (tags["EXIF DateTimeOriginal"], "EXIF ExifImageWidth" in tags) == ("2026:06:18 21:12:13", False)


def test_rw2_has_a_letter_where_tiff_has_42(read):
    """From memory of the format; no published standard."""
    assert [sub.exposure_s for sub in read("a.rw2", b"IIU\0" + structure(EXPOSED)[4:], rig=None).subs] == [30.0]


def test_the_first_directory_serves_where_there_is_no_second(tmp_path):
    """TIFF/EP lays DateTimeOriginal and ExposureTime there (ISO 12234-2, 5.2)."""
    assert tags_of(tmp_path, structure(EXPOSED, inside=False))["EXIF DateTimeOriginal"] == "2026:06:18 21:12:13"


def test_every_tag_that_is_asked_for(tmp_path):
    """Text stripped, numbers plain, the camera's own number among them (EXIF 2.32, tag A431)."""
    more = {
        Base.OffsetTimeOriginal: "+02:00", Base.SubsecTimeOriginal: "25 ", Base.FocalLength: IFDRational(85, 2),
        Base.ExifImageWidth: 6000, Base.ExifImageHeight: 4000, Base.BodySerialNumber: "00417",
    }  # fmt: skip
    assert tags_of(tmp_path, structure(EXPOSED | more)) == {
        "EXIF ExposureTime": 30.0, "EXIF ISOSpeedRatings": 800.0, "EXIF DateTimeOriginal": "2026:06:18 21:12:13",
        "EXIF OffsetTimeOriginal": "+02:00", "EXIF SubSecTimeOriginal": "25", "EXIF FocalLength": 42.5,
        "EXIF ExifImageWidth": 6000.0, "EXIF ExifImageLength": 4000.0, "EXIF BodySerialNumber": "00417",
    }  # fmt: skip


def test_the_segment_is_looked_for_behind_others(tmp_path):
    """A JPEG may begin with JFIF and with XMP of any length (JPEG, ITU-T T.81, B.1.1.4: a length counts its own two bytes)."""
    xmp = b"http://ns.adobe.com/xap/1.0/\0" + b"x" * 3996
    segments = [b"JFIF\0" + b"\0" * 9, xmp, b"Exif\0\0" + structure(EXPOSED)]
    packed = [marker + struct.pack(">H", len(content) + 2) + content
              for marker, content in zip((b"\xff\xe0", b"\xff\xe1", b"\xff\xe1"), segments, strict=True)]
    assert tags_of(tmp_path, b"\xff\xd8" + b"".join(packed) + b"\xff\xd9")["EXIF ExposureTime"] == 30.0


@pytest.mark.parametrize("cut", [40, 60, 90])
def test_a_structure_cut_short_gives_what_it_holds_or_nothing(read, cut):
    """Never a frame without its date."""
    reading = read("a.nef", structure(EXPOSED)[:cut], rig=None)
    assert [problem.wrong for problem in reading.problems] == ["its EXIF is damaged"]


def test_tables_alone_load_no_pictures():
    """The reader of camera files loads Pillow with the first of them."""
    script = "import sys, sitegen.reading.capture_logs.registry; print('PIL' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True).stdout.strip() == "False"
