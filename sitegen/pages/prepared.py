"""An entry with everything made for it, ready for its page."""

from collections.abc import Collection
from datetime import date
from itertools import compress

from msgspec import Struct
from msgspec.structs import replace

from sitegen.facts.registry import EntryFacts
from sitegen.facts.views import EntryView
from sitegen.pages.card import EntryCard
from sitegen.pages.picture_view import PreparedPicture


class PreparedEntry(Struct, frozen=True):
    """`has_card`: a picture was made to stand beside links to it."""

    view: EntryView
    facts: EntryFacts
    card: EntryCard
    pictures: tuple[PreparedPicture, ...]
    has_card: bool = False

    def on(self, evenings: Collection[date]) -> "PreparedEntry":
        """With no nights but these: a page of one night must not cost what all nights of its entries cost."""
        wanted = [night.evening in evenings for night in self.view.nights]
        return replace(
            self,
            view=replace(self.view, nights=tuple(compress(self.view.nights, wanted))),
            facts=replace(self.facts, nights=tuple(compress(self.facts.nights, wanted))),
            card=replace(self.card, nights=tuple(compress(self.card.nights, wanted))),
        )
