"""The pictures of what does not glow: dust in front of stars, and the Milky Way."""

import light
import numpy as np
from clouds import fractal, glow, lane, ridges, step, tint, warped
from scenes_nebula import all_stars, field_of, star_layer
from scipy.ndimage import gaussian_filter
from starfield import Frame

Array = np.ndarray
Random = np.random.Generator


def corona(rng: Random) -> Array:
    """A brown lane, blue reflections at its thick end, a globular cluster beyond."""
    frame = field_of(285.75, -37.10, 206.264806 * 3.76 / 480, 2200)
    shape = (frame.height_px, frame.width_px)
    broad = warped(fractal(shape, 1.9, rng, 800), rng, 70, largest_px=600)
    middle = warped(fractal(shape, 1.8, rng, 260), rng, 30, largest_px=240)
    fine = warped(fractal(shape, 1.6, rng, 90), rng, 6, largest_px=80)
    # The dense head lies at R Coronae Australis, the tail runs to the south-east (lower left).
    hx, hy, _ = frame.pixels(np.array([285.43]), np.array([-36.95]))
    head = (float(hx[0]), float(hy[0]))
    spine = [
        (head[0] + 60, head[1] - 40, 70),
        (head[0] - 60, head[1] + 60, 105),
        (head[0] - 330, head[1] + 230, 95),
        (head[0] - 640, head[1] + 330, 120),
        (head[0] - 1150, head[1] + 560, 150),
    ]
    body = lane(shape, spine, rng, 85) * np.exp(0.35 * middle)
    wisps = np.log1p(np.exp(3.0 * (0.75 * broad + 0.45 * middle - 0.55))) / 3.0
    far = np.exp(-((np.hypot(*(np.indices(shape)[::-1] - np.array(head)[:, None, None])) / 900) ** 2))
    depth = 3.4 * body * np.exp(0.28 * middle + 0.10 * fine) + (0.25 + 0.55 * far) * wisps * np.exp(0.15 * fine)
    shine = (1 - np.exp(-1.1 * depth)) * (0.26 + np.exp(-0.85 * depth))
    behind = 0.050 * np.exp(-0.9 * depth) * np.exp(0.10 * broad)
    haze = tint(0.135 * shine * (1 + 0.16 * np.tanh(middle) + 0.07 * fine), (1.0, 0.79, 0.60)) + tint(behind, (1.0, 0.92, 0.84))
    veil = np.clip(1 - np.exp(-0.85 * depth), 0, 0.97)
    blue = np.zeros(shape)
    for ra, dec, radius, power in (
        (285.43, -36.95, 26, 0.8),
        (285.29, -36.89, 48, 1.5),
        (285.275, -36.865, 40, 1.2),
        (285.66, -37.05, 30, 0.5),
    ):
        px, py, _ = frame.pixels(np.array([ra]), np.array([dec]))
        blue += power * glow(shape, (float(px[0]), float(py[0])), radius, 1.45)
    blue *= np.exp(0.30 * middle + 0.10 * fine) * (0.45 + 0.55 * np.exp(-0.5 * np.maximum(depth - 1.6, 0)))
    cloud = haze + tint(0.34 * blue, (0.42, 0.66, 1.0))
    cloud = np.clip((light.stretch(cloud, 8, 0.9) - 0.075) / 0.925, 0, 1)
    stars = all_stars(frame, rng, 60000, veil)
    points = star_layer(frame, _with_globular(frame, stars, rng), rng, light.profile(2.2, 0.10, 11), 12.3, 26, 1.3, 0.12)
    return light.finish(light.screen(light.saturate(cloud, 1.2), points), rng, (0.040, 0.040, 0.045), 0.006)


def _with_globular(frame: Frame, stars: tuple[Array, Array, Array], rng: Random) -> tuple[Array, Array, Array]:
    """NGC 6723 as a seeded ball of faint stars."""
    gx, gy, _ = frame.pixels(np.array([284.888]), np.array([-36.632]))
    number = 1500
    radius = 9.0 * np.sqrt(rng.random(number) ** -0.85 - 1).clip(0, 9)
    angle = rng.random(number) * 2 * np.pi
    magnitude = 15.6 - rng.exponential(0.55, number)
    ball = (gx + radius * np.cos(angle), gy + radius * np.sin(angle), magnitude)
    return tuple(np.r_[a, b] for a, b in zip(stars, ball, strict=True))


def galactic(frame: Frame) -> tuple[Array, Array]:
    """Galactic longitude and latitude of each pixel, degrees (J2000 pole and node; a picture needs no better)."""
    line, column = np.indices((frame.height_px, frame.width_px), dtype=float)
    per_pixel = np.radians(frame.scale_arcsec_px / 3600)
    east, north = -(column - (frame.width_px - 1) / 2) * per_pixel, -(line - (frame.height_px - 1) / 2) * per_pixel
    turn = np.radians(frame.rotation_deg)
    xi, eta = east * np.cos(turn) + north * np.sin(turn), north * np.cos(turn) - east * np.sin(turn)
    ra0, dec0 = np.radians(frame.ra_deg), np.radians(frame.dec_deg)
    depth = np.cos(dec0) - eta * np.sin(dec0)
    ra, dec = ra0 + np.arctan2(xi, depth), np.arctan2(np.sin(dec0) + eta * np.cos(dec0), np.hypot(xi, depth))
    pole_ra, pole_dec, node = np.radians(192.85948), np.radians(27.12825), np.radians(122.93192)
    latitude = np.arcsin(np.sin(dec) * np.sin(pole_dec) + np.cos(dec) * np.cos(pole_dec) * np.cos(ra - pole_ra))
    y = np.cos(dec) * np.sin(ra - pole_ra)
    x = np.sin(dec) * np.cos(pole_dec) - np.cos(dec) * np.sin(pole_dec) * np.cos(ra - pole_ra)
    longitude = (np.degrees(node - np.arctan2(y, x)) + 180) % 360 - 180
    return longitude, np.degrees(latitude)


