"""sitegen gather: the headers of frames lying anywhere, distilled into one log of the diary."""

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Literal, NoReturn

import click

from sitegen.cli.names import ENTRY_NAME, RIG_NAME, TIME_ZONE
from sitegen.cli.progress import progress
from sitegen.cli.shared import folders_of, now_ns, places, print_json, problems_as_json, tell, today
from sitegen.problems import DiaryProblems, Problem, errors_in


@click.command(short_help="Frames anywhere into one log of the diary.")
@click.argument("name", type=ENTRY_NAME)
@click.argument("logs", metavar="LOG...", nargs=-1, type=click.Path())
@places
@click.option("--target", metavar="NAME", help="What the log shows; without it what the entry, else most frames name.")
@click.option("--rig", type=RIG_NAME, metavar="NAME", help="Whose frames are gathered; without it the entry's rig.")
@click.option("--discarded", multiple=True, metavar="PATTERN", help="Shell glob of frames that were thrown away; repeatable.")
@click.option("--kept-list", type=click.Path(exists=True, dir_okay=False, path_type=Path), metavar="FILE",
              help="A text or table naming the frames used: the others are discarded.")  # fmt: skip
@click.option("--gone", type=click.Choice(["keep", "discard"]), help="What to do with frames that are no longer there.")
@click.option("--time-zone", type=TIME_ZONE, metavar="ZONE", help="Clock of records that do not tell theirs; UTC without.")
@click.option("--no-names", is_flag=True, help="Leave the names of files out of the log.")
@click.option("--dry-run", is_flag=True, help="Tell everything, write nothing.")
@click.option("--undo", "is_undo", is_flag=True, help="Put the log back as it was before the last gathering.")
@click.option("--jobs", type=click.IntRange(1, 64), default=None, help="Files read at once; as many as suits the disk without.")
@click.option("--quiet", is_flag=True, help="Say only what is wrong.")
@click.option("--json", "as_json", is_flag=True, help="Report as JSON.")
def command(
    name: str,
    logs: tuple[str, ...],
    content: Path,
    themes: Path,
    output: Path,
    target: str | None,
    rig: str | None,
    discarded: tuple[str, ...],
    kept_list: Path | None,
    gone: Literal["keep", "discard"] | None,
    time_zone: str | None,
    no_names: bool,
    dry_run: bool,
    is_undo: bool,
    jobs: int | None,
    quiet: bool,
    as_json: bool,
) -> None:
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
    from sitegen.authoring.gather_answer import Answer, keep_answer, kept_answer, state_of

    folders, began_ns = folders_of(content, themes, output), now_ns()
    if is_undo:
        _undo(name, content, themes, output, quiet)
        return
    if not logs:
        raise click.UsageError("Missing argument 'LOG...'.")
    asked = (name, *logs, content, themes, output, target, rig, discarded, gone, time_zone, no_names, today())
    is_plain = not (as_json or dry_run or kept_list)
    words = list(map(str, asked))
    state = state_of(words, name, logs, folders, began_ns) if is_plain else None
    if (answer := kept_answer(state, name, folders)) is not None:
        _say(answer.problems, answer.lines, quiet)

    from sitegen.authoring.captures.memory import FrameMemory, unknown_to
    from sitegen.authoring.captures.walk import find_files
    from sitegen.authoring.gathering import GatherOptions, clock_of_site, gather
    from sitegen.cli.gathered import again, gathering_json, gathering_lines
    from sitegen.cli.retyped import Typed, options_typed, places_typed

    found = find_files(logs)
    if not found.paths and not found.passed_over:
        tell(found.problems)
        sys.exit(1)
    options = GatherOptions(target, rig, discarded, kept_list, gone, time_zone, not no_names, dry_run)
    memory = FrameMemory(folders.keep, began_ns)
    try:
        with progress(len(unknown_to(memory, found.frames)), "reading headers", quiet or as_json) as step:
            done = gather(name, found, memory, folders, today(), options, jobs, step)
    except DiaryProblems as wrong:
        tell(wrong.problems)
        sys.exit(1)
    problems = (*found.problems, *done.problems)
    typed = Typed("gather", name, logs, places_typed(content, themes, output), options_typed([
        ("--discarded", discarded), ("--kept-list", [kept_list]), ("--time-zone", [time_zone])]))  # fmt: skip
    if as_json:
        print_json({**gathering_json(done), "problems": problems_as_json(problems)})
        sys.exit(1 if errors_in(problems) else 0)
    zone = clock_of_site(name, folders, today())
    if is_plain:
        lines = tuple(gathering_lines(again(done), typed, folders, zone, is_dry=False))
        keep_answer(state_of(words, name, logs, folders, began_ns), name, folders, Answer(lines, problems))
    _say(problems, tuple(gathering_lines(done, typed, folders, zone, dry_run)), quiet)


def _say(problems: Sequence[Problem], lines: Sequence[str], quiet: bool) -> NoReturn:
    tell(problems)
    for line in () if quiet else lines:
        click.echo(line)
    sys.exit(1 if errors_in(problems) else 0)


def _undo(name: str, content: Path, themes: Path, output: Path, quiet: bool) -> None:
    from sitegen.authoring.gathering import undo

    try:
        log, problems = undo(name, folders_of(content, themes, output), today())
    except DiaryProblems as wrong:
        tell(wrong.problems)
        sys.exit(1)
    tell(problems)
    if not quiet:
        click.echo(f"{content}/{log}: put back as it was before the last gathering")
