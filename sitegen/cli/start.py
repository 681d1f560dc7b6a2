"""sitegen start: a new diary to fill in."""

import sys
from pathlib import Path

import click

from sitegen.cli.shared import tell, today
from sitegen.problems import DiaryProblems


@click.command()
@click.argument("folder", metavar="DIR", type=click.Path(path_type=Path))
def command(folder: Path) -> None:
    """Begin a new diary in DIR, a folder that is empty or does not exist.

    It rebuilds as it is, and shows every key with what it means. Editors that understand YAML schemas complete and check
    the keys while you type.

    \b
    Example:
      sitegen start my-nights
      cd my-nights
      sitegen preview
    """
    from sitegen.authoring.new_diary import start_diary

    try:
        written = start_diary(folder, today(), str(folder))
    except DiaryProblems as wrong:
        tell(wrong.problems)
        sys.exit(1)
    click.echo(f"{folder}: a new diary of {len(written)} files\n")
    click.echo(_NEXT.format(folder=folder))


_NEXT = """What to do next:
  cd {folder}
  sitegen preview                      open the address it prints; every save shows at once
  content/sites/garden.yaml            put your own place, clock and sky
  content/rigs/first-train.yaml        put your own telescope, camera and filters
  content/diary.yaml                   give the diary its title, and say how much of your place may show
  sitegen begin NAME FOLDER-OF-FRAMES  an entry from a first night of your own
  content/entries/first-light.md       delete it, and content/logs/first-light.csv
  sitegen rebuild                      output/ then holds the site, ready for any static host"""
