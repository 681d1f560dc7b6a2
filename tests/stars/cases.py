"""Random fields and the pattern that each was drawn with."""

import numpy as np

from tests.stars.synthetic import Sky

KINDS = ("even", "tilt", "outward", "same-way")


def random_sky(seed, width, height, stars=None):
    """(kind, Sky): FWHM 2 to 6 px, elongation to 1.5, noise, hot pixels, vignetting, 300 to 5,000 stars, mono and colour.

    Each field has a little of every effect, below what anybody notices, and one effect that is plain (or none).
    """
    rng = np.random.default_rng(seed)
    kind = KINDS[seed % 4]
    sky = Sky(
        width=width,
        height=height,
        stars=stars or int(np.exp(rng.uniform(np.log(300), np.log(5000)))),
        fwhm=rng.uniform(2, 6),
        beta=rng.uniform(2.5, 5),
        tilt=rng.uniform(0, 0.02),
        tilt_deg=rng.uniform(0, 360),
        curvature=rng.uniform(0, 0.02),
        elongation=rng.uniform(1, 1.03),
        angle_deg=rng.uniform(0, 180),
        radial=rng.uniform(-0.01, 0.01),
        noise=rng.uniform(8, 20),
        vignetting=rng.uniform(0, 0.35),
        hot=int(width * height * 2e-4),
        bayer=[None, None, "RGGB", "GBRG"][rng.integers(4)],
        seed=seed,
        averaged=True,
    )
    _EFFECT[kind](sky, rng)
    return kind, sky


def _even(sky, rng):
    pass


def _tilt(sky, rng):
    sky.tilt = rng.uniform(0.08, 0.2)


def _outward(sky, rng):
    sky.curvature = rng.uniform(0.14, 0.4)
    sky.radial = rng.choice([-1, 0, 1]) * rng.uniform(0.04, 0.2)


def _same_way(sky, rng):
    sky.elongation = rng.uniform(1.12, 1.5)


_EFFECT = {"even": _even, "tilt": _tilt, "outward": _outward, "same-way": _same_way}
