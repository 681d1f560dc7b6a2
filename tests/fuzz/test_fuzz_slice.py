"""A small slice of the fuzzing; tests/fuzz/harness.py does the long run."""

from pathlib import Path
from random import Random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.fuzz import harness
from tests.fuzz.harness import Tally, fuzz, one_input
from tests.fuzz.targets import TARGETS, Target, Wrong, markdown

BRIEF = settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck), derandomize=True)
COUNT = {"picture": 20, "exif": 30}
BY_NAME = {target.name: target for target in TARGETS}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("fuzz")


@pytest.mark.parametrize("name", BY_NAME)
def test_mutated_files_are_taken_or_refused(folder: Path, name: str) -> None:
    """Sixty of each kind (fewer where each takes long), always the same."""
    tally = fuzz(BY_NAME[name], COUNT.get(name, 60), 2026, folder)
    assert tally.failures == []
    assert tally.inputs == COUNT.get(name, 60)


@pytest.mark.parametrize("name", ["front matter", "yaml", "csv", "fits header", "markdown"])
def test_hypothesis_may_choose_the_mutation(folder: Path, name: str) -> None:
    """The same mutations with hypothesis behind the chance, so that what it finds it also shrinks."""
    target = BY_NAME[name]

    @BRIEF
    @given(chance=st.randoms(use_true_random=False))
    def answers(chance: Random) -> None:
        target.answer(target.make(chance), folder)

    answers()


def _raising(_: bytes, __: Path) -> str:
    raise KeyError("no reader's answer")


def _writing(_: bytes, folder: Path) -> str:
    (folder.parent / "outside").write_text("x")
    return "taken"


def _endless(_: bytes, __: Path) -> str:
    while True:
        pass


@pytest.mark.parametrize(("answer", "sentence"), [(_raising, "KeyError"), (_writing, "wrote outside"), (_endless, "more than")])
def test_the_harness_sees_a_failure(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, answer: object, sentence: str) -> None:
    """An exception, a file outside, an answer without end: each counts as a failure, so that none means something."""
    monkeypatch.setattr(harness, "HANG_S", 0.1)
    broken = Target("broken", lambda: [b"x"], lambda content, _: content, answer)  # type: ignore[arg-type]
    (tmp_path / "inside").mkdir()
    tally = Tally("broken")
    harness._listen()
    assert sentence in (one_input(broken, b"x", tmp_path / "inside", tally) or "")


@pytest.mark.parametrize("html", ['<a onclick="x">', "<script>", '<a href="java\tscript:x">', '<img src="data:text/html,x">'])
def test_the_judge_of_markdown_sees_what_must_not_be(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, html: str) -> None:
    """Were raw HTML let through, the judge would say so."""
    monkeypatch.setattr("tests.fuzz.targets.to_inline_html", lambda _: html)
    with pytest.raises(Wrong, match=r"came out of Markdown|a link to"):
        markdown(b"text", tmp_path)
