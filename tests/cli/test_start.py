"""What the program loads before it answers: a help, a completion and a check of a diary that stands wait for no library."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from sitegen.cli.registry import COMMANDS
from tests.build.small_diary import lay_out

ROOT = Path(__file__).resolve().parents[2]
HEAVY = (
    "numpy", "scipy", "astropy", "erfa", "matplotlib", "pyvips", "PIL", "sep", "babel", "jinja2", "markdown_it", "yaml", "rich",
    "multiprocessing",
    "sitegen.build.work", "sitegen.facts", "sitegen.pages.card", "sitegen.pages.words", "sitegen.pictures", "sitegen.stars",
)  # fmt: skip
"""Libraries that take a hundredth of a second and more, and the rooms that stand on them."""
PROGRAM = f"""
import atexit, sys
atexit.register(lambda: sys.stderr.write("loaded: " + " ".join(name for name in {HEAVY} if name in sys.modules)))
from sitegen.cli import main
main(prog_name="sitegen")
"""


def loaded_by(*words: str, where: Path, **environment: str) -> tuple[str, list[str]]:
    """What the program prints, and the heavy modules that it has loaded when it ends."""
    surroundings = {**os.environ, "PYTHONPATH": str(ROOT), **environment}
    command = [sys.executable, "-c", PROGRAM, *words]
    done = subprocess.run(command, cwd=where, env=surroundings, capture_output=True, text=True, check=True, timeout=60)
    return done.stdout, done.stderr.rpartition("loaded:")[2].split()


def completed(line: str, where: Path) -> tuple[str, list[str]]:
    words = str(line.count(" "))
    return loaded_by(where=where, _SITEGEN_COMPLETE="bash_complete", COMP_WORDS=line, COMP_CWORD=words)


def test_the_help_loads_no_heavy_library(tmp_path: Path) -> None:
    """Nor the file of any command: the list is a table."""
    said, heavy = loaded_by("--help", where=tmp_path)
    assert all(f"  {name} " in said and line in said for name, line in COMMANDS.items())
    assert heavy == []


@pytest.mark.parametrize("name", COMMANDS)
def test_no_command_loads_one_for_its_help_or_its_options(tmp_path: Path, name: str) -> None:
    """They load when it has work to do."""
    said, heavy = loaded_by(name, "--help", where=tmp_path)
    assert said.startswith(f"Usage: sitegen {name} ")
    assert heavy == []
    offered, heavy = completed(f"sitegen {name} --he", tmp_path)
    assert offered == "plain,--help\n"
    assert heavy == []


def test_the_completion_of_a_command_loads_none(tmp_path: Path) -> None:
    """All of them, in their order, and those that begin alike."""
    assert completed("sitegen ", tmp_path) == ("".join(f"plain,{name}\n" for name in COMMANDS), [])
    assert completed("sitegen re", tmp_path) == ("plain,rebuild\n", [])


def test_a_check_with_nothing_changed_loads_none(tmp_path: Path) -> None:
    """Its answer is kept; the first check loads what it needs."""
    lay_out(tmp_path)
    first, heavy = loaded_by("check", where=tmp_path)
    assert "yaml" in heavy
    assert loaded_by("check", where=tmp_path) == (first, [])
