"""What an entry's claims are held against: its logs, its nights' sky, and the dates of the entries that it leads to."""

from collections.abc import Mapping
from datetime import date

from msgspec import Struct

from sitegen.claims.vocabulary import Vocabulary
from sitegen.facts.views import EntryView, NightView


class Evidence(Struct, frozen=True):
    """`published`: the dates of other entries, by slug."""

    view: EntryView
    words: Vocabulary
    published: Mapping[str, date]

    @property
    def evenings(self) -> list[date]:
        """With subs, each once, in order."""
        return sorted({night.evening for night in self.view.nights})

    def nights_of(self, evening: date) -> list[NightView]:
        """One for each site that was used."""
        return [night for night in self.view.nights if night.evening == evening]
