"""The pictures of glowing gas."""

import light
import numpy as np
from clouds import fractal, glow, lane, rims, step, threads, tint, warped
from scipy.ndimage import gaussian_filter, map_coordinates
from starfield import Frame

Array = np.ndarray
Random = np.random.Generator

SHORT_TUBE = 206.264806 * 3.76 / 384
LONG_TUBE = 206.264806 * 3.76 / 2000
HYDROGEN, OXYGEN = (1.0, 0.30, 0.20), (0.10, 0.78, 0.86)


def field_of(ra_deg: float, dec_deg: float, scale_arcsec_px: float, width_px: int) -> Frame:
    """A whole 6248 x 4176 frame of the rig, shown ``width_px`` wide."""
    return Frame(ra_deg, dec_deg, scale_arcsec_px * 6248 / width_px, width_px, round(width_px * 4176 / 6248))


def all_stars(
    frame: Frame, rng: Random, faint: int, veil: Array | None = None, faintest: float = 17.0
) -> tuple[Array, Array, Array]:
    """Catalogue stars, and seeded ones that thin out where ``veil`` (0..1) hides them."""
    x, y, magnitude = frame.stars()
    fx, fy, fm = light.faint_stars(frame, rng, faint, 10.0, faintest)
    if veil is not None:
        seen = rng.random(fx.size) > veil[fy.astype(int), fx.astype(int)]
        fx, fy, fm = fx[seen], fy[seen], fm[seen]
    return np.r_[x, fx], np.r_[y, fy], np.r_[magnitude, fm]


def star_layer(
    frame: Frame,
    stars: tuple[Array, Array, Array],
    rng: Random,
    kernel: Array,
    zero: float,
    strength: float = 40,
    colour: float = 1.25,
    warmth: float = 0.0,
) -> Array:
    """Stars stretched on their own, 0..1."""
    linear = light.starlight(frame, stars, light.star_colours(stars[2].size, rng, warmth), kernel, zero)
    return light.saturate(light.stretch(linear, strength), colour)


def carina_wide(rng: Random) -> Array:
    """The whole nebula with its wedge of dust."""
    frame = field_of(161.1, -59.75, SHORT_TUBE, 2200)
    shape, heart = (frame.height_px, frame.width_px), (1110.0, 690.0)
    broad = warped(fractal(shape, 1.9, rng, 800), rng, 55, largest_px=600)
    middle = warped(fractal(shape, 1.75, rng, 240), rng, 20, largest_px=200)
    fine = warped(fractal(shape, 1.5, rng, 70), rng, 5, largest_px=60)
    texture = 0.74 * broad + 0.36 * middle + 0.10 * fine
    wedge = lane(shape, [(560, 560, 30), (860, 800, 44), (1150, 1010, 62), (1300, 1240, 110)], rng, 42)
    wedge = np.maximum(wedge, lane(shape, [(1150, 1010, 60), (1330, 760, 40), (1480, 470, 24)], rng, 46))
    wedge = np.maximum(wedge, 0.9 * lane(shape, [(1010, 560, 14), (1090, 640, 26), (1130, 730, 16)], rng, 26))
    clouds = step(warped(fractal(shape, 1.7, rng, 330), rng, 40, largest_px=200) + 0.4 * middle, 0.5, 2.4)
    dust = 2.6 * wedge * (0.75 + 0.25 * np.tanh(middle)) + 1.2 * clouds
    gas = 1.00 * glow(shape, heart, 330, 1.35) * np.exp(texture) + 0.13 * glow(shape, heart, 900, 1.5) * np.exp(1.25 * texture)
    edges = rims(dust, heart, 2.6) * glow(shape, heart, 420, 1.2)
    hydrogen = gas * np.exp(-dust) + 4.2 * edges
    oxygen = 1.25 * glow(shape, heart, 270, 1.2) * np.exp(0.55 * broad + 0.22 * middle) * np.exp(-1.25 * dust)
    oxygen += 0.10 * glow(shape, heart, 650, 1.2) * np.exp(0.7 * broad)
    cloud = tint(hydrogen, (1.0, 0.40, 0.20)) + tint(oxygen, (0.16, 0.74, 0.80))
    cloud = light.saturate(light.stretch(cloud, 15, 5.2), 1.30)
    stars = all_stars(frame, rng, 46000, 0.85 * step(dust, 0.6, 2.2))
    points = star_layer(frame, stars, rng, light.profile(2.1, 0.10, 11), 12.3, 26, 1.15)
    return light.finish(light.screen(cloud, points), rng, (0.040, 0.034, 0.038), 0.006)


