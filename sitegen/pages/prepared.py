"""An entry with everything made for it, ready for its page."""

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from sitegen.facts.views import EntryView
from sitegen.pages.card import EntryCard
from sitegen.pages.picture_view import PreparedPicture


class PreparedEntry(Struct, frozen=True):
    """`has_card`: a picture was made to stand beside links to it."""

    view: EntryView
    facts: Mapping[str, Any]
    card: EntryCard
    pictures: tuple[PreparedPicture, ...]
    has_card: bool = False
