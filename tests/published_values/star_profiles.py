"""Published numbers of star profiles and of ellipses from second moments, as collected in the project's references."""

# Moffat (1969), A&A 3, 455: FWHM = 2·gamma·sqrt(2^(1/beta) - 1). The factor FWHM/gamma for a few exponents; 2.261001 is what
# astropy 8.0.2 gives for Moffat2D(gamma=2, alpha=2.5).fwhm. Six digits are given, so a millionth is the tolerance.
MOFFAT_FWHM_OVER_GAMMA = {2.5: 1.130501, 3.0: 1.019649, 4.765: 0.791401}

# SExtractor manual, "Basic shape parameters": A², B² = (x2 + y2)/2 ± sqrt(((x2 - y2)/2)² + xy²), tan 2·theta = 2·xy/(x2 - y2),
# counter-clockwise from +x, ELONGATION = A/B. Worked by hand from those equations to five digits.
# (x2, y2, xy) -> (A, B, theta_deg, elongation)
ELLIPSES = {
    (4.0, 2.56, 0.0): (2.0, 1.6, 0.0, 1.25),
    (3.0, 2.0, 0.5): (1.79084, 1.33899, 22.5, 1.33746),
}

# Gaussian: FWHM = 2·sqrt(2·ln 2)·sigma
GAUSSIAN_FWHM_OVER_SIGMA = 2.354820
