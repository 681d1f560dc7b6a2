"""What the Moon or a planet looked like that night: only of targets that move, and that the bundled theory knows."""

from collections.abc import Callable

from sitegen.facts.fact import Fact
from sitegen.facts.moving_body import followed_by
from sitegen.facts.views import NightView
from sitegen.sky.answer import BodyLooks

SOURCE = "J. L. Simon et al., Astron. Astrophys. 282, 663 (1994); the Moon: J. Meeus, Astronomical Algorithms, ch. 47"


def of_body(value: Callable[[BodyLooks], float | None]) -> Callable[[NightView], float | None]:
    def compute(night: NightView) -> float | None:
        body = night.target_sky.body if night.target_sky else None
        return None if body is None else value(body)

    return compute


MIDDLE = "halfway between sunset and sunrise, seen from the Earth's centre; of what moves alone"
POSITIONS_FROM: Fact[NightView] = Fact(
    "Places from",
    "",
    lambda night: followed_by(night.target) if night.target_sky else None,
    "The bundled theory or the author's table that says where a moving target was; between the rows of a table, interpolated.",
    SOURCE,
)
BODY_RA_DEG: Fact[NightView] = Fact(
    "Right ascension that night", "°", of_body(lambda body: body.ra_deg), f"Where it stood {MIDDLE}, ICRS.", SOURCE, 3
)
BODY_DEC_DEG: Fact[NightView] = Fact(
    "Declination that night", "°", of_body(lambda body: body.dec_deg), f"Where it stood {MIDDLE}, ICRS.", SOURCE, 3
)
BODY_SIZE_ARCSEC: Fact[NightView] = Fact(
    "Apparent diameter", "″", of_body(lambda body: body.size_arcsec), f"Of its equator, {MIDDLE}.", SOURCE, 2
)
BODY_ELONGATION_DEG: Fact[NightView] = Fact(
    "Elongation", "°", of_body(lambda body: body.elongation_deg), f"Its angle from the Sun, {MIDDLE}.", SOURCE, 2
)
BODY_ILLUMINATED: Fact[NightView] = Fact(
    "Lit part of its disc", "fraction", of_body(lambda body: body.illuminated), f"Its phase, {MIDDLE}.", SOURCE, 4
)
