"""Tiles that any IIIF viewer can use: judged by an independent validator, and tile by tile by the specification's words."""

import json
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from importlib.resources import files
from math import ceil
from pathlib import Path

import iiif_validator
import numpy as np
import pytest
from iiif_validator.tests import test as validator
from PIL import Image

from sitegen.pictures.derivatives import make_picture
from sitegen.pictures.records import PictureSettings
from sitegen.pictures.sizes import make_sizes
from sitegen.pictures.tiles import info_json, make_tiles, scale_factors
from tests.pictures.level_0 import promised
from tests.pictures.originals import decoded, eight_bits, write


class Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        pass


@contextmanager
def static_host(folder: Path) -> Iterator[str]:
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=str(folder)))
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}"
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


def test_an_independent_validator_passes_level_0(tmp_path: Path) -> None:
    """iiif-validator-ng's own test picture, tiled here and served as plain files, passes each of its level 0 checks
    for version 3 (info.json, the picture's identity, its squares, JPEG)."""
    picture = Path(str(files(iiif_validator).joinpath("validation_image.png")))
    with static_host(tmp_path) as address:
        make_tiles(picture, tmp_path / "check", f"{address}/check")
        server = validator.TargetServer(address, "check", validator.IIIFVersion.V3)
        features = server.feature_set()
        assert features.compliance_level == validator.ComplianceLevel.LEVEL_0
        checks = [check for check in validator.get_tests(server.version) if _is_level_0(check, features)]
        results = [(check.name, result) for check in checks for result in _as_list(check.run(server))]
    failures = [(name, result) for name, result in results if isinstance(result, validator.ValidationFailure)]
    assert len(checks) >= 3 and len(results) > 10
    assert failures == []


def _is_level_0(check: type, features: validator.ServerFeatures) -> bool:
    level = check.compliance_level
    level = level[features.version] if isinstance(level, dict) else level
    return features.version in check.versions and level == validator.ComplianceLevel.LEVEL_0


def _as_list(result: object) -> list[object]:
    return result if isinstance(result, list) else [result]


SIZES = [(1537, 1025), (512, 512), (100, 90), (513, 40), (40, 1100)]