def ara_rim(rng: Random) -> Array:
    """A folded bright rim between a lit and a dark cloud."""
    frame = field_of(250.05, -48.66, SHORT_TUBE, 2200)
    shape, source = (frame.height_px, frame.width_px), (1020.0, 640.0)
    broad = warped(fractal(shape, 1.9, rng, 900), rng, 60, largest_px=700)
    middle = warped(fractal(shape, 1.8, rng, 260), rng, 22, largest_px=200)
    fine = warped(fractal(shape, 1.55, rng, 80), rng, 5, largest_px=70)
    spine = [(180, 960, 60), (520, 800, 75), (760, 900, 80), (1010, 830, 75), (1260, 930, 85), (1500, 760, 70), (1900, 560, 50)]
    wall = lane(shape, spine, rng, 58) * (1 + 0.16 * middle)
    clouds = step(0.9 * broad + 0.5 * middle, 0.4, 2.6)
    dust = 2.6 * np.clip(wall, 0, 1.3) + 1.15 * clouds
    edges = rims(dust, source, 3.2) * glow(shape, source, 480, 1.5)
    wide_edges = rims(dust, source, 9.0) * glow(shape, source, 560, 1.2)
    texture = 0.62 * broad + 0.36 * middle + 0.10 * fine
    gas = 0.50 * glow(shape, source, 430, 1.5) * np.exp(texture) + 0.052 * np.exp(1.15 * texture)
    hydrogen = gas * np.exp(-dust) + 5.5 * edges + 6.0 * wide_edges
    oxygen = 0.62 * glow(shape, (1010, 600), 330, 1.4) * np.exp(0.5 * broad + 0.2 * middle) * np.exp(-1.2 * dust)
    egg = glow(shape, (690, 1130), 64, 4.0) * np.exp(0.18 * fine + 0.45 * warped(middle, rng, 12, largest_px=60))
    oxygen += 0.42 * egg
    cloud = tint(hydrogen, (1.0, 0.42, 0.24)) + tint(oxygen, (0.10, 0.66, 0.88)) + tint(0.08 * egg, (1.0, 0.4, 0.3))
    cloud = light.saturate(light.stretch(cloud, 15, 2.7), 1.2)
    stars = all_stars(frame, rng, 40000, 0.9 * step(dust, 0.5, 2.2))
    points = star_layer(frame, stars, rng, light.profile(2.2, 0.09, 10), 12.2, 26, 1.15, 0.08)
    return light.finish(light.screen(cloud, points), rng, (0.040, 0.034, 0.038), 0.006)


def carina_core(rng: Random) -> Array:
    """The middle in three lines: golden ridges and dark knots before a blue-green glow."""
    frame = field_of(161.265, -59.70, LONG_TUBE, 2000)
    shape, heart = (frame.height_px, frame.width_px), (1180.0, 520.0)
    broad = warped(fractal(shape, 2.0, rng, 900), rng, 70, largest_px=700)
    middle = warped(fractal(shape, 1.8, rng, 320), rng, 34, largest_px=260)
    fine = warped(fractal(shape, 1.6, rng, 90), rng, 7, largest_px=80)
    mesh = threads(shape, rng, 300, 4, 2.2)
    walls = lane(shape, [(-60, 520, 90), (280, 760, 80), (560, 860, 95), (860, 1010, 90), (1120, 1290, 120)], rng, 70)
    walls = np.maximum(walls, lane(shape, [(1120, 1290, 100), (1430, 1010, 70), (1700, 880, 80), (2060, 560, 60)], rng, 70))
    walls = np.maximum(walls, 0.9 * lane(shape, [(880, 330, 24), (960, 480, 52), (930, 600, 60), (1010, 690, 26)], rng, 40))
    knots = step(0.6 * middle + 0.25 * fine + 0.6 * broad, 1.05, 2.6)
    sheets = step(0.9 * broad + 0.55 * middle, 0.2, 2.4)
    dust = 2.7 * walls * np.exp(0.14 * middle) + 1.5 * gaussian_filter(knots, 2.0) + 0.9 * sheets
    edges = rims(dust, heart, 3.0) * glow(shape, heart, 620, 1.1)
    soft = rims(dust, heart, 11.0) * glow(shape, heart, 640, 1.1)
    gas = glow(shape, heart, 620, 1.25) * np.exp(0.55 * broad + 0.34 * middle + 0.10 * fine) * (0.55 + 0.9 * mesh)
    sulphur = 0.40 * gas * np.exp(-0.9 * dust) + 6.0 * edges + 8.0 * soft
    hydrogen = 0.62 * gas * np.exp(-dust) + 3.4 * edges + 5.5 * soft
    oxygen = (
        0.95 * glow(shape, heart, 520, 1.3) * np.exp(0.42 * broad + 0.22 * middle) * (0.7 + 0.5 * mesh) * np.exp(-1.25 * dust)
    )
    cloud = tint(sulphur, (1.0, 0.50, 0.14)) + tint(hydrogen, (0.62, 0.60, 0.22)) + tint(oxygen, (0.08, 0.52, 0.78))
    cloud = light.saturate(light.stretch(cloud, 12, 2.9), 1.2)
    stars = all_stars(frame, rng, 9000, 0.9 * step(dust, 0.6, 2.2))
    points = star_layer(frame, stars, rng, light.profile(2.9, 0.10, 13), 12.6, 24, 0.9)
    return light.finish(light.screen(cloud, points), rng, (0.036, 0.036, 0.040), 0.006)


