"""How quick an author's evening is: check, preview in a real browser, gathering frames from a disk.

    python tests/bench/evening.py [check] [preview] [gather] [--entries 300] [--frames 5000] [--folder FOLDER]

Every figure is that of the command as it is typed, in a process of its own. `--folder` keeps the diary that was made.
Beside
wall time stand the load of the machine and, for check and gather, the processor time.
"""

import argparse
import os
import re
import resource
import shutil
import signal
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.bench.make_diary import Size, make_diary  # noqa: E402 # run as a script

SITEGEN = (sys.executable, "-m", "sitegen")
TIMES = 5


def run(*words: object, folder: Path) -> tuple[float, float, str]:
    """Wall and processor seconds, and what was said."""
    began, before = time.perf_counter(), resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run([*SITEGEN, *map(str, words)], cwd=folder, env=_environment(), capture_output=True, text=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    if done.returncode != 0:
        raise SystemExit(f"{words[0]} failed: {done.stderr}")
    spent = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return time.perf_counter() - began, spent, done.stdout + done.stderr


def _environment() -> dict[str, str]:
    return os.environ | {"PYTHONPATH": str(ROOT)}


def tell(what: str, wall: Sequence[float], spent: Sequence[float] = (), more: str = "") -> None:
    told = f"{what}: {min(wall):.2f} / {statistics.median(wall):.2f} / {max(wall):.2f} s"
    cpu = f", processor {statistics.median(spent):.2f} s" if spent else ""
    print(f"{told} (least, median, most of {len(wall)}){cpu}{more}, load {os.getloadavg()[0]:.1f}", flush=True)


def check(folder: Path, options: argparse.Namespace) -> None:
    """The demo, nothing changed since it was checked."""
    shutil.copytree(ROOT / "content", folder / "demo" / "content")
    time.sleep(0.05)
    wall, spent, _ = run("check", folder=folder / "demo")
    tell("check, the demo for the first time", [wall], [spent])
    runs = [run("check", folder=folder / "demo")[:2] for _ in range(TIMES)]
    tell("check, nothing changed", *map(list, zip(*runs, strict=True)))


def preview(folder: Path, options: argparse.Namespace) -> None:
    """From the save of one more sentence until it stands in the open page; the newest entry and the oldest take turns."""
    from playwright.sync_api import sync_playwright

    diary = options.folder or folder / "diary"
    if not (diary / "content").exists():
        make_diary(diary / "content", Size(options.entries))
    entries = sorted((diary / "content" / "entries").glob("*.md"))
    wall, spent, _ = run("rebuild", folder=diary)
    tell(f"rebuild of {len(entries)} entries before the preview", [wall], [spent])
    with _previewed(diary) as (address, rebuilds), sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        page = browser.new_page()
        saves = []
        for number in range(2 * TIMES):
            entry = entries[-1 if number % 2 else 0]
            page.goto(f"{address}entries/{entry.stem}/")
            page.wait_for_load_state("networkidle", timeout=5_000) if number == 0 else page.wait_for_timeout(300)
            text, words = entry.read_text("utf-8"), f"Sentence {time.time_ns()} was added."
            began = time.perf_counter()
            entry.write_text(f"{text}\n{words}\n", "utf-8")
            page.get_by_text(words).first.wait_for(state="attached", timeout=120_000)
            saves.append(time.perf_counter() - began)
            entry.write_text(text, "utf-8")
            page.get_by_text(words).first.wait_for(state="detached", timeout=120_000)
        browser.close()
    tell("preview, the first save", saves[:1])
    tell("preview, from the save to the browser", saves[1:], more=f", of it the rebuild {statistics.median(rebuilds()):.1f} s")


@contextmanager
def _previewed(diary: Path) -> Iterator[tuple[str, Callable[[], list[float]]]]:
    """The running command: its address, and what it said of its rebuilds once it has ended."""
    log = diary / "preview.log"
    with log.open("w") as said:
        process = subprocess.Popen([*SITEGEN, "preview", "--port", "18400"], cwd=diary, env=_environment(), stdout=said)
    try:
        while not re.search("rebuilt in", log.read_text()):
            time.sleep(0.1)
        yield log.read_text().split()[0], lambda: [float(one) for one in re.findall(r"rebuilt in ([\d.]+) s\n", log.read_text())]
    finally:
        process.send_signal(signal.SIGINT)
        process.wait()


def gather(folder: Path, options: argparse.Namespace) -> None:
    """Frames whose headers have 45 cards, in one folder, just written: what waits for a disk is not in it."""
    make_diary(folder / "frames" / "content", Size(1, fits=options.frames))
    captured = folder / "captured"
    next((folder / "frames" / "content" / "logs").glob("*/")).rename(captured)
    run("start", "own", folder=folder)
    wall, spent, _ = run("gather", "first-light", captured, "--quiet", folder=folder / "own")
    tell(f"gather, {options.frames} frames for the first time", [wall], [spent])
    wall, spent, _ = run("gather", "first-light", captured, "--quiet", folder=folder / "own")
    tell("gather, all of them known", [wall], [spent])


PARTS = {"check": check, "preview": preview, "gather": gather}


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("parts", nargs="*", metavar="PART", help=", ".join(PARTS))
    parser.add_argument("--entries", type=int, default=300)
    parser.add_argument("--frames", type=int, default=5000)
    parser.add_argument("--folder", type=Path)
    options = parser.parse_args()
    for name in options.parts or PARTS:
        with TemporaryDirectory(prefix="evening-") as folder:
            PARTS[name](Path(folder), options)


if __name__ == "__main__":
    main()
