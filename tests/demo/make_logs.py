"""Write the demo diary's capture logs: ``python tests/demo/make_logs.py [CONTENT]``.

Every run writes the same bytes (made with Python 3.11, numpy 2.4, astropy 8.0
and Pillow 13.0; another version may word a FITS or ECSV head differently).
"""

import sys
from dataclasses import replace
from pathlib import Path

import nights
import numpy as np
from cameras import empty_pixels, header, write_camera_jpeg, write_gzipped, write_plain, write_tiled
from frames import Frame, Session, frames_of
from PIL import Image
from starfield import Frame as SkyFrame
from tables import (
    LIGHTS,
    RUNS,
    WITH_CALIBRATION,
    bare,
    minutes,
    runs,
    wall_clock,
    with_offset,
    write_csv,
    write_ecsv,
    zulu,
)

ADELAIDE, HELSINKI = "Australia/Adelaide", "Europe/Helsinki"
GERMAN = {
    "start": "Beginn",
    "exposure_s": "Belichtung",
    "filter": "Filter",
    "kept": "brauchbar",
    "reason": "Grund",
    "gain": "Verstaerkung",
    "sensor_c": "Chip_C",
    "fwhm_arcsec": "Halbwertsbreite",
    "guiding_rms_arcsec": "Nachfuehrung",
}


def write_all(logs: Path) -> None:
    """Every log of the diary, under ``logs``."""
    write_csv(logs / "counting-2025-03-28.csv", frames_of(nights.COUNTING), WITH_CALIBRATION, bare)
    first, *second = nights.CORNER_TESTS
    write_csv(logs / "corner-tests-2025-08-02.csv", frames_of(first), LIGHTS, zulu)
    write_csv(logs / "corner-tests-2025-08-23.csv", [frame for run in second for frame in frames_of(run)], LIGHTS, zulu)
    for night in nights.CORONA:
        write_csv(logs / f"corona-cloud/{night.evening}.csv", _runs(night), ("kind", *RUNS), zulu)
    _write_wide_field(logs / "wide-field", nights.WIDE_FIELD)
    for night in nights.HELIX_NIGHTS:
        write_csv(logs / f"helix/{night.evening}.csv", frames_of(night), WITH_CALIBRATION, bare)
    for night in nights.FIRST_SEASON:
        write_csv(
            logs / f"ngc-253-first/{night.evening}.csv",
            frames_of(night),
            tuple(GERMAN),
            wall_clock(ADELAIDE),
            GERMAN,
            minutes,
        )
    _write_carina(logs / "carina")
    for number, night in enumerate(nights.ARA_NIGHTS):
        _write_headers(logs / "ara-rim", night, number)
    _write_midsummer(logs / "midsummer")
    _write_galaxy(logs / "ngc-253-five")
    _write_tarantula(logs / "tarantula")


def _runs(night: Session) -> list[Frame]:
    frames = runs(frames_of(night))
    longest = max(frames, key=lambda frame: frame.count)
    longest.note = "dithered every third sub"
    return frames


def _write_wide_field(folder: Path, night: Session) -> None:
    rng = np.random.default_rng(night.seed)
    for number, frame in enumerate(frames_of(night)):
        drift = tuple(rng.normal(0, 0.4, 2))
        write_camera_jpeg(folder / f"frame_{number + 4117:04d}.jpg", frame, night.place, _preview(night, drift))


def _preview(night: Session, drift: tuple[float, ...]) -> Image.Image:
    """What the camera's screen shows: the brighter stars, 240 x 160."""
    field = SkyFrame(night.ra_deg, night.dec_deg, 594.0, 240, 160)
    x, y, magnitude = field.stars(margin_px=0)
    light = np.zeros((160, 240))
    column, line = np.clip(x + drift[0], 0, 239).astype(int), np.clip(y + drift[1], 0, 159).astype(int)
    np.add.at(light, (line, column), 255 * 10 ** (-0.4 * (magnitude - 4.4)))
    grey = np.clip(22 + light, 0, 255).astype(np.uint8)
    return Image.merge("RGB", [Image.fromarray(grey)] * 3)


def _write_carina(folder: Path) -> None:
    for night in nights.CARINA_LONG:
        write_csv(folder / f"long-{night.evening}.csv", frames_of(night), WITH_CALIBRATION, with_offset(ADELAIDE))
    short = [frame for night in nights.CARINA_SHORT for frame in frames_of(night)]
    about = {"comment": "short tube, both nights; times in UTC"}
    write_ecsv(folder / "short.ecsv", short, LIGHTS, about)


def _write_headers(folder: Path, night: Session, number: int) -> None:
    """First night header only, second tile-compressed, third gzipped; calibration in full size."""
    for index, frame in enumerate(frames_of(night)):
        single = [replace(frame, count=1)] if frame.kind == "light" else _singles(frame)
        for turn, one in enumerate(single):
            head = header(one, night.place, "NGC 6188", index + turn)
            stem = f"{one.kind}_{night.evening}_{index + turn:03d}"
            if one.kind != "light":
                write_gzipped(folder / "calibration" / f"{stem}.fits.gz", head, empty_pixels())
            elif number == 0:
                write_plain(folder / night.evening / f"{stem}.fits", head)
            elif number == 1:
                write_tiled(folder / night.evening / f"{stem}.fits.fz", head)
            else:
                write_gzipped(folder / night.evening / f"{stem}.fits.gz", head, None)


def _singles(run: Frame) -> list[Frame]:
    """A run of calibration frames as the files it consists of."""
    step = (run.exposure_s + run.gap_s) * 1e6
    return [
        replace(run, start=run.start + np.timedelta64(round(step * index), "us").item(), count=1) for index in range(run.count)
    ]


def _write_midsummer(folder: Path) -> None:
    june = [frame for night in nights.MIDSUMMER[:2] for frame in frames_of(night)]
    august = [frame for night in nights.MIDSUMMER[2:] for frame in frames_of(night)]
    write_csv(folder / "june.csv", june, LIGHTS, wall_clock(HELSINKI))
    write_csv(folder / "august.csv", august, WITH_CALIBRATION, wall_clock(HELSINKI))


def _write_galaxy(folder: Path) -> None:
    """Two nights in UTC, two by the wall clock (one across the start of summer time), one as ECSV."""
    first, second, third, fourth, last = nights.GALAXY_NIGHTS
    for night in (first, second):
        write_csv(folder / f"utc-{night.evening}.csv", frames_of(night), LIGHTS, zulu)
    for night in (third, fourth):
        write_csv(folder / f"clock-{night.evening}.csv", frames_of(night), LIGHTS, wall_clock(ADELAIDE))
    about = {"comment": "fifth night and its calibration frames; times in UTC"}
    write_ecsv(folder / f"{last.evening}.ecsv", frames_of(last), WITH_CALIBRATION, about)


def _write_tarantula(folder: Path) -> None:
    """A log a night, and a month's list that repeats the first two nights' rows."""
    frames = [frames_of(night) for night in nights.TARANTULA_NIGHTS]
    for night, logged in zip(nights.TARANTULA_NIGHTS, frames, strict=True):
        write_csv(folder / f"{night.evening}.csv", logged, LIGHTS, zulu)
    write_csv(folder / "november-so-far.csv", frames[0] + frames[1], LIGHTS, zulu)


if __name__ == "__main__":
    content = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).parents[2] / "content"
    write_all(content / "logs")
