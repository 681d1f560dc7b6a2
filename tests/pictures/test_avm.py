"""The packet read back by a reader that did not write it (pyavm), from each format that carries it."""

import re
import warnings
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
import pyvips
from astropy.wcs import WCS
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image
from pyavm import AVM
from pyavm.specs import SPECS

from sitegen.pictures.avm import NAMESPACES, TAGS, Value, avm_packet
from sitegen.pictures.embedding import with_packet
from sitegen.pictures.records import PictureProblem, PictureSettings
from sitegen.pictures.sizes import make_sizes
from tests.pictures.originals import decoded, eight_bits, write

WORDS: dict[str, Value] = {
    "Title": "A galaxy & its <companion> at 60° N",
    "Credit": "The school's keeper",
    "Description": "Two nights,\nthe second with Moon.",
    "Rights": "CC-BY-4.0",
    "Facility": ["Hill school"],
    "Instrument": ["200 mm reflector"],
    "Subject.Name": ["NGC 7293", "Helix Nebula"],
    "Spectral.Band": ["Optical", "Optical"],
    "Spectral.CentralWavelength": [656.3, 500.7],
    "Spectral.Bandpass": ["Hα", None],
    "Spatial.CoordinateFrame": "ICRS",
    "Spatial.ReferenceValue": [210.802429, 54.348889],
    "Spatial.ReferencePixel": [60.5, 40.5],
    "Spatial.ReferenceDimension": [120.0, 80.0],
    "Spatial.Scale": [-0.000284123456789, 0.000284123456789],
    "Spatial.Rotation": -12.3456789,
    "Spatial.CoordsystemProjection": "TAN",
}


def read_back(path: Path) -> AVM:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return AVM.from_image(str(path))


def carriers(folder: Path, packet: bytes) -> list[Path]:
    """The three formats, JPEG and WebP as published, PNG as Pillow writes it."""
    make_sizes(write(folder, "eight.png"), folder, PictureSettings(widths_px=(60,)), packet)
    (folder / "carrying.png").write_bytes(with_packet((folder / "eight.png").read_bytes(), packet))
    return [folder / "60.jpg", folder / "60.webp", folder / "full.jpg", folder / "carrying.png"]


def test_an_independent_reader_finds_each_value(tmp_path: Path) -> None:
    """Words with every character XML minds, lists in order, numbers to their last digit, from JPEG, PNG and WebP."""
    for path in carriers(tmp_path, avm_packet(WORDS)):
        avm = read_back(path)
        assert avm.Title == WORDS["Title"], path.name
        assert avm.Credit == WORDS["Credit"]
        assert avm.Description == WORDS["Description"]
        assert list(avm.Spectral.CentralWavelength) == WORDS["Spectral.CentralWavelength"]
        assert set(avm.Subject.Name) == {"NGC 7293", "Helix Nebula"}
        assert list(avm.Spatial.ReferenceValue) == WORDS["Spatial.ReferenceValue"]
        assert list(avm.Spatial.Scale) == WORDS["Spatial.Scale"]
        assert float(avm.Spatial.Rotation) == WORDS["Spatial.Rotation"]
        assert float(avm.MetadataVersion) == 1.2


@pytest.mark.parametrize("parity", [1, -1])
@pytest.mark.parametrize("angle_deg", range(0, 360, 30))
def test_a_place_on_the_sky_survives_the_journey(tmp_path: Path, angle_deg: int, parity: int) -> None:
    """At 12 angles and both parities, pyavm's WCS from our JPEG puts all four corners where they belong within 0.001
    arcsecond. Expected: astropy, from CD = [[s_x cos r, -s_y sin r], [s_x sin r, s_y cos r]] (FITS paper II, eq. 189).
    Upright pictures need Scale and Rotation only; for mirrored ones pyavm wants the CD matrix, since it drops signs."""
    scale_x, scale_y = -parity * 0.00028, 0.00028
    turn = np.radians(angle_deg)
    matrix = [scale_x * np.cos(turn), -scale_y * np.sin(turn), scale_x * np.sin(turn), scale_y * np.cos(turn)]
    values = WORDS | {"Spatial.Scale": [scale_x, scale_y], "Spatial.Rotation": float(angle_deg)}
    values |= {"Spatial.CDMatrix": list(map(float, matrix))} if parity < 0 else {}
    (tmp_path / "a.jpg").write_bytes(with_packet(plain_jpeg(), avm_packet(values)))
    expected = WCS(naxis=2)
    expected.wcs.ctype, expected.wcs.crpix, expected.wcs.crval = ["RA---TAN", "DEC--TAN"], [60.5, 40.5], [210.802429, 54.348889]
    expected.wcs.cd = np.reshape(matrix, (2, 2))
    corners = np.array([[1, 1], [120, 1], [1, 80], [120, 80]])
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        seen = read_back(tmp_path / "a.jpg").to_wcs(target_shape=(120, 80))
    away = (seen.wcs_pix2world(corners, 1) - expected.wcs_pix2world(corners, 1)) * [np.cos(np.radians(54.35)), 1]
    assert np.abs(away).max() * 3600 < 0.001


