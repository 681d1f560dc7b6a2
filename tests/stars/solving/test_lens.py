"""The terms of a lens: what they add up to, how they are found, and whether their covariance is the truth."""

import numpy as np
import pytest

from sitegen.stars.solving.lens import Term, fit_lens, polynomial, terms_of, terms_of_any_lens, uncertainty

PLACES = np.random.default_rng(5).uniform(-0.7, 0.7, (40, 2)) @ [1, 1j]
CORNER = np.array([0.8 + 0.6j])


@pytest.mark.parametrize("terms", [terms_of(1.0), terms_of(60.0), terms_of(60.0, radial_only=True), terms_of_any_lens(60.0)])
def test_powers_of_x_and_y_are_the_same_sum(terms: list[Term]) -> None:
    """What a solution keeps, x**p * y**q, is what was fitted, p**m * conj(p)**n: to rounding errors of a sum of 30 products."""
    coefficients = np.random.default_rng(6).normal(0, 1, len(terms))
    direct = sum(coefficient * term.at(PLACES) for coefficient, term in zip(coefficients, terms, strict=True))
    total = sum(value * PLACES.real**p * PLACES.imag**q for (p, q), value in polynomial(terms, coefficients).items())
    assert np.abs(total - direct).max() < 1e-12


@pytest.mark.parametrize("radius", [np.tan, lambda angle: 2 * np.tan(angle / 2), np.array, lambda angle: 2 * np.sin(angle / 2)])
def test_any_zenithal_lens_is_a_sum_of_terms(radius: object) -> None:
    """Gnomonic, stereographic, equidistant and equal-area pictures of 72 degrees from corner to corner (Calabretta & Greisen
    2002, section 5.1): straight to 1e-4 of the half diagonal everywhere, a tenth of a pixel in 2,000."""
    angle = np.radians(36) * np.linspace(0.02, 1, 60)
    seen = np.exp(2j * np.arange(60)) * radius(angle) / radius(np.radians(36))
    straight = np.exp(2j * np.arange(60)) * np.tan(angle) / np.tan(np.radians(36))
    fit = fit_lens(seen, straight, terms_of(72.0, radial_only=True), 1e-5, 1e-5)
    assert np.abs(fit.residuals[:120]).max() < 1e-4


@pytest.mark.parametrize("stars", [4, 8, 30])
def test_the_corner_is_off_by_what_the_covariance_says(stars: int) -> None:
    """Lenses drawn from the prior, stars with the usual noise: over 300 pictures the squared error in a corner beyond the stars
    is its variance, at most 25 % above (a mean of 300 such ratios scatters by 8 %), at most 40 % below (with four stars the
    covariance allows for a noise that they hardly show)."""
    luck, terms, noise = np.random.default_rng(stars), terms_of(1.0), 0.2 / 750
    ratios = []
    for _ in range(300):
        places = luck.uniform(-0.6, 0.6, (stars, 2)) @ [1, 1j]
        lens = luck.normal(0, [term.likely for term in terms])
        seen = places + sum(value * term.at(places) for value, term in zip(lens, terms, strict=True))
        fit = fit_lens(places, seen + luck.normal(0, noise, (stars, 2)) @ [1, 1j], terms, noise, noise)
        true = CORNER + sum(value * term.at(CORNER) for value, term in zip(lens, terms, strict=True))
        solved = fit.a * CORNER + fit.shift + sum(
            value * term.at(CORNER) for value, term in zip(fit.coefficients, terms, strict=True))
        ratios.append(float(np.abs(solved - true)[0] ** 2 / uncertainty(fit, terms, CORNER)[0] ** 2))
    assert 0.6 < np.mean(ratios) < 1.25
