"""A diary as small as a whole one can be, on disk: each kind of file once. What a test varies is a field of `Wishes`."""

import io
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
from astropy.io import fits
from PIL import Image
from PIL.TiffImagePlugin import IFDRational

from sitegen.folders import Folders
from tests.conftest import ROOT

DIARY = """title: Nights above the school roof
author: The keeper
address: https://nights.example/
privacy: {{site_position: {position}, round_to_deg: {step}}}
"""
SITE = """name: School roof
latitude_deg: {latitude!r}
longitude_deg: {longitude!r}
elevation_m: {elevation!r}
time_zone: Pacific/Auckland
sky_mag_arcsec2: 20.4
seeing_arcsec: 2.5
"""
RIG = """name: Dome Newtonian
telescope: {design: Newtonian, aperture_mm: 200, obstruction_mm: 58, focal_length_mm: 1000}
camera: {pixel_um: 3.76, width_px: 6248, height_px: 4176, colour: mono}
filters:
  L: {kind: broadband, centre_nm: 550, width_nm: 300}
  Ha: {kind: narrowband, centre_nm: 656.3, width_nm: 7}
"""
CAMERA = """name: Camera on a lens
telescope: {design: lens, aperture_mm: 25, focal_length_mm: 50}
camera: {pixel_um: 4, width_px: 6000, height_px: 4000, colour: colour}
"""
ENTRY = """---
title: {title}
published: 2026-06-20
target: NGC 7293
rig: dome
site: roof
logs: [logs/first.csv, logs/frame.fits, {{files: logs/camera.jpg, rig: lens, time_zone: Pacific/Auckland}}]
pictures:
  - {{file: pictures/helix.jpg, alt: a ring of faint gas}}
wanted: {{L: 4, Ha: 6}}
nights:
  2026-06-14: {{clouds: none, temperature_c: 4}}
lessons: {{worked: [waiting], next: [darker sky]}}
---
{body}
"""
LOG = """start,exposure_s,filter
2026-06-14T10:00:00,300,L
2026-06-14T10:06:00,300,Ha
"""


@dataclass(frozen=True)
class Wishes:
    """`header` are FITS cards of the log frame beyond the needed ones; `owner` and `latitude` go into every picture's EXIF."""

    position: str = "rounded"
    step: float = 0.1
    latitude: float = -36.85
    longitude: float = 174.76
    elevation: float = 80.0
    title: str = "Two subs on the Helix"
    body: str = "Two subs, and then fog."
    owner: str = "Somebody"
    header: dict[str, str | float] = field(default_factory=dict)
    backwards: bool = False  # files are created in the other order


def lay_out(folder: Path, wishes: Wishes = Wishes()) -> Folders:
    """The diary under `folder`/content."""
    files = {name: content if isinstance(content, bytes) else content.encode() for name, content in contents(wishes).items()}
    for name in sorted(files, reverse=wishes.backwards):
        path = folder / "content" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        if not path.is_file() or path.read_bytes() != files[name]:
            path.write_bytes(files[name])
    return Folders(folder / "content", ROOT / "themes", folder / "output", folder / ".sitegen")


def contents(wishes: Wishes) -> dict[str, str | bytes]:
    return {
        "diary.yaml": DIARY.format(position=wishes.position, step=wishes.step),
        "sites/roof.yaml": SITE.format(latitude=wishes.latitude, longitude=wishes.longitude, elevation=wishes.elevation),
        "rigs/dome.yaml": RIG,
        "rigs/lens.yaml": CAMERA,
        "entries/first.md": ENTRY.format(title=wishes.title, body=wishes.body),
        "logs/first.csv": LOG,
        "logs/frame.fits": frame(wishes.header),
        "logs/camera.jpg": photograph(wishes.owner, wishes.latitude, (12, 8)),
        "pictures/helix.jpg": photograph(wishes.owner, wishes.latitude, (96, 64)),
    }


def frame(private: dict[str, str | float]) -> bytes:
    """A light frame of four pixels."""
    header = fits.Header({
        "DATE-OBS": "2026-06-14T10:12:00", "EXPTIME": 300.0, "IMAGETYP": "LIGHT", "FILTER": "L", "OBJECT": "NGC 7293",
    })  # fmt: skip
    header.update(private)
    target = io.BytesIO()
    fits.PrimaryHDU(np.zeros((2, 2), "i2"), header).writeto(target)
    return target.getvalue()


def photograph(owner: str, latitude: float, size: tuple[int, int]) -> bytes:
    """A JPEG that tells when it was taken, and much that is nobody's business."""
    tags = Image.Exif()
    tags[0x0110], tags[0x013B], tags[0x8298], tags[0x010E] = "Camera", owner, owner, owner
    detail = tags.get_ifd(0x8769)
    detail[0x9003], detail[0x829A] = "2026:06:14 22:30:00", IFDRational(60)
    detail[0xA430], detail[0xA431], detail[0x927C], detail[0x9286] = owner, f"SN {owner}", owner.encode(), owner.encode()
    place = tags.get_ifd(0x8825)
    place[1], place[2] = "S", (IFDRational(int(abs(latitude))), IFDRational(int(abs(latitude) * 6e5) % 10**4, 100), 3.5)
    target = io.BytesIO()
    shade = np.linspace(0, 255, size[0] * size[1] * 3).astype("u1").reshape(size[1], size[0], 3)
    Image.fromarray(shade).save(target, "JPEG", quality=90, exif=tags.tobytes(), comment=owner.encode())
    return target.getvalue() + b"preview of " + owner.encode()


def site_of(output: Path) -> dict[str, bytes]:
    """Every file of the site by its path in it."""
    return {path.relative_to(output).as_posix(): path.read_bytes() for path in sorted(output.rglob("*")) if path.is_file()}
