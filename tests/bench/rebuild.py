"""A rebuild of a diary of any size beside the bare library calls it cannot avoid, and the cases of everyday work.

    python tests/bench/rebuild.py [--entries 1000] [--pictures 0] [--fits 0] [--jobs 2] [--folder FOLDER] [--cases]

Each figure is processor time of the process and its children (user + system), so that a busy machine does not blur it; wall time
stands beside it. The bare calls read the same files, draw as many panels, render as many templates. README.md holds the table.
"""

import argparse
import csv
import io
import json
import os
import re
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from tests.bench.make_diary import Size, make_diary  # noqa: E402 # the path must be known first

PAGES_SAMPLED = 60


@dataclass(frozen=True)
class Spent:
    """Seconds of processor and of wall clock, and the largest process in megabytes."""

    cpu_s: float
    wall_s: float
    megabytes: float
    report: dict


def rebuilt(folder: Path, *options: str) -> Spent:
    """One `sitegen rebuild --json` as an author runs it, in a process of its own."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start = time.perf_counter()
    script = "import resource, sys; from sitegen.cli import main\ntry:\n main()\nfinally:\n" \
        " print(max(resource.getrusage(w).ru_maxrss for w in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)), file=sys.stderr)"
    told = subprocess.run(
        [sys.executable, "-c", script, "rebuild", "--json", *options],
        cwd=folder, capture_output=True, text=True, env={**os.environ, "PYTHONPATH": str(ROOT)},
    )  # fmt: skip
    if told.returncode:
        raise SystemExit(told.stdout + told.stderr)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu_s = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    peak = float(told.stderr.strip().splitlines()[-1]) / 1024
    return Spent(cpu_s, time.perf_counter() - start, peak, json.loads(told.stdout))


def bare_look(folder: Path) -> float:
    """A bare Python that stats every file that a look stats: the author's, the package's, the themes', the site's."""
    places = [str(place) for place in (folder / "content", folder / "output", ROOT / "sitegen", ROOT / "themes")]
    script = (
        "import os\n"
        f"waiting = {places!r}\n"
        "while waiting:\n"
        "    with os.scandir(waiting.pop()) as found:\n"
        "        for one in found:\n"
        "            waiting.append(one.path) if one.is_dir() else one.stat()\n"
    )
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run([sys.executable, "-c", script], check=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def cpu_s(work: Callable[[], object]) -> float:
    start = time.process_time()
    work()
    return time.process_time() - start


def bare_calls(folder: Path) -> Iterator[tuple[str, float]]:
    """Each library alone, on this diary: what no generator in Python that uses it can go below."""
    content, output = folder / "content", folder / "output"
    texts = [path.read_text("utf-8") for path in sorted((content / "entries").glob("*.md"))]
    yield "YAML compose (PyYAML, C loader) of every front matter", cpu_s(lambda: _yaml(texts))
    yield "csv.reader over every log", cpu_s(lambda: _csv(content))
    yield "FITS header blocks read bare", cpu_s(lambda: _fits(content))
    yield "markdown-it over every text", cpu_s(lambda: _markdown(texts))
    yield "ERFA: Sun, Moon, target of every sub", _erfa(sum(text.count("\n") - 1 for text in _logs(content)))
    yield "json.dumps of every facts.json", cpu_s(lambda: _json(output))
    panels = _panels(folder)
    each_s = _savefig()
    yield f"matplotlib savefig of {panels} panels, each {1000 * each_s:.0f} ms", panels * each_s
    yield "jinja2: every page's tags and text once", _jinja(output)
    yield "libvips: sizes of every picture", _vips(content)


def _logs(content: Path) -> list[str]:
    return [path.read_text("utf-8") for path in sorted((content / "logs").glob("*.csv"))]


def _yaml(texts: list[str]) -> None:
    import yaml

    for text in texts:
        yaml.compose(text.split("---\n")[1], Loader=yaml.CSafeLoader)


def _csv(content: Path) -> None:
    for text in _logs(content):
        list(csv.reader(io.StringIO(text)))


def _fits(content: Path) -> None:
    for path in (content / "logs").glob("*/*.fits"):
        with path.open("rb") as file:
            while b"END     " not in file.read(2880):
                pass


def _markdown(texts: list[str]) -> None:
    from markdown_it import MarkdownIt

    parser = MarkdownIt("commonmark")
    for text in texts:
        parser.render(text.split("---\n", 2)[2])


def _erfa(subs: int) -> float:
    import erfa
    import numpy as np

    days = np.linspace(0.0, 3650.0, subs)
    angle = np.full(subs, 0.3)

    def directions() -> None:
        erfa.moon98(2456000.5, days)
        astrom, _ = erfa.apco13(2456000.5, days, 0.0, 0.3, 0.8, 300.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.5)
        erfa.atioq(*erfa.atciqz(angle, angle, astrom), astrom)

    return cpu_s(directions)


def _json(output: Path) -> None:
    for path in output.glob("entries/*/facts.json"):
        json.dumps(json.loads(path.read_text("utf-8")), ensure_ascii=False, indent=1)


def _panels(folder: Path) -> int:
    """How many charts' panels were drawn: each is kept once."""
    return sum(path.read_bytes().count(b"</svg>") for path in (folder / ".sitegen" / "charts").glob("*"))


