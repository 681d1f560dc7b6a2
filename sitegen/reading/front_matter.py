"""An entry's text -> its front matter and its Markdown."""

from msgspec import Struct

from sitegen.reading.diagnostics import Diagnostics, Place

FENCE = "---"
LONGEST_TEXT = 60_000
"""Characters, ten thousand words. What Markdown makes of more could take minutes where it was written to do so."""


class EntryText(Struct, frozen=True):
    """`front_matter` begins on line 2 of the file, `body` on line `body_line`."""

    front_matter: str
    body: str
    body_line: int


def split_entry(text: str, diagnostics: Diagnostics) -> EntryText | None:
    """None after a problem: without its front matter an entry is nothing."""
    lines = text.split("\n")
    if lines[0].rstrip() != FENCE:
        remedy = "put '---' on the first line, 'title: …' and 'published: …' under it, and '---' again"
        diagnostics.error(Place(), "does not begin with front matter", remedy)
        return None
    closing = next((number for number, line in enumerate(lines) if number and line.rstrip() == FENCE), None)
    if closing is None:
        diagnostics.error(Place(), "the front matter is not closed", "put a line '---' between it and the text")
        return None
    body = "\n".join(lines[closing + 1 :])
    if len(body) > LONGEST_TEXT:
        wrong = f"the text has {len(body):,} characters, more than {LONGEST_TEXT:,}"
        diagnostics.error(Place(closing + 2), wrong, "tell it in several entries")
        body = ""
    return EntryText("\n".join(lines[1:closing]) + "\n", body, closing + 2)
