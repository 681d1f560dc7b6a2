"""Frames written as files of a camera: FITS by astropy, JPEG with EXIF by Pillow.

The pixels are empty or tiny; the headers are what real ones are, with the
private things (position, observer) that a diary must never publish.
"""

import gzip
import io
from pathlib import Path
from zoneinfo import ZoneInfo

import numpy as np
from astropy.io import fits
from frames import Frame, Place
from PIL import Image
from PIL.ExifTags import IFD
from PIL.TiffImagePlugin import IFDRational
from tables import bare

ORIGIN = (2026, 1, 1)
CAMERA_PIXELS = (6248, 4176)


def header(frame: Frame, place: Place, target: str, number: int) -> fits.Header:
    """The keywords of a capture program, the useful and the noisy ones."""
    head = fits.Header()
    for keyword, value, comment in (
        ("IMAGETYP", {"light": "Light Frame", "dark": "Dark Frame", "flat": "Flat Field"}[frame.kind], "kind of frame"),
        ("OBJECT", target if frame.kind == "light" else "", "as typed by whoever was on duty"),
        ("DATE-OBS", bare(frame.start) + f".{(number * 137) % 1000:03d}", "[UTC] start of exposure"),
        ("TIMESYS", "UTC", "time scale"),
        ("EXPTIME", float(frame.exposure_s), "[s] exposure"),
        ("FILTER", frame.filter, "filter drawer"),
        ("XBINNING", 1, "binning along x"),
        ("YBINNING", 1, "binning along y"),
        ("GAIN", int(frame.gain or 0), "camera setting, no unit"),
        ("OFFSET", 20, "camera setting, no unit"),
        ("EGAIN", 0.78, "[e-/ADU]"),
        ("SET-TEMP", -10.0, "[degC] wanted"),
        ("CCD-TEMP", frame.sensor_c, "[degC] sensor"),
        ("XPIXSZ", 3.76, "[um] pixel, binned"),
        ("YPIXSZ", 3.76, "[um] pixel, binned"),
        ("BAYERPAT", "RGGB", "colour matrix"),
        ("FOCALLEN", 384.0, "[mm] focal length"),
        ("APTDIA", 80.0, "[mm] aperture"),
        ("FOCUSPOS", 8112 + number % 7, "[step] focuser"),
        ("FOCTEMP", round(9.5 - 0.06 * number, 1), "[degC] tube"),
        ("PIERSIDE", "WEST", "side of the mount"),
        ("SITELAT", place.latitude_deg, "[deg] north positive"),
        ("SITELONG", place.longitude_deg, "[deg] east positive"),
        ("SITEELEV", 512.0, "[m]"),
        ("OBSERVER", "keeper on duty", "who was there"),
        ("INSTRUME", "26-megapixel colour camera", "camera"),
        ("TELESCOP", "80 mm refractor", "telescope"),
        ("SWCREATE", "capture program", "program"),
        ("ROWORDER", "TOP-DOWN", "order of the rows"),
    ):
        head[keyword] = (value, comment)
    if frame.kind == "light":
        head["RA"], head["DEC"] = (250.05, "[deg] pointing"), (-48.66, "[deg] pointing")
        head["AIRMASS"] = (round(1.02 + 0.004 * number, 3), "by the capture program, unchecked")
    head.add_comment("Invented frame of a demo diary: the header is the point, the pixels are empty.")
    return head


def empty_pixels() -> np.ndarray:
    """The full frame, all zero: it compresses to almost nothing."""
    return np.zeros(CAMERA_PIXELS[::-1], dtype=np.int16)


def write_plain(path: Path, head: fits.Header) -> None:
    """A header without pixels (NAXIS 0), which is a whole FITS file."""
    path.parent.mkdir(parents=True, exist_ok=True)
    fits.PrimaryHDU(header=head).writeto(path, overwrite=True)


def write_gzipped(path: Path, head: fits.Header, pixels: np.ndarray | None) -> None:
    """The same behind gzip, with no time stamp of its own."""
    text = io.BytesIO()
    fits.PrimaryHDU(pixels, head).writeto(text)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(gzip.compress(text.getvalue(), 9, mtime=0))


def write_tiled(path: Path, head: fits.Header) -> None:
    """A tile-compressed frame of full size: its header stands in the second unit."""
    path.parent.mkdir(parents=True, exist_ok=True)
    squeezed = fits.CompImageHDU(empty_pixels(), head, compression_type="HCOMPRESS_1", tile_shape=(348, 6248))
    fits.HDUList([fits.PrimaryHDU(), squeezed]).writeto(path, overwrite=True)


def write_camera_jpeg(path: Path, frame: Frame, place: Place, preview: Image.Image, quality: int = 70) -> None:
    """A small JPEG with the EXIF of a camera body, position and all."""
    exif = Image.Exif()
    local = frame.start.astimezone(ZoneInfo(place.time_zone))
    stamp, offset = local.strftime("%Y:%m:%d %H:%M:%S"), local.strftime("%z")
    exif[0x010F], exif[0x0110], exif[0x0132] = "Camera", "24-megapixel body", stamp
    exif.get_ifd(IFD.Exif).update(
        {
            0x829A: IFDRational(round(frame.exposure_s), 1),  # ExposureTime
            0x829D: IFDRational(28, 10),  # FNumber
            0x8827: round(frame.gain or 0),  # ISO speed
            0x9003: stamp,  # DateTimeOriginal
            0x9011: f"{offset[:3]}:{offset[3:]}",  # OffsetTimeOriginal
            0x920A: IFDRational(50, 1),  # FocalLength
            0xA002: 6000,
            0xA003: 4000,
            0xA431: "000000",  # BodySerialNumber, which identifies a camera and must not be published
        }
    )
    exif.get_ifd(IFD.GPSInfo).update(
        {
            1: "S" if place.latitude_deg < 0 else "N",
            2: sexagesimal(place.latitude_deg),
            3: "E",
            4: sexagesimal(place.longitude_deg),
        }
    )
    path.parent.mkdir(parents=True, exist_ok=True)
    preview.save(path, "JPEG", quality=quality, optimize=True, exif=exif)


def sexagesimal(angle_deg: float) -> tuple[IFDRational, IFDRational, IFDRational]:
    """Degrees, minutes, seconds as EXIF wants them."""
    tenths = round(abs(angle_deg) * 36000)
    return IFDRational(tenths // 36000, 1), IFDRational(tenths // 600 % 60, 1), IFDRational(tenths % 600, 10)
