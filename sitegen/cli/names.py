"""Kinds of words on the command line: names of entries and rigs, completed from those there are; a time zone.

A completion loads this file and converts no word: what only a conversion needs is loaded there.
"""

from pathlib import Path

import click
from click.shell_completion import CompletionItem

from sitegen.problems import hint_for


class EntryName(click.ParamType[str]):
    name = "name"

    def convert(self, value: str, param: click.Parameter | None, ctx: click.Context | None) -> str:
        from sitegen.diary.addresses import slug_of

        plain = value.removesuffix(".md")
        if plain != slug_of(plain) or len(plain) > 100:
            self.fail(f"{value!r} cannot become an address; did you mean '{slug_of(plain)[:100]}'?", param, ctx)
        return plain

    def shell_complete(self, ctx: click.Context, param: click.Parameter, incomplete: str) -> list[CompletionItem]:
        """Of the diary that --content names, else of content/."""
        folder = Path(ctx.params.get("content") or "content") / "entries"
        names = sorted(path.stem for path in folder.glob("*.md")) if folder.is_dir() else []
        return [CompletionItem(name) for name in names if name.startswith(incomplete)]


class TimeZoneName(click.ParamType[str]):
    name = "zone"

    def convert(self, value: str, param: click.Parameter | None, ctx: click.Context | None) -> str:
        from zoneinfo import available_timezones

        zones = available_timezones()
        if value not in zones:
            self.fail(f"{value!r} is no time zone of the IANA database; {hint_for(value, zones)}", param, ctx)
        return value


class RigName(click.ParamType[str]):
    """Whether there is such a rig, the diary says."""

    name = "rig"

    def convert(self, value: str, param: click.Parameter | None, ctx: click.Context | None) -> str:
        return value.removesuffix(".yaml")

    def shell_complete(self, ctx: click.Context, param: click.Parameter, incomplete: str) -> list[CompletionItem]:
        folder = Path(ctx.params.get("content") or "content") / "rigs"
        names = sorted(path.stem for path in folder.glob("*.yaml")) if folder.is_dir() else []
        return [CompletionItem(name) for name in names if name.startswith(incomplete)]


ENTRY_NAME = EntryName()
RIG_NAME = RigName()
TIME_ZONE = TimeZoneName()
