"""sitegen outlook: the coming nights for entries still gathering."""

import sys
from datetime import UTC, date, datetime
from pathlib import Path

import click

from sitegen.cli.shared import folders_of, places, print_json, tell, today
from sitegen.problems import DiaryProblems

OUT_FILE = click.Path(dir_okay=False, path_type=Path)


@click.command()
@places
@click.option("--nights", type=click.IntRange(1, 400), default=None, help="How many; outlook.nights of diary.yaml without.")
@click.option("--from", "first", type=click.DateTime(["%Y-%m-%d"]), metavar="DATE", help="First evening; the next without.")
@click.option("--calendar", type=OUT_FILE, metavar="FILE.ics", help="Write the useful nights there, too.")
@click.option("--json", "as_json", is_flag=True, help="Report as JSON.")
def command(
    content: Path, themes: Path, output: Path, nights: int | None, first: datetime | None, calendar: Path | None, as_json: bool
) -> None:
    """Tell the coming nights of every entry still gathering: dark hours, the target's hours, the Moon, what is still wanted.

    Reckoned from your true place, in this terminal alone; nothing is published. A night is useful that has the target above
    outlook.minimum_altitude_deg and the site's horizon for an hour in the dark. No weather is known.

    \b
    Examples:
      sitegen outlook --nights 14
      sitegen outlook --from 2027-03-01 --calendar nights.ics
    """
    from sitegen.authoring.coming_nights import coming_nights
    from sitegen.cli.outlook_words import NUMBERS, outlook_json, outlook_lines
    from sitegen.reading.reader import read_diary

    folders = folders_of(content, themes, output)
    reading = read_diary(folders.content, today(), str(folders.content))
    if reading.diary is None:
        tell(reading.problems)
        sys.exit(1)
    now = datetime.now(UTC).replace(microsecond=0)
    outlooks = coming_nights(reading.diary, now, _day(first), nights)
    if calendar is not None:
        from sitegen.authoring.new_files import write_over
        from sitegen.authoring.outlook_calendar import calendar_text

        try:
            text = calendar_text(outlooks, reading.diary.settings.address, now, NUMBERS).decode("utf-8")
            write_over(calendar, text, str(calendar))
        except DiaryProblems as wrong:
            tell(wrong.problems)
            sys.exit(1)
    if as_json:
        print_json(outlook_json(outlooks))
        return
    for line in outlook_lines(outlooks):
        click.echo(line)


def _day(moment: datetime | None) -> date | None:
    return moment.date() if moment is not None else None
