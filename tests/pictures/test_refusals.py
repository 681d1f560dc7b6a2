"""What is no usable picture ends in one sentence, quickly, and never in another exception."""

import io
import struct
import time
import zlib
from pathlib import Path

import numpy as np
import pytest
import pyvips
from astropy.io import fits
from PIL import Image

from sitegen.pictures.records import PictureProblem, PictureSettings
from sitegen.pictures.sizes import make_sizes
from sitegen.pictures.source import picture_facts
from tests.pictures.originals import WRITERS, write

CUT_SHORT = "^it is cut short: the file ends before the picture does$"
PHOTOGRAPHS = (
    "plain.jpg", "progressive.jpg", "eight.png", "deflated.tif", "tiled-big.tif", "eight.tif", "lossless.webp", "fine.avif",
)


@pytest.mark.parametrize("name", PHOTOGRAPHS)
@pytest.mark.parametrize("share", [0.9, 0.5, 0.2])
def test_a_file_cut_short_is_refused_by_its_header_alone(tmp_path: Path, name: str, share: float) -> None:
    """Without decoding: nine tenths, half or a fifth of each kind of file is not a picture."""
    content = write(tmp_path, name).read_bytes()
    (tmp_path / "cut").write_bytes(content[: int(len(content) * share)])
    with pytest.raises(PictureProblem):
        picture_facts(tmp_path / "cut")


