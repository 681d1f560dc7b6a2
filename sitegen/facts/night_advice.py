"""The rule of thumb of the Moon, and whether the subs followed it."""

from datetime import datetime

from sitegen.facts.fact import COMMON_PRACTICE, Fact
from sitegen.facts.views import NightView
from sitegen.sky.advice import advice as advice_by_rule
from sitegen.sky.advice import followed as followed_rule


def advice(night: NightView) -> str | None:
    """None where the site is hidden, or a bright Moon meets a night without darkness."""
    if night.sky is None:
        return None
    moon = night.sky.moon
    return advice_by_rule(
        moon.illuminated, moon.up_share_of_dark, night.rule.illuminated_above, night.rule.up_share_above
    )  # fmt: skip


def followed(night: NightView) -> bool | None:
    """None where the advice is 'any' or unknown, or nothing was kept."""
    return followed_rule(advice(night), [(light.kind, light.moon_altitude_deg) for light in night.kept])


def moon_down(night: NightView) -> list[list[datetime]] | None:
    return None if night.sky is None else [list(interval) for interval in night.sky.moon.moon_down]


ADVICE: Fact[NightView] = Fact(
    "The Moon's rule",
    "",
    advice,
    (
        "Moon lit by more than the diary's first limit, and up for more of the dark hours than its second: narrowband; lit so,"
        " but up for less: broadband while it is down; else any."
    ),
    COMMON_PRACTICE,
)
MOON_DOWN: Fact[NightView] = Fact(
    "Moonless from, until",
    "UTC",
    moon_down,
    "Stretches of the dark hours without the Moon.",
    "definition",
)
FOLLOWED: Fact[NightView] = Fact(
    "Rule followed",
    "",
    followed,
    "Whether every kept sub suited the advice; unknown where the advice is any or nothing was kept.",
    COMMON_PRACTICE,
)

