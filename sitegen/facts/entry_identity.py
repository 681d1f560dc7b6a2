"""Which entry the numbers belong to."""

from sitegen.facts.fact import Fact
from sitegen.facts.views import EntryView

FACTS: tuple[Fact[EntryView], ...] = (
    Fact("entry", "Entry", "", lambda view: view.entry.slug, "The name of the entry's file.", "the author"),
    Fact("title", "Title", "", lambda view: view.entry.title, "The entry's title.", "the author"),
    Fact("stage", "Stage", "", lambda view: view.entry.stage, "A trial, still gathering light, or finished.", "the author"),
)
