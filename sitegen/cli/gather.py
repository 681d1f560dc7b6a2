"""sitegen gather: the headers of frames lying anywhere, distilled into one log of the diary."""

import sys
from pathlib import Path

import click

from sitegen.cli.names import ENTRY_NAME, TIME_ZONE
from sitegen.cli.progress import progress
from sitegen.cli.shared import folders_of, places, print_json, problems_as_json, tell, today
from sitegen.problems import DiaryProblems, errors_in


@click.command(short_help="Frames anywhere into one log of the diary.")
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
    """Distil the headers of frames into logs/NAME.ecsv, so that the frames can stay where they are.

    LOG is a frame, a table, a folder (searched with its folders) or a pattern in quotes. The log holds no place, no observer
    and no file names. Run it again after each night: frames it has are recognised, and what you wrote into the log (kept,
    reason, note) stays. The entry NAME, where there is one, names the log from then on.

    \b
    Examples:
      sitegen gather m101 /disk/captures/m101
      sitegen gather m101 '/disk/2026-04-*/Light*.fits.fz' --quiet
    """
    from sitegen.authoring.frames_found import find_logs
    from sitegen.authoring.gathering import gather
    from sitegen.cli.gathered import gathering_json, gathering_lines

    found = find_logs(logs)
    if not found.paths:
        tell(found.problems)
        sys.exit(1)
    try:
        with progress(len(found.paths), "reading headers", quiet or as_json) as step:
            done = gather(name, found.paths, folders_of(content, themes, output), today(), time_zone, jobs, step)
    except DiaryProblems as wrong:
        tell(wrong.problems)
        sys.exit(1)
    problems = (*found.problems, *done.problems)
    if as_json:
        print_json({**gathering_json(done), "problems": problems_as_json(problems)})
    else:
        tell(problems)
        for line in () if quiet else gathering_lines(done, name, content):
            click.echo(line)
    sys.exit(1 if errors_in(problems) else 0)
