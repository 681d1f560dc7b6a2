"""The prewarmed worker of a small rebuild: what it makes, what it says where it fails, and that it never outlives the first."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from tests.build.small_diary import entries, lay_out
from tests.processes import assert_all_end, children_of

ROOT = Path(__file__).resolve().parents[2]

fcntl = pytest.importorskip("fcntl")
pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="only there is a process copied")

TASKS = """
import os, signal, time

def doubled(context, chunk):
    return [context * each for each in chunk], os.getpid()

def failing(context, chunk):
    raise ValueError(f"{context} will not")

def dying(context, chunk):
    os.kill(os.getpid(), signal.SIGKILL)

def sleeping(context, chunk):
    time.sleep(600)
"""
HEAD = """
import os, signal, sys, time
from contextlib import closing
from sitegen.build.prewarmed import PrewarmedWorker

def loading(contexts):
    for part in range(3):
        open(f"loaded-{part}", "w").close()
        yield
"""


def said_by(script: str, where: Path) -> str:
    (where / "tasks.py").write_text(TASKS, "utf-8")
    done = subprocess.run([sys.executable, "-c", HEAD + script], cwd=where, capture_output=True, text=True, timeout=60)
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout.strip()


def test_it_loads_on_its_own_and_does_what_it_is_asked(tmp_path: Path) -> None:
    """The context is sent once; another process answers."""
    script = """
with closing(PrewarmedWorker(loading)) as worker:
    while not os.path.exists("loaded-2"):
        time.sleep(0.01)
    context = 7
    found, there = worker.do("tasks:doubled", context, [1, 2])
    again, _ = worker.do("tasks:doubled", context, [3])
    print(found, again, there != os.getpid(), worker.sent is context)
print(worker.do("tasks:doubled", 7, [1]))
"""
    assert said_by(script, tmp_path) == "[7, 14] [21] True True\nNone"


def test_what_a_task_raises_is_raised_here_and_the_next_task_is_done(tmp_path: Path) -> None:
    """As in this process."""
    script = """
with closing(PrewarmedWorker(loading)) as worker:
    try:
        worker.do("tasks:failing", "it", [1])
    except ValueError as told:
        print(told)
    print(worker.do("tasks:doubled", "a", [2])[0])
"""
    assert said_by(script, tmp_path) == "it will not\n['aa']"


def test_one_that_is_gone_leaves_the_work_to_this_process(tmp_path: Path) -> None:
    """Ended by the system for its memory, say."""
    script = """
with closing(PrewarmedWorker(loading)) as worker:
    print(worker.do("tasks:dying", 1, [1]), worker.process)
"""
    assert said_by(script, tmp_path) == "None None"


def test_ctrl_c_is_for_the_one_that_asks(tmp_path: Path) -> None:
    """It goes to every process of a terminal: this one is ended by the first, and says nothing."""
    script = """
with closing(PrewarmedWorker(loading)) as worker:
    os.kill(worker.process.pid, signal.SIGINT)
    print(worker.do("tasks:doubled", 2, [2])[0])
"""
    assert said_by(script, tmp_path) == "[4]"


def test_ending_waits_for_nothing(tmp_path: Path) -> None:
    """An error elsewhere must not wait for what is in hand."""
    script = """
worker = PrewarmedWorker(loading)
worker.pipe.send(("tasks:sleeping", 1, [1]))
pid, since = worker.process.pid, time.monotonic()
worker.close()
print(time.monotonic() - since < 30, os.path.exists(f"/proc/{pid}"))
"""
    assert said_by(script, tmp_path) == "True False"


def test_a_killed_rebuild_leaves_nobody_behind(tmp_path: Path) -> None:
    """It would hold the diary's lock for ever."""
    lay_out(tmp_path)
    rebuild = [sys.executable, "-m", "sitegen", "rebuild", "--quiet"]
    subprocess.run(rebuild, cwd=tmp_path, check=True)
    entry = entries(tmp_path / "content")[0]
    entry.write_text(entry.read_text("utf-8") + "\nMore.\n", "utf-8")
    process = subprocess.Popen(rebuild, cwd=tmp_path)
    while not (found := children_of(process.pid)) and process.poll() is None:
        time.sleep(0.002)
    process.kill()
    process.wait()
    assert found
    assert_all_end(found)
    subprocess.run(rebuild, cwd=tmp_path, check=True, timeout=60)


