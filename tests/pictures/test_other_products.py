"""Pairs, cards, crops, previews; and the same bytes on every machine."""

import base64
import hashlib
import io
import os
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
import pyvips
from PIL import Image

from sitegen.pictures.card import make_card
from sitegen.pictures.comparing import make_pair
from sitegen.pictures.records import PictureProblem, PictureSettings
from sitegen.pictures.sizes import make_sizes
from tests.pictures.originals import decoded, eight_bits, quarters, write

RIBBON = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 48">'
    '<rect width="600" height="48" fill="#102030"/><rect x="300" width="300" height="48" fill="#c0a000"/></svg>'
)


def test_a_pair_has_one_size(tmp_path: Path) -> None:
    """A picture and a larger one with a rim cut off come out equal in size, each quarter still on its place."""
    write(tmp_path, "eight.png")
    Image.fromarray(eight_bits()).resize((246, 160)).save(tmp_path / "larger.png")
    before, after = make_pair(tmp_path / "eight.png", tmp_path / "larger.png", tmp_path / "out", PictureSettings(widths_px=(60,)))
    assert [(made.name, made.width_px, made.height_px) for made in before.files] == [
        (made.name, made.width_px, made.height_px) for made in after.files
    ]
    assert (after.width_px, after.height_px) == (120, 80)
    one, other = (quarters(decoded(tmp_path / "out" / side / "full.jpg")) for side in ("before", "after"))
    assert np.abs(np.subtract(one, other)).max() <= 8


@pytest.mark.parametrize("size", [(1, 1), (1, 600), (600, 1), (2, 2), (1, 65_500)])
def test_the_thinnest_pictures(tmp_path: Path, size: tuple[int, int]) -> None:
    """One pixel, or one row of them, is a picture like any other: sizes and a card of it can be made."""
    Image.new("RGB", size, (30, 60, 90)).save(tmp_path / "thin.png")
    made = make_sizes(tmp_path / "thin.png", tmp_path / "out", PictureSettings())
    assert (made.width_px, made.height_px) == size
    for ribbon in (None, RIBBON):
        card = Image.open(io.BytesIO(make_card(tmp_path / "thin.png", ribbon, tmp_path)))
        assert card.size == (1200, 630)


def test_two_framings_are_no_pair(tmp_path: Path) -> None:
    """A square beside a 3:2 picture is refused in a sentence."""
    write(tmp_path, "eight.png")
    Image.new("RGB", (80, 80)).save(tmp_path / "square.png")
    sentence = r"^the two do not show one framing: their proportions differ by 50% \(120 × 80 and 80 × 80\)$"
    with pytest.raises(PictureProblem, match=sentence):
        make_pair(tmp_path / "eight.png", tmp_path / "square.png", tmp_path / "out", PictureSettings())


def test_the_card_has_the_picture_above_and_the_ribbon_below(tmp_path: Path) -> None:
    """1200 × 630; the lowest 96 rows are the drawing, the rest the middle of the picture."""
    content = make_card(write(tmp_path, "eight.png"), RIBBON, tmp_path)
    with Image.open(io.BytesIO(content)) as picture:
        card = np.asarray(picture).astype(int)
    assert card.shape == (630, 1200, 3)
    assert np.abs(card[600, 100] - [0x10, 0x20, 0x30]).max() <= 6
    assert np.abs(card[600, 1100] - [0xC0, 0xA0, 0x00]).max() <= 6
    assert np.abs(np.subtract(quarters(card[:534]), quarters(eight_bits()))).max() <= 8
    assert content == make_card(tmp_path / "eight.png", RIBBON, tmp_path)


def test_a_card_of_a_grey_frame_and_one_without_ribbon(tmp_path: Path) -> None:
    """A grey picture takes a coloured ribbon; without one the picture fills the card."""
    Image.fromarray(eight_bits()).convert("L").save(tmp_path / "grey.png")
    for ribbon in (RIBBON, None):
        with Image.open(io.BytesIO(make_card(tmp_path / "grey.png", ribbon, tmp_path))) as picture:
            assert picture.size == (1200, 630)