def helix(rng: Random) -> Array:
    """An eye: blue-green middle, red ring of radial threads, an outer arc."""
    frame = field_of(337.411, -20.837, LONG_TUBE, 840)
    shape, centre = (frame.height_px, frame.width_px), (420.0, 281.0)
    line, column = np.indices(shape, dtype=float)
    swirl = fractal(shape, 2.0, rng, 160), fractal(shape, 2.0, rng, 160)
    x, y = (column - centre[0] + 4 * swirl[0]) / 140, (line - centre[1] + 4 * swirl[1]) / 140
    turn = np.radians(28)
    u, v = x * np.cos(turn) + y * np.sin(turn), (y * np.cos(turn) - x * np.sin(turn)) / 0.88
    radius, angle = np.hypot(u, v), np.arctan2(v, u)
    spokes = _spokes(radius, angle, rng)
    knotty = fractal(shape, 1.5, rng, 60)
    lump = np.exp(0.22 * fractal(shape, 1.9, rng, 120))
    ring = np.exp(-(((radius - 1.0) / 0.17) ** 2)) + 0.75 * np.exp(
        -(((np.hypot(u * 0.86 + 0.10, v * 1.05 - 0.06) - 1.06) / 0.13) ** 2)
    )
    ring *= (1 + 0.30 * np.cos(2 * angle + 0.6)) * lump
    inner_edge = np.exp(-(((radius - 0.82) / 0.12) ** 2)) * spokes
    arc = np.exp(-(((radius - 1.62) / 0.10) ** 2)) * step(np.cos(angle + 2.3), 0.0, 0.9) + 0.35 * np.exp(
        -(((radius - 1.5) / 0.22) ** 2)
    )
    hydrogen = ring * (0.80 + 0.20 * spokes * step(1.25 - radius, 0, 0.4) + 0.07 * knotty) + 0.24 * inner_edge + 0.20 * arc * lump
    hydrogen += 0.05 * np.exp(-((radius / 1.6) ** 4))
    hollow = 0.50 - 0.20 * np.exp(-((radius / 0.42) ** 2))
    oxygen = np.exp(-((radius / 0.92) ** 6)) * hollow * np.exp(0.10 * swirl[1] + 0.03 * knotty) + 0.09 * ring
    cloud = tint(hydrogen, (1.0, 0.27, 0.12)) + tint(0.35 * ring * spokes * step(1.15 - radius, 0, 0.35), (0.9, 0.55, 0.25))
    cloud += tint(1.7 * oxygen, (0.07, 0.60, 0.74))
    cloud = light.saturate(light.stretch(0.40 * cloud, 4, 1.0), 1.25)
    x0, y0, magnitude = all_stars(frame, rng, 750, None, 18.0)
    stars = np.r_[x0, centre[0]], np.r_[y0, centre[1]], np.r_[magnitude, 13.2]
    points = star_layer(frame, stars, rng, light.profile(2.2, 0.08, 8), 13.4, 30, 1.1)
    return light.finish(light.screen(cloud, points), rng, (0.036, 0.034, 0.038), 0.006)


