"""A solution as it is accepted: each of its numbers with the digits that it means, so that nothing derived from it hangs on how a
processor sums.

Catalogue places are good to about 0.1 arcsec and detected ones to 0.2 px, and a fit through some tens of stars to a few
hundredths of a pixel. What is cut off here moves no place in the frame by more than a hundredth of that.
"""

from math import floor, log10

from msgspec.structs import replace

from sitegen.stars.digits import rounded
from sitegen.stars.solving.distortion import Distortion, Terms
from sitegen.stars.solving.solution import Matrix, Solution

PLACE_DECIMALS = 6
"""Of degrees: 0.0036 arcsec."""

_MOVED_PX = 1e-3
"""By less than this any rounded term may move the farthest corner."""

_RESIDUAL_DECIMALS = 3


def accepted(solution: Solution) -> Solution:
    """The solution in rounded numbers."""
    half_px = max(solution.width_px, solution.height_px) / 2
    scale_deg = max(abs(value) for row in solution.cd for value in row)
    decimals = _decimals(_MOVED_PX * scale_deg / half_px)
    (a, b), (c, d) = solution.cd
    cd: Matrix = (rounded(a, decimals), rounded(b, decimals)), (rounded(c, decimals), rounded(d, decimals))
    return replace(
        solution,
        reference_ra_deg=rounded(solution.reference_ra_deg, PLACE_DECIMALS) % 360,
        reference_dec_deg=rounded(solution.reference_dec_deg, PLACE_DECIMALS),
        cd=cd,
        distortion=None if solution.distortion is None else _rounded(solution.distortion, half_px),
        rms_arcsec=rounded(solution.rms_arcsec, _RESIDUAL_DECIMALS),
        corner_arcsec=rounded(solution.corner_arcsec, _RESIDUAL_DECIMALS),
    )


def _rounded(distortion: Distortion, half_px: float) -> Distortion:
    u_low, u_high, v_low, v_high = (rounded(edge, 1) for edge in distortion.trusted)
    return Distortion(_terms(distortion.a, half_px), _terms(distortion.b, half_px), (u_low, u_high, v_low, v_high))


def _terms(terms: Terms, half_px: float) -> Terms:
    """A term of higher power has more decimals, since more pixels are multiplied."""
    return tuple((p, q, rounded(value, _decimals(_MOVED_PX / half_px ** (p + q)))) for p, q, value in terms)


def _decimals(step: float) -> int:
    """So many that the last one counts no more than a step."""
    return -floor(log10(step))
