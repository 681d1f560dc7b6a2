"""A picture's solution after the picture was cropped, mirrored, turned or resized. Exact; no stars needed."""

from msgspec.structs import replace

from sitegen.stars.solving.distortion import Distortion, rescaled, swapped
from sitegen.stars.solving.solution import Solution


def cropped(solution: Solution, left_px: int, top_px: int, width_px: int, height_px: int) -> Solution:
    """Of the part whose first pixel is (left, top); a part may reach beyond the frame (a margin added)."""
    return replace(solution, width_px=width_px, height_px=height_px, reference_x_px=solution.reference_x_px - left_px,
                   reference_y_px=solution.reference_y_px - top_px)


def flipped_left_right(solution: Solution) -> Solution:
    """Of the picture with left and right exchanged."""
    return _stretched(solution, -1, 1, (solution.width_px - 1 - solution.reference_x_px, solution.reference_y_px))


def flipped_top_bottom(solution: Solution) -> Solution:
    """Of the picture with top and bottom exchanged: what showing a FITS array with its first row at the bottom does."""
    return _stretched(solution, 1, -1, (solution.reference_x_px, solution.height_px - 1 - solution.reference_y_px))


def resized(solution: Solution, width_px: int, height_px: int) -> Solution:
    """Of the whole picture sampled to another size; outer edges stay outer edges."""
    across, down = width_px / solution.width_px, height_px / solution.height_px
    reference = ((solution.reference_x_px + 0.5) * across - 0.5, (solution.reference_y_px + 0.5) * down - 0.5)
    return replace(_stretched(solution, across, down, reference), width_px=width_px, height_px=height_px)


def transposed(solution: Solution) -> Solution:
    """Of the picture with rows and columns exchanged."""
    (a, b), (c, d) = solution.cd
    bent = solution.distortion
    if bent is not None:
        bent = Distortion(swapped(bent.b), swapped(bent.a), bent.trusted[2:] + bent.trusted[:2])
    return replace(solution, width_px=solution.height_px, height_px=solution.width_px, cd=((b, a), (d, c)), distortion=bent,
                   reference_x_px=solution.reference_y_px, reference_y_px=solution.reference_x_px)


def turned_clockwise(solution: Solution, quarters: int = 1) -> Solution:
    """Of the picture turned by quarter turns clockwise, as seen."""
    for _ in range(quarters % 4):
        solution = flipped_left_right(transposed(solution))
    return solution


def oriented(solution: Solution, exif_orientation: int) -> Solution:
    """Of the picture as shown, from that of the stored array: EXIF 2.32 (CIPA DC-008), tag 274, values 1 to 8."""
    mirrored, quarters = _EXIF[exif_orientation]
    return turned_clockwise(flipped_left_right(solution) if mirrored else solution, quarters)


_EXIF = {1: (False, 0), 2: (True, 0), 3: (False, 2), 4: (True, 2), 5: (True, 3), 6: (False, 1), 7: (True, 1), 8: (False, 3)}
"""Orientation: first left and right exchanged or not, then quarter turns clockwise."""


def _stretched(solution: Solution, across: float, down: float, reference_px: tuple[float, float]) -> Solution:
    """With x offsets multiplied by across and y offsets by down."""
    (a, b), (c, d) = solution.cd
    bent = solution.distortion
    if bent is not None:
        u_low, u_high, v_low, v_high = bent.trusted
        u_ends, v_ends = sorted((u_low * across, u_high * across)), sorted((v_low * down, v_high * down))
        trusted = (u_ends[0], u_ends[1], v_ends[0], v_ends[1])
        bent = Distortion(rescaled(bent.a, across, across, down), rescaled(bent.b, down, across, down), trusted)
    return replace(solution, cd=((a / across, b / down), (c / across, d / down)), distortion=bent,
                   reference_x_px=reference_px[0], reference_y_px=reference_px[1])
