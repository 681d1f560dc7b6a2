"""sitegen gather: the headers of frames lying anywhere, distilled into one log of the diary."""

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Literal, NoReturn

import click
from msgspec import Struct

from sitegen.cli.names import ENTRY_NAME, RIG_NAME, TIME_ZONE
from sitegen.cli.progress import progress
from sitegen.cli.shared import folders_of, now_ns, places, print_json, problems_as_json, tell, today
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems, Problem, errors_in

if TYPE_CHECKING:
    from sitegen.authoring.gather_answer import SeenFile
    from sitegen.authoring.gathering import GatherOptions
    from sitegen.cli.retyped import Typed


@click.command()
@click.argument("name", type=ENTRY_NAME)
@click.argument("logs", metavar="LOG...", nargs=-1, type=click.Path())
@places
@click.option("--target", metavar="NAME", help="What the log shows; without it what the entry, else most frames name.")
@click.option("--rig", type=RIG_NAME, metavar="NAME", help="Whose frames are gathered; without it the entry's rig.")
@click.option("--discarded", multiple=True, metavar="PATTERN", help="Shell glob of frames that were thrown away; repeatable.")
@click.option("--kept-list", type=click.Path(exists=True, dir_okay=False, path_type=Path), metavar="FILE",
              help="A text or table naming the frames used: the others are discarded.")  # fmt: skip
@click.option("--measures", type=click.Path(exists=True, dir_okay=False, path_type=Path), metavar="FILE",
              help="A grading table of the frames, by name or start.")  # fmt: skip
@click.option("--gone", type=click.Choice(["keep", "discard"]), help="What to do with frames that are no longer there.")
@click.option("--time-zone", type=TIME_ZONE, metavar="ZONE", help="Clock of records that do not tell theirs; UTC without.")
@click.option("--columns", multiple=True, metavar="KEY=HEADING,...", help="What a table calls its columns; answers about it.")
@click.option("--lines", multiple=True, metavar="PATTERN", help="What a line of a text log looks like; repeatable.")
@click.option("--no-names", is_flag=True, help="Leave the names of files out of the log.")
@click.option("--dry-run", is_flag=True, help="Tell everything, write nothing.")
@click.option("--undo", "is_undo", is_flag=True, help="Put the log back as it was before the last gathering.")
@click.option("--jobs", type=click.IntRange(1, 64), default=None, help="Files read at once; as many as suits the disk without.")
@click.option("--quiet", is_flag=True, help="Say only what is wrong.")
@click.option("--json", "as_json", is_flag=True, help="Report as JSON.")
def command(
    name: str,
    logs: tuple[str, ...],
    content: Path, themes: Path, output: Path,
    target: str | None,
    rig: str | None,
    discarded: tuple[str, ...],
    kept_list: Path | None,
    measures: Path | None,
    gone: Literal["keep", "discard"] | None,
    time_zone: str | None,
    columns: tuple[str, ...],
    lines: tuple[str, ...],
    no_names: bool,
    dry_run: bool,
    is_undo: bool,
    jobs: int | None,
    quiet: bool,
    as_json: bool,
) -> None:  # fmt: skip
    """Distil the headers of frames into logs/NAME.ecsv, so that the frames can stay where they are.

    LOG is a frame, a table, a folder (searched with its folders) or a pattern in quotes. Each file is told apart: calibrated,
    registered and backed-up copies, combined frames and focus runs are not counted; frames of another target or train are
    set aside, with the command that gathers them.

    Run it again after each night: frames it has are recognised, wherever they were moved, and what you wrote into the log
    (kept, reason, note, comments) stays. The log remembers file names, pointing and the place to 0.1 degree; they are never
    published. The entry NAME, where there is one, names the log from then on.

    \b
    Examples:
      sitegen gather sculptor /disk/captures/sculptor
      sitegen gather sculptor /disk/captures --target 'NGC 253' --discarded 'cloudy_*'
      sitegen gather helix '/disk/2026-04-*/Light*.fits.fz' --kept-list used.txt --quiet
      sitegen gather helix --undo
    """
    from sitegen.authoring.gather_answer import kept_answer

    folders = folders_of(content, themes, output)
    if is_undo:
        _undo(name, folders, quiet)
        return
    if not logs:
        raise click.UsageError("Missing argument 'LOG...'.")
    asked = (name, *logs, content, themes, output, target, rig, discarded, gone, time_zone, no_names, today())
    is_plain = not (as_json or dry_run or kept_list or columns or lines or measures)
    run = _Run(name, logs, folders, now_ns(), tuple(map(str, asked)) if is_plain else None, quiet, as_json, dry_run)
    if (answer := kept_answer(run.state, name, folders)) is not None:
        _say(answer.problems, answer.lines, quiet)

    from sitegen.authoring.gathering import GatherOptions
    from sitegen.cli.retyped import Typed, options_typed, places_typed

    options = GatherOptions(target, rig, discarded, kept_list, gone, time_zone, not no_names, dry_run, columns, lines, measures)
    typed = Typed("gather", name, logs, places_typed(content, themes, output), options_typed([
        ("--discarded", discarded), ("--kept-list", [kept_list]), ("--time-zone", [time_zone]), ("--columns", columns),
        ("--lines", lines), ("--measures", [measures])]), target, rig)  # fmt: skip
    _gather(run, options, typed, jobs)