def plain_jpeg() -> bytes:
    return bytes(pyvips.Image.new_from_array(eight_bits()).jpegsave_buffer(keep="none"))


def test_embedding_leaves_the_pixels_alone(tmp_path: Path) -> None:
    """Pillow and libvips decode the same pixels with and without the packet, and find the packet's bytes as they are."""
    packet = avm_packet(WORDS)
    originals = {"png": write(tmp_path, "sixteen.png"), "webp": write(tmp_path, "lossless.webp")}
    plain = {"jpg": plain_jpeg()} | {suffix: path.read_bytes() for suffix, path in originals.items()}
    for suffix, content in plain.items():
        before, after = tmp_path / f"before.{suffix}", tmp_path / f"after.{suffix}"
        before.write_bytes(content)
        after.write_bytes(with_packet(content, packet))
        np.testing.assert_array_equal(decoded(after), decoded(before))
        carrying, bare = (pyvips.Image.new_from_file(str(path)) for path in (after, before))
        np.testing.assert_array_equal(carrying.numpy(), bare.numpy())
        assert bytes(carrying.get("xmp-data")) == packet, suffix
        with Image.open(after) as seen:
            stored = seen.info.get("xmp", b"") or seen.info["XML:com.adobe.xmp"].encode()
        assert stored == packet, suffix


@pytest.mark.parametrize("lossless", [True, False])
@pytest.mark.parametrize("alpha", [True, False])
def test_every_kind_of_webp_can_carry_it(tmp_path: Path, lossless: bool, alpha: bool) -> None:
    """Lossy and lossless, with alpha and without, keep size, mode and packet."""
    picture = Image.fromarray(eight_bits()).convert("RGBA" if alpha else "RGB")
    if alpha:
        picture.putalpha(100)
    picture.save(tmp_path / "a.webp", lossless=lossless)
    (tmp_path / "b.webp").write_bytes(with_packet((tmp_path / "a.webp").read_bytes(), b"<?xpacket odd?>"))
    with Image.open(tmp_path / "b.webp") as seen:
        assert (seen.size, seen.mode, seen.info["xmp"]) == ((120, 80), picture.mode, b"<?xpacket odd?>")


def test_a_packet_beyond_a_jpeg_segment_is_refused() -> None:
    """A JPEG segment holds 65,533 bytes; more is a sentence, not a damaged file."""
    with pytest.raises(PictureProblem, match=r"^what it should carry about itself takes 70000 bytes; a JPEG holds 65504$"):
        with_packet(plain_jpeg(), b"x" * 70_000)


def test_the_table_agrees_with_the_independent_reader() -> None:
    """Each of our names has the namespace and tag that pyavm has for AVM 1.2."""
    ours = {key: tag.name.replace("xmpRights:", "xapRights:") for key, tag in TAGS.items()}
    theirs = {key: f"{SPECS[1.2][key].namespace}:{SPECS[1.2][key].tag}" for key in ours}
    assert ours == theirs


def test_what_avm_does_not_know_is_refused() -> None:
    """A misspelt key and a pair of three are programming errors and raised as such."""
    with pytest.raises(ValueError, match=r"^AVM 1\.2 has no Titel$"):
        avm_packet({"Titel": "x"})
    with pytest.raises(ValueError, match=r"^Spatial\.Scale has 2 values, not 3$"):
        avm_packet({"Spatial.Scale": [1.0, 2.0, 3.0]})


@given(st.text())
def test_any_text_gives_well_formed_xml(text: str) -> None:
    """Whatever an author types, the packet parses, and the text comes back but for what XML cannot hold."""
    root = ElementTree.fromstring(avm_packet({"Title": text, "Credit": text, "Instrument": [text]}))
    credit = root.findtext(f".//{{{NAMESPACES['photoshop']}}}Credit")
    kept = re.sub(r"[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]", "", text)
    assert (credit or "") == kept.replace("\r\n", "\n").replace("\r", "\n")


def test_the_same_values_give_the_same_bytes() -> None:
    """Order of the mapping is nothing."""
    assert avm_packet(WORDS) == avm_packet(dict(reversed(WORDS.items())))
