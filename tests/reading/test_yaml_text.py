"""YAML becomes text in its places, and nothing an author can write makes it anything else."""

import pytest
import yaml

from sitegen.reading import yaml_text
from sitegen.reading.nodes import ListNode, MapNode, TextNode
from sitegen.reading.yaml_text import DEEPEST, read_yaml
from tests.reading.desks import diagnostics

needs_c_parser = pytest.mark.skipif(not yaml.__with_libyaml__, reason="PyYAML was built without its C parser: install its wheel")


@pytest.fixture(params=[pytest.param("fast", marks=needs_c_parser), "plain"])
def either_parser(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    """The parser in C, and the one in Python for systems without it."""
    monkeypatch.setattr(yaml_text, "FAST_LOADER", yaml.CSafeLoader if request.param == "fast" else yaml.SafeLoader)


@pytest.mark.usefixtures("either_parser")
@pytest.mark.parametrize(
    "typed", ["12:30", "+41:16", "no", "NO", "007", "0x1F", "1e3", "2026-04-18", "true", "1_000", ".inf", "=", "<<"]
)
def test_scalars_stay_text(typed: str) -> None:
    """YAML 1.1 would make 750, 2476, False, 7, 31 and dates of these; the schema decides instead."""
    node = read_yaml(f"key: {typed}", diagnostics())
    assert isinstance(node, MapNode)
    assert node.entries[0][1] == TextNode(typed, 1, 6)


@pytest.mark.usefixtures("either_parser")
def test_every_key_and_value_has_its_place() -> None:
    """Lines and columns count from 1, from the line of the file in which the text begins."""
    text = "title: Ä Helix\nlogs:\n  - a.csv\n  - {files: 'b.csv'}\n"
    node = read_yaml(text, diagnostics(), first_line=2)
    assert isinstance(node, MapNode)
    (title, words), (logs, items) = node.entries
    assert [(title.line, title.column), (words.line, words.column)] == [(2, 1), (2, 8)]
    assert [(logs.line, logs.column), (items.line, items.column)] == [(3, 1), (4, 3)]
    assert isinstance(items, ListNode) and isinstance(items.items[1], MapNode)
    key, value = items.items[1].entries[0]
    assert [(key.line, key.column), (value.line, value.column)] == [(5, 6), (5, 13)]
    assert value == TextNode("b.csv", 5, 13, plain=False)


@pytest.mark.usefixtures("either_parser")
def test_empty_is_what_nobody_quoted() -> None:
    """A bare key, '~' and 'null' are empty; the same words in quotes are words."""
    node = read_yaml("a:\nb: ~\nc: null\nd: ''\ne: 'null'\n", diagnostics())
    assert isinstance(node, MapNode)
    assert [value.empty for _, value in node.entries if isinstance(value, TextNode)] == [True, True, True, False, False]


@pytest.mark.usefixtures("either_parser")
def test_a_small_alias_is_what_it_stands_for() -> None:
    """An author who knows anchors may use them."""
    at = diagnostics()
    node = read_yaml("a: &x [1, 2]\nb: *x\n", at)
    assert isinstance(node, MapNode) and at.problems == []
    assert node.entries[0][1] == node.entries[1][1]


@pytest.mark.usefixtures("either_parser")
@pytest.mark.parametrize("text", ["[" * 5000, "- " * 5000 + "x", "{a: " * 5000, "? " * 5000, "[" * 5000 + "]" * 5000])
def test_deep_nesting_is_one_problem(text: str) -> None:
    """However deep, it ends before any stack does."""
    at = diagnostics()
    assert read_yaml(text, at) is None
    assert [problem.wrong for problem in at.problems] in (
        [f"lists and mappings nest deeper than {DEEPEST} levels here"],
        ["lists and mappings nest too deep here"],
    )


@pytest.mark.usefixtures("either_parser")
def test_aliases_cannot_multiply() -> None:
    """Nine lines that stand for ten thousand million values are refused after the first thousand."""
    lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x, x]"]
    lines += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10)}]" for n in range(1, 10)]
    at = diagnostics()
    assert read_yaml("\n".join(lines), at) is None
    assert [str(problem) for problem in at.problems] == [
        "content/x.yaml:3:50: error: YAML aliases expand to more than 1000 values up to here; write them out"
    ]


@pytest.mark.usefixtures("either_parser")
@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("title: a: b", "1:9: error: a second ': ' stands in one line; put quotes round text that holds ': '"),
        ("title: a\n  more: b", "2:7: error: this line is indented deeper than the key above it; align the two"),
        ("a: [1, 2", "1:4: error: a list that began with '[' is not closed; close it with ']' and put ',' between its items"),
        ('a: "b', "1:4: error: a quotation mark is opened and not closed; close it on the same line"),
        ("a: @b", "1:4: error: a value cannot begin with this character; put quotes round it"),
        ("a: 1\n\tb: 2", "2:1: error: a tab stands where YAML wants spaces; indent with spaces"),
    ],
)
def test_slips_are_told_alike_by_both_parsers(text: str, said: str) -> None:
    """An author is not to see on which machine the diary is rebuilt."""
    at = diagnostics()
    assert read_yaml(text, at) is None
    assert [str(problem) for problem in at.problems] == [f"content/x.yaml:{said}"]