def test_it_does_not_hold_the_lock_of_one_that_was_killed(tmp_path: Path) -> None:
    """In the midst of a picture, say: the next rebuild must not wait for it."""
    script = """
import fcntl
lock = open("lock", "w")
fcntl.flock(lock, fcntl.LOCK_EX)
worker = PrewarmedWorker(loading)
while not os.path.exists("loaded-2"):
    time.sleep(0.01)
worker.pipe.send(("tasks:sleeping", 1, [1]))
print(worker.process.pid, flush=True)
os.kill(os.getpid(), signal.SIGKILL)
"""
    (tmp_path / "tasks.py").write_text(TASKS, "utf-8")
    with (tmp_path / "told").open("w") as told:
        subprocess.run([sys.executable, "-c", HEAD + script], cwd=tmp_path, stdout=told, stderr=told, timeout=60)
    left = int((tmp_path / "told").read_text())
    try:
        with (tmp_path / "lock").open() as lock:
            fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    finally:
        os.kill(left, signal.SIGKILL)


def test_the_first_one_loads_little(tmp_path: Path) -> None:
    """A sentence changed: what computes and draws is loaded by the prewarmed worker alone."""
    lay_out(tmp_path)
    subprocess.run([sys.executable, "-m", "sitegen", "rebuild", "--quiet"], cwd=tmp_path, check=True)
    entry = entries(tmp_path / "content")[0]
    entry.write_text(entry.read_text("utf-8").replace("In all", "Altogether"), "utf-8")
    time.sleep(0.05)
    script = """
from datetime import date
from pathlib import Path
from sitegen.folders import Folders
from sitegen.rebuild import rebuild
report = rebuild(Folders(Path("content"), Path("themes"), Path("output"), Path(".sitegen")), date.today())
heavy = ("numpy", "erfa", "jinja2", "markdown_it", "matplotlib", "sitegen.pages.card", "sitegen.facts.registry")
print(report.made["entries read"], report.changed > 0, [name for name in heavy if name in sys.modules])
"""
    assert said_by(script, tmp_path) == "1 True []"


def test_a_killed_pool_ends(tmp_path: Path) -> None:
    """Its processes hear nothing of the death of the one they wait for, and would wait for ever."""
    short = "import time\n\ndef short(context, chunk):\n    time.sleep(0.1)\n    return chunk\n"
    (tmp_path / "task.py").write_text(short, "utf-8")
    script = """
from sitegen.build.workers import WorkerPool
if __name__ == "__main__":
    with WorkerPool(None, 2) as pool:
        for result in pool.run("task:short", range(600), 1.0):
            print("working", flush=True)
"""
    (tmp_path / "script.py").write_text(script, "utf-8")
    surroundings = {**os.environ, "PYTHONPATH": os.pathsep.join([str(tmp_path), str(ROOT)])}
    command, heard = [sys.executable, "script.py"], subprocess.PIPE
    process = subprocess.Popen(command, cwd=tmp_path, env=surroundings, stdout=heard, stderr=subprocess.DEVNULL, text=True)
    assert process.stdout is not None and process.stdout.readline() == "working\n"
    found = children_of(process.pid)
    process.kill()
    process.wait()
    process.stdout.close()
    assert len(found) >= 2
    assert_all_end(found)


def test_the_bytes_are_those_of_one_process(tmp_path: Path) -> None:
    """A sentence changed, which feeds show, and a title: by two, and alone."""
    sites = []
    for name, options in (("two", []), ("one", ["--jobs", "1"])):
        folder = tmp_path / name
        folder.mkdir()
        lay_out(folder)
        entry = entries(folder / "content")[0]
        for old, new in (("", ""), ("In all", "Altogether"), ("title: ", "title: About ")):
            entry.write_text(entry.read_text("utf-8").replace(old, new, 1), "utf-8")
            time.sleep(0.05)
            subprocess.run([sys.executable, "-m", "sitegen", "rebuild", "--quiet", *options], cwd=folder, check=True)
        output = folder / "output"
        sites.append({path.relative_to(output): path.read_bytes() for path in output.rglob("*") if path.is_file()})
        assert b"About" in sites[-1][Path("index.html")] and b"About" in sites[-1][Path("atom.xml")]
    assert sites[0] == sites[1]
