"""sitegen begin: a new entry pre-filled from capture logs."""

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from sitegen.cli.names import ENTRY_NAME, RIG_NAME, TIME_ZONE
from sitegen.cli.progress import progress
from sitegen.cli.shared import folders_of, now_ns, places, print_json, problems_as_json, tell, today
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems, errors_in

if TYPE_CHECKING:
    from sitegen.authoring.captures.walk import FoundFiles
    from sitegen.authoring.gathering import GatherOptions
    from sitegen.authoring.new_entry import Beginning


@click.command()
@click.argument("name", type=ENTRY_NAME)
@click.argument("logs", metavar="LOG...", nargs=-1, required=True, type=click.Path())
@places
@click.option("--target", metavar="NAME", help="What the entry shows; without it what most frames name.")
@click.option("--rig", type=RIG_NAME, metavar="NAME", help="Whose frames are taken; without it the one that headers tell.")
@click.option("--discarded", multiple=True, metavar="PATTERN", help="Shell glob of frames that were thrown away; repeatable.")
@click.option("--time-zone", type=TIME_ZONE, metavar="ZONE", help="Clock of records that do not tell theirs; UTC without.")
@click.option("--no-names", is_flag=True, help="Leave the names of files out of the log.")
@click.option("--dry-run", is_flag=True, help="Tell everything, write nothing.")
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
    time_zone: str | None,
    no_names: bool,
    dry_run: bool,
    jobs: int | None,
    quiet: bool,
    as_json: bool,
) -> None:
    """Begin the entry NAME from capture logs: target, rig, site, nights and filters as far as they tell.

    LOG is a frame, a table, a folder or a pattern in quotes. Logs inside the diary's content/ are named where they lie;
    from all others, logs/NAME.ecsv is gathered, which counts what 'sitegen gather' counts. What was guessed is marked
    'to be confirmed' with what it was guessed from, what only you can write 'To write:'. An entry that exists is never
    touched.

    \b
    Examples:
      sitegen begin sculptor /disk/captures/sculptor
      sitegen begin helix content/logs/helix/*.csv
    """
    from sitegen.authoring.captures.walk import find_files
    from sitegen.authoring.gathering import GatherOptions, clock_of_site
    from sitegen.cli.gathered import beginning_json, beginning_lines
    from sitegen.cli.retyped import Typed, options_typed, places_typed

    folders = folders_of(content, themes, output)
    captures = find_files(logs)
    if not captures.paths:
        tell(captures.problems)
        sys.exit(1)
    options = GatherOptions(target, rig, discarded, None, None, time_zone, not no_names, dry_run)
    done = _begun(name, captures, folders, options, jobs, quiet or as_json)
    problems = (*captures.problems, *done.problems)
    typed = Typed("begin", name, logs, places_typed(content, themes, output), options_typed([
        ("--discarded", discarded), ("--time-zone", [time_zone])]), target, rig)  # fmt: skip
    if as_json:
        print_json({**beginning_json(done), "problems": problems_as_json(problems)})
    else:
        tell(problems)
        for line in () if quiet else beginning_lines(done, typed, folders, clock_of_site(name, folders, today()), dry_run):
            click.echo(line)
    sys.exit(1 if errors_in(problems) else 0)


def _begun(
    name: str, captures: "FoundFiles", folders: Folders, options: "GatherOptions", jobs: int | None, quiet: bool
) -> "Beginning":
    """Ends the command where the entry cannot be begun."""
    from sitegen.authoring.captures.memory import FrameMemory, unknown_to
    from sitegen.authoring.new_entry import begin

    memory = FrameMemory(folders.keep, now_ns())
    try:
        with progress(len(unknown_to(memory, captures.frames)), "reading headers", quiet) as step:
            return begin(name, captures, memory, folders, today(), options, jobs, step)
    except DiaryProblems as wrong:
        tell(wrong.problems)
        sys.exit(1)