# Glowing gas in the field by galactic position, apparent radius in degrees and strength.
NURSERIES = (
    (6.0, -1.2, 0.42, 1.0),
    (7.0, -0.25, 0.18, 0.6),
    (15.1, -0.7, 0.25, 0.7),
    (17.0, 0.8, 0.28, 0.6),
    (-8.8, 0.65, 0.28, 0.55),
    (-6.8, 0.9, 0.30, 0.7),
    (-17.2, 1.0, 0.8, 0.16),
    (8.5, -0.3, 0.5, 0.12),
    (18.2, 1.9, 0.5, 0.14),
)


def milky_way(rng: Random, width_px: int = 2400) -> Array:
    """Star clouds, branching dust and a few pink spots round the Galaxy's centre."""
    frame = field_of_lens(width_px)
    shape = (frame.height_px, frame.width_px)
    grade = width_px / 2400
    longitude, latitude = galactic(frame)
    broad = warped(fractal(shape, 1.9, rng, 700 * grade), rng, 50 * grade, largest_px=500 * grade)
    middle = warped(fractal(shape, 1.7, rng, 220 * grade), rng, 26 * grade, largest_px=200 * grade)
    fine = warped(fractal(shape, 1.45, rng, 60 * grade), rng, 5 * grade, largest_px=60 * grade)
    dust = _lanes(longitude, latitude, broad, middle, fine)
    disc = np.exp(-np.abs(latitude + 0.3) / 4.6) * 0.55
    bulge = np.exp(-((((longitude - 1) / 9.5) ** 2 + ((np.abs(latitude + 1.2)) / 5.6) ** 2) ** 0.75)) * 0.85
    clouds = (disc + bulge) * np.exp(0.24 * broad + 0.16 * middle + 0.05 * fine)
    base = tint(clouds, (1.0, 0.86, 0.68)) * np.exp(-dust[..., None] * np.array([0.78, 1.0, 1.22]))
    base += tint(0.05 * (1 - np.exp(-dust)), (1.0, 0.72, 0.52))
    base += tint(0.05 * np.exp(-np.abs(latitude) / 9), (0.8, 0.9, 1.1))
    for place_l, place_b, radius, power in NURSERIES:
        away = np.hypot(longitude - place_l, latitude - place_b) / radius
        spot = power * np.exp(-(away**1.6)) * np.exp(0.30 * fine + 0.2 * middle)
        base += tint(spot, (1.0, 0.20, 0.34)) * 0.55 + tint(spot**2, (0.8, 0.6, 0.8)) * 0.25
    cloud = light.saturate(light.stretch(base, 7, 1.75), 1.15)
    veil = np.clip(1 - clouds * np.exp(-1.1 * dust) / 0.95, 0.03, 0.985)
    stars = all_stars(frame, rng, int(420_000 * grade**2), veil, 14.5)
    points = star_layer(frame, stars, rng, light.profile(1.9, 0.10, 9), 8.6, 18, 1.25, 0.12)
    return light.finish(light.screen(cloud, points), rng, (0.030, 0.031, 0.036), 0.006)


LENS_TURN_DEG = 92.0
MILKY_WAY_SEED = 501


def field_of_lens(width_px: int) -> Frame:
    """The lens's whole frame."""
    return Frame(266.4, -28.9, 206.264806 * 5.95 / 50 * 6000 / width_px, width_px, width_px * 2 // 3, LENS_TURN_DEG)


def _lanes(longitude: Array, latitude: Array, broad: Array, middle: Array, fine: Array) -> Array:
    """Optical depth: the rift along the plane, and branches that leave it to the north."""
    bend = 0.45 + 0.03 * longitude + 0.7 * np.tanh(broad) + 0.32 * middle
    rift = np.exp(-((np.abs(latitude - bend) / (1.15 + 0.25 * np.tanh(middle))) ** 1.5)) * 1.75
    branches = step(0.75 * broad + 0.55 * middle + 0.12 * fine, 0.15, 2.1) * np.exp(-(((latitude - 3.2) / 4.2) ** 2)) * 2.1
    web = ridges(middle, 1.9) * np.exp(-(((latitude - 1.0) / 3.6) ** 2)) * 0.55
    specks = step(fine + 0.4 * middle, 1.0, 2.6) * np.exp(-np.abs(latitude) / 5) * 0.7
    return (rift + branches + web + specks) * np.exp(0.12 * fine)


def single_frame(rng: Random) -> Array:
    """The same field after two minutes: flatter, grainier, with the sky's own faint light."""
    finished = milky_way(np.random.default_rng(MILKY_WAY_SEED))
    whole = finished.reshape(800, 2, 1200, 2, 3).mean(axis=(1, 3))
    flat = 0.13 + 0.52 * whole * np.array([0.96, 1.0, 1.0])
    noise = rng.normal(0, 0.030, whole.shape) + rng.normal(0, 0.014, whole.shape[:2])[..., None]
    return np.clip(flat + gaussian_filter(noise, (0.7, 0.7, 0)), 0, 1)
