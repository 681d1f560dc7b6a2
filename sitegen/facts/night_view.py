"""Small steps that the facts of a night share."""

from collections.abc import Callable
from typing import Any

from sitegen.facts.views import NightView
from sitegen.sky.answer import NightSky, TargetNight


def of_sky(value: Callable[[NightSky], Any]) -> Callable[[NightView], Any]:
    """A fact of the night's Sun and Moon: None where the site is hidden."""
    return lambda night: None if night.sky is None else value(night.sky)


def of_target(value: Callable[[TargetNight], Any]) -> Callable[[NightView], Any]:
    """A fact of the target in that night: None where the site is hidden or the target has no fixed place."""
    return lambda night: None if night.target_sky is None else value(night.target_sky)
