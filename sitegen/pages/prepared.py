"""An entry with everything made for it, ready for its page."""

from msgspec import Struct

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