def test_the_sentence_for_a_cut_file(tmp_path: Path) -> None:
    """It says what is wrong in words."""
    content = write(tmp_path, "plain.jpg").read_bytes()
    (tmp_path / "cut").write_bytes(content[: len(content) // 2])
    with pytest.raises(PictureProblem, match=CUT_SHORT):
        picture_facts(tmp_path / "cut")


def test_pixels_that_end_early_are_found_when_decoded(tmp_path: Path) -> None:
    """Half a JPEG in which another end marker stands (a preview has one) passes the header and is refused by the decoder."""
    noise = np.random.default_rng(0).integers(0, 255, (100, 100, 3), dtype=np.uint8)
    Image.fromarray(noise).save(tmp_path / "a.jpg", quality=95, comment=b"\xff\xd9")
    content = (tmp_path / "a.jpg").read_bytes()
    (tmp_path / "b.jpg").write_bytes(content[: len(content) // 2])
    picture_facts(tmp_path / "b.jpg")
    with pytest.raises(PictureProblem, match=r"^it is cut short: the pixels end early$"):
        make_sizes(tmp_path / "b.jpg", tmp_path / "out", PictureSettings())


STRANGERS = {
    "empty": (b"", "^it is empty$"),
    "text": (b"dear diary", "^it is not a picture of a known kind"),
    "drawing": (b'<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>', "^it is not a picture of a known kind"),
    "document": (b"%PDF-1.7\n", "^it is not a picture of a known kind"),
    "film": (b"GIF89a\1\0\1\0", "^it is not a picture of a known kind"),
    "gzip": (b"\x1f\x8b\x08\x00nothing", "^its FITS header is damaged$"),
    "heic": (b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", "^it is not a picture of a known kind"),
}


@pytest.mark.parametrize("name", sorted(STRANGERS))
def test_what_is_no_picture_is_said_so(tmp_path: Path, name: str) -> None:
    """Also what libvips could open (drawings, documents) is none of ours."""
    content, sentence = STRANGERS[name]
    (tmp_path / "a.jpg").write_bytes(content)
    with pytest.raises(PictureProblem, match=sentence):
        picture_facts(tmp_path / "a.jpg")


def test_a_folder_and_a_missing_file_are_said_so(tmp_path: Path) -> None:
    """No file there, or a folder of that name."""
    with pytest.raises(PictureProblem, match=r"^it cannot be read: No such file or directory$"):
        picture_facts(tmp_path / "none.jpg")
    with pytest.raises(PictureProblem, match=r"^it cannot be read: Is a directory$"):
        picture_facts(tmp_path)


def png_that_claims(width: int, height: int) -> bytes:
    """A PNG whose header promises that size and whose pixels are one row of nothing."""
    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
    header = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", zlib.compress(bytes(100))) + chunk(b"IEND", b"")


def test_a_picture_beyond_150_megapixels_is_refused_unread(tmp_path: Path) -> None:
    """Its header alone is enough."""
    (tmp_path / "bomb.png").write_bytes(png_that_claims(30_000, 30_000))
    with pytest.raises(PictureProblem, match=r"^it has 900 megapixels \(30000 × 30000\); at most 150 are taken$"):
        picture_facts(tmp_path / "bomb.png")
    (tmp_path / "long.png").write_bytes(png_that_claims(70_000, 10))
    with pytest.raises(PictureProblem, match=r"^its longer side has 70000 pixels; at most 65500 are taken$"):
        picture_facts(tmp_path / "long.png")


def test_a_header_that_lies_about_its_size_costs_neither_time_nor_room(tmp_path: Path) -> None:
    """140 megapixels announced, nothing behind them: refused within seconds, and no working copy is left."""
    (tmp_path / "lies.png").write_bytes(png_that_claims(14_000, 10_000))
    start = time.monotonic()
    with pytest.raises(PictureProblem):
        make_sizes(tmp_path / "lies.png", tmp_path / "out", PictureSettings())
    assert time.monotonic() - start < 5
    assert list((tmp_path / "out").iterdir()) == []


LIES = {
    "more rows than there are": ({"NAXIS2": 14_000}, CUT_SHORT),
    "too many megapixels": ({"NAXIS1": 60_000, "NAXIS2": 60_000}, "^it has 3,600 megapixels"),
    "a negative side": ({"NAXIS1": -5}, "^it has no pixels|^its FITS header is damaged$"),
    "five planes": ({"NAXIS": 3, "NAXIS3": 5}, "^it holds no picture"),
    "one axis": ({"NAXIS": 1}, "^it holds no picture"),
}


@pytest.mark.parametrize("lie", sorted(LIES))
def test_a_fits_header_that_lies_is_refused(tmp_path: Path, lie: str) -> None:
    """Sizes that the file does not have, or that no picture has."""
    changes, sentence = LIES[lie]
    header = fits.Header({"SIMPLE": True, "BITPIX": 16, "NAXIS": 2, "NAXIS1": 100, "NAXIS2": 100})
    header.update(changes)
    (tmp_path / "a.fits").write_bytes(header.tostring().encode() + bytes(28_800))
    with pytest.raises(PictureProblem, match=sentence):
        picture_facts(tmp_path / "a.fits")


def test_a_jpeg_of_a_thousand_scans_is_refused(tmp_path: Path) -> None:
    """A progressive JPEG may repeat its scans without end and take minutes for a few kilobytes."""
    target = io.BytesIO()
    Image.new("RGB", (2000, 2000)).save(target, "JPEG", progressive=True)
    content = target.getvalue()
    scans = content.index(b"\xff\xda")
    last = content.rindex(b"\xff\xda")
    (tmp_path / "a.jpg").write_bytes(content[:last] + content[last:-2] * 1000 + b"\xff\xd9")
    assert scans < last
    start = time.monotonic()
    with pytest.raises(PictureProblem):
        make_sizes(tmp_path / "a.jpg", tmp_path / "out", PictureSettings(widths_px=(100,)))
    assert time.monotonic() - start < 5


@pytest.mark.parametrize("name", [*PHOTOGRAPHS, "sixteen.png", "float.tif", "frame.fits", "packed.fits.fz"])
def test_damaged_files_end_in_a_picture_or_a_sentence(tmp_path: Path, name: str) -> None:
    """Sixty random damages to each kind: bytes changed, lost, doubled. Whatever comes of it is no other exception."""
    original = _original(tmp_path, name)
    chance = np.random.default_rng(len(name))
    settings = PictureSettings(widths_px=(30,), avif_effort=0)
    for number in range(60):
        (tmp_path / "damaged").write_bytes(_damaged(original, chance))
        try:
            facts = picture_facts(tmp_path / "damaged")
            if facts.width_px * facts.height_px < 1_000_000 and number % 4 == 0:
                make_sizes(tmp_path / "damaged", tmp_path / "out", settings)
        except PictureProblem as problem:
            assert problem.sentence


def _original(folder: Path, name: str) -> bytes:
    data = np.random.default_rng(1).normal(1000, 9, (80, 120)).astype("i2")
    if name == "frame.fits":
        fits.writeto(folder / name, data)
    elif name == "packed.fits.fz":
        fits.CompImageHDU(data).writeto(folder / name)
    else:
        assert name in WRITERS
        write(folder, name)
    return (folder / name).read_bytes()


def _damaged(original: bytes, chance: np.random.Generator) -> bytes:
    content = bytearray(original)
    for _ in range(int(chance.integers(1, 8))):
        place = int(chance.integers(0, len(content)) if chance.random() < 0.5 else chance.integers(0, min(400, len(content))))
        content[place] = int(chance.integers(0, 256))
    if chance.random() < 0.2:
        place = int(chance.integers(0, len(content)))
        del content[place : place + int(chance.integers(1, 200))]
    return bytes(content)


def test_a_folder_that_cannot_be_made_is_said_so(tmp_path: Path) -> None:
    """Where results should go lies a file: the sentence says that the work, not the reading, failed."""
    path = write(tmp_path, "eight.png")
    with pytest.raises(PictureProblem, match=r"^it cannot be worked on: (File exists|Not a directory)$"):
        make_sizes(path, path, PictureSettings())


def tiff_that_claims(path: Path, planar: int, compression: int = 1) -> None:
    """150 megapixels of 16 bits in one strip (or one a plane), as many programs write it; the pixels are a hole."""
    width, height, plane = 15_000, 10_000, 300_000_000
    strips = 1 if planar == 1 else 3
    tags = {256: width, 257: height, 259: compression, 262: 2, 277: 3, 278: height, 284: planar}
    beyond = 8 + 2 + 12 * 10 + 4
    rows = [(tag, 4, 1, value) for tag, value in tags.items()] + [(258, 3, 3, beyond)]
    rows += [(273, 4, strips, 1024 if strips == 1 else beyond + 6), (279, 4, strips, 3 * plane if strips == 1 else beyond + 18)]
    body = b"".join(struct.pack("<HHII", *row) for row in sorted(rows)) + bytes(4) + struct.pack("<HHH", 16, 16, 16)
    if strips == 3:
        body += struct.pack("<6I", *(1024 + number * plane for number in range(3)), plane, plane, plane)
    with path.open("wb") as stream:
        stream.write(b"II*\0" + struct.pack("<IH", 8, len(rows)) + body)
        stream.truncate(1024 + 3 * plane)


def test_pieces_that_no_memory_takes_are_refused(tmp_path: Path) -> None:
    """One uncompressed strip of 900 MB is read row by row and taken; three separate planes, or one compressed strip of
    that size, would have to be held whole."""
    tiff_that_claims(tmp_path / "rows.tif", planar=1)
    assert picture_facts(tmp_path / "rows.tif").width_px == 15_000
    sentence = r"^its strips or tiles need 900 MB of memory at once; save it with smaller ones, or uncompressed$"
    tiff_that_claims(tmp_path / "planes.tif", planar=2)
    with pytest.raises(PictureProblem, match=sentence):
        picture_facts(tmp_path / "planes.tif")
    tiff_that_claims(tmp_path / "packed.tif", planar=1, compression=8)
    with pytest.raises(PictureProblem, match=sentence):
        picture_facts(tmp_path / "packed.tif")


def test_a_compressed_picture_in_one_strip_is_taken(tmp_path: Path) -> None:
    """libvips alone refuses pieces beyond 50 MB; 60 MB of noise in one deflated strip is a good file."""
    noise = np.random.default_rng(0).integers(0, 255, (4000, 5000, 3), dtype=np.uint8)
    Image.fromarray(noise).save(tmp_path / "one.tif", compression="tiff_adobe_deflate", tiffinfo={278: 4000})
    made = make_sizes(tmp_path / "one.tif", tmp_path / "out", PictureSettings(widths_px=(100,)))
    assert made.colour == "#7f7f7f"


def test_what_must_be_decoded_whole_has_a_limit(tmp_path: Path) -> None:
    """A ten-bit AVIF of 42 megapixels would take 1.1 GB: refused by its header."""
    black = pyvips.Image.black(7000, 6000, bands=3).cast("ushort").copy(interpretation="rgb16")
    black.heifsave(str(tmp_path / "a.avif"), compression="av1", bitdepth=10, effort=0)
    with pytest.raises(PictureProblem, match=r"^it needs 1\.1 GB of memory, since this kind of file is decoded at one go; "):
        picture_facts(tmp_path / "a.avif")
