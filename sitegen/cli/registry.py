"""Every command, in the order of the help: a name leads to the file that holds it, loaded when it is asked for."""

import gc
import io
import sys
from importlib import import_module

import click
from click.shell_completion import CompletionItem

from sitegen import __version__

COMMANDS: dict[str, str] = {
    "guide": "How to begin, go on, adjust, publish, and check a number.",
    "start": "A new diary to fill in.",
    "harvest": "A whole disk of captures into a diary.",
    "begin": "A new entry from capture logs.",
    "gather": "Frames anywhere into one log of the diary.",
    "rebuild": "The whole site, from whatever changed.",
    "check": "Everything a rebuild would refuse or warn about.",
    "preview": "The site while you write: every save shows at once.",
    "outlook": "The coming nights of entries still gathering.",
    "survey": "Star shapes over the field of frames.",
    "ring": "How far a defocused star is off its middle.",
}
"""The file of each command in `cli/`, and its line in the help: the list of commands is told without loading one of them."""


SELDOM = (100_000, 20, 20)
"""How many things are made before the interpreter looks for rings among them: records make none, and Python's usual 700 would
have it look through a diary's hundred thousand records again and again while they are read. At the end nothing is looked
through: the process goes, and all with it."""


class _Commands(click.Group):
    """Loads a command's file only when that command runs, so that `check` never waits for what `survey` needs."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in COMMANDS:
            return None
        command: click.Command = import_module(f"sitegen.cli.{cmd_name}").command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """From the table: `click` itself would load every command to ask for its line."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))

    def shell_complete(self, ctx: click.Context, incomplete: str) -> list[CompletionItem]:
        """From the table as well, then the options of the whole program."""
        names = [CompletionItem(name, help=line) for name, line in COMMANDS.items() if name.startswith(incomplete)]
        return names + click.Command.shell_complete(self, ctx, incomplete)


def speak_any_encoding() -> None:
    """A terminal or a pipe of Windows may be of an old code page, which has no ″ or α: a '?' stands for them then."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper) and stream.encoding.lower().replace("-", "") != "utf8":
            stream.reconfigure(errors="replace")


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="sitegen")
def main() -> None:
    """An imaging diary: from capture logs and Markdown to a site of plain files.

    \b
    A first evening:
      sitegen harvest /disk/captures --dry-run
      sitegen harvest /disk/captures
      sitegen preview

    \b
    Completion of commands, options and entry names, for one line in your shell's own file:
      bash  eval "$(_SITEGEN_COMPLETE=bash_source sitegen)"
      zsh   eval "$(_SITEGEN_COMPLETE=zsh_source sitegen)"

    NO_COLOR in the environment turns colours off.
    """
    speak_any_encoding()
    gc.set_threshold(*SELDOM)
    click.get_current_context().call_on_close(gc.freeze)
