"""Jinja2 with the theme's templates, file by file over the default theme's."""

from collections.abc import Callable, Sequence
from functools import lru_cache, partial
from pathlib import Path
from types import CodeType
from typing import Any

from jinja2 import BytecodeCache, Environment, FileSystemLoader, StrictUndefined
from jinja2.bccache import Bucket
from markupsafe import Markup

from sitegen.diary import addresses
from sitegen.number_text import NumberText
from sitegen.pages.words import Words


class _Compiled(BytecodeCache):
    """Templates compiled in this process, by their name and text: half a second that a preview spends once."""

    def __init__(self) -> None:
        self.known: dict[str, tuple[str, CodeType]] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        text, code = self.known.get(bucket.key, ("", None))
        bucket.code = code if text == bucket.checksum else None

    def dump_bytecode(self, bucket: Bucket) -> None:
        if bucket.code is not None:
            self.known[bucket.key] = bucket.checksum, bucket.code


@lru_cache(maxsize=4)
def _compiled(language: str, words: frozenset[tuple[str, str]]) -> _Compiled:
    """Jinja may work out a filter of a constant while it compiles, so that words are in the code."""
    return _Compiled()


def environment(theme_folders: Sequence[Path], words: Words, numbers: NumberText) -> Environment:
    """`theme_folders`: the chosen theme first, the default last. Everything is escaped; what is missing is an error."""
    loader = FileSystemLoader([folder / "templates" for folder in theme_folders])
    env = Environment(
        loader=loader, autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True, auto_reload=False,
        bytecode_cache=_compiled(words.language, frozenset(words.items())),
    )  # fmt: skip
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
