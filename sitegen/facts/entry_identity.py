"""Which entry the numbers belong to."""

from sitegen.facts.fact import Fact
from sitegen.facts.views import EntryView

ENTRY: Fact[EntryView] = Fact("Entry", "", lambda view: view.entry.slug, "The name of the entry's file.", "the author")
TITLE: Fact[EntryView] = Fact("Title", "", lambda view: view.entry.title, "The entry's title.", "the author")
STAGE: Fact[EntryView] = Fact(
    "Stage",
    "",
    lambda view: view.entry.stage,
    "A trial, still gathering light, or finished.",
    "the author",
)
