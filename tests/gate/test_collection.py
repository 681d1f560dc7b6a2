"""Every file of tests is one that pytest looks into. By default it passes over folders of some names, `build` among them."""

from fnmatch import fnmatch
from pathlib import Path

import pytest

from tests.conftest import ROOT


def passed_over(paths: list[Path], patterns: list[str]) -> list[str]:
    return sorted(str(path) for path in paths if any(fnmatch(part, pattern) for part in path.parts[:-1] for pattern in patterns))


def test_no_file_of_tests_is_passed_over(pytestconfig: pytest.Config) -> None:
    """By the names of their folders."""
    paths = [path.relative_to(ROOT) for path in (ROOT / "tests").rglob("test_*.py")]
    assert len(paths) > 100
    assert passed_over(paths, pytestconfig.getini("norecursedirs")) == []


def test_a_folder_that_is_passed_over_is_told() -> None:
    """As one was for a day."""
    paths = [Path("tests/build/test_graph.py"), Path("tests/sky/test_moon.py")]
    assert passed_over(paths, ["*.egg", "build"]) == ["tests/build/test_graph.py"]
