"""What the zones of a survey say together, named, with the evidence and how sure it is.

The physical terms come from `field_model`. Each of a few thousand fields that the data allow (drawn from the fit's covariance)
shows the effects below or does not; a name is given when nearly all of them bear it out. From where on an effect is noticeable is
common practice, no source.
"""

from typing import Literal

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from sitegen.stars.digits import direction, rounded
from sitegen.stars.field_model import FieldTerms, fit_field
from sitegen.stars.pattern_words import Findings, describe, too_little
from sitegen.stars.records import Effect, FieldPattern, Kind, StarSurvey
from sitegen.stars.shapes import Floats

DRAWS = 4000
SURE = 0.8  # share of the draws that must agree before a name is given

# effect -> (the pattern it speaks for, share from which it is noticed)
NOTICEABLE: dict[str, tuple[Kind, float]] = {
    "side to side": ("tilt", 0.10),  # FWHM of the worse edge over that of the opposite one, less 1
    "both sides": ("tilt", 0.08),  # FWHM of two opposite edges over the middle, beyond what all edges share
    "outward size": ("outward", 0.08),  # FWHM of the corners over the middle, in all directions
    "outward shape": ("outward", 0.10),  # elongation − 1 in the corners, along or across the radius
    "same way": ("same-way", 0.08),  # elongation − 1, alike everywhere
}
WORST_IN_MIDDLE = 0.08
EFFECT_DECIMALS = 4
LEAST = 0.1  # floor of T in units of the median: keeps a wild draw from dividing by nothing


def field_pattern(survey: StarSurvey) -> FieldPattern:
    """Name the pattern. Needs only the zones, so that a kept survey does as well as a fresh one. Never raises for lack of
    data: it says 'unclear' then. The same survey gives the same answer (the draws are seeded)."""
    terms = fit_field(survey)
    if terms is None:
        return too_little(survey)
    drawn = _Drawn.from_terms(terms)
    effects = {name: Effect(name, *_size_and_error(values, best)) for name, values, best in drawn.effects()}
    kind, sureness = _judge(drawn, effects)
    findings = Findings(
        survey=survey,
        effects=effects,
        noticed={name for name, effect in effects.items() if effect.size >= NOTICEABLE[name][1]},
        gradient_deg=direction(float(np.degrees(np.arctan2(terms.size[2], terms.size[1]))), 360.0),
        axis_deg=_axis_deg(terms),
        drift_deg=direction(float(np.degrees(np.arctan2(terms.shape[1], terms.shape[0])) / 2), 180.0),
        orientation=_orientation(terms, effects),
        middle_worse=drawn.middle_over_corners(),
    )
    return describe(kind, sureness, findings, sure=sureness >= SURE and findings.middle_worse < WORST_IN_MIDDLE)