class _Run(Struct, frozen=True):
    """`words` are all that an answer from memory depends on beside files; None where there is none to be had."""

    name: str
    logs: tuple[str, ...]
    folders: Folders
    began_ns: int
    words: tuple[str, ...] | None
    quiet: bool
    as_json: bool
    is_dry: bool

    def state(self, seen: "tuple[SeenFile, ...] | None" = None) -> str | None:
        """`seen` as in `state_of`: what has changed since those files were read, the next run shall notice."""
        from sitegen.authoring.gather_answer import state_of

        if self.words is None:
            return None
        return state_of(self.words, self.name, self.logs, self.folders, self.began_ns, seen)


def _gather(run: _Run, options: "GatherOptions", typed: "Typed", jobs: int | None) -> NoReturn:
    from sitegen.authoring.captures.memory import FrameMemory, unknown_to, with_folders
    from sitegen.authoring.captures.walk import find_files
    from sitegen.authoring.gather_answer import Answer, keep_answer
    from sitegen.authoring.gathering import clock_of_site, gather
    from sitegen.cli.gathered import again, gathering_json, gathering_lines

    memory = FrameMemory(run.folders.keep, run.began_ns)
    captures = find_files(with_folders(run.logs, memory))
    if captures.is_empty:
        _say(captures.problems, (), run.quiet)
    try:
        with progress(len(unknown_to(memory, captures.frames)), "reading headers", run.quiet or run.as_json) as step:
            done = gather(run.name, captures, memory, run.folders, today(), options, jobs, step)
    except DiaryProblems as wrong:
        tell(wrong.problems)
        sys.exit(1)
    problems = (*captures.problems, *done.problems)
    if run.as_json:
        print_json({**gathering_json(done), "problems": problems_as_json(problems)})
        sys.exit(1 if errors_in(problems) else 0)
    zone = clock_of_site(run.name, run.folders, today())
    if run.words is not None and not errors_in(problems):
        lines = tuple(gathering_lines(again(done), typed, run.folders, zone, is_dry=False))
        keep_answer(run.state(captures.seen), run.name, run.folders, Answer(lines, problems))
    _say(problems, tuple(gathering_lines(done, typed, run.folders, zone, run.is_dry)), run.quiet)


def _say(problems: Sequence[Problem], lines: Sequence[str], quiet: bool) -> NoReturn:
    tell(problems)
    for line in () if quiet else lines:
        click.echo(line)
    sys.exit(1 if errors_in(problems) else 0)


def _undo(name: str, folders: Folders, quiet: bool) -> None:
    from sitegen.authoring.gathering import undo

    try:
        log, problems = undo(name, folders, today())
    except DiaryProblems as wrong:
        tell(wrong.problems)
        sys.exit(1)
    tell(problems)
    if not quiet:
        click.echo(f"{folders.content}/{log}: put back as it was before the last gathering")
