"""Jinja2 with the theme's templates, file by file over the default theme's."""

from collections.abc import Callable, Sequence
from functools import lru_cache, partial
from hashlib import blake2b
from pathlib import Path
from types import CodeType
from typing import Any

from jinja2 import BytecodeCache, Environment, FileSystemBytecodeCache, FileSystemLoader, StrictUndefined
from jinja2.bccache import Bucket

from sitegen.diary import addresses
from sitegen.number_text import NumberText
from sitegen.pages.theme import HTML
from sitegen.pages.words import Words


class _Compiled(BytecodeCache):
    """Templates compiled in this process, by their name and text: half a second that a preview spends once. `before` may know
    them from an earlier process."""

    def __init__(self) -> None:
        self.known: dict[str, tuple[str, CodeType]] = {}
        self.before: BytecodeCache | None = None

    def load_bytecode(self, bucket: Bucket) -> None:
        text, code = self.known.get(bucket.key, ("", None))
        bucket.code = code if text == bucket.checksum else None
        if bucket.code is None and self.before is not None:
            self.before.load_bytecode(bucket)

    def dump_bytecode(self, bucket: Bucket) -> None:
        if bucket.code is not None:
            self.known[bucket.key] = bucket.checksum, bucket.code
            if self.before is not None:
                self.before.dump_bytecode(bucket)


def _from_before(*shaping: object) -> BytecodeCache | None:
    """Jinja's own folder of compiled templates among this user's temporary files, which nobody else may write: code is never
    taken from what lies in a diary. `shaping` is all that shapes the code beside a template's text."""
    name = blake2b(repr(shaping).encode(), digest_size=12).hexdigest()
    try:
        return FileSystemBytecodeCache(pattern=f"{name}-%s.cache")
    except (OSError, RuntimeError):  # no such folder, or not this user's alone
        return None


@lru_cache(maxsize=4)
def _compiled(language: str, words: frozenset[tuple[str, str]]) -> _Compiled:
    """Jinja may work out a filter of a constant while it compiles, so that words are in the code."""
    return _Compiled()


def environment(theme_folders: Sequence[Path], words: Words, numbers: NumberText, made_by: str | None = None) -> Environment:
    """`theme_folders`: the chosen theme first, the default last. Everything is escaped; what is missing is an error. `made_by`
    names the code of this project and its libraries; with it, compiled templates are kept for the next process."""
    compiled = _compiled(words.language, frozenset(words.items()))
    if made_by is not None:
        compiled.before = _from_before(made_by, words.language, sorted(words.items()))
    loader = FileSystemLoader([folder / HTML for folder in theme_folders])
    env = Environment(
        loader=loader, autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True, auto_reload=False,
        bytecode_cache=compiled,
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