class _Drawn(Struct, frozen=True):
    """Terms drawn from the covariances, first row the best fit itself: `size` (1 + DRAWS, 6), `shape` (1 + DRAWS, 3).

    `signed`: a draw's effect counts as far as it points the way the best fit's does, so that noise, which points anywhere, bears
    nothing out. Without it the bare length counts, which is what an effect must stay below to be absent.
    """

    size: Floats
    shape: Floats
    reach: tuple[float, float]
    signed: bool = True

    @staticmethod
    def from_terms(terms: FieldTerms) -> "_Drawn":
        """Through Cholesky's factor, which is unique: the sign of singular vectors is a library's choice."""
        random = np.random.default_rng(20_000_101)
        size = random.multivariate_normal(terms.size, terms.size_covariance, DRAWS, method="cholesky")
        shape = random.multivariate_normal(terms.shape, terms.shape_covariance, DRAWS, method="cholesky")
        return _Drawn(np.vstack([terms.size, size]), np.vstack([terms.shape, shape]), terms.reach)

    def effects(self) -> list[tuple[str, Floats, float]]:
        """Name, drawn values, best value; every effect as a share of the FWHM (or elongation − 1), never below 0."""
        values = (self._side_to_side(), self._both_sides(), self._outward_size(), self._outward_shape(), self._same_way())
        return [(name, value[1:], float(value[0])) for name, value in zip(NOTICEABLE, values, strict=True)]

    def middle_over_corners(self) -> float:
        """By how much the middle is wider than the corners (best fit, mean over the directions); below 0 where it is not."""
        rise = (self.size[0, 3] + self.size[0, 5]) / 2
        return rounded(1 - float(_ratio(self.size[:1, 0] + rise, self.size[:1, 0])[0]), EFFECT_DECIMALS)

    def _mean(self) -> Floats:
        """T averaged over the frame; the mean of u² over ±U is U²/3."""
        wide, high = self.reach
        return np.maximum(self.size[:, 0] + (self.size[:, 3] * wide**2 + self.size[:, 5] * high**2) / 3, LEAST)

    def _side_to_side(self) -> Floats:
        across, up = self.size[:, 1], self.size[:, 2]
        length = np.hypot(across[0], up[0]) or 1.0
        to_edge = (np.abs(across[0]) * self.reach[0] + np.abs(up[0]) * self.reach[1]) / length
        rise = self._length(across, up) * to_edge
        return _ratio(self._mean() + rise, self._mean() - rise) - 1

    def _length(self, along: Floats, other: Floats) -> Floats:
        """Of the drawn vectors: along the best fit's direction (never below 0) where signed, else as it is."""
        if not self.signed:
            return np.hypot(along, other)
        best = np.hypot(along[0], other[0]) or 1.0
        return np.asarray(((along * along[0] + other * other[0]) / best).clip(0))

    def _squares(self) -> tuple[Floats, Floats]:
        """Least and greatest second-order rise of T over the directions, at r = 1."""
        middle = (self.size[:, 3] + self.size[:, 5]) / 2
        half = self._length(self.size[:, 3] - self.size[:, 5], self.size[:, 4]) / 2
        return middle - half, middle + half

    def _both_sides(self) -> Floats:
        least, greatest = self._squares()
        return _ratio(self.size[:, 0] + (greatest - least.clip(0)).clip(0) * max(self.reach) ** 2, self.size[:, 0]) - 1

    def _outward_size(self) -> Floats:
        return _ratio(self.size[:, 0] + self._squares()[0].clip(0), self.size[:, 0]) - 1

    def _outward_shape(self) -> Floats:
        corner = self.size[:, 0] + (self.size[:, 3] + self.size[:, 5]) / 2
        return _longer(self._length(self.shape[:, 2], np.zeros(len(corner))), corner)

    def _same_way(self) -> Floats:
        return _longer(self._length(self.shape[:, 0], self.shape[:, 1]), self._mean())


def _ratio(square: Floats, other: Floats) -> Floats:
    """Of the widths, from their squares."""
    return np.asarray(np.sqrt(np.maximum(square, LEAST) / np.maximum(other, LEAST)))


def _longer(s: Floats, t: Floats) -> Floats:
    """Elongation − 1 from the moments S and T."""
    share = np.minimum(s / np.maximum(t, LEAST), 0.9)
    return np.asarray(np.sqrt((1 + share) / (1 - share)) - 1)


def _size_and_error(values: Floats, best: float) -> tuple[float, float]:
    return rounded(best, EFFECT_DECIMALS), rounded(values.std(), EFFECT_DECIMALS)


def _judge(drawn: _Drawn, effects: dict[str, Effect]) -> tuple[Kind, float]:
    """The likeliest name, and the share of the draws that bear it out: in which its effect is noticeable, or none is."""
    strongest = max(effects, key=lambda name: effects[name].size / NOTICEABLE[name][1])
    if effects[strongest].size < NOTICEABLE[strongest][1]:
        lengths = replace(drawn, signed=False).effects()
        return "even", float(np.all([values < NOTICEABLE[name][1] for name, values, _ in lengths], axis=0).mean())
    kind = NOTICEABLE[strongest][0]
    alike = [values >= NOTICEABLE[name][1] for name, values, _ in drawn.effects() if NOTICEABLE[name][0] == kind]
    return kind, float(np.any(alike, axis=0).mean())


def _axis_deg(terms: FieldTerms) -> float:
    """Of the direction in which two opposite edges are worst."""
    return direction(float(np.degrees(np.arctan2(terms.size[4], terms.size[3] - terms.size[5])) / 2), 180.0)


def _orientation(terms: FieldTerms, effects: dict[str, Effect]) -> Literal["radial", "tangential"] | None:
    if effects["outward shape"].size < NOTICEABLE["outward shape"][1] / 2:
        return None
    return "radial" if terms.shape[2] > 0 else "tangential"
