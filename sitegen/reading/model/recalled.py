"""The keys of an entry's `recalled`: totals of which no log is left."""

from sitegen.reading.value_types.duration import Duration
from sitegen.reading.value_types.group import Group, Key
from sitegen.reading.value_types.number import Number
from sitegen.reading.value_types.period import Period
from sitegen.reading.value_types.text import NAME, WORD

DAY_S, MOST_S = 86_400, 100_000 * 3600
"""No exposure is longer than a day, as in logs; no project longer than what `wanted` may hold."""

RECALLED = Group(
    (
        Key("filter", WORD, "Short name of the filter. Hours without one stand in the sum alone.", "Ha"),
        Key("count", Number(least=1, most=100_000, whole=True), "How many subs there were.", "40"),
        Key("exposure", Duration(0.0001, DAY_S), "How long each of them was.", "10m"),
        Key("total", Duration(1, MOST_S, needs_unit=True), "How long all of them were.", "3h20m", default="count × exposure"),
        Key("when", Period(), "As exactly as you know it, in English or German: hours without it belong to no year.",
            "autumn 2019"),
        Key("target", NAME, "Which of the entry's targets they show.", "NGC 253", default="the first"),
    ),
    called="a recalled total",
    remedies=(
        ("exposure_s", "did you mean 'exposure'?"), ("hours", "did you mean 'total'?"), ("subs", "did you mean 'count'?"),
        ("date", "did you mean 'when'?"), ("year", "did you mean 'when'?"), ("rig", "the entry's 'rig' holds for them"),
        ("site", "the entry's 'site' holds for them"),
    ),
)  # fmt: skip
