"""Every expected value names its source and the reason for its tolerance; each check here is shown to fail."""

from importlib import import_module
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from tests.gate import published
from tests.gate.sources import ROOT
from tests.published_values.record import LAST_DIGIT, Exactly, Given, Published, Table, rows_of

FOLDER = ROOT / "tests/published_values"
MODULES = sorted(path.stem for path in FOLDER.glob("*.py") if path.stem not in ("__init__", "record"))
FILES = sorted(FOLDER.glob("*.csv"))
THE_GATE_ITSELF = {ROOT / "tests/gate/published.py", Path(__file__)}
TESTS = sorted(set((ROOT / "tests").rglob("*.py")) - THE_GATE_ITSELF)
TOOLS = ("bench", "demo", "tools", "published_values")
TEXTS = [*TESTS, *FILES, *sorted((ROOT / "sitegen").rglob("*.py")), ROOT / "sitegen/catalogue/SOURCES.md"]

SOUND = Published(1.5, 0.1, "computed with Skyfield and DE421", LAST_DIGIT)


@pytest.mark.parametrize("name", MODULES)
def test_every_published_value_is_a_record(name: str) -> None:
    assert published.module_s_values(import_module(f"tests.published_values.{name}")) == []


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
def test_every_published_file_says_where_it_is_from(file: Path) -> None:
    assert published.file_s_values(file.name, rows_of(file), file.read_text("utf-8")) == []


def test_no_test_expects_a_number_from_nowhere() -> None:
    tests = [path for path in TESTS if path.relative_to(ROOT).parts[1] not in TOOLS]
    assert tests
    assert [line for path in tests for line in published.numbers_without_a_record(_name(path), path.read_text("utf-8"))] == []


def test_no_test_and_no_docstring_names_what_nobody_can_open() -> None:
    assert [line for path in TEXTS for line in published.names_what_nobody_can_open(_name(path), path.read_text("utf-8"))] == []


def _name(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


@pytest.mark.parametrize(
    ("thing", "fault"),
    [
        (1.5, "1.5 stands without a source"),
        ({"a": (SOUND, 1.5)}, r"X['a'][1]: 1.5 stands without a source"),
        (Published(1.5, 0.1, "", LAST_DIGIT), "names no source"),
        (Published(1.5, 0.1, "reference sheet", LAST_DIGIT), "names no source: 'reference sheet'"),
        (Published(1.5, 0.0, SOUND.source, LAST_DIGIT), "has no tolerance"),
        (Published(1.5, 0.1, SOUND.source, "1 %"), "gives no reason for its tolerance: '1 %'"),
        (Table({1: 2.0}, 0.1, SOUND.source, ""), "gives no reason"),
        (Exactly("so", "the project's references"), "names no source"),
        (Given((1.0, 2.0), ""), "names no source"),
    ],
)
def test_a_value_without_its_papers_is_told(thing: Any, fault: str) -> None:
    module = ModuleType("tests.published_values.harm")
    module.X = thing  # type: ignore[attr-defined]
    (complaint,) = published.module_s_values(module)
    assert complaint.startswith("tests/published_values/harm.py: X") and fault in complaint


def test_a_sound_value_passes() -> None:
    module = ModuleType("tests.published_values.sound")
    module.X = {"a": SOUND, "b": (SOUND, SOUND)}  # type: ignore[attr-defined]
    assert published.module_s_values(module) == []


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ("# tolerance: 1 arcmin\n# why: the last digit\nM 1,83.6\n", "names no source"),
        ("# source: SIMBAD, 2020\n# why: the last digit\nM 1,83.6\n", "has no '# tolerance: …'"),
        ("# source: SIMBAD, 2020\n# tolerance: 1 arcmin\nM 1,83.6\n", "gives no reason"),
        ("# source: SIMBAD, 2020\n# tolerance: 1 arcmin\n# why: the last digit\n", "has no rows"),
        ("# source: beside each\n# tolerance: none\n# why: a copy\nM 1,83.6,same\n", "M 1 names no source: 'same'"),
    ],
)
def test_a_file_without_its_papers_is_told(text: str, fault: str, tmp_path: Path) -> None:
    file = tmp_path / "harm.csv"
    file.write_text(text, "utf-8")
    (complaint,) = published.file_s_values(file.name, rows_of(file), text)
    assert fault in complaint


@pytest.mark.parametrize(
    "line",
    [
        "assert x == pytest.approx(1.5511, abs=1e-4)",
        "assert abs(ratio - 2.0005) <= 1e-3",
        "np.testing.assert_allclose(x, [3.1416])",
    ],
)
def test_a_number_from_nowhere_is_told(line: str) -> None:
    (complaint,) = published.numbers_without_a_record("tests/harm.py", line)
    assert complaint.startswith("tests/harm.py:1: ") and "stands without a source" in complaint


def test_a_number_of_one_s_own_is_let_through() -> None:
    assert published.numbers_without_a_record("tests/harm.py", "assert x == pytest.approx(12.5, abs=0.0001)") == []


@pytest.mark.parametrize(
    "words",
    ["as collected in the project's references", "(reference sheet)", "what the contract lists", "the issue's tolerance",
     "5° where it exceeds 2 px: the promise", "see formulae.md", "what the house asks"],
)  # fmt: skip
def test_a_document_that_nobody_can_open_is_told(words: str) -> None:
    (complaint,) = published.names_what_nobody_can_open("tests/harm.py", f'"""{words}."""')
    assert complaint.startswith("tests/harm.py:1: ") and "name the source itself" in complaint


@pytest.mark.parametrize("words", ["The contract of a chart", "a link, a reference", "the village, or the house"])
def test_other_words_are_let_through(words: str) -> None:
    assert published.names_what_nobody_can_open("tests/harm.py", words) == []
    assert published.names_what_nobody_can_open("tests/charts/harm.py", "no colour of the house") == []
