"""What a YAML parser complains of, in an author's words, with the cure."""

import yaml
from msgspec import Struct


class Mistake(Struct, frozen=True):
    """`line` and `column` count from 0, in the text the parser was given."""

    line: int
    column: int
    wrong: str
    remedy: str


_SECOND_COLON = "mapping values are not allowed"
_NO_BRACKET = ("a list that began with '[' is not closed", "close it with ']' and put ',' between its items")
_NO_BRACE = ("a mapping that began with '{' is not closed", "close it with '}' and put ',' between its keys")

# A fragment of the parser's complaint, what the author sees, what to do. The first that fits is taken.
_KNOWN = (
    (r"\t", "a tab stands where YAML wants spaces", "indent with spaces"),
    (_SECOND_COLON, "a second ': ' stands in one line", "put quotes round text that holds ': '"),
    ("while scanning a quoted scalar", "a quotation mark is opened and not closed", "close it on the same line"),
    ("unexpected end of stream", "a quotation mark is opened and not closed", "close it on the same line"),
    ("could not find expected ':'", "this line is no 'key: value'", "put ': ' after the key, or indent it under the key above"),
    ("that cannot start any token", "a value cannot begin with this character", "put quotes round it"),
    ("unknown escape character", "a backslash in double quotes begins an escape", "use single quotes or '/'"),
    ("while scanning a double-quoted scalar", "a backslash in double quotes begins an escape", "use single quotes or '/'"),
    ("expected ',' or ']'", *_NO_BRACKET),
    ("expected ',' or '}'", *_NO_BRACE),
    ("while parsing a block mapping", "this line is not indented like the keys above", "align it with them"),
    ("while parsing a block collection", "this line is not indented like the items above", "align it with them"),
    ("expected alphabetic or numeric", "a value cannot begin with '*' or '&'", "put quotes round it"),
    ("while scanning an a", "a value cannot begin with '*' or '&'", "put quotes round it"),
    ("sequence entries are not allowed", "a '-' stands where no list can begin", "begin the list on a line of its own"),
    ("nesting depth", "lists and mappings nest too deep here", "nothing in a diary needs that"),
    ("expected the node content", "the value is missing or begins with a reserved character", "put quotes round it"),
)


def mistake_in(trouble: Exception, text: str) -> Mistake:
    """Where and what, for any complaint of the parser about the text."""
    said = str(trouble)
    line, column = _where(trouble)
    if _SECOND_COLON in said and ": " not in _before(text, line, column):
        return Mistake(line, column, "this line is indented deeper than the key above it", "align the two")
    for fragment, wrong, remedy in _KNOWN:
        if fragment in said:
            return Mistake(line, column, wrong, remedy)
    reason = getattr(trouble, "problem", None) or said.split("\n")[0] or "it cannot be parsed"
    return Mistake(line, column, f"is not YAML: {reason}", "put single quotes round the value")


def _where(trouble: Exception) -> tuple[int, int]:
    """The opening mark of a quotation or bracket never closed is where the author has to look; else where parsing stopped."""
    opened = getattr(trouble, "context_mark", None)
    stopped = getattr(trouble, "problem_mark", None) or opened
    looks_back = isinstance(trouble, yaml.MarkedYAMLError) and _never_closed(trouble)
    mark = opened if looks_back and opened is not None else stopped
    return (mark.line, mark.column) if mark is not None else (0, 0)


def _before(text: str, line: int, column: int) -> str:
    lines = text.split("\n")
    return lines[line][:column] if line < len(lines) else ""


def _never_closed(trouble: yaml.MarkedYAMLError) -> bool:
    return "quoted scalar" in str(trouble.context) or "flow" in str(trouble.context)
