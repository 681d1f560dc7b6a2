"""An entry's Markdown as passages: what its author says, paragraph by paragraph, with the places of the words in the file."""

import re
from collections.abc import Iterator, Sequence
from datetime import date

from markdown_it.token import Token

from sitegen.claims.passage import HIDDEN, EntryLink, NightMark, Passage, Role, Spot
from sitegen.markdown.marks import NO_DOUBT
from sitegen.markdown.parsing import tokens_of

_EVENING = re.compile(r"@(\d{4}-\d\d-\d\d)")
_CELLS = ("th_open", "td_open")


def passages_of(body: str, body_line: int) -> Iterator[Passage]:
    """`body_line` is the line of the file on which the body begins."""
    lines = body.split("\n")
    tokens = tokens_of(body)
    quotations = 0
    for before, token in zip([None, *tokens], tokens, strict=False):
        quotations += {"blockquote_open": 1, "blockquote_close": -1}.get(token.type, 0)
        if token.type == "inline" and token.children:
            is_cell = before is not None and before.type in _CELLS
            role: Role = "quotation" if quotations else "table" if is_cell else "paragraph"
            first = token.map[0] if token.map else 0
            yield _Paragraph(token, lines, first, body_line).passage(role)


class _Paragraph:
    """One inline token on its way to a passage. `at` is how far its source was read."""

    def __init__(self, token: Token, lines: Sequence[str], first: int, body_line: int) -> None:
        self.source, self.lines, self.first, self.body_line = token.content, lines, first, body_line
        self.children = token.children or []
        self.text, self.at = "", 0
        self.spots: list[Spot] = []
        self.links: list[EntryLink] = []
        self.nights: list[NightMark] = []
        self.undoubted = False

    def passage(self, role: Role) -> Passage:
        opened: list[tuple[str, int]] = []
        for child in self.children:
            if child.type == "link_open":
                opened.append((str(child.attrs.get("href", "")), len(self.text)))
            elif child.type == "link_close" and opened:
                self._close(*opened.pop())
            else:
                self._add(child)
        spots = tuple(self.spots) or (self._spot(0),)
        return Passage(self.text, role, spots, (), tuple(self.links), tuple(self.nights), None, self.undoubted)

    def _add(self, child: Token) -> None:
        if child.type == "text":
            where = self.source.find(child.content, self.at)
            self.at = where if where >= 0 else self.at
            self.spots.append(self._spot(len(self.text)))
            self.text += child.content
            self.at += len(child.content) if where >= 0 else 0
        elif child.type in ("softbreak", "hardbreak"):
            self.at = self.source.find("\n", self.at) + 1 or self.at
            self.text += " "
        elif child.type in ("code_inline", "image"):
            self.text += HIDDEN

    def _spot(self, offset: int) -> Spot:
        """Of what stands in the source at `at`: its line, and its column in the file's own line, whose indent or quotation mark
        the source has not."""
        above = self.source.count("\n", 0, self.at)
        begin = self.source.rfind("\n", 0, self.at) + 1
        here = self.source[begin:].partition("\n")[0]
        number = min(self.first + above, len(self.lines) - 1)
        indent = max(0, self.lines[number].find(here))
        return Spot(offset, self.body_line + number, 1 + indent + self.at - begin)

    def _close(self, address: str, start: int) -> None:
        """A link's end: the mark, a computed number, or the way to another entry."""
        scheme = address.casefold()
        if scheme.startswith(NO_DOUBT):
            self.undoubted = True
        elif scheme.startswith("fact:"):
            self._number(address)
        elif (path := address.partition("#")[0]).endswith(".md") and ":" not in path:
            self.links.append(EntryLink(path.rpartition("/")[2].removesuffix(".md"), start, len(self.text)))

    def _number(self, address: str) -> None:
        if evening := _EVENING.search(address):
            try:
                self.nights.append(NightMark(date.fromisoformat(evening[1]), len(self.text)))
            except ValueError:
                return
        self.text += HIDDEN
