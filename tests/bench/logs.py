"""Capture logs beside the bare calls that reading them cannot avoid.

    python tests/bench/logs.py [HEADERS]

FITS: headers of a capture program (written by astropy, two blocks each, every date its own) against opening each file and reading
2880-byte blocks up to END. CSV: 20,000 rows against csv.reader over the same file. EXIF: pictures written by Pillow against
Pillow's own reading of the tags. Processor time; runs of both sides alternate and the fastest of each counts, so that a busy
machine troubles both alike.
"""

import csv
import sys
import tempfile
from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from time import process_time

from astropy.io import fits
from PIL import Image
from PIL.ExifTags import IFD, Base
from PIL.TiffImagePlugin import IFDRational

sys.path.insert(0, str(Path(__file__).parents[2]))

from sitegen.diary.rig import Camera, Filter, Rig, Telescope, Train
from sitegen.diary.site import Site
from sitegen.reading.capture_logs.joining import join_logs
from sitegen.reading.capture_logs.registry import read_log
from sitegen.reading.capture_logs.request import LogReading, LogRequest

FILTERS = ("L", "R", "G", "B", "Ha", "OIII")
ROWS, PICTURES, RUNS = 20_000, 200, 7
HEADER_TIMES_ALLOWED = 1.5
START = datetime(2026, 4, 18, 9, tzinfo=UTC)
CAMERA = Camera("camera", 3.76, 6248, 4176, "mono")
TRAINS = tuple(Train(since, Telescope("newtonian", 200.0, 70.0, 800.0), CAMERA) for since in (None, date(2025, 1, 1)))
RIG = Rig("newtonian", "Newtonian", TRAINS, {short: Filter(short, short, "broadband") for short in FILTERS})
LENS = Rig("lens", "Lens", (Train(None, Telescope("lens", 18.0, None, 50.0), CAMERA),))
SITE = Site("plain", "Plain", -32.6, 139.0, 500.0, "Australia/Adelaide")


def request(path: Path, rig: Rig = RIG) -> LogRequest:
    shown, source = f"content/logs/{path.name}", f"logs/{path.name}"
    return LogRequest(path, shown, source, rig, SITE, 0, None, None, ("e.md", 1, 1), date(2026, 12, 1))


def header(number: int) -> bytes:
    """Sixty cards of which a handful change from frame to frame."""
    start = (START + timedelta(seconds=307.25 * number)).replace(tzinfo=None)
    cards: dict[str, object] = {"IMAGETYP": "Light Frame", "OBJECT": "NGC 6188", "EXPTIME": 300.0}
    cards |= {"FILTER": FILTERS[number // 7 % 6], "DATE-OBS": start.isoformat(timespec="milliseconds"), "TIMESYS": "UTC"}
    cards |= {"XBINNING": 1, "GAIN": 100, "CCD-TEMP": -10 + number % 5 / 10, "XPIXSZ": 3.76, "YPIXSZ": 3.76, "FOCALLEN": 800.0}
    cards |= {f"NOISE{index:03d}": f"{number * index % 997} of a program" for index in range(45)}
    return fits.Header(cards).tostring(endcard=True, padding=True).encode()


def write_headers(folder: Path, count: int) -> list[Path]:
    first = fits.PrimaryHDU().header.tostring(endcard=False, padding=False).encode()
    paths = [folder / f"{number:06d}.fits" for number in range(count)]
    for number, path in enumerate(paths):
        path.write_bytes((first + header(number).rstrip()).ljust(2 * 2880))
    return paths


def bare_blocks(paths: list[Path]) -> None:
    for path in paths:
        with path.open("rb") as file:
            while b"END     " not in file.read(2880):
                pass


def write_table(path: Path) -> None:
    with path.open("w", newline="") as file:
        writer = csv.writer(file)
        writer.writerow(["start", "exposure_s", "filter", "kept", "reason", "gain", "sensor_c", "fwhm_arcsec"])
        for number in range(ROWS):
            start = (START + timedelta(seconds=305 * number)).isoformat()
            writer.writerow([start, 300, FILTERS[number % 6], "yes", "", 100, -10.1, 2.31])


def bare_table(path: Path) -> None:
    with path.open(newline="") as file:
        for _ in csv.reader(file):
            pass


def write_pictures(folder: Path) -> list[Path]:
    paths = [folder / f"{number:04d}.jpg" for number in range(PICTURES)]
    for number, path in enumerate(paths):
        exif, stamp = Image.Exif(), (START + timedelta(seconds=35 * number)).strftime("%Y:%m:%d %H:%M:%S")
        tags = {Base.DateTimeOriginal: stamp, Base.ExposureTime: IFDRational(30, 1), Base.ISOSpeedRatings: 800}
        exif.get_ifd(IFD.Exif).update(tags)
        Image.new("RGB", (60, 40)).save(path, exif=exif)
    return paths


def bare_exif(paths: list[Path]) -> None:
    for path in paths:
        with Image.open(path) as picture:
            picture.getexif().get_ifd(IFD.Exif)


def read_all(requests: list[LogRequest], expected: int) -> list[LogReading]:
    readings = [read_log(each) for each in requests]
    found = sum(len(reading.subs) for reading in readings), sum(len(reading.problems) for reading in readings)
    assert found == (expected, 0), found
    return readings


def fastest(*calls: Callable[[], object]) -> list[float]:
    """Processor seconds of each call's fastest run, the runs taken in turns."""
    best = [float("inf")] * len(calls)
    for _ in range(RUNS):
        for index, call in enumerate(calls):
            began = process_time()
            call()
            best[index] = min(best[index], process_time() - began)
    return best


def show(what: str, count: int, ours_s: float, bare_s: float) -> float:
    ratio = ours_s / bare_s
    print(f"{what:28} {count:6d}  ours {ours_s / count * 1e6:7.1f} µs  bare {bare_s / count * 1e6:7.1f} µs  {ratio:5.2f} ×")
    return ratio


def main(count: int) -> int:
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        headers = write_headers(folder, count)
        asked = [request(path) for path in headers]
        ratio = show("FITS headers", count, *fastest(lambda: read_all(asked, count), lambda: bare_blocks(headers)))
        table = folder / "table.csv"
        write_table(table)
        show("CSV rows", ROWS, *fastest(lambda: read_all([request(table)], ROWS), lambda: bare_table(table)))
        pictures = write_pictures(folder)
        with_lens = [request(path, LENS) for path in pictures]
        show("EXIF pictures", PICTURES, *fastest(lambda: read_all(with_lens, PICTURES), lambda: bare_exif(pictures)))
        readings = read_all(asked, count)
        print(f"{'joined into one entry':28} {count:6d}  ours {fastest(lambda: join_logs(readings))[0] / count * 1e6:7.1f} µs")
    return 0 if ratio <= HEADER_TIMES_ALLOWED else 1


if __name__ == "__main__":
    sys.exit(main(int(sys.argv[1]) if len(sys.argv) > 1 else 20_000))
