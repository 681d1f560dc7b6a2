"""The cells of one row of a table, as they stand in its text."""

_SPECIAL = ('"', "\n", "\r")


def spans_of(text: str, delimiter: str) -> list[tuple[int, int]]:
    """From where to where each cell goes, blanks and quotation marks included."""
    if '"' not in text and delimiter != " ":
        return _plain_spans(text, delimiter)
    spans, start, is_quoted, is_doubled = [], 0, False, False
    for place, letter in enumerate(text):
        if is_doubled:
            is_doubled = False
        elif is_quoted:
            is_doubled = letter == '"' and text[place + 1 : place + 2] == '"'
            is_quoted = letter != '"' or is_doubled
        elif letter == '"' and not text[start:place].strip():  # inside a cell that began without one it is a letter
            is_quoted = True
        elif letter == delimiter:
            if delimiter == " " and not text[start:place].strip():
                start = place + 1
                continue
            spans.append((start, place))
            start = place + 1
    if delimiter != " " or text[start:].strip():
        spans.append((start, len(text)))
    return spans


def _plain_spans(text: str, delimiter: str) -> list[tuple[int, int]]:
    spans, start = [], 0
    for cell in text.split(delimiter):
        spans.append((start, start + len(cell)))
        start += len(cell) + len(delimiter)
    return spans


def quoted_cell(value: str, delimiter: str) -> str:
    """As CSV wants it: quoted where it holds what would end it; an empty one only where blanks part the cells."""
    if not value:
        return '""' if delimiter == " " else ""
    if delimiter in value or any(mark in value for mark in _SPECIAL) or value != value.strip():
        doubled = value.replace('"', '""')
        return f'"{doubled}"'
    return f'"{value}"' if value.startswith("#") else value
