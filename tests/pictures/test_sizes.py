"""The files a page offers, from pictures made by the libraries that own their formats."""

from pathlib import Path

import numpy as np
import pyvips
from PIL import Image

from sitegen.pictures.records import PictureSettings
from sitegen.pictures.resizing import reduced
from sitegen.pictures.sizes import make_sizes


def test_each_width_comes_in_three_types_and_nothing_is_enlarged(tmp_path: Path) -> None:
    """A picture 700 pixels wide gives 480 and its own size, in AVIF, WebP and JPEG, as any reader measures them."""
    Image.fromarray(np.full((350, 700, 3), 90, np.uint8)).save(tmp_path / "a.png")
    made = make_sizes(tmp_path / "a.png", tmp_path / "out", PictureSettings())
    assert [(file.name, file.width_px, file.height_px) for file in made.files] == [
        (f"{name}.{suffix}", width, width // 2)
        for suffix in ("avif", "jpg", "webp")
        for name, width in (("480", 480), ("full", 700))
    ]
    for file in made.files:
        with Image.open(tmp_path / "out" / file.name) as seen:
            assert (seen.width, seen.height, seen.get_format_mimetype()) == (file.width_px, file.height_px, file.mime)
        assert (tmp_path / "out" / file.name).stat().st_size == file.size_bytes


def test_sixteen_bits_last_through_resizing(tmp_path: Path) -> None:
    """A ramp over two of 256 levels keeps more than two levels in the ten bits of an AVIF."""
    ramp = np.broadcast_to(np.linspace(20_000, 20_512, 800).astype(np.uint16)[None, :, None], (200, 800, 3))
    pyvips.Image.new_from_array(np.ascontiguousarray(ramp)).copy(interpretation="rgb16").write_to_file(str(tmp_path / "a.tif"))
    make_sizes(tmp_path / "a.tif", tmp_path / "out", PictureSettings(widths_px=(400,), avif_quality=95))
    decoded = pyvips.Image.new_from_file(str(tmp_path / "out" / "400.avif"))
    assert len(np.unique(decoded.numpy()[..., 1])) > 5


def test_a_bright_star_gets_no_dark_ring() -> None:
    """A star at full brightness on a sky of 5,000, made four times smaller, leaves the sky around it above 4,600; the
    sharper Lanczos filter, which libvips takes by itself, digs down to half of it."""
    y, x = np.mgrid[0:200, 0:200]
    star = 5_000 + 60_000 * np.exp(-((x - 100) ** 2 + (y - 100) ** 2) / (2 * 1.9**2))
    image = pyvips.Image.new_from_array(star.astype(np.uint16)).copy(interpretation="grey16")
    assert reduced(image, 50, 50).min() > 4_600
    assert image.resize(0.25).min() < 3_500
