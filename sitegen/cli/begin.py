"""sitegen begin: a new entry pre-filled from capture logs."""

import sys
from pathlib import Path

import click

from sitegen.cli.names import ENTRY_NAME, TIME_ZONE
from sitegen.cli.progress import progress
from sitegen.cli.shared import folders_of, places, print_json, problems_as_json, tell, today
from sitegen.problems import DiaryProblems, errors_in


@click.command(short_help="A new entry from capture logs.")
@click.argument("name", type=ENTRY_NAME)
@click.argument("logs", metavar="LOG...", nargs=-1, required=True, type=click.Path())
@places
@click.option("--time-zone", type=TIME_ZONE, metavar="ZONE", help="Clock of logs that do not tell theirs; UTC without.")
@click.option("--jobs", type=click.IntRange(1, 64), default=None, help="Files read at once; 8 by default.")
@click.option("--quiet", is_flag=True, help="Say only what is wrong.")
@click.option("--json", "as_json", is_flag=True, help="Report as JSON.")
def command(
    name: str,
    logs: tuple[str, ...],
    content: Path,
    themes: Path,
    output: Path,
    time_zone: str | None,
    jobs: int | None,
    quiet: bool,
    as_json: bool,
) -> None:
    """Begin the entry NAME from capture logs: target, rig, site, nights and filters as far as they tell.

    LOG is a frame, a table, a folder or a pattern in quotes. Logs inside the diary's content/ are named where they lie;
    from all others, logs/NAME.ecsv is gathered. What only you can write is marked 'To write:'. An entry that exists is
    never touched.

    \b
    Examples:
      sitegen begin m101 /disk/captures/m101
      sitegen begin helix content/logs/helix/*.csv
    """
    from sitegen.authoring.frames_found import find_logs
    from sitegen.authoring.new_entry import begin
    from sitegen.cli.gathered import beginning_json, beginning_lines

    found = find_logs(logs)
    if not found.paths:
        tell(found.problems)
        sys.exit(1)
    try:
        with progress(len(found.paths), "reading headers", quiet or as_json) as step:
            done = begin(name, found.paths, folders_of(content, themes, output), today(), time_zone, jobs, step)
    except DiaryProblems as wrong:
        tell(wrong.problems)
        sys.exit(1)
    problems = (*found.problems, *done.problems)
    if as_json:
        print_json({**beginning_json(done), "problems": problems_as_json(problems)})
    else:
        tell(problems)
        for line in () if quiet else beginning_lines(done, content):
            click.echo(line)
    sys.exit(1 if errors_in(problems) else 0)