def _spokes(radius: Array, angle: Array, rng: Random) -> Array:
    """Fine threads that point at the middle, 0..1."""
    around = rng.normal(0, 1, 720)
    smooth = gaussian_filter(np.stack([around] * 3), (0, 0.9), mode="wrap")[0]
    place = (angle + np.pi) / (2 * np.pi) * 720
    low = np.floor(place).astype(int) % 720
    value = smooth[low] * (1 - place % 1) + smooth[(low + 1) % 720] * (place % 1)
    return step(value / smooth.std(), -0.6, 1.8)


def veil(rng: Random) -> Array:
    """An arc of threads, red behind and blue-green in front, seen edge on."""
    frame = field_of(314.1, 31.45, SHORT_TUBE, 2200)
    shape = (frame.height_px, frame.width_px)
    cx, cy, _ = frame.pixels(np.array([312.75]), np.array([30.75]))
    line, column = np.indices(shape, dtype=float)
    swirl = fractal(shape, 2.0, rng, 420), fractal(shape, 2.0, rng, 420)
    small = fractal(shape, 1.9, rng, 90), fractal(shape, 1.9, rng, 90)
    x = column - cx[0] + 20 * swirl[0] + 2.0 * small[0]
    y = line - cy[0] + 20 * swirl[1] + 2.0 * small[1]
    radius, angle = np.hypot(x, y), np.arctan2(-y, -x)
    hydrogen, oxygen = _sheets(radius, angle, 880.0, rng)
    band = np.exp(-(((radius - 872) / 62) ** 2)) + 0.35 * np.exp(-(((radius - 800) / 95) ** 2))
    along = np.exp(-(((angle - 0.28) / 0.60) ** 4)) * (0.35 + 0.65 * step(_curve(angle, rng, 5), -0.9, 0.9))
    for _ in range(3):
        lace = _lace(radius, angle, rng)
        share = step(fractal(shape, 1.9, rng, 300), -0.9, 0.9)
        hydrogen += 0.30 * lace * band * along * share
        oxygen += 0.34 * lace * band * along * (1 - share)
    lumps = np.exp(0.55 * warped(fractal(shape, 1.8, rng, 220), rng, 24, largest_px=200))
    ambient = 0.007 * np.exp(0.8 * warped(fractal(shape, 1.9, rng, 900), rng, 50, largest_px=600))
    hydrogen += 0.035 * band * along * lumps + ambient
    oxygen += 0.045 * band * along * lumps
    cloud = tint(hydrogen, (1.0, 0.22, 0.16)) + tint(oxygen, (0.08, 0.70, 0.86))
    cloud = light.saturate(light.stretch(cloud, 11, 1.15), 1.12)
    stars = all_stars(frame, rng, 42000)
    points = star_layer(frame, stars, rng, light.profile(2.0, 0.09, 10), 12.0, 22, 1.15)
    return light.finish(light.screen(cloud, points), rng, (0.036, 0.034, 0.040), 0.006)


def _curve(angle: Array, rng: Random, waves: float) -> Array:
    """A smooth random function of angle, deviation 1."""
    knots = rng.normal(0, 1, 4096)
    smooth = gaussian_filter(np.stack([knots] * 3), (0, 4096 / (2 * np.pi) / waves), mode="wrap")[0]
    place = (angle + np.pi) / (2 * np.pi) * 4095
    low = np.clip(np.floor(place).astype(int), 0, 4094)
    return (smooth[low] * (1 - place + low) + smooth[low + 1] * (place - low)) / smooth.std()


def _sheets(radius: Array, angle: Array, middle_px: float, rng: Random) -> tuple[Array, Array]:
    """Many thin folds near one radius: hydrogen and oxygen."""
    hydrogen, oxygen = np.zeros(radius.shape), np.zeros(radius.shape)
    window = np.exp(-(((angle - 0.28) / 0.62) ** 4))
    for _ in range(24):
        place = (
            middle_px
            + rng.normal(0, 44)
            + rng.uniform(10, 34) * _curve(angle, rng, rng.uniform(3, 8))
            + 3 * _curve(angle, rng, 15)
        )
        strength = np.maximum(_curve(angle, rng, rng.uniform(4, 12)) - 0.25, 0) ** 1.4 * window * rng.uniform(0.08, 0.34)
        away, width = radius - place, rng.uniform(1.2, 2.0)
        fold = np.where(away > 0, np.exp(-((away / width) ** 2)), 0.86 * np.exp(away / (1.8 * width)) + 0.14 * np.exp(away / 18))
        share = rng.beta(0.7, 0.7)
        hydrogen += strength * share * fold
        oxygen += strength * (1 - share) * 1.15 * fold
    return hydrogen, oxygen


