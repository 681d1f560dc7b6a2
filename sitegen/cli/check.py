"""sitegen check: everything that rebuild would refuse or warn about; writes nothing to the site."""

import sys
from pathlib import Path

import click

from sitegen.cli.shared import folders_of, places, print_json, problems_as_json, summary, tell, today
from sitegen.problems import errors_in


@click.command()
@places
@click.option("--json", "as_json", is_flag=True, help="Report as JSON.")
def command(content: Path, themes: Path, output: Path, as_json: bool) -> None:
    """Find everything that a rebuild would refuse or warn about, and write nothing."""
    from sitegen.rebuild import check

    problems = check(folders_of(content, themes, output), today())
    if as_json:
        print_json({"problems": problems_as_json(problems)})
    else:
        tell(problems)
        click.echo(f"{content}: {summary(problems)}", err=bool(errors_in(problems)))
    sys.exit(1 if errors_in(problems) else 0)
