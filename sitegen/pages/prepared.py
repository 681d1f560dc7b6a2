"""An entry with everything made for it, ready for its page."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from sitegen.facts.views import EntryView
from sitegen.pages.card import EntryCard
from sitegen.pages.picture_view import PreparedPicture


@dataclass(frozen=True, slots=True)
class PreparedEntry:
    view: EntryView
    facts: Mapping[str, Any]
    card: EntryCard
    pictures: tuple[PreparedPicture, ...]
