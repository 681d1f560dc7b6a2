"""Star profiles, and ellipses from second moments."""

from tests.published_values.record import Numbers, Published, Table

MOFFAT_FWHM_OVER_GAMMA = Table(
    {2.5: 1.130501, 3.0: 1.019649, 4.765: 0.791401},
    1e-3,
    "A. F. J. Moffat 1969, A&A 3, 455: 2 sqrt(2^(1/beta) - 1), worked by hand; 2.261001 for gamma 2, beta 2.5 in astropy 8.0.2",
    "0.1 %: what a fit in single precision allows",
    relative=True,
)
GAUSSIAN_FWHM_OVER_SIGMA = Published(
    2.354820, 5e-3 * 2.354820, "worked by hand: 2 sqrt(2 ln 2)", "0.5 %: the fit ends at beta 30, not at infinity"
)

_BLURRED = (
    "worked by hand: a pixel adds its variance of 1/12 px², 0.462 px² of squared FWHM, to a Gaussian's: 1.368 px by 1.052 px become "
    "1.528 by 1.252"
)
BLURRED_ELONGATION = Published(1.220, 0.03, _BLURRED, "a pixel's profile is no Gaussian: the contour is a little square")
BLURRED_FWHM = Published(1.383, 0.05 * 1.383, _BLURRED, "5 %: a pixel's profile is no Gaussian")

SEXTRACTOR = (
    "SExtractor manual, Basic shape parameters: A², B² = (x2 + y2)/2 ± sqrt(((x2 - y2)/2)² + xy²), tan 2 theta = 2 xy/(x2 - y2) "
    "counter-clockwise from +x, elongation A/B; worked by hand from these"
)
ELLIPSES = {
    (4.0, 2.56, 0.0): Numbers((2.0, 1.6, 0.0, 1.25), 2e-5, SEXTRACTOR, "twice the last digit: elongation divides two of them"),
    (3.0, 2.0, 0.5): Numbers(
        (1.79084, 1.33899, 22.5, 1.33746), 2e-5, SEXTRACTOR, "twice the last digit: elongation divides two of them"
    ),
}
"""A, B, theta in degrees and elongation, by the second moments x2, y2 and xy."""