def test_a_drawing_reaches_no_file(tmp_path: Path) -> None:
    """A ribbon that names a file on the disk does not show it."""
    Image.new("RGB", (10, 10), (255, 0, 0)).save(tmp_path / "red.png")
    drawing = (
        '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 600 48">'
        f'<image width="600" height="48" xlink:href="{(tmp_path / "red.png").as_uri()}"/></svg>'
    )
    with Image.open(io.BytesIO(make_card(write(tmp_path, "eight.png"), drawing, tmp_path))) as picture:
        assert np.asarray(picture)[560:].max() <= 3


def test_a_broken_drawing_is_a_sentence(tmp_path: Path) -> None:
    """Not a traceback of a library."""
    with pytest.raises(PictureProblem):
        make_card(write(tmp_path, "eight.png"), "<svg", tmp_path)


@pytest.mark.parametrize("size", [(1200, 800), (3, 2), (40, 900), (1, 1)])
def test_the_placeholder_is_tiny_and_a_picture(tmp_path: Path, size: tuple[int, int]) -> None:
    """Under 700 characters, a WebP that decodes, with the picture's proportions and mean colour, even for noise."""
    noise = np.random.default_rng(1).integers(0, 255, (size[1], size[0], 3), dtype=np.uint8)
    Image.fromarray(noise).save(tmp_path / "a.png")
    made = make_sizes(tmp_path / "a.png", tmp_path / "out", PictureSettings(widths_px=(480,)))
    head, _, body = made.placeholder.partition(",")
    assert head == "data:image/webp;base64" and len(made.placeholder) < 700
    with Image.open(io.BytesIO(base64.b64decode(body))) as tiny:
        assert max(tiny.size) <= 32
        assert tiny.width / tiny.height == pytest.approx(size[0] / size[1], rel=0.5)
    mean = [int(made.colour[place : place + 2], 16) for place in (1, 3, 5)]
    assert np.abs(np.subtract(mean, noise.mean(axis=(0, 1)))).max() <= 6


PROGRAM = """
import sys
from pathlib import Path
from sitegen.pictures.derivatives import make_picture
from sitegen.pictures.records import PictureSettings
make_picture(Path(sys.argv[1]), Path(sys.argv[2]), None, PictureSettings(widths_px=(300, 600), tile_px=256), b"<?xpacket?>")
"""


def test_the_same_bytes_on_one_thread_or_four_in_any_zone(tmp_path: Path) -> None:
    """Fresh processes with other thread counts, time zones, locales, folders and file modes write the same bytes."""
    noise = np.random.default_rng(2).normal(0.3, 0.1, (90, 130, 3)).clip(0, 1)
    large = pyvips.Image.new_from_array((noise * 65_535).astype(np.uint16)).copy(interpretation="rgb16").resize(8)
    large.tiffsave(str(tmp_path / "a.tif"))
    surroundings = [
        {"VIPS_CONCURRENCY": "1", "TZ": "UTC", "LC_ALL": "C"},
        {"VIPS_CONCURRENCY": "4", "TZ": "Pacific/Auckland", "LC_ALL": "de_DE.UTF-8", "PYTHONHASHSEED": "5"},
    ]
    digests = []
    for number, words in enumerate(surroundings):
        out = tmp_path / f"folder-{number}"
        command = [sys.executable, "-c", PROGRAM, str(tmp_path / "a.tif"), str(out)]
        subprocess.run(command, check=True, env=os.environ | words, umask=0o077 * number)
        files = sorted(file for file in out.rglob("*") if file.is_file())
        digests.append({file.relative_to(out).as_posix(): hashlib.sha256(file.read_bytes()).hexdigest() for file in files})
    assert digests[0] == digests[1]
    assert len(digests[0]) > 15
