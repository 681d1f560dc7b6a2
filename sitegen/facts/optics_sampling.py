"""How many pixels a star blurred by the air covers."""

from sitegen.facts.fact import COMMON_PRACTICE, Fact
from sitegen.facts.optics_scale import ON_SAMPLING, scale_arcsec_px
from sitegen.facts.views import OpticsView
from sitegen.sky.optics import Sampling, sampling_of


def sampling_px_per_fwhm(view: OpticsView) -> float | None:
    """None where the site's seeing is not known."""
    return view.seeing_arcsec / scale_arcsec_px(view) if view.seeing_arcsec else None


def sampling(view: OpticsView) -> Sampling | None:
    pixels = sampling_px_per_fwhm(view)
    return None if pixels is None else sampling_of(pixels)


SEEING_ARCSEC: Fact[OpticsView] = Fact(
    "Seeing",
    "″",
    lambda view: view.seeing_arcsec,
    "The usual width of a star at this site, at half its height, before the pixels widen it.",
    "the author",
    2,
)
SAMPLING_PX_PER_FWHM: Fact[OpticsView] = Fact(
    "Pixels over a star",
    "px",
    sampling_px_per_fwhm,
    "The usual seeing divided by the image scale.",
    ON_SAMPLING,
    3,
)
SAMPLING: Fact[OpticsView] = Fact(
    "Sampling",
    "",
    sampling,
    "Under below 2 pixels over a star's width, over above 4.",
    COMMON_PRACTICE,
)
