"""What measuring stars gives: frozen values, ready to be kept, printed and charted.

Axes, for everything in this room. Pixel centres lie at whole numbers and the first pixel of the array is (0, 0); x runs along a
row (axis 1), y along a column (axis 0). Row 0 is the BOTTOM of the picture, as FITS frames are displayed, so an angle turns
counter-clockwise from +x towards +y. A JPEG or PNG is stored from the top row down: hand it in flipped.
"""

from typing import Literal

from msgspec import Struct

Kind = Literal["even", "tilt", "outward", "same-way", "unclear"]


class Zone(Struct, frozen=True):
    """One of 5 × 3 equal parts of the frame. `x`, `y`: its centre, px. `stars`: how many were measured in it.

    The measurements are None, all of them, where fewer than `zones.FEWEST_STARS` could be measured. They hold at the zone's
    centre: medians over its stars, less the field's change across it. `fwhm_px` is sqrt(major × minor) of the full width at half
    maximum of the profile as recorded, the pixel's own width included; so are elongation and angle. `elongation` (major / minor,
    ≥ 1) and `angle_deg` (of the major axis, [0, 180)) belong to the median of the stars' shape vectors, so that noise does not
    make round stars long; `angle_deg` is None where the stars are as good as round. `scatter_px` and `scatter_e` are star to
    star: one standard deviation of the FWHM and of a component of the shape vector (see `shapes`), from the median absolute
    deviation.
    """

    x: float
    y: float
    stars: int
    fwhm_px: float | None = None
    fwhm_arcsec: float | None = None
    elongation: float | None = None
    angle_deg: float | None = None
    scatter_px: float | None = None
    scatter_e: float | None = None


class Rejected(Struct, frozen=True):
    """Detections that were not measured, by the first reason that held, and fits that gave no believable star."""

    hot_pixel: int = 0
    edge: int = 0
    saturated: int = 0
    blended: int = 0
    faint: int = 0
    misfit: int = 0


class StarSurvey(Struct, frozen=True):
    """Star shapes over one frame. `zones` run row by row from the bottom left, x fastest.

    `detected` counts every detection, `usable` those left after the rejections that need no fit, `star_count` those measured: in
    a rich frame the brightest of each zone are the sample (`survey.STARS_PER_ZONE`). The overall figures are medians over the
    measured stars, None with too few.
    `background` and `noise` (one standard deviation of a pixel) are in the frame's own unit, `saturation` too (None: not known).
    """

    width_px: int
    height_px: int
    scale_arcsec_px: float | None
    bayer: str | None
    detected: int
    usable: int
    star_count: int
    fwhm_px: float | None
    fwhm_arcsec: float | None
    elongation: float | None
    angle_deg: float | None
    background: float
    noise: float
    saturation: float | None
    rejected: Rejected
    zones: tuple[Zone, ...]


class Effect(Struct, frozen=True):
    """One thing that the pattern may hold, as a share, with one standard error. `name`: see `pattern`."""

    name: str
    size: float
    error: float


class FieldPattern(Struct, frozen=True):
    """What the zones say together. `kind`: even; tilt (one side, or two opposite sides, worse); outward (worse in all
    directions); same-way (elongated alike everywhere); unclear (the data do not carry an answer).

    `words`: one sentence for the reader. `evidence`: sentences with the figures. `sureness`: 0 to 1, the share of equally
    likely fields (drawn from the fit's covariance) that would get the same name; for 'unclear', that of the likeliest name.
    `direction_deg`: towards the worse side (tilt) or along the stars (same-way), None otherwise. `orientation`: of an
    outward pattern's stars, None where they stay round.
    """

    kind: Kind
    words: str
    evidence: tuple[str, ...]
    sureness: float
    direction_deg: float | None = None
    orientation: Literal["radial", "tangential"] | None = None
    effects: tuple[Effect, ...] = ()


class StarRing(Struct, frozen=True):
    """A defocused star's disc and the shadow inside it, by a fit to a fraction of a pixel.

    `outer_px`, `inner_px`: diameters at half brightness. `offset_px`: from the disc's centre to the shadow's; `offset_percent` of
    the disc's diameter; `direction_deg` of the shadow seen from the disc's centre, [0, 360), None where the offset is below its
    uncertainty. `uncertainty_px`: one standard error of the offset, from the noise, from what the disc's sectors disagree about
    and from what rings of light could pass for. `x`, `y`: the disc's centre, px. `signal_to_noise`: of one pixel of the lit ring.
    """

    outer_px: float
    inner_px: float
    offset_px: float
    offset_percent: float
    direction_deg: float | None
    uncertainty_px: float
    x: float
    y: float
    signal_to_noise: float
    warnings: tuple[str, ...] = ()
