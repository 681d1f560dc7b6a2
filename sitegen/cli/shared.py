"""What commands have in common: the three folders, today, and how problems are told."""

import json
import os
import sys
import time
from collections.abc import Callable, Iterable
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import click
from msgspec.structs import asdict

from sitegen.folders import Folders
from sitegen.problems import Problem, errors_in


def places(command: Callable[..., Any]) -> Callable[..., Any]:
    """Adds --content, --themes and --output; the command receives them as paths of those names."""
    folder = click.Path(file_okay=False, path_type=Path)
    for name, meaning in (
        ("output", "The published site."),
        ("themes", "Your own themes; the default one comes with sitegen."),
        ("content", "The diary."),
    ):
        command = click.option(f"--{name}", type=folder, default=Path(name), show_default=True, help=meaning)(command)
    return command


def folders_of(content: Path, themes: Path, output: Path) -> Folders:
    """What is kept between rebuilds lies in .sitegen/ beside the output."""
    return Folders(content, themes, output, output.absolute().parent / ".sitegen")


def today() -> date:
    return datetime.now(UTC).date()


def now_ns() -> int:
    """As disks stamp their files."""
    return time.time_ns()


def tell_waiting() -> None:
    """Print that another rebuild holds the lock, so that nobody takes the wait for a hang."""
    click.echo("another rebuild of this diary is at work: waiting until it is done", err=True)


def tell(problems: Iterable[Problem]) -> None:
    """Each problem on a line of its own, on standard error."""
    for problem in problems:
        click.echo(_coloured(problem), err=True)


def _coloured(problem: Problem) -> str:
    """Colours only where a terminal shows them; click strips them elsewhere, and NO_COLOR is obeyed."""
    text = str(problem)
    if sys.stderr.isatty() and not _no_colour():
        mark = f" {problem.severity}: "
        head, _, rest = text.partition(mark)
        return f"{head}{click.style(mark, fg='red' if problem.severity == 'error' else 'yellow', bold=True)}{rest}"
    return text


def _no_colour() -> bool:
    """no-color.org: any value but an empty one."""
    return bool(os.environ.get("NO_COLOR"))


def problems_as_json(problems: Iterable[Problem]) -> list[dict[str, Any]]:
    return [asdict(problem) for problem in problems]


def print_json(value: Any) -> None:
    """Letters that the terminal's or the pipe's encoding lacks are escaped: the value stays what it is."""
    utf8 = (getattr(sys.stdout, "encoding", None) or "utf-8").lower().replace("-", "") == "utf8"
    click.echo(json.dumps(value, ensure_ascii=not utf8, indent=1))


def summary(problems: Iterable[Problem]) -> str:
    """'2 errors, 1 warning'."""
    listed = tuple(problems)
    errors = len(errors_in(listed))
    warnings = len(listed) - errors
    parts = [f"{count} {word}{'s' if count != 1 else ''}" for count, word in ((errors, "error"), (warnings, "warning")) if count]
    return ", ".join(parts) or "no problems"
