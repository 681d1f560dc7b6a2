"""Words for readers."""

from msgspec import Struct

from sitegen.diary.to_write import without_gaps
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node
from sitegen.reading.text_file import UNPRINTABLE
from sitegen.reading.value_types.value_type import JsonSchema, say_waiting, text_of


class Text(Struct, frozen=True):
    """One line, whatever way the author broke it; with `paragraphs`, line breaks stay. At most `longest` characters."""

    paragraphs: bool = False
    called: str = "text"
    longest: int = 2_000

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> str | None:
        text = text_of(node, label, diagnostics, "text", "write some text after the colon")
        if text is None:
            return None
        if UNPRINTABLE.search(text) or not _encodable(text):
            diagnostics.error(node, f"{label} holds an unprintable character", "delete its escape")
            return None
        if len(text) > self.longest:
            diagnostics.error(node, f"{label} has {len(text)} characters", f"it may have {self.longest}")
            return None
        if not self.paragraphs:
            return " ".join(text.split())
        written = without_gaps(text)
        if written != text:
            say_waiting(node, f"a paragraph of {label}", diagnostics)
        return written

    def schema(self) -> JsonSchema:
        return {"type": ["string", "number", "boolean"]}

    def words(self) -> str:
        return self.called


def _encodable(text: str) -> bool:
    """An escape can name half a character."""
    return not any("\ud800" <= character <= "\udfff" for character in text)


LINE = Text()
PARAGRAPHS = Text(paragraphs=True, called="text, Markdown", longest=20_000)
NAME = Text(longest=100)
WORD = Text(called="word", longest=40)
