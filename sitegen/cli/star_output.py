"""What `survey` and `ring` have in common once they measure: the theme's words in the terminal, saving, and drawing."""

import sys
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import Any, TypeVar

import click

from sitegen.cli.shared import print_json, problems_as_json, tell
from sitegen.number_text import NumberText
from sitegen.pages.theme import DEFAULT, Theme, open_theme
from sitegen.pages.words import Words, words_from
from sitegen.pictures.drawing_file import write_drawing
from sitegen.pictures.records import PictureProblem
from sitegen.problems import Problem, errors_in
from sitegen.reading.capture_logs.log_problems import system_reason
from sitegen.reading.measurement_files import SAVED_ENDINGS, save, saved_name

DRAWINGS = (".svg", ".png")
Frame = TypeVar("Frame")


def speech(themes: Path) -> tuple[Theme, Words, NumberText]:
    """The default theme's English: the terminal's language."""
    theme, _ = open_theme(DEFAULT, themes)
    words = words_from("en", theme.word_texts("en"))
    return theme, words, NumberText("en", words)


def check_wishes(files: Sequence[Path], save_to: Path | None, picture: Path | None) -> None:
    """Raises click.UsageError for wishes that no run could fulfil, before anything is measured."""
    if picture is not None and picture.suffix.lower() not in DRAWINGS:
        raise click.UsageError(f"--picture writes .svg or .png, not '{picture.suffix or picture}'")
    if picture is not None and len(files) > 1:
        raise click.UsageError("--picture draws one frame; name one file")
    if save_to is not None and not save_to.is_dir():
        if len(files) > 1:
            raise click.UsageError("--save-to needs a folder that exists where several frames are measured")
        if save_to.suffix.lower() not in SAVED_ENDINGS:
            raise click.UsageError(f"--save-to writes .yaml or .json, not '{save_to.suffix or save_to}'")


def measure_all(
    files: Iterable[Path], measure: Callable[[Path, str, str], tuple[Frame | None, tuple[Problem, ...]]]
) -> tuple[list[tuple[Path, Frame]], list[Problem]]:
    """Every file is tried, so that all problems are told at once."""
    done: list[tuple[Path, Frame]] = []
    problems: list[Problem] = []
    for path in files:
        measured, wrong = measure(path, str(path), path.name)
        problems += wrong
        if measured is not None:
            done.append((path, measured))
    return done, problems


def keep(content: dict[str, Any], path: Path, save_beside: bool, save_to: Path | None) -> list[Problem]:
    """Saves where it is wished. A saved measurement is not saved over itself."""
    name = saved_name(path.name, content["measures"])
    wanted = [path.with_name(name)] if save_beside else []
    wanted += [save_to / name if save_to.is_dir() else save_to] if save_to is not None else []
    problems = []
    for target in wanted:
        try:
            save(content, target)
        except OSError as trouble:
            problems.append(Problem(str(target), 1, 1, system_reason(trouble).replace("read", "written")))
        else:
            click.echo(f"saved in {target}", err=True)
    return problems


def draw(svg: str, picture: Path) -> list[Problem]:
    try:
        write_drawing(svg, picture)
    except PictureProblem as wrong:
        return [Problem(str(picture), 1, 1, wrong.sentence)]
    click.echo(f"drawn in {picture}", err=True)
    return []


def finish(problems: Sequence[Problem], as_json: bool, contents: Sequence[dict[str, Any]], lines: Iterable[str]) -> None:
    """Tells it all and exits: 1 where any frame could not be measured."""
    if as_json:
        print_json({"measurements": list(contents), "problems": problems_as_json(problems)})
    else:
        for line in lines:
            click.echo(line)
        tell(problems)
    sys.exit(1 if errors_in(problems) else 0)