def _lace(radius: Array, angle: Array, rng: Random) -> Array:
    """Threads that run along the arc, split and meet again, 0..1."""
    total = np.zeros(radius.shape)
    for octave, share in ((1.0, 1.0), (2.0, 0.75), (4.0, 0.5)):
        texture = warped(fractal((512, 4096), 1.9, rng, 150 / octave), rng, 18 / octave, largest_px=150 / octave)
        line, column = radius * 1.3, (angle + np.pi) / (2 * np.pi) * 4096 * 0.42 + rng.integers(4096)
        field = map_coordinates(texture, [line, column + 0.22 * line], order=1, mode="grid-wrap")
        total += share * np.exp(-((np.abs(field) * 7.0) ** 1.1))
    return total / 2.25


def june_sub(rng: Random) -> Array:
    """One minute at midsummer: sky, and the stars that outshine it."""
    frame = field_of(314.1, 31.45, SHORT_TUBE, 1400)
    shape = (frame.height_px, frame.width_px)
    down = np.linspace(0, 1, shape[0])[:, None] * np.ones(shape)
    sky = tint(0.40 + 0.13 * down**1.4, (0.80, 0.96, 1.08)) * glow(shape, (700, 460), 1500, 1.0)[..., None]
    points = star_layer(frame, all_stars(frame, rng, 2500, None, 13.0), rng, light.profile(2.2, 0.05, 8), 10.2, 9, 0.9)
    noise = rng.normal(0, 0.020, (*shape, 3)) + rng.normal(0, 0.008, shape)[..., None]
    return np.clip(light.screen(sky, 0.8 * points) + gaussian_filter(noise, (0.6, 0.6, 0)), 0, 1)


def tarantula(rng: Random) -> Array:
    """Hydrogen only, grey and still grainy: a knot of loops and legs; one channel, 0..1."""
    frame = field_of(84.676, -69.101, LONG_TUBE / 0.8, 1040)
    shape, heart = (frame.height_px, frame.width_px), (520.0, 350.0)
    broad = warped(fractal(shape, 1.9, rng, 400), rng, 34, largest_px=300)
    middle = warped(fractal(shape, 1.7, rng, 140), rng, 16, largest_px=120)
    loops = np.zeros(shape)
    line, column = np.indices(shape, dtype=float)
    bend = 14 * fractal(shape, 1.9, rng, 140), 14 * fractal(shape, 1.9, rng, 140)
    for _ in range(26):
        reach, way = rng.gamma(2.0, 52), rng.random() * 2 * np.pi
        size, width = rng.uniform(22, 95), rng.uniform(2.2, 6.0)
        x, y = column - heart[0] - reach * np.cos(way) + bend[0], line - heart[1] - reach * np.sin(way) + bend[1]
        ring = np.exp(-(((np.hypot(x, y * rng.uniform(0.8, 1.3)) - size) / width) ** 2))
        side = 0.5 + 0.5 * np.cos(np.arctan2(y, x) - rng.random() * 2 * np.pi)
        loops += rng.uniform(0.25, 1.0) * ring * side**1.5
    mesh = threads(shape, rng, 170, 4, 2.0)
    gas = glow(shape, heart, 95, 1.25) * (0.6 + 1.1 * mesh) * np.exp(0.5 * broad + 0.3 * middle)
    gas += 0.42 * loops * glow(shape, heart, 150, 0.9) * np.exp(0.3 * middle) + 0.035 * np.exp(0.9 * broad + 0.3 * middle)
    cloud = light.stretch(np.repeat(gas[..., None], 3, axis=-1), 22, 1.7)
    x0, y0, magnitude = all_stars(frame, rng, 5200, None, 17.0)
    way, reach = rng.random(160) * 2 * np.pi, rng.gamma(1.2, 7, 160)
    cluster = heart[0] + reach * np.cos(way), heart[1] + reach * np.sin(way), 14.6 - rng.exponential(0.7, 160)
    stars = tuple(np.r_[a, b] for a, b in zip((x0, y0, magnitude), cluster, strict=True))
    points = star_layer(frame, stars, rng, light.profile(2.4, 0.07, 9), 12.8, 26, 0.0)
    noise = gaussian_filter(rng.normal(0, 0.034, shape), 0.55)
    return np.clip(0.06 + 0.94 * light.screen(cloud, points)[..., 0] + noise, 0, 1)