def _savefig() -> float:
    """Seconds of one bare panel: axes, a hundred dots, two ticked axes, a few words."""
    from matplotlib.backends.backend_svg import FigureCanvasSVG
    from matplotlib.figure import Figure

    def panel() -> None:
        figure = Figure(figsize=(4, 2.5))
        FigureCanvasSVG(figure)
        axes = figure.add_axes((0.1, 0.1, 0.8, 0.8))
        axes.plot(range(100), range(100), "o")
        for place in range(4):
            axes.text(place, place, "words")
        figure.savefig(io.StringIO(), format="svg")

    panel()
    return cpu_s(lambda: [panel() for _ in range(10)]) / 10


def _jinja(output: Path) -> float:
    """Every value that a page shows set once into its place: a bare template whose gaps are the page's own attributes and
    texts. Measured on some pages, told for all."""
    from jinja2 import Environment

    paths = sorted(output.rglob("*.html"))
    sample = paths[:: max(1, len(paths) // PAGES_SAMPLED)]
    env = Environment(autoescape=True)
    ready = []
    for path in sample:
        parts = re.split(r'(?<=")([^"<>]*)(?=")|(?<=>)([^<>]+)(?=<)', path.read_text("utf-8"))
        values = [part or "" for part in parts]
        ready.append((env.from_string("{% for one in values %}{{ one }}{% endfor %}"), values))
    spent = cpu_s(lambda: [template.render(values=values) for template, values in ready])
    return spent * sum(path.stat().st_size for path in paths) / max(1, sum(path.stat().st_size for path in sample))


def _vips(content: Path) -> float:
    pictures = sorted((content / "pictures").iterdir())
    if not pictures:
        return 0.0
    from sitegen.pictures.records import PictureSettings
    from sitegen.pictures.sizes import make_sizes

    def sizes() -> None:
        for path in pictures[:2]:
            with tempfile.TemporaryDirectory() as out:
                make_sizes(path, Path(out), PictureSettings())

    return cpu_s(sizes) * len(pictures) / min(2, len(pictures))


@contextmanager
def edited(path: Path, old: str, new: str) -> Iterator[None]:
    """The file with the edit, for as long as it is measured."""
    text = path.read_text("utf-8")
    path.write_text(text.replace(old, new), "utf-8")
    time.sleep(0.05)
    yield
    path.write_text(text, "utf-8")
    time.sleep(0.05)


def cases(folder: Path, entries: int) -> Iterator[tuple[str, Spent, str]]:
    """(case, what it took, at most) of everyday work on a diary that stands."""
    slug = f"night-work-{entries // 2:05d}"
    look_s = bare_look(folder)
    yield "nothing changed", rebuilt(folder), f"{max(0.3, 2 * look_s):.2f} s (0.3, or twice the bare look of {look_s:.2f}), 60 MB"
    with edited(folder / "content" / "entries" / f"{slug}.md", "In all", "Altogether"):
        yield "one sentence changed", rebuilt(folder), "1.0 s"
    rebuilt(folder)
    log = sorted((folder / "content" / "logs").glob(f"{slug}-*.csv"))[0]
    with edited(log, ",yes,", ",no,"):
        yield "one log changed", rebuilt(folder), "2.0 s"
    rebuilt(folder)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    for name, usual in (("entries", 1000), ("pictures", 0), ("fits", 0), ("jobs", 2)):
        parser.add_argument(f"--{name}", type=int, default=usual)
    parser.add_argument("--folder", type=Path, help="use this diary, made before; it is built first where it was not")
    parser.add_argument("--cases", action="store_true", help="only the everyday cases, on a diary that stands")
    told = parser.parse_args()
    with tempfile.TemporaryDirectory() as once:
        folder = told.folder or Path(once)
        if not (folder / "content").exists():
            make_diary(folder / "content", Size(told.entries, pictures=told.pictures, fits=told.fits))
        if not told.cases:
            time.sleep(0.1)
            _print_cold(rebuilt(folder, "--fresh", "--jobs", str(told.jobs)), folder, told.entries)
        for name, spent, most in cases(folder, told.entries):
            print(f"  {name:44} {spent.cpu_s:8.2f} s cpu {spent.wall_s:8.2f} s wall {spent.megabytes:6.0f} MB   at most {most}")


def _print_cold(spent: Spent, folder: Path, entries: int) -> None:
    print(f"{entries} entries from nothing: {spent.cpu_s:.1f} s cpu, {spent.wall_s:.1f} s wall, {spent.megabytes:.0f} MB the "
          f"largest process, {1000 * spent.cpu_s / entries:.0f} ms cpu an entry")  # fmt: skip
    for step, seconds in spent.report["seconds"].items():
        print(f"  step {step:39} {seconds:8.2f} s wall")
    total = 0.0
    for name, seconds in bare_calls(folder):
        total += seconds
        print(f"  bare {name:60} {seconds:8.2f} s cpu")
    print(f"  all bare calls {total:.1f} s cpu; the rebuild takes {spent.cpu_s / total:.2f} times as much (at most 1.3)")


if __name__ == "__main__":
    main()
