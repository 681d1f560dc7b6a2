"""Every fact, in the order of facts.json. A new fact is one file and one line here."""

from typing import Any

from sitegen.facts import (
    cautions,
    entry_identity,
    integration_by_filter,
    integration_dark_equivalent,
    integration_shared,
    integration_totals,
    night_advice,
    night_moon,
    night_sun,
    night_target,
    night_use,
    optics_measured,
    optics_resolution,
    optics_sampling,
    optics_scale,
    optics_train,
    picture_pointing,
    star_rings,
    star_shapes,
    sub_log,
    sub_sky,
    target_identity,
)
from sitegen.facts.fact import Fact, Scope

FACTS: dict[Scope, tuple[Fact[Any], ...]] = {
    "entry": entry_identity.FACTS,
    "target": target_identity.FACTS,
    "optics": (
        *optics_train.FACTS,
        *optics_scale.FACTS,
        *optics_resolution.FACTS,
        *optics_sampling.FACTS,
        *optics_measured.FACTS,
    ),
    "integration": (
        *integration_totals.FACTS,
        *integration_dark_equivalent.FACTS,
        *integration_shared.FACTS,
        *integration_by_filter.FACTS,
    ),
    "night": (*night_sun.FACTS, *night_moon.FACTS, *night_target.FACTS, *night_use.FACTS, *night_advice.FACTS),
    "sub": (*sub_log.FACTS, *sub_sky.FACTS),
    "picture": picture_pointing.FACTS,
    "entry_end": (*star_shapes.FACTS, *star_rings.FACTS, *cautions.FACTS),
}
