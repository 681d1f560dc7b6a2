"""Patterns find what the standard library's glob finds, and never take long over it."""

import glob
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sitegen.reading.content_folder import walk_content
from sitegen.reading.path_pattern import files_matching
from tests.reading.desks import diagnostics

FILES = (
    "logs/a.csv",
    "logs/b.csv",
    "logs/ab.fits",
    "logs/x/a.csv",
    "logs/x/y/a.csv",
    "logs/x/y/z.fits",
    "a.csv",
    "pictures/ab.png",
)
STEPS = st.sampled_from(["logs", "x", "y", "*", "**", "*.csv", "a*", "?.csv", "[ab].csv", "[!a]*", "a.csv", "*b*"])


@pytest.fixture(scope="module")
def tree(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("tree")
    for name in FILES:
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).touch()
    return root


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(steps=st.lists(STEPS, min_size=1, max_size=4))
def test_patterns_find_what_glob_finds(tree: Path, steps: list[str]) -> None:
    """Compared with glob.glob of the standard library over real files, '**' included."""
    pattern = "/".join(steps)
    folder, _ = walk_content(tree, "content")
    found = glob.glob(pattern, root_dir=tree, recursive=True)  # noqa: PTH207 -- the reference
    files = {path for path in found if (tree / path).is_file() and not path.endswith("/")}
    assert list(files_matching(pattern, folder)) == sorted(files)


def test_a_file_called_like_a_pattern_is_taken_at_its_word() -> None:
    """Capture programs put brackets into names."""
    folder = diagnostics("logs/[L] 300s.csv", "logs/L.csv").content
    assert files_matching("logs/[L] 300s.csv", folder) == ("logs/[L] 300s.csv",)
    assert files_matching("logs/[L].csv", folder) == ("logs/L.csv",)


def test_many_stars_take_no_time() -> None:
    """Each star could match anything: tried one by one, this would outlast the universe."""
    folder = diagnostics("logs/" + "a" * 200, *("/".join("abcdefgh" * 4) + f"/{n}" for n in range(3))).content
    assert files_matching("logs/" + "*a" * 60 + "b", folder) == ()
    assert files_matching("**/*/" * 12 + "nothing", folder) == ()
