"""Every rule, each after those whose outcomes it asks for."""

from typing import Any

from sitegen.build.rule import Rule
from sitegen.build.rules.claims import CLAIMS
from sitegen.build.rules.entries import ENTRIES
from sitegen.build.rules.entry_pages import ENTRY_PAGES
from sitegen.build.rules.facts import FACTS
from sitegen.build.rules.feeds import FEEDS
from sitegen.build.rules.lists import LISTS
from sitegen.build.rules.night_pages import NIGHT_PAGES
from sitegen.build.rules.texts import TEXTS

Rules = tuple[Rule[Any], ...]

READING: Rules = (ENTRIES,)
COMPUTING: Rules = (FACTS, CLAIMS)
CHECKING: Rules = (TEXTS,)
"""What a check does instead of drawing, and a rebuild of a diary with errors, so that every problem is told at once."""
DRAWING: Rules = (ENTRY_PAGES, NIGHT_PAGES, LISTS, FEEDS)
RULES: Rules = (*READING, *COMPUTING, *CHECKING, *DRAWING)
