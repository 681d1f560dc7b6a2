"""sitegen guide: for who has never met this program, part by part."""

from pathlib import Path

import click

GUIDE = Path(__file__).resolve().parent.parent / "authoring/GUIDE.md"
BEGIN, *TEXTS = GUIDE.read_text("utf-8").split("\n## ")
PARTS = {text.partition(":")[0]: text.partition(": ")[2].strip() for text in TEXTS}


@click.command()
@click.argument("part", required=False, type=click.Choice(tuple(PARTS)))
def command(part: str | None) -> None:
    """Show a part of the guide, or which parts there are.

    \b
    Examples:
      sitegen guide
      sitegen guide first-evening
    """
    if part is not None:
        click.echo(PARTS[part])
        return
    click.echo(BEGIN.partition("\n")[2].strip() + "\n")
    for name, text in PARTS.items():
        click.echo(f"  {name:15} {text.partition(chr(10))[0]}")
