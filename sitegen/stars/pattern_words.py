"""The sentences about a pattern: what it is, what it rests on, what to look at next."""

from typing import Literal

from msgspec import Struct

from sitegen.stars.records import Effect, FieldPattern, Kind, StarSurvey

SIDES = ("right", "upper right", "top", "upper left", "left", "lower left", "bottom", "lower right")
ACROSS = {"radial": "along the radius", "tangential": "across the radius", None: "along or across the radius"}
AXES = ("left and right", "lower left and upper right", "top and bottom", "upper left and lower right")


class Findings(Struct, frozen=True):
    """What the judging found. Angles counter-clockwise from +x, y up; sizes are shares."""

    survey: StarSurvey
    effects: dict[str, Effect]
    noticed: set[str]
    gradient_deg: float
    axis_deg: float
    drift_deg: float
    orientation: Literal["radial", "tangential"] | None
    middle_worse: float


def too_little(survey: StarSurvey) -> FieldPattern:
    """Too few zones to fit anything."""
    measured = sum(zone.fwhm_px is not None for zone in survey.zones)
    evidence = f"{measured} of {len(survey.zones)} zones hold enough stars to be measured."
    return FieldPattern("unclear", "Too few stars over the frame to tell.", (evidence,), 0.0)


def describe(kind: Kind, sureness: float, findings: Findings, sure: bool) -> FieldPattern:
    """The pattern with its words; 'unclear' where it is not sure."""
    evidence = tuple(_evidence(findings, kind))
    effects = tuple(findings.effects.values())
    if not sure:
        return FieldPattern("unclear", _unclear(kind, findings), evidence, sureness, effects=effects)
    direction = {"tilt": _tilt_deg(findings), "same-way": findings.drift_deg}.get(kind)
    orientation = findings.orientation if kind == "outward" else None
    return FieldPattern(kind, _words(kind, findings), evidence, sureness, direction, orientation, effects)


def _one_side(findings: Findings) -> bool:
    return findings.effects["side to side"].size >= findings.effects["both sides"].size


def _tilt_deg(findings: Findings) -> float:
    return findings.gradient_deg if _one_side(findings) else findings.axis_deg


def side_of(angle_deg: float) -> str:
    """The edge or corner that lies in this direction."""
    return SIDES[round(angle_deg / 45) % 8]


def axis_of(angle_deg: float) -> str:
    return AXES[round(angle_deg / 45) % 4]


def _words(kind: Kind, findings: Findings) -> str:
    return {"even": _even, "tilt": _tilt, "outward": _outward, "same-way": _same_way}[kind](findings)


def _even(findings: Findings) -> str:
    return "Even: stars are alike over the whole frame."


def _tilt(findings: Findings) -> str:
    if _one_side(findings):
        return f"One side is worse, the {side_of(findings.gradient_deg)}: the camera or the focuser is tilted."
    return f"Two opposite sides are worse, {axis_of(findings.axis_deg)}: a tilt, with the focus set on the line between them."


def _outward(findings: Findings) -> str:
    stretch = f", stretched {ACROSS[findings.orientation]}" if findings.orientation else ""
    return f"Worse outward in all directions{stretch}: look at the distance between corrector and sensor, and at the focus."


def _same_way(findings: Findings) -> str:
    return "Elongated the same way everywhere: guiding or wind, not the optics' field."


def _unclear(kind: Kind, findings: Findings) -> str:
    if findings.middle_worse > 0.05:
        return "Stars are widest in the middle: the focus sits on the edges. Refocus before judging the field."
    likely = {"even": "even", "tilt": "one side worse", "outward": "worse outward"}.get(kind, "elongated the same way")
    return f"The stars do not carry a clear answer; the likeliest is '{likely}'."


SENTENCES = {
    "side to side": "FWHM grows by {size} from the {from_side} to the {to_side} (direction {gradient}).",
    "both sides": "FWHM grows by {size} from the middle to {axis}, more than to the other edges.",
    "outward size": "FWHM grows by {size} from the middle to the corners, in every direction.",
    "outward shape": "In the corners stars are longer than wide by {size}, {orientation}.",
    "same way": "Everywhere stars are longer than wide by {size}, along {drift}.",
}
ALSO = {"tilt": ("side to side", "both sides"), "outward": ("outward size", "outward shape"), "same-way": ("same way",)}


def _evidence(findings: Findings, kind: Kind) -> list[str]:
    """What was measured; then every noticeable effect, the kind's own first, or how small all are."""
    zones = [zone for zone in findings.survey.zones if zone.fwhm_px is not None]
    survey = findings.survey
    first = f"{survey.star_count} stars in {len(zones)} of {len(survey.zones)} zones, {_spread(survey)}."
    shown = [name for name in SENTENCES if name in findings.noticed]
    shown.sort(key=lambda name: name not in ALSO.get(kind, ()))
    sentences = [SENTENCES[name].format(**_figures(name, findings)) for name in shown]
    return [first, *(sentences or [_small(findings)])]


def _small(findings: Findings) -> str:
    side, both, corners, corner_shape, same = (_percent(findings.effects[name]) for name in SENTENCES)
    return (
        f"FWHM differs by {side} from side to side, by {corners} between middle and corners, by {both} along one axis; "
        f"stars are longer than wide by {corner_shape} in the corners and by {same} everywhere."
    )


def _percent(effect: Effect) -> str:
    return f"{100 * effect.size:.0f} ± {max(1, round(100 * effect.error))} %"


def _spread(survey: StarSurvey) -> str:
    sizes = [zone.fwhm_px for zone in survey.zones if zone.fwhm_px is not None]
    return f"FWHM {min(sizes):.2f} to {max(sizes):.2f} px"


def _figures(name: str, findings: Findings) -> dict[str, str]:
    return {
        "size": _percent(findings.effects[name]),
        "from_side": side_of(findings.gradient_deg + 180),
        "to_side": side_of(findings.gradient_deg),
        "gradient": f"{round(findings.gradient_deg) % 360}°",
        "axis": axis_of(findings.axis_deg),
        "orientation": ACROSS[findings.orientation],
        "drift": f"{round(findings.drift_deg) % 180}°",
    }
