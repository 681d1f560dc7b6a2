"""What a telescope and a camera make of the sky: scale, field, resolution, sampling.

Source of the image scale: Howell, *Handbook of CCD Astronomy* (2nd ed., CUP 2006), section 4.1, read in a copy. The field is the
exact gnomonic one, 2·atan(d / 2f), since the small-angle form is 4 % high for a 50 mm lens on a full frame.
"""

import math
from typing import Literal

ARCSEC_PER_RADIAN = 206264.806247
GREEN_MM = 550e-6
DAWES_ARCSEC_MM = 116.0
UNDER_BELOW_PX, OVER_ABOVE_PX = 2.0, 4.0

Sampling = Literal["under", "good", "over"]


def effective_focal_length_mm(focal_length_mm: float, factor: float) -> float:
    """Nominal focal length with its reducer or Barlow."""
    return focal_length_mm * factor


def focal_ratio(focal_length_mm: float, aperture_mm: float) -> float:
    """Focal length over aperture, no unit."""
    return focal_length_mm / aperture_mm


def image_scale_arcsec_px(pixel_um: float, binning: int, focal_length_mm: float) -> float:
    """Angle seen by one (binned) pixel at the frame's centre."""
    return ARCSEC_PER_RADIAN * pixel_um * 1e-3 * binning / focal_length_mm


def focal_length_from_scale_mm(pixel_um: float, binning: int, scale_arcsec_px: float) -> float:
    """The focal length that a measured scale proves: the inverse of `image_scale_arcsec_px`."""
    return ARCSEC_PER_RADIAN * pixel_um * 1e-3 * binning / scale_arcsec_px


def field_deg(pixels: float, pixel_um: float, focal_length_mm: float) -> float:
    """Angle across that many unbinned pixels, centred on the axis: 2·atan(d / 2f). Binning does not change it."""
    return 2 * math.degrees(math.atan(pixels * pixel_um * 1e-3 / (2 * focal_length_mm)))


def rayleigh_arcsec(aperture_mm: float) -> float:
    """Separation of two points whose Airy discs meet at the first dark ring, 1.22 λ/D at 550 nm."""
    return ARCSEC_PER_RADIAN * 1.22 * GREEN_MM / aperture_mm


def dawes_arcsec(aperture_mm: float) -> float:
    """W. R. Dawes' empirical limit for two equal stars (1867), 116″ / D in mm."""
    return DAWES_ARCSEC_MM / aperture_mm


def sampling_of(px_per_fwhm: float) -> Sampling:
    """Under 2 px a star is undersampled, over 4 px nothing is gained: common practice, no source.

    Howell's handbook, on pixel sampling, draws the line at about 1.5 px.
    """
    if px_per_fwhm < UNDER_BELOW_PX:
        return "under"
    return "over" if px_per_fwhm > OVER_ABOVE_PX else "good"
