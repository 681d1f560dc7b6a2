"""A count held against all that can be counted in the logs."""

from sitegen.claims.counted import Counted
from sitegen.claims.evidence import Evidence
from sitegen.claims.log_counts import HOUR_S, Part, are_some_hours, are_some_subs, night_counts
from sitegen.facts.views import EntryView

# A whole number of hours is rounded, up or down; one with a decimal is meant to a tenth.
NEAR_WHOLE_H, NEAR_TENTH_H = 0.6, 0.15


def denial(counted: Counted, part: Part, evidence: Evidence) -> str | None:
    """Both values in words; None where some count of the logs agrees, or where there is nothing to count."""
    view = evidence.view
    if not view.lights:
        return None
    if counted.unit == "nights":
        return _of_nights(counted, view)
    lights = part.lights(view)
    if not lights:
        return None
    return _of_subs(counted, part, view) if counted.unit == "subs" else _of_hours(counted, part, view)


def _of_nights(counted: Counted, view: EntryView) -> str | None:
    if counted.number in night_counts(view):
        return None
    evenings = len({night.evening for night in view.nights})
    return f"the text says {counted.number:g} nights, and the logs hold {evenings}"


def _of_subs(counted: Counted, part: Part, view: EntryView) -> str | None:
    if are_some_subs(counted.number, view, part):
        return None
    lights = part.lights(view)
    kept = sum(light.sub.kept for light in lights)
    hold = f"{kept} kept and {len(lights) - kept} discarded" if part.discarded is None else f"{len(lights)}"
    verdict = {None: "", True: " discarded", False: " kept"}[part.discarded]
    return f"the text says {counted.number:g}{verdict} subs{_of(part)}, and the logs hold {hold}"


def _of_hours(counted: Counted, part: Part, view: EntryView) -> str | None:
    near_h = NEAR_WHOLE_H if counted.number == int(counted.number) else NEAR_TENTH_H
    if are_some_hours(counted.number, near_h, view, part):
        return None
    kept_h = sum(light.sub.exposure_s for light in part.lights(view) if light.sub.kept) / HOUR_S
    return f"the text says {counted.number:g} hours{_of(part)}, and the logs hold {kept_h:.1f}"


def _of(part: Part) -> str:
    filters = f" of {', '.join(sorted(part.filters))}" if part.filters else ""
    return filters + (f" in the night of {part.evening}" if part.evening else "")
