"""Ctrl-C ends the preview whatever it is doing: pages that hold their streams open, a rebuild in hand, a script's background."""

import http.client
import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator, Sequence
from multiprocessing import active_children
from pathlib import Path
from typing import Any

import pytest

from sitegen.build.workers import WorkerPool
from sitegen.folders import Folders

# The command as it is, but for the rebuild: one that never ends, or one that has nothing to do.
PROGRAM = """
import sys, time
from sitegen.authoring.preview import Built
from sitegen.cli import main, preview
def build(folders, jobs, quiet):
    print("building", flush=True)
    time.sleep(SECONDS)
    return Built((), False)
preview._build = build
main(["preview", "--port", "18300"], prog_name="sitegen")
"""
PATIENCE_S = 10


def ignoring(*signals: int) -> None:
    for number in signals:
        signal.signal(number, signal.SIG_IGN)


@pytest.fixture(params=[(signal.SIGINT, 600), (signal.SIGTERM, 0)], ids=["Ctrl-C in a rebuild", "asked to end between saves"])
def running(request: pytest.FixtureRequest, folders: Folders) -> Iterator[tuple[subprocess.Popen[str], int]]:
    """The command as a script in the background starts it, deaf to Ctrl-C; and what shall end it."""
    number, seconds = request.param
    command = [sys.executable, "-c", PROGRAM.replace("SECONDS", str(seconds))]
    environment = os.environ | {"PYTHONPATH": str(Path(__file__).resolve().parents[2])}
    process = subprocess.Popen(
        command, cwd=folders.content.parent, env=environment, text=True, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
        preexec_fn=lambda: ignoring(signal.SIGINT),
    )  # fmt: skip
    yield process, number
    process.kill()
    process.wait()


def test_it_ends_in_every_state(running: tuple[subprocess.Popen[str], int]) -> None:
    """An open page's stream, a connection on which nothing was asked, and a rebuild without end: it ends quietly, status 0."""
    process, number = running
    assert process.stdout is not None
    address = process.stdout.readline().split()[0]
    port = int(address.rstrip("/").rpartition(":")[2])
    stream = http.client.HTTPConnection("127.0.0.1", port, timeout=PATIENCE_S)
    stream.request("GET", "/-/news")
    assert stream.getresponse().fp.readline().startswith(b"data: ")
    with socket.create_connection(("127.0.0.1", port)):
        assert process.stdout.readline() == "building\n"
        process.send_signal(number)
        said, _ = process.communicate(timeout=PATIENCE_S)
    stream.close()
    assert (process.returncode, [line for line in said.splitlines() if "rebuilt in" not in line]) == (0, [])


SLOW_WORK = "tests.authoring.test_preview_ends:slow_work"


def slow_work(context: Any, chunk: Sequence[Path]) -> list[bytes]:
    """The first is done at once, and more than a pipe holds; the others take long, and leave a mark."""
    if chunk[0].name != "0":
        time.sleep(PATIENCE_S)
        chunk[0].touch()
    return [bytes(1_000_000) for _ in chunk]


def test_work_in_hand_is_not_waited_for(tmp_path: Path) -> None:
    """Whoever leaves the pool early, leaves no process behind and no work that still goes on."""
    marks = [tmp_path / str(number) for number in range(4)]
    with pytest.raises(KeyboardInterrupt), WorkerPool(None, 2) as pool:  # type: ignore[arg-type] # the work needs no context
        next(pool.run(SLOW_WORK, marks, 10.0))
        raise KeyboardInterrupt
    assert active_children() == []
    assert list(tmp_path.iterdir()) == []


POOL = """
import sys
from pathlib import Path
from sitegen.build.workers import WorkerPool
from sitegen.authoring.preview import Built
from sitegen.cli import main, preview
def build(folders, jobs, quiet):
    with WorkerPool(None, 2) as pool:
        done = pool.run("tests.authoring.test_preview_ends:slow_work", [Path(str(number)) for number in range(4)], 10.0)
        next(done)
        print("building", flush=True)
        list(done)
    return Built((), False)
preview._build = build
main(["preview", "--port", "18320"], prog_name="sitegen")
"""


def test_nothing_is_said_of_semaphores(folders: Folders) -> None:
    """Ctrl-C while a pool of processes draws: what watches over their semaphores has nothing to warn of."""
    environment = os.environ | {"PYTHONPATH": str(Path(__file__).resolve().parents[2])}
    with subprocess.Popen(
        [sys.executable, "-c", POOL], cwd=folders.content.parent, env=environment, text=True, stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
    ) as process:  # fmt: skip
        assert process.stdout is not None
        assert process.stdout.readline().startswith("http://127.0.0.1:")
        assert process.stdout.readline() == "building\n"
        process.send_signal(signal.SIGINT)
        said, _ = process.communicate(timeout=6 * PATIENCE_S)
    assert (process.returncode, said) == (0, "")
