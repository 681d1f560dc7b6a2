"""What several test folders share: the demo diary, built once a run."""

import shutil
import sys
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from filelock import FileLock
from playwright.sync_api import Browser, sync_playwright

from sitegen.folders import Folders
from sitegen.rebuild import rebuild

ROOT = Path(__file__).resolve().parents[1]
TODAY = date(2026, 11, 25)
ONLY_UNIX = ["fuzz/test_fuzz_slice.py", "build/test_prewarmed.py", "trust/test_bombs.py"]
collect_ignore = ONLY_UNIX if sys.platform == "win32" else []
"""They ask Unix for limits, alarms and copies of processes."""


@pytest.fixture(scope="session")
def demo_folders(tmp_path_factory: pytest.TempPathFactory, worker_id: str) -> Folders:
    """The demo diary built once, also where several test processes run side by side."""
    base = tmp_path_factory.getbasetemp()
    shared = base.parent if worker_id != "master" else base
    folders = Folders(ROOT / "content", ROOT / "themes", shared / "demo" / "output", shared / "demo" / "keep")
    folders.output.parent.mkdir(exist_ok=True)
    with FileLock(shared / "demo.lock"):
        if not folders.output.exists():
            rebuild(folders, TODAY)
    return folders


@pytest.fixture(scope="session")
def demo_site(demo_folders: Folders) -> Path:
    """The folder of the built demo diary."""
    return demo_folders.output


@pytest.fixture(scope="session")
def worker_id(request: pytest.FixtureRequest) -> str:
    """'master' where pytest runs in one process; pytest-xdist's own name of the process otherwise."""
    workerinput = getattr(request.config, "workerinput", None)
    return workerinput["workerid"] if workerinput else "master"


QUIET = """--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking
--disable-component-update --disable-sync"""


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Debian's chromium; a developer without it sees a skip that says how to get it."""
    found = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
    if found is None:
        pytest.skip("no chromium on this machine: apt-get install chromium")
    with sync_playwright() as playwright:
        one = playwright.chromium.launch(executable_path=found, args=QUIET.split())
        yield one
        one.close()
