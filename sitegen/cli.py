"""Words in, exit status out: the only file that prints."""

import sys
from collections.abc import Callable, Iterable
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import click

from sitegen import __version__
from sitegen.folders import Folders
from sitegen.problems import DiaryProblems, Problem


def _places(command: Callable[..., Any]) -> Callable[..., Any]:
    """The three folders that every command knows."""
    folder = click.Path(file_okay=False, path_type=Path)
    for name, meaning in (
        ("output", "The published site."),
        ("themes", "Your themes; the default one comes with sitegen."),
        ("content", "The diary."),
    ):
        command = click.option(f"--{name}", type=folder, default=Path(name), show_default=True, help=meaning)(command)
    return command


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="sitegen")
def main() -> None:
    """An imaging diary: from capture logs and Markdown to a site of plain files."""


@main.command()
@_places
@click.option("--jobs", type=click.IntRange(1), default=None, help="Processes to draw with; all cores by default.")
@click.option("--fresh", is_flag=True, help="Forget what was kept from earlier.")
def rebuild(content: Path, themes: Path, output: Path, jobs: int | None, fresh: bool) -> None:
    """Rebuild the whole site from whatever changed."""
    from sitegen.rebuild import rebuild as rebuild_site

    folders = Folders(content, themes, output, output.absolute().parent / ".sitegen")
    try:
        report = rebuild_site(folders, datetime.now(UTC).date())
    except DiaryProblems as wrong:
        _tell(wrong.problems)
        sys.exit(1)
    _tell(report.problems)
    click.echo(f"{report.entries} entries, {report.pages} pages, {report.published.files} files in {output}/")


def _tell(problems: Iterable[Problem]) -> None:
    for problem in problems:
        click.echo(str(problem), err=True)
