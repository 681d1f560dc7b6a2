"""sitegen harvest: a whole disk of captures into logs, rigs, sites and draft entries."""

import sys
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click
from msgspec import Struct

from sitegen.cli.progress import progress
from sitegen.cli.shared import folders_of, now_ns, places, print_json, problems_as_json, tell, today
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems, Problem, errors_in

if TYPE_CHECKING:
    from sitegen.authoring.captures.record import FrameRecord
    from sitegen.authoring.captures.walk import FoundFiles
    from sitegen.authoring.gather_answer import SeenFile
    from sitegen.authoring.harvest.report import Harvest

ANSWER = ".harvest"
"""The name under which the last answer is kept: no entry can have it."""


@click.command()
@click.argument("captures", metavar="FOLDER...", nargs=-1, required=True, type=click.Path(exists=True, file_okay=False))
@places
@click.option("--no-names", is_flag=True, help="Leave the names of files out of the logs.")
@click.option("--dry-run", is_flag=True, help="Tell everything, write nothing.")
@click.option("--jobs", type=click.IntRange(1, 64), default=None, help="Files read at once; as many as suits the disk without.")
@click.option("--quiet", is_flag=True, help="Say only what is wrong.")
@click.option("--json", "as_json", is_flag=True, help="Report as JSON.")
def command(
    captures: tuple[str, ...],
    content: Path,
    themes: Path,
    output: Path,
    no_names: bool,
    dry_run: bool,
    jobs: int | None,
    quiet: bool,
    as_json: bool,
) -> None:
    """Read a whole disk of captures and draft the diary: logs, missing rigs and sites, one entry for each project.

    Every header below FOLDER is read once. Frames are sorted by target, rig, place and season: a gap of 90 nights begins
    another project. Without a diary one is begun. Every file is accounted for: counted, discarded, calibration, derived, set
    aside, other, unreadable, or unclear.

    What no header tells is asked, with the line that answers it. Answers about files stand in diary.yaml under
    'captures.answers', those about rigs and sites in their own files; what is answered is not asked again.

    Run it again after each night: new frames join their logs, frames that were moved among the rejected are discarded, and
    nothing that you wrote is touched.

    \b
    Examples:
      sitegen harvest /disk/captures --dry-run
      sitegen harvest /disk/captures /old-disk/astro
    """
    from sitegen.authoring.gather_answer import kept_answer

    folders = folders_of(content, themes, output)
    run = _Run(captures, folders, now_ns(), not (as_json or dry_run), no_names, quiet, as_json, dry_run, jobs)
    if (answer := kept_answer(run.state, ANSWER, folders)) is not None:
        _say(answer.problems, answer.lines, quiet)
    _harvest(run)


class _Run(Struct, frozen=True):
    captures: tuple[str, ...]
    folders: Folders
    began_ns: int
    is_plain: bool
    no_names: bool
    quiet: bool
    as_json: bool
    is_dry: bool
    jobs: int | None

    def state(self, seen: "tuple[SeenFile, ...] | None" = None) -> str | None:
        """What the answer depends on: the words typed, the frames as the system knows them, the diary's files."""
        from sitegen.authoring.gather_answer import state_of

        if not self.is_plain:
            return None
        words = tuple(map(str, ("harvest", *self.captures, self.folders.content, self.no_names, today(), self._diary_files())))
        return state_of(words, ANSWER, self.captures, self.folders, self.began_ns, seen)

    def _diary_files(self) -> tuple[tuple[str, int, int], ...]:
        files = (path for folder in ("entries", "logs") for path in sorted((self.folders.content / folder).rglob("*")))
        return tuple((path.name, status.st_size, status.st_mtime_ns) for path in files for status in (path.stat(),))


def _harvest(run: _Run) -> NoReturn:
    from sitegen.authoring.captures.memory import FrameMemory
    from sitegen.authoring.captures.walk import find_files
    from sitegen.authoring.gather_answer import Answer, keep_answer
    from sitegen.cli.harvested import again, harvest_json, harvest_lines

    memory = FrameMemory(run.folders.keep, run.began_ns)
    captures = find_files(run.captures)
    if captures.is_empty:
        _say(captures.problems, (), run.quiet)
    done = _harvested(run, captures, memory)
    problems = (*captures.problems, *done.problems)
    if run.as_json:
        print_json({**harvest_json(done), "problems": problems_as_json(problems)})
        sys.exit(1 if _is_wrong(problems) else 0)
    if run.is_plain and not _is_wrong(problems):
        lines = tuple(harvest_lines(again(done), run.folders, is_dry=False))
        keep_answer(run.state(captures.seen), ANSWER, run.folders, Answer(lines, problems))
    _say(problems, tuple(harvest_lines(done, run.folders, run.is_dry)), run.quiet)


def _harvested(run: _Run, captures: "FoundFiles", memory: object) -> "Harvest":
    """Ends the command where the diary cannot be read."""
    from sitegen.authoring.captures.memory import FrameMemory, unknown_to
    from sitegen.authoring.harvest.harvesting import HarvestOptions, harvest

    assert isinstance(memory, FrameMemory)
    options = HarvestOptions(run.is_dry, not run.no_names)
    try:
        with _shown(len(unknown_to(memory, captures.frames)), run.quiet or run.as_json) as (step, meet):
            return harvest(captures, memory, run.folders, today(), options, run.jobs, step, meet)
    except DiaryProblems as wrong:
        tell(wrong.problems)
        sys.exit(1)


@contextmanager
def _shown(total: int, quiet: bool) -> "Iterator[tuple[Callable[[str], None], Callable[[FrameRecord], None]]]":
    """A bar with the files, their speed, and what they were of so far."""
    if quiet:
        yield (lambda name: None), (lambda record: None)
        return
    objects: set[str] = set()
    began, count = time.monotonic(), 0

    def meet(record: "FrameRecord") -> None:
        if record.object:
            objects.add(record.object.casefold())

    with progress(total, "reading headers", quiet) as step:

        def show(name: str) -> None:
            nonlocal count
            count += 1
            speed = count / max(time.monotonic() - began, 0.001)
            step(f"{speed:.0f} a second, {len(objects)} objects so far")

        yield show, meet


def _is_wrong(problems: Sequence[Problem]) -> bool:
    """A file that cannot be read is accounted for, and no fault of the diary."""
    return bool(errors_in(problems))


def _say(problems: Sequence[Problem], lines: Sequence[str], quiet: bool) -> NoReturn:
    tell(problems)
    for line in () if quiet else lines:
        click.echo(line)
    sys.exit(1 if _is_wrong(problems) else 0)
