"""Write the demo diary's pictures: ``python tests/demo/make_pictures.py [CONTENT] [--only WORD]``.

All of them are simulated. Star positions brighter than G = 10 come from the
catalogue, everything else from the seeds below. A second run writes the same
bytes with the versions named in README.md.
"""

import argparse
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import nights
import numpy as np
import pyvips
import scenes_bench as bench
import scenes_dust as dust
import scenes_galaxy as galaxy
import scenes_nebula as nebula
from astropy.io import fits
from cameras import write_camera_jpeg
from frames import Frame as Exposure
from PIL import Image
from starfield import Frame

Array = np.ndarray
Random = np.random.Generator

JPEGS: tuple[tuple[str, int, Callable[[Random], Array], int], ...] = (
    ("corona/result.jpg", 401, dust.corona, 86),
    ("wide-field/result.jpg", 501, dust.milky_way, 82),
    ("ngc-253-first/result.jpg", 701, galaxy.first_season, 86),
    ("carina/wide.jpg", 801, nebula.carina_wide, 84),
    ("carina/core.jpg", 802, nebula.carina_core, 86),
    ("ara-rim/result.jpg", 901, nebula.ara_rim, 84),
    ("midsummer/result.jpg", 1001, nebula.veil, 84),
    ("midsummer/june-sub.jpg", 1002, nebula.june_sub, 80),
    ("ngc-253-five/result.jpg", 1101, galaxy.five_nights, 88),
    ("ngc-253-five/one-sub.jpg", 1102, galaxy.one_sub, 80),
    ("ngc-253-five/luminance.jpg", 1103, galaxy.luminance, 86),
    ("ngc-253-five/colour-only.jpg", 1104, galaxy.colour_only, 86),
)
PNGS: tuple[tuple[str, int, Callable[[Random], Array]], ...] = (
    ("counting/single-sub.png", 101, bench.first_sub),
    ("cables/power-plan.png", 0, lambda rng: bench.power_plan()),
)
RINGS = (  # name, when it was taken, where the shadow sits, seed
    ("before", datetime(2025, 8, 2, 6, 12, tzinfo=UTC), bench.Ring(offset=(-9.6, 5.4)), 301),
    ("after", datetime(2025, 8, 2, 7, 4, tzinfo=UTC), bench.Ring(offset=(0.6, 0.4)), 302),
)
SANDY = bench.Optics(2.15, 1.04, 160.0, tilt_px=2.6, tilt_deg=135.0)
TURNED = bench.Optics(2.18, 1.04, 70.0, tilt_px=2.5, tilt_deg=138.0, focus=0.4)
CLEAN = bench.Optics(2.12, 1.03, 70.0, tilt_px=0.4, tilt_deg=250.0, focus=0.1)
FIELDS = (  # name, start of the sub, the camera's place, how stars look, seed
    ("secondary-set", datetime(2025, 8, 2, 10, 11, tzinfo=UTC), bench.SURVEY_FRAME, SANDY, 303),
    ("camera-turned", datetime(2025, 8, 23, 10, 11, tzinfo=UTC), bench.TURNED_FRAME, TURNED, 304),
    ("flange-clean", datetime(2025, 8, 23, 11, 6, tzinfo=UTC), bench.TURNED_FRAME, CLEAN, 305),
)


def bytes_of(picture: Array) -> Array:
    """0..1 to 8 bits."""
    return (np.clip(picture, 0, 1) * 255 + 0.5).astype(np.uint8)


def write_jpeg(path: Path, picture: Array, quality: int) -> None:
    """Progressive, without any metadata."""
    Image.fromarray(bytes_of(picture)).save(path, "JPEG", quality=quality, optimize=True, progressive=True)


def write_tiff(path: Path, picture: Array) -> None:
    """16 bits a channel, in steps of 32 so that it packs."""
    levels = (np.clip(picture, 0, 1) * 2047 + 0.5).astype(np.uint16) * 32
    image = pyvips.Image.new_from_array(levels).copy(interpretation="rgb16")
    image.tiffsave(str(path), compression="deflate", predictor="horizontal", strip=True)


def frame_header(when: datetime, exposure_s: float, name: str, focal_mm: float, binning: int) -> fits.Header:
    """Keywords of a frame, and the private ones that come along."""
    head = fits.Header()
    for keyword, value in (
        ("IMAGETYP", "Light Frame"),
        ("DATE-OBS", when.strftime("%Y-%m-%dT%H:%M:%S")),
        ("TIMESYS", "UTC"),
        ("EXPTIME", exposure_s),
        ("FILTER", name),
        ("XBINNING", binning),
        ("YBINNING", binning),
        ("XPIXSZ", round(3.76 * binning, 2)),
        ("YPIXSZ", round(3.76 * binning, 2)),
        ("FOCALLEN", focal_mm),
        ("CCD-TEMP", -15.0),
        ("INSTRUME", "26-megapixel mono camera"),
        ("TELESCOP", "230 mm reflector"),
        ("SITELAT", nights.HILL.latitude_deg),
        ("SITELONG", nights.HILL.longitude_deg),
        ("OBSERVER", "keeper on duty"),
    ):
        head[keyword] = value
    head["COMMENT"] = "Simulated frame of a demo diary."
    return head


