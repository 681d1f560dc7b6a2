"""How quick an author's evening is: check, preview in a real browser, gathering frames from a disk, beginning an entry.

    python tests/bench/evening.py [check] [preview] [gather] [begin] [--entries 300] [--frames 5000] [--folder FOLDER]

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
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np
from astropy.io import fits

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
    """As installed: with compiled code kept."""
    return {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"} | {"PYTHONPATH": str(ROOT)}


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


FILTERS = ("L", "R", "G", "B", "Ha", "OIII")
RIG = """name: Bench
telescope: {focal_length_mm: 800}
camera: {pixel_um: 3.76, width_px: 8, height_px: 8, colour: mono}
filters: {L: {kind: broadband}, R: {kind: broadband}, G: {kind: broadband}, B: {kind: broadband}, Ha: {kind: narrowband},
  OIII: {kind: narrowband}}
"""
START = datetime(2026, 4, 18, 9, tzinfo=UTC)


def write_frames(folder: Path, count: int) -> list[Path]:
    """Cards written by astropy, some 60 of which a handful change from frame to frame; 8 × 8 pixels, 250 frames a folder; old, so
    that they count as settled."""
    constant = {name: _constant_cards(name) for name in FILTERS}
    paths, old = [], time.time() - 2000
    for number in range(count):
        start = (START + timedelta(seconds=307.25 * number)).replace(tzinfo=None)
        changing = {"DATE-OBS": start.isoformat(timespec="milliseconds"), "CCD-TEMP": -10 + number % 5 / 10}
        changing |= {"RA": 11.888 + number % 40 / 4000, "DEC": -25.288, "FOCUSPOS": 5000 + number // 30}
        cards = constant[FILTERS[number // 7 % 6]] + "".join(fits.Card(*card).image for card in changing.items()) + "END"
        path = folder / f"{number // 250:03d}" / f"{number:06d}.fits"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(cards.ljust(-(-len(cards) // 2880) * 2880).encode() + bytes(2880))
        os.utime(path, (old, old))
        paths.append(path)
    return paths


def _constant_cards(filter_name: str) -> str:
    cards: dict[str, object] = {"IMAGETYP": "Light Frame", "OBJECT": "NGC 253", "EXPTIME": 300.0, "TIMESYS": "UTC", "GAIN": 100}
    cards |= {"FILTER": filter_name, "XBINNING": 1, "XPIXSZ": 3.76, "YPIXSZ": 3.76, "FOCALLEN": 800.0}
    cards |= {"SITELAT": -32.6, "SITELONG": 139.0} | {f"NOTE{index:03d}": f"{index} of a program" for index in range(38)}
    return fits.PrimaryHDU(np.zeros((8, 8), np.int16), fits.Header(cards)).header.tostring(endcard=False, padding=False)


def bare_blocks(paths: Sequence[Path]) -> float:
    """Processor seconds of opening each file and reading its header blocks up to END."""
    began = time.process_time()
    for path in paths:
        with path.open("rb") as file:
            while b"END     " not in file.read(2880):
                pass
    return time.process_time() - began


def bare_stat(paths: Sequence[Path]) -> float:
    """Processor seconds."""
    began = time.process_time()
    for path in paths:
        path.stat()
    return time.process_time() - began


def gather(folder: Path, options: argparse.Namespace) -> None:
    """Into a diary's new log; first with nothing remembered, then with nothing changed. Files are in the system's cache: what
    waits for a disk is in none of the figures."""
    paths = write_frames(folder / "captured", options.frames)
    own = folder / "own"
    run("start", "own", folder=folder)
    (own / "content/rigs/first-train.yaml").write_text(RIG)
    blocks, stats = min(bare_blocks(paths) for _ in range(TIMES)), min(bare_stat(paths) for _ in range(TIMES))
    start_up = min(run("--help", folder=own)[1] for _ in range(TIMES))
    print(f"bare, processor: headers of {options.frames} frames {blocks:.3f} s, stat {stats:.3f} s; --help {start_up:.3f} s")
    first, again = [], []
    for _ in range(TIMES):
        shutil.rmtree(own / ".sitegen", ignore_errors=True)
        (own / "content/logs/first-light.ecsv").unlink(missing_ok=True)
        first.append(run("gather", "first-light", folder / "captured", "--quiet", "--target", "NGC 253", folder=own)[:2])
        again += [run("gather", "first-light", folder / "captured", "--quiet", "--target", "NGC 253", folder=own)[:2]]
    tell(f"gather, {options.frames} frames for the first time", *map(list, zip(*first, strict=True)),
         more=f", limit {3 * blocks + start_up:.2f} s (3 × bare + start-up)")  # fmt: skip
    tell("gather, all of them known", *map(list, zip(*again, strict=True)),
         more=f", limit {2 * stats + start_up:.2f} s (2 × stat + start-up)")  # fmt: skip


def begin(folder: Path, options: argparse.Namespace) -> None:
    """A new entry from four times as many frames, with nothing remembered."""
    write_frames(folder / "many", 4 * options.frames)
    run("start", "own-too", folder=folder)
    (folder / "own-too/content/rigs/first-train.yaml").write_text(RIG)
    wall, spent, said = run("begin", "many", folder / "many", folder=folder / "own-too")
    lines = len(said.splitlines())
    tell(f"begin, {4 * options.frames} frames", [wall], [spent], f", limit 15 s of processor, {lines} lines said")


PARTS = {"check": check, "preview": preview, "gather": gather, "begin": begin}


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
