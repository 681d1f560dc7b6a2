"""The options that `survey` and `ring` have in common. Their help and completion load this file, and nothing that measures."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

from sitegen.cli.shared import places

ANY_FILE = click.Path(path_type=Path)


def star_options(command: Callable[..., Any]) -> Callable[..., Any]:
    """The files, and what becomes of their measurements."""
    for decorate in (
        click.option("--json", "as_json", is_flag=True, help="Report as JSON."),
        click.option("--picture", type=ANY_FILE, metavar="FILE", help="Draw it, as .svg or .png; for one frame."),
        click.option("--save-to", type=ANY_FILE, metavar="FILE", help="Save there, as .yaml or .json; a folder for several."),
        click.option("--save", "save_beside", is_flag=True, help="Save the measurement beside its frame."),
        places,
        click.argument("files", nargs=-1, required=True, type=ANY_FILE),
    ):
        command = decorate(command)
    return command
