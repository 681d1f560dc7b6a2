"""Nothing of the author's own leaves in a published picture. Originals carry a secret in every place a format has."""

import io
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
import pyvips
from PIL import Image, PngImagePlugin
from PIL.TiffImagePlugin import IFDRational

from sitegen.pictures.avm import avm_packet
from sitegen.pictures.card import make_card
from sitegen.pictures.derivatives import make_picture
from sitegen.pictures.records import PictureSettings
from tests.pictures.originals import SECRET, eight_bits
from tests.pictures.strip_check import strip_check

XMP = f'<x:xmpmeta xmlns:x="adobe:ns:meta/"><exif:GPS xmlns:exif="e">{SECRET}</exif:GPS></x:xmpmeta>'.encode()


def xmp(owner: str) -> bytes:
    return XMP.replace(SECRET.encode(), owner.encode())


def exif(latitude: float, owner: str) -> bytes:
    """GPS, serial number, owner, a maker note and a preview."""
    tags = Image.Exif()
    tags[0x010F], tags[0x013B], tags[0x010E] = "Maker", owner, owner
    detail = tags.get_ifd(0x8769)
    detail[0xA430], detail[0xA431], detail[0x927C], detail[0x9286] = owner, "SN 4711", owner.encode(), owner.encode()
    place = tags.get_ifd(0x8825)
    place[1], place[2], place[3], place[4] = "S", (IFDRational(latitude), 12.0, 3.5), "E", (18.0, 20.0, 1.0)
    return tags.tobytes()


def jpeg(path: Path, latitude: float = 33.0, owner: str = SECRET) -> None:
    target = io.BytesIO()
    profile = pyvips.Image.profile_load("srgb")
    words = {"exif": exif(latitude, owner), "comment": owner.encode(), "xmp": xmp(owner)}
    Image.fromarray(eight_bits()).save(target, "JPEG", quality=95, icc_profile=profile, **words)
    path.write_bytes(target.getvalue() + owner.encode())


def png(path: Path, latitude: float = 33.0, owner: str = SECRET) -> None:
    text = PngImagePlugin.PngInfo()
    text.add_text("Author", owner)
    text.add_itxt("XML:com.adobe.xmp", XMP.decode().replace(SECRET, owner))
    Image.fromarray(eight_bits()).save(path, pnginfo=text, exif=exif(latitude, owner))


def webp(path: Path, latitude: float = 33.0, owner: str = SECRET) -> None:
    Image.fromarray(eight_bits()).save(path, lossless=True, exif=exif(latitude, owner), xmp=xmp(owner))


def avif(path: Path, latitude: float = 33.0, owner: str = SECRET) -> None:
    Image.fromarray(eight_bits()).save(path, exif=exif(latitude, owner), xmp=xmp(owner))


def tiff(path: Path, latitude: float = 33.0, owner: str = SECRET) -> None:
    tags = {270: owner, 305: owner, 315: owner, 33432: owner, 700: xmp(owner)}
    Image.fromarray(eight_bits()).save(path, tiffinfo=tags)


ORIGINALS: dict[str, Callable[..., None]] = {"a.jpg": jpeg, "a.png": png, "a.webp": webp, "a.avif": avif, "a.tif": tiff}


def everything_published(path: Path, out: Path) -> list[Path]:
    make_picture(path, out, "https://example.org/a/tiles", PictureSettings(widths_px=(50,)))
    (out / "card.jpg").write_bytes(make_card(path, None, out))
    return sorted(file for file in out.rglob("*") if file.is_file())


@pytest.mark.parametrize("name", sorted(ORIGINALS))
def test_no_secret_is_published(tmp_path: Path, name: str) -> None:
    """The original tells much (the control), the published files nothing, to two independent readers and to a search."""
    ORIGINALS[name](tmp_path / name)
    assert strip_check(tmp_path / name)
    for file in everything_published(tmp_path / name, tmp_path / "out"):
        content = file.read_bytes()
        assert SECRET.encode() not in content
        assert str(tmp_path).encode() not in content
        if file.suffix != ".json":
            assert strip_check(file) == (), file.name


@pytest.mark.parametrize("name", sorted(ORIGINALS))
def test_private_words_change_no_published_byte(tmp_path: Path, name: str) -> None:
    """Twenty originals with other owners and other gardens, in another folder, give the same bytes."""
    ORIGINALS[name](tmp_path / name)
    files = everything_published(tmp_path / name, tmp_path / "out")
    reference = {file.relative_to(tmp_path / "out"): file.read_bytes() for file in files}
    chance = np.random.default_rng(20)
    for number in range(20 if name == "a.jpg" else 2):
        folder = tmp_path / f"other-{number}"
        folder.mkdir()
        ORIGINALS[name](folder / name, float(chance.integers(1, 60)), f"Owner {chance.integers(10**9)}")
        files = everything_published(folder / name, folder / "out")
        assert {file.relative_to(folder / "out"): file.read_bytes() for file in files} == reference


def test_only_the_packet_that_was_meant_is_inside(tmp_path: Path) -> None:
    """With an AVM packet the files stay clean: its namespaces are the ones that are meant to be there."""
    jpeg(tmp_path / "a.jpg")
    packet = avm_packet({"Title": "A galaxy", "Credit": "The school's keeper"})
    make_picture(tmp_path / "a.jpg", tmp_path / "out", None, PictureSettings(widths_px=(50,)), packet)
    for name in ("50.jpg", "50.webp", "tiles/full/max/0/default.jpg", "50.avif"):
        assert strip_check(tmp_path / "out" / name) == ()


def test_the_check_sees_a_stray_namespace(tmp_path: Path) -> None:
    """A JPEG whose XMP holds EXIF words is reported, so that an empty report means something."""
    Image.fromarray(eight_bits()).save(tmp_path / "a.jpg", xmp=XMP)
    assert strip_check(tmp_path / "a.jpg") == ("XMP of exif",)


def test_the_check_sees_bytes_after_the_end(tmp_path: Path) -> None:
    """What is appended behind a picture is counted, in each container that has an end."""
    for name, options in (("a.jpg", {}), ("a.png", {}), ("a.webp", {"lossless": True})):
        Image.fromarray(eight_bits()).save(tmp_path / name, **options)
        with (tmp_path / name).open("ab") as stream:
            stream.write(b"hidden")
        assert strip_check(tmp_path / name) == ("6 bytes after the end",), name


@pytest.mark.parametrize("length", range(3988, 4004))
def test_a_packet_may_have_any_length(tmp_path: Path, length: int) -> None:
    """A segment's length is no matter of the reader's own buffer: 3,996 bytes once were."""
    packet = avm_packet({"Title": "A galaxy"})
    packet = packet.replace(b"A galaxy", b"A galaxy" + b"y" * (length - len(packet)))
    Image.fromarray(eight_bits()).save(tmp_path / "a.jpg", xmp=packet)
    assert strip_check(tmp_path / "a.jpg") == ()
