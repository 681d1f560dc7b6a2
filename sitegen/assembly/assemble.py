"""The whole site's artifacts from the author's folders, and what is remembered for the next time."""

from collections.abc import Collection, Iterator
from pathlib import Path

from msgspec import Struct

from sitegen.artifact import Artifact
from sitegen.assembly.bench import CHARTS, Bench, Gone
from sitegen.assembly.crew import Crew
from sitegen.assembly.jobs import CARDS, CORES, ENTRIES, LOGS, STARS
from sitegen.assembly.ledger_file import DAMAGED, ledger_path, read_ledger, write_ledger
from sitegen.assembly.line import Line
from sitegen.assembly.picture_work import POINTINGS
from sitegen.assembly.records import Ledger
from sitegen.assembly.second_hand import SecondHand
from sitegen.assembly.steps import Steps
from sitegen.assembly.tally import Tally
from sitegen.diary import addresses
from sitegen.diary.settings import Settings
from sitegen.keeping import blobs
from sitegen.keeping.footprint import settled
from sitegen.keeping.keep import digest_of, key_of, read_pickle, write_pickle
from sitegen.keeping.makers import maker, work_versions
from sitegen.keeping.products import Product
from sitegen.keeping.standing import Look
from sitegen.keeping.sweep import sweep
from sitegen.pages.theme import Theme, open_theme
from sitegen.problems import Problem, errors_in, in_order
from sitegen.reading.frame import DiaryReading, Frame, read_frame

PICTURE_WORK, STAR_WORK = "sitegen.pictures.tasks", "sitegen.reading.star_measuring"
"""The modules whose results are kept under the version of what they import."""
PICTURES = "pictures"
Second = SecondHand | None

SWEEP_EVERY = 5
"""Looking for what is idle takes as long as drawing a page: not every rebuild does it."""


class Assembled(Struct):
    """`ledger` is None where the diary cannot be built; then a problem is an error."""

    bench: Bench | None
    ledger: Ledger | None
    problems: tuple[Problem, ...]
    tally: Tally

    def artifacts(self) -> Iterator[Artifact]:
        """Every file of the site, one after the other."""
        if self.bench is None or self.ledger is None:
            return
        keep = str(self.bench.keep)
        for product in products_of(self.ledger):
            yield product.artifact(keep)
        for name, content in self.bench.theme.static_files():
            yield Artifact(addresses.static(name), content)

    @property
    def entries(self) -> int:
        return len(self.ledger.facts) if self.ledger else 0

    @property
    def pages(self) -> int:
        return sum(product.path.endswith(".html") for product in products_of(self.ledger)) if self.ledger else 0


def products_of(ledger: Ledger) -> Iterator[Product]:
    for found in ledger.facts.values():
        yield from found.products
    for drawn in ledger.all_drawn():
        yield from (page for _, page in drawn.pages.values())


def assemble(
    look: Look, keep: Path, steps: Steps, jobs: int | None, checking: bool = False, trusting: bool = False, second: Second = None
) -> Assembled:
    """`keep` holds what was made before. `checking`: find every problem, draw nothing. `trusting`: kept files are not looked at,
    and may be found lost when they are published. `second` takes over small tasks."""
    tally = Tally()
    frame = read_frame(look.folders.content, look.today, str(look.folders.content))
    if isinstance(frame, DiaryReading):
        return Assembled(None, None, frame.problems, tally)
    settings = frame.settings or Settings("")
    theme, problems = open_theme(settings.theme, look.folders.themes)
    bench = bench_of(look.folders.content, frame, settings, theme, keep)
    path = ledger_path(keep, look.folders.content)
    tally.step("looking around")
    run = _Run(look, bench, steps, jobs, tally, tuple(problems), path, checking, trusting, second)
    try:
        return run.from_known(_remembered(path, bench.maker, tally))
    except Gone:
        tally.said.append(DAMAGED)
        return run.from_known(Ledger(bench.maker))


class _Run(Struct, frozen=True):
    look: Look
    bench: Bench
    steps: Steps
    jobs: int | None
    tally: Tally
    theme_problems: tuple[Problem, ...]
    ledger: Path
    checking: bool
    trusting: bool
    second: Second

    def from_known(self, known: Ledger) -> Assembled:
        marks = {name: settled(mark, self.look.looked_ns) for name, mark in self.look.content.items()}
        with Crew(self.bench, self.jobs, self.second) as crew:
            line = Line(self.bench, known, marks, crew, self.steps, self.tally, self.trusting)
            line.problems += self.bench.frame.problems
            whole = self._along(line)
        if not whole:
            line.now.carry_over(known)
        write_ledger(self.ledger, line.now)
        return Assembled(self.bench, line.now if whole else None, in_order(line.problems), self.tally)

    def _along(self, line: Line) -> bool:
        """Whether the line came to its end."""
        if not line.read():
            line.problems += self.theme_problems
            return False
        line.facts()
        line.problems += self.theme_problems
        if self.checking:
            line.check_texts()
        if self.checking or errors_in(line.problems) or not line.draw():
            return False
        line.lists()
        return True


def bench_of(content: Path, frame: Frame, settings: Settings, theme: Theme, keep: Path) -> Bench:
    made_by = maker()
    files = [(path.name, path.read_bytes()) for folder in theme.folders for path in _theme_files(folder)]
    look = key_of(made_by, digest_of(settings), digest_of(frame.known), digest_of(files), [str(path) for path in theme.folders])
    versions = work_versions((PICTURE_WORK, STAR_WORK), keep)
    return Bench(content, keep, frame, settings, theme, made_by, versions[PICTURE_WORK], versions[STAR_WORK], look)


def _theme_files(folder: Path) -> list[Path]:
    return sorted(path for part in ("templates", "words") for path in (folder / part).rglob("*") if path.is_file())


def _remembered(path: Path, made_by: str, tally: Tally) -> Ledger:
    known, said = read_ledger(path, made_by)
    tally.said += [said] if said else []
    return known


def tidy(done: Assembled, path: Path) -> None:
    """Sweeps out, now and then, what has not been used for long. Called when the site has been published."""
    ledger, bench = done.ledger, done.bench
    if ledger is None or bench is None:
        return
    note = ledger_path(bench.keep, path).with_suffix(".idle")
    since, idle = _idle(note)
    due = since + 1 >= SWEEP_EVERY
    write_pickle(note, (0, sweep(bench.keep, _in_use(ledger), idle)) if due else (since + 1, idle))


def _in_use(ledger: Ledger) -> dict[str, Collection[str]]:
    kept = [product.kept.split("/") for product in products_of(ledger)]
    return {
        blobs.FOLDER: {parts[-1] for parts in kept if parts[0] == blobs.FOLDER},
        PICTURES: {parts[1] for parts in kept if parts[0] == PICTURES},
        ENTRIES: {one.entry for one in ledger.read.values() if one.entry},
        LOGS: {one.logs for one in ledger.read.values()},
        POINTINGS: {name for found in ledger.facts.values() for name in found.pointings},
        CORES: {found.core for found in ledger.facts.values()},
        CARDS: {drawn.card for drawn in ledger.drawn.values()},
        STARS: {name for found in ledger.facts.values() for name in found.stars},
        CHARTS: {name for drawn in ledger.all_drawn() for name in drawn.charts},
    }


def _idle(note: Path) -> tuple[int, dict[str, int]]:
    """Rebuilds since the last sweep, and what was found unused then, how many times."""
    found = read_pickle(note)
    told = found[0] if found else None
    return told if isinstance(told, tuple) and len(told) == 2 else (0, {})
