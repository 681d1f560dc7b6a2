"""How much of an entry's light earlier entries told of before."""

from sitegen.facts.fact import Fact
from sitegen.facts.integration_totals import LOG, kept_seconds_where
from sitegen.facts.views import EntryView

SHARED_S: Fact[EntryView] = Fact(
    "In earlier entries too",
    "s",
    kept_seconds_where(lambda light: bool(light.earlier)),
    "Sum of the kept light frames that entries published before this one tell as well; lists count them once.",
    LOG,
    3,
)
