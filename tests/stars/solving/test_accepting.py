"""A solution in the digits that it means: nothing in the picture moves, and the last bit of a fit is gone.

Limits: ours, no source."""

import numpy as np
import pytest
from known_headers import frame_points, read, turned, whole_sip_frame
from msgspec.structs import replace

from sitegen.stars.digits import direction, rounded, significant
from sitegen.stars.solving.accepting import accepted
from sitegen.stars.solving.distortion import Distortion, Terms
from sitegen.stars.solving.solution import Solution

SOLUTIONS = {"bent": read(whole_sip_frame()), "straight": read(turned(30, -1)), "mirrored": read(turned(200, 1))}


def by_a_last_bit(solution: Solution, share: float) -> Solution:
    """Each number of a fit a little larger."""
    (a, b), (c, d) = solution.cd
    more = 1 + share
    bent = solution.distortion and Distortion(grown(solution.distortion.a, more), grown(solution.distortion.b, more),
                                              solution.distortion.trusted)  # fmt: skip
    ra_deg, dec_deg = solution.reference_ra_deg * more, solution.reference_dec_deg * more
    cd = (a * more, b * more), (c * more, d * more)
    return replace(solution, reference_ra_deg=ra_deg, reference_dec_deg=dec_deg, cd=cd, distortion=bent)


def grown(terms: Terms, more: float) -> Terms:
    return tuple((p, q, value * more) for p, q, value in terms)


@pytest.mark.parametrize("name", SOLUTIONS)
def test_no_star_moves(name: str) -> None:
    """All roundings together: under a fiftieth of a pixel, a tenth of what a star's place is good to."""
    solution = SOLUTIONS[name]
    x, y = frame_points(solution)
    there = accepted(solution).to_pixel(*solution.to_sky(x, y))
    assert np.hypot(there[0] - x, there[1] - y).max() < 0.02


@pytest.mark.parametrize("share", [1e-15, -1e-14, 1e-13])
@pytest.mark.parametrize("name", SOLUTIONS)
def test_a_last_bit_changes_nothing(name: str, share: float) -> None:
    """What two processors make of one fit is one solution; accepting again leaves it as it is."""
    once = accepted(SOLUTIONS[name])
    assert accepted(by_a_last_bit(SOLUTIONS[name], share)) == once
    assert accepted(once) == once


def test_the_terms_of_a_picture_hang_on_no_last_bit() -> None:
    """What a solution was stated with comes back to the digit: 161.264985 to five decimals is a tie that one bit decides."""
    luck = np.random.default_rng(3)
    for _ in range(200):
        ra_deg, dec_deg = round(luck.uniform(0, 360), 6), round(luck.uniform(-89, 89), 6)
        scale, turn = round(luck.uniform(0.3, 60), 5), round(luck.uniform(0, 359), 3)
        pixel, (cosine, sine) = scale / 3600, (np.cos(np.radians(turn)), np.sin(np.radians(turn)))
        cd = (-pixel * cosine, -pixel * sine), (pixel * sine, -pixel * cosine)
        solution = Solution(641, 480, ra_deg, dec_deg, 320.0, 239.5, cd)
        terms = (solution.ra_deg, solution.dec_deg, solution.rotation_deg, solution.scale_arcsec_px)
        assert terms == (ra_deg, dec_deg, turn, scale)


def test_zero_has_no_sign() -> None:
    """-0.0 is written as another text than 0.0, and which of them a sum gives is chance."""
    zeros = (rounded(-1e-9, 3), direction(-1e-9, 360.0), direction(359.99, 360.0), significant(-0.0, 3))
    assert [str(value) for value in zeros] == ["0.0"] * 4
    assert (rounded(None, 3), significant(123456.7, 3), significant(0.00123456, 3)) == (None, 123000.0, 0.00123)
