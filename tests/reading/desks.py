"""A diagnostics to read at, without a diary round it."""

from datetime import date
from pathlib import Path
from typing import Any

from sitegen.reading.content_folder import ContentFolder
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node
from sitegen.reading.value_types.value_type import ValueType
from sitegen.reading.yaml_text import read_yaml

TODAY = date(2026, 11, 25)


def diagnostics(*files: str) -> Diagnostics:
    """On which content/ holds the files named."""
    folders = {file[:end] for file in files for end, letter in enumerate(file) if letter == "/"}
    folder = ContentFolder(Path("/nowhere"), "content", {file: file for file in files}, frozenset(folders), frozenset())
    return Diagnostics("content/x.yaml", folder, TODAY)


def node_of(text: str) -> Node:
    """The node a value typed behind a key becomes."""
    at = diagnostics()
    node = read_yaml(f"key: {text}\n", at)
    assert node is not None and not at.problems, at.problems
    return node.entries[0][1]  # type: ignore[union-attr]


def read(type_: ValueType, text: str, *files: str) -> tuple[Any, list[str]]:
    """What a type makes of a typed value, and the sentences it has for it."""
    at = diagnostics(*files)
    value = type_.read(node_of(text), "'key'", at)
    return value, [problem.wrong + (f"; {problem.remedy}" if problem.remedy else "") for problem in at.problems]