@pytest.mark.parametrize("size", SIZES)
def test_every_tile_that_the_description_promises_is_there(tmp_path: Path, size: tuple[int, int]) -> None:
    """For each scale factor s, regions of s × 256 pixels cut at the edge, in the size ceil(region / s) (IIIF Image API
    3.0, 5.4 and its implementation note on tiles), each with just the pixels of its region; `sizes` and full/max too."""
    width, height = size
    pixels = np.random.default_rng(1).integers(0, 255, (height // 40 + 2, width // 40 + 2, 3), dtype=np.uint8)
    original = Image.fromarray(pixels).resize(size, Image.Resampling.BICUBIC)
    original.save(tmp_path / "a.png")
    settings = PictureSettings(tile_px=256, tile_quality=95)
    made = make_tiles(tmp_path / "a.png", tmp_path / "out", "https://example.org/a", settings)
    info = json.loads((tmp_path / "out" / "info.json").read_bytes())
    assert (info["width"], info["height"]) == (width, height)
    assert info["tiles"] == [{"width": 256, "scaleFactors": list(made.scale_factors)}]
    for factor in info["tiles"][0]["scaleFactors"]:
        for top in range(0, height, 256 * factor):
            for left in range(0, width, 256 * factor):
                _judge_tile(tmp_path / "out", original, (left, top), 256 * factor, factor)
    for offered in info["sizes"]:
        seen = decoded(tmp_path / "out" / "full" / f"{offered['width']},{offered['height']}" / "0" / "default.jpg")
        assert seen.shape[:2] == (offered["height"], offered["width"])
    assert decoded(tmp_path / "out" / "full" / "max" / "0" / "default.jpg").shape[:2] == (height, width)
    on_disk = [file.relative_to(tmp_path / "out").as_posix() for file in files_below(tmp_path / "out")]
    assert sorted(made.names) == sorted(on_disk)
    assert set(on_disk) == promised(info)


def _judge_tile(folder: Path, original: Image.Image, corner: tuple[int, int], side: int, factor: int) -> None:
    (left, top), (width, height) = corner, original.size
    across, down = min(side, width - left), min(side, height - top)
    name = "full" if (across, down) == (width, height) else f"{left},{top},{across},{down}"
    size = ceil(across / factor), ceil(down / factor)
    seen = decoded(folder / name / f"{size[0]},{size[1]}" / "0" / "default.jpg")
    assert seen.shape[:2] == size[::-1]
    region = np.asarray(original, float)[top : top + down, left : left + across]
    padded = np.pad(region, ((0, size[1] * factor - down), (0, size[0] * factor - across), (0, 0)), mode="edge")
    meant = padded.reshape(size[1], factor, size[0], factor, 3).mean(axis=(1, 3))
    assert np.abs(seen - meant).mean() < 4


def test_tiles_are_the_same_under_any_address(tmp_path: Path) -> None:
    """Only info.json differs between two addresses, and between an address and none, whose id is the folder itself."""
    path = write(tmp_path, "plain.jpg")
    one, other = (make_tiles(path, tmp_path / name, address) for name, address in (("a", "https://example.org/x"), ("b", None)))
    assert one.names == other.names
    differing = [name for name in one.names if (tmp_path / "a" / name).read_bytes() != (tmp_path / "b" / name).read_bytes()]
    assert differing == ["info.json"]
    assert json.loads((tmp_path / "b" / "info.json").read_bytes())["id"] == "."


def test_earlier_tiles_do_not_stay(tmp_path: Path) -> None:
    """Making tiles of another picture into the same folder leaves only the new ones."""
    Image.new("RGB", (700, 300)).save(tmp_path / "large.png")
    make_tiles(tmp_path / "large.png", tmp_path / "out", None)
    made = make_tiles(write(tmp_path, "eight.png"), tmp_path / "out", None)
    assert sorted(file.relative_to(tmp_path / "out").as_posix() for file in (tmp_path / "out").rglob("*.*")) == list(made.names)


def test_scale_factors_end_with_one_tile() -> None:
    """Up to the first factor at which the longer side fits into one tile."""
    assert scale_factors(512, 512, 512) == (1,)
    assert scale_factors(513, 1, 512) == (1, 2)
    assert scale_factors(6000, 4000, 512) == (1, 2, 4, 8, 16)


def test_the_description_is_stable() -> None:
    """The same size gives the same bytes, so that a rebuild changes nothing."""
    assert info_json((600, 400), 512, None) == info_json((600, 400), 512, None)


def test_one_call_makes_what_the_two_make(tmp_path: Path) -> None:
    """`make_picture` gives sizes and tiles; the full JPEG lies among the tiles, with the bytes that both give it."""
    path, settings = write(tmp_path, "deflated.tif"), PictureSettings(widths_px=(60,))
    picture, tiles = make_picture(path, tmp_path / "out", None, settings)
    alone = make_sizes(path, tmp_path / "sizes", settings)
    full = (tmp_path / "out" / picture.full.name).read_bytes()
    assert picture.full.name == "tiles/full/max/0/default.jpg"
    assert full == (tmp_path / "sizes" / alone.full.name).read_bytes()
    assert (picture.full.width_px, picture.full.height_px, picture.full.size_bytes) == (120, 80, len(full))
    assert (tiles.width_px, tiles.height_px) == (120, 80)
    assert sorted(item.name for item in (tmp_path / "out").iterdir()) == ["60.avif", "60.jpg", "60.webp", "tiles"]


def test_24_megapixels_are_few_files(tmp_path: Path) -> None:
    """At most 45, in 1.2 times the bytes of one full JPEG and one pyramid; all that the description promises, and no more."""
    grain = np.random.default_rng(7).normal(24, 6, (400, 600, 3)).clip(0, 255).astype("uint8")
    Image.fromarray(grain).resize((6000, 4000), Image.Resampling.BILINEAR).save(tmp_path / "sky.jpg", quality=88)
    picture, tiles = make_picture(tmp_path / "sky.jpg", tmp_path / "out", None, PictureSettings())
    size = {file.relative_to(tmp_path / "out").as_posix(): file.stat().st_size for file in files_below(tmp_path / "out")}
    pyramid = {name.removeprefix("tiles/") for name in size if name.startswith("tiles/")}
    assert len(size) <= 45
    assert sum(size.values()) <= 1.2 * sum(size[f"tiles/{name}"] for name in pyramid)
    assert pyramid == promised(json.loads((tmp_path / "out/tiles/info.json").read_bytes())) == set(tiles.names)
    assert set(size) - {f"tiles/{name}" for name in pyramid} == {file.name for file in picture.files} - {picture.full.name}


def test_the_full_jpeg_and_the_tiles_stand_upright(tmp_path: Path) -> None:
    """Of a picture stored on its side (EXIF orientation 6): both as high as it is wide in the file, the red quarter top right."""
    exif = Image.Exif()
    exif[0x0112] = 6
    Image.fromarray(eight_bits()).save(tmp_path / "side.jpg", quality=98, subsampling=0, exif=exif)
    picture, tiles = make_picture(tmp_path / "side.jpg", tmp_path / "out", None, PictureSettings(tile_px=64))
    full = decoded(tmp_path / "out" / picture.full.name)
    top_right = decoded(tmp_path / "out" / "tiles" / "64,0,16,64" / "16,64" / "0" / "default.jpg")
    assert full.shape[:2] == (tiles.height_px, tiles.width_px) == (120, 80)
    for corner in (full[:20, 60:], top_right[:20]):
        assert np.abs(corner.mean(axis=(0, 1)) - (204, 26, 26)).max() <= 4


def files_below(folder: Path) -> list[Path]:
    return sorted(path for path in folder.rglob("*") if path.is_file())