def with_sky(head: fits.Header, frame: Frame) -> fits.Header:
    """The same with the frame's place on the sky, north up but for its rotation."""
    turn, scale_deg = np.radians(frame.rotation_deg), frame.scale_arcsec_px / 3600
    for keyword, value in (
        ("RADESYS", "ICRS"),
        ("CTYPE1", "RA---TAN"),
        ("CTYPE2", "DEC--TAN"),
        ("CUNIT1", "deg"),
        ("CUNIT2", "deg"),
        ("CRVAL1", frame.ra_deg),
        ("CRVAL2", frame.dec_deg),
        ("CRPIX1", (frame.width_px + 1) / 2),
        ("CRPIX2", (frame.height_px + 1) / 2),
        ("CD1_1", -scale_deg * round(np.cos(turn), 12)),
        ("CD1_2", 0.0),
        ("CD2_1", 0.0),
        ("CD2_2", scale_deg * round(np.cos(turn), 12)),
    ):
        head[keyword] = value
    return head


def write_fits(path: Path, adu: Array, head: fits.Header) -> None:
    """Bottom row first, as FITS counts; ``.fz`` is tile-compressed."""
    flipped = np.ascontiguousarray(adu[::-1])
    if path.suffix == ".fz":
        squeezed = fits.CompImageHDU(flipped, head, compression_type="RICE_1", tile_shape=(32, adu.shape[1]))
        fits.HDUList([fits.PrimaryHDU(), squeezed]).writeto(path, overwrite=True)
    else:
        fits.PrimaryHDU(flipped, head).writeto(path, overwrite=True)


def write_rings(folder: Path) -> None:
    """The artificial star before and after the screws: a steel ball in the sun, so without a place on the sky."""
    rings = [bench.ring_frame(ring, np.random.default_rng(seed)) for _, _, ring, seed in RINGS]
    for (word, when, _, _), ring in zip(RINGS, rings, strict=True):
        write_fits(folder / f"ring-{word}.fits", ring, frame_header(when, 0.004, "R", 2000.0, 1))
    Image.fromarray(bytes_of(bench.pair(*rings))).save(folder / "rings.png", optimize=True)


def write_fields(folder: Path) -> None:
    """What the frame's corners said: after the screws, with the camera turned, and with its flange clean."""
    for word, when, frame, optics, seed in FIELDS:
        field = bench.survey_field(frame, optics, 303, np.random.default_rng(seed))
        head = with_sky(frame_header(when, 10.0, "L", 2000.0, 4), frame)
        write_fits(folder / f"field-{word}.fits.fz", field, head)
        if frame is bench.TURNED_FRAME:
            Image.fromarray(bytes_of(bench.zone_squares(field))).save(folder / f"corners-{word}.png", optimize=True)


def write_bench(folder: Path) -> None:
    """The day and the nights with the screws."""
    write_rings(folder)
    write_fields(folder)


def write_single(path: Path) -> None:
    """A camera's own JPEG, with the position in it that must not be published."""
    when = datetime(2025, 7, 25, 11, 4, 17, tzinfo=UTC)
    picture = Image.fromarray(bytes_of(dust.single_frame(np.random.default_rng(502))))
    write_camera_jpeg(path, Exposure(when, 120.0, "", gain=1600), nights.PADDOCK, picture, quality=82)


def write_all(pictures: Path, only: str) -> None:
    """Everything whose name contains ``only``."""
    jobs: list[tuple[str, Callable[[Path], None]]] = [
        ("collimation", lambda path: write_bench(pictures / "collimation")),
        ("wide-field/single.jpg", write_single),
        ("helix/result.tif", lambda path: write_tiff(path, nebula.helix(np.random.default_rng(601)))),
        ("tarantula/hydrogen-so-far.fits", _write_tarantula),
    ]
    jobs += [(name, _jpeg_job(seed, paint, quality)) for name, seed, paint, quality in JPEGS]
    jobs += [(name, _png_job(seed, paint)) for name, seed, paint in PNGS]
    for name, write in jobs:
        if only in name:
            path = pictures / name
            (path if name == "collimation" else path.parent).mkdir(parents=True, exist_ok=True)
            write(path)
            print(name, flush=True)


def _jpeg_job(seed: int, paint: Callable[[Random], Array], quality: int) -> Callable[[Path], None]:
    return lambda path: write_jpeg(path, paint(np.random.default_rng(seed)), quality)


def _png_job(seed: int, paint: Callable[[Random], Array]) -> Callable[[Path], None]:
    return lambda path: Image.fromarray(bytes_of(paint(np.random.default_rng(seed)))).save(path, optimize=True)


def _write_tarantula(path: Path) -> None:
    picture = nebula.tarantula(np.random.default_rng(1201))
    frame = nebula.field_of(84.676, -69.101, nebula.LONG_TUBE / 0.8, picture.shape[1])
    head = with_sky(frame_header(datetime(2026, 11, 6, 12, 0, 23, tzinfo=UTC), 300.0, "Ha", 1600.0, 1), frame)
    # A reduced picture, not a frame: the camera's pixel no longer says anything about it.
    for keyword in ("XPIXSZ", "YPIXSZ", "XBINNING", "YBINNING"):
        del head[keyword]
    write_fits(path, (picture * 62000 + 800).astype(np.uint16), head)


if __name__ == "__main__":
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument("content", nargs="?", type=Path, default=Path(__file__).parents[2] / "content")
    words.add_argument("--only", default="")
    given = words.parse_args()
    write_all(given.content / "pictures", given.only)
