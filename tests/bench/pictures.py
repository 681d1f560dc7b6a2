"""How long pictures take and what they need. Run: python tests/bench/pictures.py [--quick]

Prints, in one run: a 24-megapixel JPEG against one bare libvips call for each output; a 61-megapixel 16-bit TIFF with
its memory; 20 pictures in one process and in one process a core; large pictures of every kind with their memory.
"""

import os
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path

import numpy as np
import pyvips

from sitegen.pictures.derivatives import make_picture
from sitegen.pictures.records import PictureSettings

SETTINGS = PictureSettings()
SEED = 7


def star_field(width: int, height: int) -> pyvips.Image:
    """A lit disc, noise and stars: enough structure that no encoder has an easy day. Float, 0 to 1, three bands."""
    centre = pyvips.Image.gaussnoise(width, height, mean=0.0, sigma=0.02, seed=SEED)
    position = pyvips.Image.xyz(width, height)
    x, y = (position[0] - width / 2) / width, (position[1] - height / 2) / height
    glow = ((x * x + y * y) * -12.0).exp() * 0.4
    spots = pyvips.Image.gaussnoise(width // 8, height // 8, mean=0.0, sigma=1.0, seed=SEED + 1) > 2.6
    stars = spots.resize(8, vscale=8, kernel="cubic").embed(0, 0, width, height).cast("float") / 255
    grey = (glow + centre + stars * 0.8 + 0.06)
    return (grey * [1.0, 0.85, 0.9]).cast("float")


def write_jpeg(path: Path, width: int, height: int) -> None:
    (star_field(width, height) * 255).cast("uchar").copy(interpretation="srgb").jpegsave(str(path), Q=95)


def write_tiff(path: Path, width: int, height: int) -> None:
    (star_field(width, height) * 65535).cast("ushort").copy(interpretation="rgb16").tiffsave(str(path))


def timed(work: Callable[[], object], rounds: int = 3) -> float:
    """The median of a few rounds, in seconds."""
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return sorted(times)[len(times) // 2]


def ours(path: Path) -> None:
    with tempfile.TemporaryDirectory() as folder:
        make_picture(path, Path(folder), None, SETTINGS)


def bare(path: Path) -> None:
    """One libvips call an output, each from the file, with the encoders set as ours are."""
    with tempfile.TemporaryDirectory() as folder:
        for width in SETTINGS.widths_px:
            thumbnail = f"{folder}/{width}"
            pyvips.Image.thumbnail(str(path), width).heifsave(
                thumbnail + ".avif", compression="av1", Q=SETTINGS.avif_quality, effort=SETTINGS.avif_effort,
                subsample_mode="off", keep="none",
            )
            pyvips.Image.thumbnail(str(path), width).webpsave(
                thumbnail + ".webp", Q=SETTINGS.webp_quality, effort=2, keep="none"
            )
            pyvips.Image.thumbnail(str(path), width).jpegsave(
                thumbnail + ".jpg", Q=SETTINGS.jpeg_quality, optimize_coding=True, interlace=True, keep="none"
            )
        once = pyvips.Image.new_from_file(str(path), access="sequential")
        once.jpegsave(f"{folder}/full.jpg", Q=SETTINGS.full_quality, keep="none")
        again = pyvips.Image.new_from_file(str(path), access="sequential")
        suffix = f".jpg[Q={SETTINGS.tile_quality},subsample_mode=off]"
        again.dzsave(f"{folder}/tiles", layout="iiif3", tile_size=SETTINGS.tile_px, suffix=suffix, keep="none")


def weight(path: Path) -> str:
    """Files and bytes of one picture, and how many times one full JPEG and one pyramid that is."""
    with tempfile.TemporaryDirectory() as folder:
        make_picture(path, Path(folder), None, SETTINGS)
        size = {file.relative_to(folder): file.stat().st_size for file in Path(folder).rglob("*") if file.is_file()}
    pyramid = sum(count for name, count in size.items() if name.parts[0] == "tiles" and name.name == "default.jpg")
    total = sum(size.values())
    return f"{len(size)} files, {total / 1e6:.1f} MB, {total / pyramid:.2f} times the full JPEG and a pyramid"


def alone(path: Path) -> str:
    """One picture in a fresh process: seconds without the start of Python, and the peak of its memory."""
    done = subprocess.run([sys.executable, __file__, "--one", str(path)], capture_output=True, text=True, check=True)
    return done.stdout.strip()


def one(path: Path) -> None:
    start = time.perf_counter()
    ours(path)
    seconds = time.perf_counter() - start
    print(f"{seconds:6.2f} s ({time.process_time():.1f} s of processor)  {peak_mb():5.0f} MB")


def peak_mb() -> float:
    """This program's own peak; getrusage would count that of the process which started it."""
    status = Path("/proc/self/status").read_text(encoding="ascii")
    return int(status.split("VmHWM:")[1].split()[0]) / 1024


def many(path: Path, folder: Path, count: int) -> None:
    cores = len(os.sched_getaffinity(0))
    copies = [folder / f"many-{number}.jpg" for number in range(count)]
    for copy in copies:
        copy.write_bytes(path.read_bytes())
    singly = timed(lambda: [ours(copy) for copy in copies], rounds=1)
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start = time.perf_counter()
    with ProcessPoolExecutor(cores, mp_context=get_context("spawn")) as pool:
        list(pool.map(ours, copies))
    shared = time.perf_counter() - start
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    busy = (after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime) / shared
    print(f"{count} pictures of 6 MP: one process {singly:.1f} s, {cores} processes {shared:.1f} s, {busy:.2f} cores busy")


def main(quick: bool) -> None:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        write_jpeg(folder / "24.jpg", 6000, 4000)
        own, plain = timed(lambda: ours(folder / "24.jpg")), timed(lambda: bare(folder / "24.jpg"))
        print(f"24 MP JPEG, all sizes and tiles: {own:.2f} s; bare libvips calls {plain:.2f} s; ratio {own / plain:.2f}")
        print(f"24 MP JPEG, published:    {weight(folder / '24.jpg')}")
        write_tiff(folder / "61.tif", 9504, 6336)
        print(f"61 MP 16-bit TIFF:        {alone(folder / '61.tif')}")
        write_jpeg(folder / "6.jpg", 3000, 2000)
        many(folder / "6.jpg", folder, 4 if quick else 20)
        if not quick:
            large(folder)


def large(folder: Path) -> None:
    """Up to 150 megapixels, by every road into the room."""
    write_tiff(folder / "150.tif", 15000, 10000)
    print(f"150 MP 16-bit TIFF:       {alone(folder / '150.tif')}")
    stored = pyvips.Image.new_from_file(str(folder / "150.tif"))
    roads: dict[str, Callable[[str], None]] = {
        "150.jpg": lambda target: stored.colourspace("srgb").jpegsave(target, Q=90),
        "150-progressive.jpg": lambda target: stored.colourspace("srgb").jpegsave(target, Q=90, interlace=True),
        "150.png": lambda target: stored.pngsave(target, compression=1),
        "150.webp": lambda target: stored.colourspace("srgb").webpsave(target, effort=0),
        "150.avif": lambda target: stored.heifsave(target, compression="av1", effort=0, bitdepth=10),
    }
    for title, write in roads.items():
        write(str(folder / title))
        print(f"{title:25s} {alone(folder / title)}")
        (folder / title).unlink()
    frames(folder)


def frames(folder: Path) -> None:
    """FITS with 61 and 150 megapixels: mono, colour, Bayer."""
    from astropy.io import fits  # the benchmark alone writes FITS

    noise = np.random.default_rng(SEED)
    mosaic = noise.normal(1000, 30, (10000, 15000)).astype(np.uint16)
    header = fits.Header({"BAYERPAT": "RGGB"})
    fits.writeto(folder / "150-bayer.fits", mosaic, header)
    fits.writeto(folder / "61-rgb.fits", np.stack([mosaic[:6336, :9504].astype(np.float32)] * 3))
    fits.writeto(folder / "61-mono.fits", mosaic[:6336, :9504].astype(np.float32))
    for title in ("61-mono.fits", "61-rgb.fits", "150-bayer.fits"):
        print(f"{title:25s} {alone(folder / title)}")
        (folder / title).unlink()


if __name__ == "__main__":
    if sys.argv[1:2] == ["--one"]:
        one(Path(sys.argv[2]))
    else:
        main("--quick" in sys.argv)
