"""One more log in the front matter, and not a character more."""

import pytest

from sitegen.authoring.front_matter_edit import with_log

CASES = {
    "no logs": ("---\ntitle: A\n---\nText\n", "---\ntitle: A\nlogs: [logs/x.ecsv]\n---\nText\n"),
    "brackets": ("---\nlogs: [a.csv]  # mine\n---\n", "---\nlogs: [a.csv, logs/x.ecsv]  # mine\n---\n"),
    "empty brackets": ("---\nlogs: []\n---\n", "---\nlogs: [logs/x.ecsv]\n---\n"),
    "brackets over lines": (
        "---\nlogs: [\n  a.csv,  # one\n  b.csv\n]\n---\n",
        "---\nlogs: [\n  a.csv,  # one\n  b.csv\n, logs/x.ecsv]\n---\n",
    ),
    "nothing behind it": ("---\nlogs:  # later\ntitle: A\n---\n", "---\nlogs: [logs/x.ecsv]  # later\ntitle: A\n---\n"),
    "a list": (
        "---\nlogs:\n  - a.csv  # first\n  # a remark\n\ntitle: A\n---\n",
        "---\nlogs:\n  - a.csv  # first\n  - logs/x.ecsv\n  # a remark\n\ntitle: A\n---\n",
    ),
    "a list at the margin": ("---\nlogs:\n- a.csv\n---\n", "---\nlogs:\n- a.csv\n- logs/x.ecsv\n---\n"),
    "a list of mappings": (
        "---\nlogs:\n  - files: a.csv\n    rig: b\n# end\ntitle: A\n---\n",
        "---\nlogs:\n  - files: a.csv\n    rig: b\n  - logs/x.ecsv\n# end\ntitle: A\n---\n",
    ),
    "windows": ("---\r\ntitle: A\r\n---\r\n", "---\r\ntitle: A\r\nlogs: [logs/x.ecsv]\r\n---\r\n"),
}


@pytest.mark.parametrize("name", CASES)
def test_the_log_is_put_in(name: str) -> None:
    """Comments, blank lines, line ends and order stay as the author typed them."""
    text, wanted = CASES[name]
    assert with_log(text, "logs/x.ecsv") == wanted


@pytest.mark.parametrize(
    "text",
    ["no front matter", "---\nlogs: a.csv\n---\n", "---\n{title: A}\n---\n", "---\nlogs: [a\n---\n", "---\ntitle: A\n"],
)
def test_what_cannot_be_added_to_is_left_to_the_author(text: str) -> None:
    """Rather nothing than a guess."""
    assert with_log(text, "logs/x.ecsv") is None
