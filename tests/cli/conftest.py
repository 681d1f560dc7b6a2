"""A new diary to run commands in."""

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from sitegen.cli import main

Run = Callable[..., Result]


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    """Runs a command line in tmp_path, where the diary 'diary' was started."""
    monkeypatch.chdir(tmp_path)
    started = CliRunner().invoke(main, ["start", "diary"])
    assert started.exit_code == 0, started.output
    monkeypatch.chdir(tmp_path / "diary")
    return lambda *words: CliRunner().invoke(main, list(map(str, words)))
