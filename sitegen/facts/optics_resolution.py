"""What the aperture could resolve above the air."""

from collections.abc import Callable

from sitegen.facts.fact import Fact
from sitegen.facts.views import OpticsView
from sitegen.sky.optics import dawes_arcsec, rayleigh_arcsec


def _of_aperture(limit: Callable[[float], float], view: OpticsView) -> float | None:
    aperture_mm = view.train.telescope.aperture_mm
    return limit(aperture_mm) if aperture_mm else None


RAYLEIGH_ARCSEC: Fact[OpticsView] = Fact(
    "Rayleigh limit",
    "″",
    lambda view: _of_aperture(rayleigh_arcsec, view),
    "1.22 × wavelength ÷ aperture, at 550 nm.",
    "Rayleigh's criterion, 1879",
    3,
)
DAWES_ARCSEC: Fact[OpticsView] = Fact(
    "Dawes limit",
    "″",
    lambda view: _of_aperture(dawes_arcsec, view),
    "116″ ÷ aperture in mm, found by observing double stars.",
    "W. R. Dawes, Memoirs of the RAS 35, 137 (1867)",
    3,
)
