"""The bare library calls that a rebuild of a diary cannot avoid, on that diary's own files: what no generator in Python that uses
these libraries can go below. Processor seconds, each library alone."""

import csv
import io
import json
import re
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PAGES_SAMPLED = 60
PANEL = re.compile(r'<svg class="panel.*?</svg>', re.DOTALL)
NUMBER = re.compile(r"(-?\d+\.?\d*)")


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


def bare_on(cores: int, folder: Path) -> list[tuple[str, float]]:
    """`bare_calls` in as many processes at once as a rebuild has, as cores that share clock and cache are slower together.
    The mean of what each spent."""
    with ProcessPoolExecutor(cores, get_context("spawn")) as pool:
        every = list(pool.map(_listed, [folder] * cores))
    return [(same[0][0], sum(seconds for _, seconds in same) / cores) for same in zip(*every, strict=True)]


def _listed(folder: Path) -> list[tuple[str, float]]:
    return list(bare_calls(folder))


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
    panels = panels_in(output)
    yield f"numbers of {len(panels)} panels of charts and maps written into their text once", cpu_s(lambda: _written(panels))
    yield "jinja2: every page's tags and text once", _jinja(output)
    yield "libvips: every picture's sizes, its full JPEG, its tiles", _of_pictures(content, _vips)
    yield "sep: background and extraction of every picture once", _of_pictures(content, _sep)


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


def panels_in(output: Path) -> list[tuple[list[str], list[float]]]:
    """Each panel that was published, once however many pages show it: its text between the numbers, and the numbers."""
    texts = {svg for path in output.rglob("*.html") for svg in PANEL.findall(path.read_text("utf-8"))}
    split = [NUMBER.split(svg) for svg in sorted(texts)]
    return [(parts[::2], [float(number) for number in parts[1::2]]) for parts in split]


def _written(panels: list[tuple[list[str], list[float]]]) -> None:
    for between, numbers in panels:
        written = [f"{text}{number:.2f}" for text, number in zip(between[:-1], numbers, strict=True)]
        "".join((*written, between[-1]))


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


def _of_pictures(content: Path, bare: Callable[[Path], float]) -> float:
    """Measured on two pictures, told for all: they are alike."""
    pictures = sorted((content / "pictures").iterdir())
    sample = pictures[:2]
    return sum(map(bare, sample)) * len(pictures) / len(sample) if sample else 0.0


def _vips(path: Path) -> float:
    """Each width made once and held while it is encoded three times; the full picture encoded and tiled in a pass each."""
    import pyvips

    from sitegen.pictures.records import PictureSettings

    told = PictureSettings()

    def outputs() -> None:
        for width in told.widths_px:
            image = pyvips.Image.thumbnail(str(path), width).copy_memory()
            form = {"compression": "av1", "effort": told.avif_effort, "subsample_mode": "off", "keep": "none"}
            image.heifsave_buffer(Q=told.avif_quality, **form)
            image.webpsave_buffer(Q=told.webp_quality, effort=2, keep="none")
            image.jpegsave_buffer(Q=told.jpeg_quality, optimize_coding=True, interlace=True, keep="none")
        whole = pyvips.Image.new_from_file(str(path), access="sequential")
        whole.jpegsave_buffer(Q=told.full_quality, keep="none")
        again = pyvips.Image.new_from_file(str(path), access="sequential")
        suffix = f".jpg[Q={told.tile_quality},subsample_mode=off]"
        with tempfile.TemporaryDirectory() as out:
            again.dzsave(f"{out}/tiles", layout="iiif3", tile_size=told.tile_px, suffix=suffix, keep="none")

    return cpu_s(outputs)


def _sep(path: Path) -> float:
    """On the picture's brightness at the width at which its stars are looked for."""
    import numpy as np
    import pyvips
    import sep

    from sitegen.pictures.pointing import LOOKED_AT_PX

    grey = pyvips.Image.thumbnail(str(path), LOOKED_AT_PX).colourspace("b-w").numpy().astype(np.float32)

    def extracted() -> None:
        background = sep.Background(grey)
        sep.set_extract_pixstack(grey.size)
        sep.extract(grey - background.back(), 5.0, err=background.globalrms)

    return cpu_s(extracted)
