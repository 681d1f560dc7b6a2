"""Jinja2 with the theme's templates, file by file over the default theme's."""

from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from sitegen.diary import addresses
from sitegen.number_text import NumberText
from sitegen.pages.words import Words


def environment(theme_folders: Sequence[Path], words: Words, numbers: NumberText) -> Environment:
    """`theme_folders`: the chosen theme first, the default last. Everything is escaped; what is missing is an error."""
    loader = FileSystemLoader([folder / "templates" for folder in theme_folders])
    env = Environment(
        loader=loader, autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True, auto_reload=False
    )
    env.globals.update(
        say=words.say, say_count=words.count, to=addresses, numbers=numbers, language=words.language
    )
    env.filters.update(
        duration=numbers.duration,
        percent=numbers.percent,
        day=numbers.day,
        short_day=numbers.short_day,
        clock=numbers.clock,
    )
    return env


def render(env: Environment, template: str, here: str, root: str | None, context: dict[str, Any]) -> str:
    """One page; `link(address)` inside it gives the relative way from `here`, `absolute(address)` the way from anywhere."""
    link: Callable[[str], str] = partial(addresses.relative, here)
    return env.get_template(template).render(here=here, link=link, absolute=partial(_absolute, root), **context)


def _absolute(root: str | None, address: str) -> str:
    return f"{(root or '').rstrip('/')}/{address}"


def safe(html: str) -> Markup:
    """HTML that this project itself made from escaped parts."""
    return Markup(html)
