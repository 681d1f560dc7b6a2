"""Commands run as on another machine, and the published folder that they leave."""

import os
import signal
import subprocess
import sys
from functools import partial
from pathlib import Path

from tests.conftest import ROOT

HOOK = Path(__file__).with_name("machine")


def start(folder: Path, machine: str, *words: str, options: tuple[str, ...] = (), **variables: str) -> "subprocess.Popen[str]":
    """`machine` as in `lacking.become`; the command is run in the diary's folder."""
    surroundings = {**os.environ, "PYTHONPATH": os.pathsep.join([str(HOOK), str(ROOT)]), "MACHINE": machine, **variables}
    command = [sys.executable, *options, "-m", "sitegen", *words]
    heard: dict[str, object] = {"stdout": subprocess.PIPE, "stderr": subprocess.PIPE}
    if os.name == "posix":  # where the tests run in the background of a script, Ctrl-C is ignored, and so by what they start
        heard["preexec_fn"] = partial(signal.signal, signal.SIGINT, signal.SIG_DFL)
    return subprocess.Popen(command, cwd=folder, env=surroundings, text=True, encoding="utf-8", errors="replace", **heard)  # type: ignore[call-overload,no-any-return]


def run(folder: Path, machine: str, *words: str, options: tuple[str, ...] = (), **variables: str) -> tuple[int, str, str]:
    """Exit status, standard output, standard error."""
    with start(folder, machine, *words, options=options, **variables) as process:
        said, told = process.communicate(timeout=240)
        return process.returncode, said, told
