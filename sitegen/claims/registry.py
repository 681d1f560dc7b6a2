"""Every kind of claim, in the order in which the doubts of one place are told."""

from sitegen.claims import (
    calendar_days,
    calm_air,
    caption_counts,
    counts,
    low_and_high,
    moon_up,
    younger_links,
)
from sitegen.claims.doubt import ClaimKind

CLAIMS: tuple[ClaimKind, ...] = (
    younger_links.CLAIM,
    calendar_days.CLAIM,
    moon_up.CLAIM,
    low_and_high.CLAIM,
    counts.CLAIM,
    caption_counts.CLAIM,
    calm_air.CLAIM,
)
