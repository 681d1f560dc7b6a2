"""How far a survey is from the truth it was drawn from."""

from dataclasses import dataclass

import numpy as np

from sitegen.stars.shapes import angle_deg_of, elongation_of
from tests.stars.recorded_profile import recorded
from tests.stars.synthetic import shapes_at


@dataclass
class Errors:
    """One value for each zone that was measured; `angle_deg` only where the true elongation exceeds 1.1."""

    fwhm_share: np.ndarray
    elongation: np.ndarray
    angle_deg: np.ndarray


def errors_of(survey, sky):
    """Against what was drawn at the zones' centres, as pixels record it where they do."""
    rows = [_errors_in(zone, sky) for zone in survey.zones if zone.fwhm_px is not None]
    fwhm, elongation, angle = np.array(rows, float).reshape(-1, 3).T
    return Errors(fwhm, elongation, angle[np.isfinite(angle)])


def _errors_in(zone, sky):
    fwhm, e1, e2 = shapes_at(sky, zone.x, zone.y)
    elongation, angle = elongation_of(e1, e2), angle_deg_of(e1, e2)
    if sky.averaged:
        seen = recorded(float(fwhm), elongation, angle or 0.0, sky.beta)
        fwhm, elongation = seen.fwhm, seen.elongation
    off = abs((zone.angle_deg - angle + 90) % 180 - 90) if elongation > 1.1 else np.nan
    return zone.fwhm_px / fwhm - 1, zone.elongation - elongation, off
