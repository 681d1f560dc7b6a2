"""Whatever stands in an author's file, the answer is a diary or problem lines."""

from pathlib import Path

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sitegen.problems import errors_in
from sitegen.reading.content_folder import walk_content
from sitegen.reading.documents import documents_of, single_document
from sitegen.reading.entry_targets import targets_of
from sitegen.reading.front_matter import split_entry
from sitegen.reading.model.registry import AUTHOR_FILES
from sitegen.reading.reader import read_diary
from sitegen.reading.yaml_text import read_yaml
from tests.entries.diary_text import HERE, lay_out, read_diary_text
from tests.reading.desks import TODAY, diagnostics
from tests.reading.mangled import SOUND, SOUP, slips

BRIEF = settings(max_examples=80, deadline=None, suppress_health_check=list(HealthCheck), derandomize=True)
AUTHORED = sorted(path for path in SOUND if path.endswith((".md", ".yaml")))


@pytest.fixture(scope="module")
def content(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("fuzz") / "content"
    lay_out(read_diary_text(HERE / "sound.diary"), root)
    return root


@BRIEF
@given(text=SOUP)
def test_any_text_is_yaml_or_a_problem(text: str) -> None:
    """None without a problem stands for a text that holds nothing, as PyYAML's own composer sees it."""
    at = diagnostics()
    if read_yaml(text, at) is None and not at.problems:
        assert yaml.compose(text, yaml.SafeLoader) is None
    split_entry(text, diagnostics())


@BRIEF
@given(text=SOUP)
def test_any_text_can_be_typed_behind_any_key(text: str) -> None:
    """Each type takes it or says why not."""
    for model in AUTHOR_FILES:
        for key in model.group.keys:
            at = diagnostics("logs/a.csv", "pictures/a.png")
            node = read_yaml(f"{key.name}: {text}", at)
            if node is None or at.problems:
                continue
            values = model.group.read(node, "x", at)
            if values is not None and model.name == "entry":
                targets_of(values, at)
            assert all(problem.line >= 1 and problem.column >= 1 and problem.wrong for problem in at.problems)


@BRIEF
@given(data=st.data(), path=st.sampled_from(AUTHORED))
def test_any_slip_leaves_a_diary_or_lines_in_that_file(content: Path, data: st.DataObject, path: str) -> None:
    """With places that lie inside the file."""
    text = data.draw(slips(SOUND[path]))
    (content / path).write_text(text, encoding="utf-8", newline="")
    try:
        reading = read_diary(content, TODAY)
    finally:
        (content / path).write_text(SOUND[path], encoding="utf-8", newline="")
    assert (reading.diary is None) == bool(errors_in(reading.problems))
    lines = len(text.replace("\r\n", "\n").replace("\r", "\n").split("\n"))
    assert all("\n" not in str(problem) for problem in reading.problems)
    assert all(problem.line <= lines + 1 for problem in reading.problems if problem.path == f"content/{path}")


@BRIEF
@given(raw=st.binary(max_size=200), path=st.sampled_from(AUTHORED))
def test_any_bytes_are_text_or_a_problem(content: Path, raw: bytes, path: str) -> None:
    """Whatever was written over an author's file."""
    (content / path).write_bytes(raw)
    folder, _ = walk_content(content, "content")
    try:
        for model in AUTHOR_FILES:
            single_document(model, folder, TODAY) if "/" not in model.pattern else documents_of(model, folder, TODAY)
    finally:
        (content / path).write_text(SOUND[path], encoding="utf-8", newline="")
