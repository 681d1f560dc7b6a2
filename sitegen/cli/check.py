"""sitegen check: everything that rebuild would refuse or warn about; writes nothing to the site."""

import sys
from pathlib import Path

import click

from sitegen.cli.progress import stages
from sitegen.cli.shared import folders_of, places, print_json, problems_as_json, summary, tell, tell_waiting, today
from sitegen.problems import DiaryProblems, errors_in


@click.command()
@places
@click.option("--reveals", "with_reveals", is_flag=True, help="List also what the site will tell about you.")
@click.option("--quiet", is_flag=True, help="Say only what is wrong.")
@click.option("--json", "as_json", is_flag=True, help="Report as JSON, with what the site will tell about you.")
def command(content: Path, themes: Path, output: Path, with_reveals: bool, quiet: bool, as_json: bool) -> None:
    """Find everything that a rebuild would refuse or warn about, and write nothing into the site.

    Each problem stands on a line as path:line:column; the exit status is 1 where one of them is an error.

    \b
    Examples:
      sitegen check
      sitegen check --reveals
      sitegen check --json > problems.json
    """
    from sitegen.rebuild import check, reveals

    folders = folders_of(content, themes, output)
    try:
        with stages(quiet or as_json) as step:
            problems = check(folders, today(), tell_waiting, step)
    except DiaryProblems as wrong:
        tell(wrong.problems)
        sys.exit(1)
    revealed = reveals(folders, today()) if with_reveals or as_json else ()
    if as_json:
        print_json({"problems": problems_as_json(problems), "reveals": [reveal._asdict() for reveal in revealed]})
    else:
        tell(problems)
        for reveal in revealed:
            click.echo(f"{content}/{reveal.file}: tells {reveal.told}")
        if problems or not quiet:
            click.echo(f"{content}: {summary(problems)}", err=bool(errors_in(problems)))
    sys.exit(1 if errors_in(problems) else 0)
