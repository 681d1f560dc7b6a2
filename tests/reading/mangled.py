"""Author files as hypothesis mangles them: structure from YAML's own characters, and slips in a text that was right."""

from hypothesis import strategies as st

from tests.entries.diary_text import HERE, read_diary_text

SOUND = {path: text for path, _, _, text in read_diary_text(HERE / "sound.diary").parts}
MARKS = [
    *(
        "---",
        ": ",
        "- ",
        "\n",
        "  ",
        "\t",
        "{",
        "}",
        "[",
        "]",
        ",",
        "&a ",
        "*a",
        "!!",
        "!x ",
        "'",
        '"',
        "|\n",
        ">\n",
        "# ",
        "? ",
        "%",
        "@",
    ),
    *(
        "`",
        "<<: ",
        "~",
        "null",
        "..",
        "../",
        "\\",
        "/",
        "\0",
        "\x1b",
        "\ufeff",
        "\u2028",
        "\x85",
        "\ud7ff",
        "𝌆",
        "e\u0301",
        "9" * 400,
    ),
    *("1e999", "nan", "-", ".", "con", "**/", "[!", "*", "javascript:", "http://[", "2026-02-30", "NGC", "M 0", "24 60 60", "°"),
]
KEYS = [
    *(
        "title",
        "published",
        "target",
        "rig",
        "site",
        "logs",
        "files",
        "pictures",
        "file",
        "alt",
        "solution",
        "ra",
        "dec",
        "nights",
    ),
    *("wanted", "columns", "filters", "changes", "from", "telescope", "camera", "horizon", "time_zone", "language", "address"),
]
PIECES = st.one_of(st.sampled_from(MARKS), st.sampled_from(KEYS), st.text(max_size=8))
SOUP = st.lists(PIECES, max_size=40).map("".join)


@st.composite
def slips(draw: st.DrawFn, text: str) -> str:
    """The text with a few pieces put in, taken out, or doubled."""
    for _ in range(draw(st.integers(1, 4))):
        at = draw(st.integers(0, len(text)))
        end = draw(st.integers(at, min(len(text), at + 30)))
        text = text[:at] + draw(st.one_of(PIECES, st.just(text[at:end] * 2), st.just(""))) + text[end:]
    return text
