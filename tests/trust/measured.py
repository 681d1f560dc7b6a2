"""The tiny diary with an entry in which everything is measured: a picture to be solved, star shapes, a ring, a dozen subs."""

import io
from pathlib import Path

import numpy as np
from astropy.io import fits
from PIL import Image

from sitegen.catalogue.star_field import stars_near
from sitegen.folders import Folders
from sitegen.stars.solving.tangent_plane import to_plane
from tests.stars.synthetic import Sky, draw
from tests.stars.synthetic_rings import Disc, draw_disc
from tests.trust.tiny import Wishes, lay_out

ENTRY = """---
title: All that can be measured
published: 2026-06-25
target: {name: A field, ra: 161.0, dec: -59.8}
rig: short
site: roof
logs: [logs/second.csv]
pictures:
  - {file: pictures/field.jpg, alt: many stars}
star_survey: [pictures/corners.fits]
star_rings: [pictures/ring.fits]
---
![](figure:stars)
"""
RIG = """name: Short refractor
telescope: {design: refractor, aperture_mm: 50, focal_length_mm: 200}
camera: {pixel_um: 4, width_px: 6000, height_px: 4000, colour: mono}
"""
SKY = Sky(width=700, height=420, stars=420, faintest=1500.0, hot=20)
SUBS = "start,exposure_s,count,gap_s\n2026-06-14T08:00:00Z,300,12,10\n"
TURN = np.radians(33.4)
FIELD_PX, SCALE_DEG = (600, 400), np.degrees(10 * 4e-3 / 200)  # ten pixels of 4 µm behind 200 mm in one


def lay_out_measured(folder: Path, wishes: Wishes) -> Folders:
    """The diary under `folder`/content; the same files whoever asks."""
    folders = lay_out(folder, wishes)
    files = {
        "entries/second.md": ENTRY.encode(), "rigs/short.yaml": RIG.encode(), "logs/second.csv": SUBS.encode(),
        "pictures/field.jpg": field(), "pictures/corners.fits": as_fits(draw(SKY)[0]),
        "pictures/ring.fits": as_fits(draw_disc(Disc(width=160, height=140, x=81.3, y=68.6, diameter=60)).astype("i2")),
    }  # fmt: skip
    for name, content in files.items():
        path = folders.content / name
        if not path.is_file() or path.read_bytes() != content:
            path.write_bytes(content)
    return folders


def as_fits(pixels: np.ndarray) -> bytes:
    target = io.BytesIO()
    fits.PrimaryHDU(pixels, fits.Header({"DATE-OBS": "2026-06-14T09:00:00"})).writeto(target)
    return target.getvalue()


def field() -> bytes:
    """Real stars where they stand, through a lens that bends a little, on a noisy ground."""
    stars = stars_near(161.1, -59.7, 4.5)
    xi, eta = to_plane(stars.ra_deg, stars.dec_deg, 161.1, -59.7)
    right, down = -xi * np.cos(TURN) + eta * np.sin(TURN), -xi * np.sin(TURN) - eta * np.cos(TURN)
    bend = 1 + 4e-8 * (right**2 + down**2) / SCALE_DEG**2
    x, y = FIELD_PX[0] / 2 + right / SCALE_DEG * bend, FIELD_PX[1] / 2 + down / SCALE_DEG * bend
    picture = 20 + np.random.default_rng(3).normal(0, 2, (FIELD_PX[1], FIELD_PX[0]))
    rows, columns = np.indices((15, 15))
    inside = (x > 8) & (x < FIELD_PX[0] - 8) & (y > 8) & (y < FIELD_PX[1] - 8) & (stars.magnitude < 8.5)
    for across, along, magnitude in zip(x[inside], y[inside], stars.magnitude[inside], strict=True):
        left, top = int(across) - 7, int(along) - 7
        light = np.exp(-((left + columns - across) ** 2 + (top + rows - along) ** 2) / 2.6)
        picture[top : top + 15, left : left + 15] += 40 * 10 ** (0.16 * (9.5 - magnitude)) * light
    target = io.BytesIO()
    Image.fromarray(picture.clip(0, 255).astype("u1")).save(target, "JPEG", quality=92)
    return target.getvalue()
