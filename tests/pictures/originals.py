"""Pictures as authors have them, each written by the library that owns its format."""

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pyvips
from PIL import Image

WIDTH, HEIGHT = 120, 80
SECRET = "Marigold Lane 7"  # an invented address: must appear nowhere in what is published


def scene() -> np.ndarray:
    """Four unequal quarters, (80, 120, 3), 0 to 1: red, green, blue and grey, clockwise from the top left."""
    pixels = np.zeros((HEIGHT, WIDTH, 3))
    pixels[:40, :60] = (0.8, 0.1, 0.1)
    pixels[:40, 60:] = (0.1, 0.7, 0.1)
    pixels[40:, 60:] = (0.1, 0.2, 0.9)
    pixels[40:, :60] = (0.3, 0.3, 0.3)
    return pixels


def eight_bits() -> np.ndarray:
    return np.round(scene() * 255).astype(np.uint8)


def sixteen_bits() -> np.ndarray:
    return np.round(scene() * 65_535).astype(np.uint16)


def vips(pixels: np.ndarray, interpretation: str) -> pyvips.Image:
    return pyvips.Image.new_from_array(np.ascontiguousarray(pixels)).copy(interpretation=interpretation)



# name -> how it is written; every one shows the scene
WRITERS: dict[str, Callable[[Path], None]] = {
    "plain.jpg": lambda path: Image.fromarray(eight_bits()).save(path, quality=98, subsampling=0),
    "progressive.jpg": lambda path: Image.fromarray(eight_bits()).save(path, quality=98, subsampling=0, progressive=True),
    "eight.png": lambda path: Image.fromarray(eight_bits()).save(path),
    "sixteen.png": lambda path: vips(sixteen_bits(), "rgb16").pngsave(str(path)),
    "interlaced.png": lambda path: vips(sixteen_bits(), "rgb16").pngsave(str(path), interlace=True),
    "palette.png": lambda path: Image.fromarray(eight_bits()).convert("P", palette=Image.Palette.ADAPTIVE).save(path),
    "alpha.png": lambda path: Image.fromarray(eight_bits()).convert("RGBA").save(path),
    "eight.tif": lambda path: Image.fromarray(eight_bits()).save(path),
    "deflated.tif": lambda path: vips(sixteen_bits(), "rgb16").tiffsave(str(path), compression="deflate", predictor="horizontal"),
    "tiled-big.tif": lambda path: vips(sixteen_bits(), "rgb16").tiffsave(
        str(path), tile=True, tile_width=32, tile_height=32, bigtiff=True
    ),
    "float.tif": lambda path: vips(scene().astype(np.float32), "rgb").tiffsave(str(path)),
    "float-to-65535.tif": lambda path: vips((scene() * 65_535).astype(np.float32), "rgb").tiffsave(str(path)),
    "alpha16.tif": lambda path: vips(sixteen_bits(), "rgb16").bandjoin(65_535).tiffsave(str(path)),
    "lossless.webp": lambda path: Image.fromarray(eight_bits()).save(path, lossless=True),
    "fine.avif": lambda path: Image.fromarray(eight_bits()).save(path, quality=98, subsampling="4:4:4"),
    "ten.avif": lambda path: vips(sixteen_bits(), "rgb16").heifsave(str(path), compression="av1", Q=98, bitdepth=10),
}


def write(folder: Path, name: str) -> Path:
    path = folder / name
    WRITERS[name](path)
    return path


def decoded(path: Path) -> np.ndarray:
    """As Pillow sees a published file: (height, width, 3), 0 to 255."""
    with Image.open(path) as picture:
        return np.asarray(picture.convert("RGB")).astype(float)


def quarters(pixels: np.ndarray) -> list[tuple[int, ...]]:
    """The middle of each quarter, clockwise from the top left."""
    height, width = pixels.shape[:2]
    places = ((1, 1), (1, 3), (3, 3), (3, 1))
    return [tuple(np.round(pixels[height * y // 4, width * x // 4]).astype(int).tolist()) for y, x in places]
