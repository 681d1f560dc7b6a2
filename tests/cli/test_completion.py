"""Completion, by the shells themselves."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.cli.conftest import Run


@pytest.fixture
def path(tmp_path: Path) -> str:
    """A PATH on which `sitegen` is this package."""
    script = tmp_path / "bin/sitegen"
    script.parent.mkdir()
    program = "from sitegen.cli import main; main(prog_name='sitegen')"
    script.write_text(f'#!/bin/sh\nexec {sys.executable} -c "{program}" "$@"\n', "utf-8")
    script.chmod(0o755)
    return f"{script.parent}:/usr/bin:/bin"


def shell(path: str, program: str, text: str) -> list[str]:
    found = shutil.which(program)
    if found is None:
        pytest.skip(f"no {program} on this machine: apt-get install {program}")
    root = str(Path(__file__).resolve().parents[2])
    environment = {"PATH": path, "HOME": "/nonexistent", "PYTHONPATH": root}
    done = subprocess.run([found, "-c", text], env=environment, capture_output=True, text=True, timeout=60, check=True)
    assert done.stderr == ""
    return done.stdout.split()


BASH = """eval "$(_SITEGEN_COMPLETE=bash_source sitegen)"
complete -p sitegen >/dev/null
for line in "sitegen ga" "sitegen gather fir"; do
COMP_WORDS=($line); COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); COMPREPLY=(); _sitegen_completion sitegen; echo "${COMPREPLY[@]}"
done"""
ZSH = """autoload -U compinit; compinit -D -u
eval "$(_SITEGEN_COMPLETE=zsh_source sitegen)"
echo ${_comps[sitegen]}
env COMP_WORDS="sitegen outlook --cal" COMP_CWORD=2 _SITEGEN_COMPLETE=zsh_complete sitegen"""


def test_bash_completes_commands_and_entries(run: Run, path: str) -> None:
    """The one line that the help gives is enough."""
    assert "_SITEGEN_COMPLETE=bash_source sitegen" in run("--help").stdout
    assert shell(path, "bash", BASH) == ["gather", "first-light"]


def test_zsh_completes_options(run: Run, path: str) -> None:
    """The function is registered, and answers in zsh's own form."""
    assert "_SITEGEN_COMPLETE=zsh_source sitegen" in run("--help").stdout
    assert shell(path, "zsh", ZSH)[:3] == ["_sitegen_completion", "plain", "--calendar"]
