"""Defocused stars with known truth: a disc with a shadow, drawn on a fine grid, spoilt like a real one."""

from dataclasses import dataclass, replace

import numpy as np
from scipy import ndimage


@dataclass
class Disc:
    """What to draw. Lengths in px; `shadow` and `lopsided` as shares;
    `vanes_follow`: 1 where they meet in the shadow's middle, 0 in the disc's;
    `rings` bright rings from the middle to the rim (0 for none), about the disc's middle or (`rings_follow` 1) the shadow's;
    `snr` of one pixel of the lit ring."""

    width: int = 400
    height: int = 300
    x: float = 201.3
    y: float = 148.6
    diameter: float = 120.0
    shadow: float = 0.35
    offset: float = 3.0
    direction_deg: float = 30.0
    blur: float = 1.5
    snr: float = 30.0
    vanes: int = 4
    vane_px: float = 2.0
    vane_deg: float = 20.0
    vanes_follow: float = 1.0
    lopsided: float = 0.2
    lopsided_deg: float = 200.0
    ripple: float = 0.1
    rings: float = 0.0
    contrast: float = 0.3
    rings_phase: float = 0.0
    rings_follow: float = 0.0
    level: float = 500.0
    brightness: float = 3000.0
    seed: int = 1


FINE = 4  # sub-pixels along a side


def draw_disc(disc):
    """A float frame of shape (height, width)."""
    frame = np.full((disc.height, disc.width), 0.0)
    reach = int(disc.diameter / 2 + 5 * disc.blur + 4)
    left, bottom = int(disc.x) - reach, int(disc.y) - reach
    patch = _light(disc, left, bottom, 2 * reach + 1)
    y0, x0 = max(0, bottom), max(0, left)
    y1, x1 = min(disc.height, bottom + patch.shape[0]), min(disc.width, left + patch.shape[1])
    frame[y0:y1, x0:x1] = patch[y0 - bottom : y1 - bottom, x0 - left : x1 - left]
    rng = np.random.default_rng(disc.seed)
    return disc.level + disc.brightness * (frame + rng.normal(0, 1 / disc.snr, frame.shape))


def _light(disc, left, bottom, size):
    along = (np.arange(size * FINE) + 0.5) / FINE - 0.5
    dx, dy = along + left - disc.x, (along + bottom - disc.y)[:, None]
    radius, angle = np.hypot(dx, dy) / (disc.diameter / 2), np.arctan2(dy, dx)
    turn = np.radians(disc.direction_deg)
    shadow_x, shadow_y = disc.offset * np.cos(turn), disc.offset * np.sin(turn)
    from_shadow = np.hypot(dx - shadow_x, dy - shadow_y) / (disc.diameter / 2)
    inside = from_shadow < disc.shadow
    bright = 1 + disc.lopsided * radius * np.cos(angle - np.radians(disc.lopsided_deg)) + disc.ripple * np.cos(9 * radius)
    if disc.rings:
        along_rings = from_shadow if disc.rings_follow else radius
        bright = bright * (1 + disc.contrast * np.cos(2 * np.pi * disc.rings * along_rings + disc.rings_phase))
    light = np.where((radius < 1) & ~inside, bright, 0.0)
    for number in range(disc.vanes):
        turn = np.radians(disc.vane_deg + 360 * number / disc.vanes)
        hub_x, hub_y = dx - disc.vanes_follow * shadow_x, dy - disc.vanes_follow * shadow_y
        forward, aside = hub_x * np.cos(turn) + hub_y * np.sin(turn), hub_y * np.cos(turn) - hub_x * np.sin(turn)
        light[(np.abs(aside) < disc.vane_px / 2) & (forward > 0)] = 0
    light = ndimage.gaussian_filter(light, disc.blur * FINE)
    return light.reshape(size, FINE, size, FINE).mean(axis=(1, 3))


def random_disc(seed):
    """One of the discs of test_rings.py: diameter 40 to 400 px, shadow 20 to 50 %, signal to noise from 10."""
    rng = np.random.default_rng(seed)
    diameter = float(np.exp(rng.uniform(np.log(40), np.log(400))))
    shadow = rng.uniform(0.2, 0.5)
    size = int(diameter * rng.uniform(1.8, 2.6)) + 40
    return Disc(
        width=int(size * 1.4),
        height=size,
        x=size * 0.7 + rng.uniform(-0.1, 0.1) * size,
        y=size / 2 + rng.uniform(-0.1, 0.1) * size,
        diameter=diameter,
        shadow=shadow,
        offset=rng.uniform(0, 0.5) * (1 - shadow) * diameter / 2,
        direction_deg=rng.uniform(0, 360),
        blur=rng.uniform(0.7, 2.5) if diameter > 80 else rng.uniform(0.7, 1.5),
        snr=float(np.exp(rng.uniform(np.log(10), np.log(100)))),
        vanes=int(rng.choice([0, 3, 4])),
        vane_px=rng.uniform(0.01, 0.03) * diameter,
        vane_deg=rng.uniform(0, 360),
        vanes_follow=float(rng.choice([0, 1])),
        lopsided=rng.uniform(0, 0.3),
        lopsided_deg=rng.uniform(0, 360),
        ripple=rng.uniform(0, 0.15),
        seed=seed,
    )


KINDS = ("clean", "vanes", "rings", "all")


def disc_of_kind(kind, seed):
    """A random disc at most 170 px wide: clean; with vanes and lopsided light; with diffraction rings of 30 % contrast, three to
    ten of them, about the disc's middle or the shadow's; or with all of these."""
    rng = np.random.default_rng(seed + 1_000_000)
    disc = _smaller(random_disc(seed), rng)
    plain = replace(disc, vanes=0, lopsided=0.0, ripple=0.0)
    vanes = replace(disc, vanes=int(rng.choice([3, 4])), lopsided=rng.uniform(0.1, 0.3))
    count = min(rng.uniform(3, 10), max(2.0, disc.diameter / (8 * disc.blur)))  # no narrower than the blur lets them be
    rings = {"rings": count, "rings_phase": rng.uniform(0, 2 * np.pi), "rings_follow": float(rng.integers(2)), "ripple": 0.0}
    return {"clean": plain, "vanes": vanes, "rings": replace(plain, **rings), "all": replace(vanes, **rings)}[kind]


def _smaller(disc, rng):
    """Larger discs are binned to 100 px by the measurement, so that they say nothing new and take long to draw."""
    if disc.diameter <= 170:
        return disc
    share = rng.uniform(85, 170) / disc.diameter
    lengths = {name: share * getattr(disc, name) for name in ("diameter", "offset", "x", "y", "vane_px")}
    return replace(disc, width=int(disc.width * share) + 1, height=int(disc.height * share) + 1, **lengths)
