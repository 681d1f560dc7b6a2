"""sitegen rebuild: the whole site, from whatever changed."""

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from sitegen.cli.progress import stages
from sitegen.cli.shared import folders_of, places, print_json, problems_as_json, tell, tell_waiting, today
from sitegen.problems import DiaryProblems

if TYPE_CHECKING:
    from sitegen.rebuild import Report


@click.command()
@places
@click.option("--jobs", type=click.IntRange(1), default=None, help="Processes to draw with; as many as cores by default.")
@click.option("--fresh", is_flag=True, help="Forget what was kept from earlier.")
@click.option("--quiet", is_flag=True, help="Say only what is wrong.")
@click.option("--json", "as_json", is_flag=True, help="Report as JSON.")
def command(content: Path, themes: Path, output: Path, jobs: int | None, fresh: bool, quiet: bool, as_json: bool) -> None:
    """Rebuild the whole site from whatever changed.

    A diary with errors is not built: every problem is printed, and the earlier site stays as it is.

    \b
    Examples:
      sitegen rebuild
      sitegen rebuild --content ../other/content --output ../other/output
      sitegen rebuild --fresh --jobs 1
    """
    from sitegen.rebuild import rebuild

    try:
        with stages(quiet or as_json) as step:
            report = rebuild(folders_of(content, themes, output), today(), jobs, fresh, tell_waiting, step)
    except DiaryProblems as wrong:
        if as_json:
            print_json({"problems": problems_as_json(wrong.problems)})
        else:
            tell(wrong.problems)
        sys.exit(1)
    if as_json:
        print_json(report.as_json())
        return
    tell(report.problems)
    for line in () if quiet else story(report, output):
        click.echo(line)


def story(report: "Report", output: Path) -> Iterator[str]:
    """What was made, what was kept, where the time went."""
    done = "nothing has changed" if report.standing else f"{report.changed} files written"
    yield from report.said
    entries = f"{report.entries} {'entry' if report.entries == 1 else 'entries'}"
    yield f"{entries}, {report.pages} pages, {report.files} files in {output}/: {done}"
    if report.carried:
        yield f"  not made by sitegen, and left as they are: {named(report.carried)}"
    if report.standing:
        return
    for kind, count in report.made.items():
        yield f"  {kind}: {count} made, {report.kept[kind]} kept"
    spent = ", ".join(f"{step} {seconds:.1f} s" for step, seconds in report.seconds.items() if seconds >= 0.05)
    yield f"  time: {spent or 'hardly any'}"


def named(files: tuple[str, ...], most: int = 10) -> str:
    """'CNAME, films and 3 more'."""
    more = f" and {len(files) - most} more" if len(files) > most else ""
    return ", ".join(files[:most]) + more
