"""Tables as people keep them, invented, each with what it tells or how it is refused. Common practice, no source."""

from typing import NamedTuple

from msgspec import Struct


class Row(NamedTuple):
    """So many frames of one row: UTC of the first and the last, exposure, filter, whether kept."""

    count: int
    first: str
    last: str
    exposure_s: float
    filter: str | None
    kept: bool = True


class Table(Struct, frozen=True):
    """`told` lines must be among what is told; `refused` is the one problem line's end, '' where the table is understood."""

    text: str | bytes
    rows: tuple[Row, ...] = ()
    told: tuple[str, ...] = ()
    refused: str = ""
    zone: str | None = None
    asked: tuple[str, ...] = ()
    name: str = "night.csv"


TABLES: dict[str, Table] = {
    "German, merged cells, a sum row": Table(
        "Datum;Beginn;Filter;Belichtung (s);Anzahl\n18.04.2026;21:36;Ha;300,0;12\n;22:40;OIII;300,0;10\n;00:10;OIII;300,0;10\n"
        "19.04.2026;21:36;Ha;300,0;12\nSumme;;;;44\n",
        (Row(12, "2026-04-18T21:36", "2026-04-18T22:31", 300, "Ha"), Row(10, "2026-04-18T22:40", "2026-04-18T23:25", 300, "OIII"),
         Row(10, "2026-04-19T00:10", "2026-04-19T00:55", 300, "OIII"), Row(12, "2026-04-19T21:36", "2026-04-19T22:31", 300,
         "Ha")),
        ("cells are parted by semicolons", "1 sum row left out (line 6)", "an empty 'Datum' is that of the row above (2 rows)",
         "300,0 has a decimal comma", "18.04.2026 is day first, since 18 is no month",
         "'Datum' is that of the evening also after midnight (00:10), as the rows follow each other"),
    ),
    "American, with AM and PM": Table(
        "Date,Time,Exposure,Filter\n4/18/2026,9:36 PM,300,L\n4/18/2026,11:58 PM,300,L\n4/19/2026,12:10 AM,300,L\n",
        (Row(1, "2026-04-18T21:36", "2026-04-18T21:36", 300, "L"), Row(1, "2026-04-18T23:58", "2026-04-18T23:58", 300, "L"),
         Row(1, "2026-04-19T00:10", "2026-04-19T00:10", 300, "L")),
        ("4/18/2026 is month first, since 18 is no month", "9:36 PM is 21:36",
         "'Date' is that of the calendar also after midnight (12:10 AM), as it follows the evening before"),
    ),
    "3/4 in a column whose other rows exceed 12": Table(
        "Date,Time,Exposure,Filter\n3/4/2026,21:00,300,L\n18/4/2026,21:00,300,L\n",
        (Row(1, "2026-04-03T21:00", "2026-04-03T21:00", 300, "L"), Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "L")),
        ("18/4/2026 is day first, since 18 is no month",),
    ),
    "3/4 alone": Table(
        "Date,Time,Exposure,Filter\n3/4/2026,21:00,300,L\n4/4/2026,21:00,300,L\n",
        refused="3/4/2026 may be 2026-04-03 or 2026-03-04, and no row of the column tells which; say which: "
        "--columns date=Date:%d/%m/%Y, or --columns date=Date:%m/%d/%Y",
    ),
    "3/4 alone, answered": Table(
        "Date,Time,Exposure,Filter\n3/4/2026,21:00,300,L\n", (Row(1, "2026-03-04T21:00", "2026-03-04T21:00", 300, "L"),),
        asked=("date=Date:%m/%d/%Y",),
    ),
    "3/12 of a year whose December is still to come": Table(
        "Date,Time,Exposure,Filter\n3/12/2026,21:00,300,L\n", (Row(1, "2026-03-12T21:00", "2026-03-12T21:00", 300, "L"),),
        ("3/12/2026 is month first: otherwise days would lie in the future",),
    ),
    "both orders in one column": Table(
        "Date,Time,Exposure,Filter\n18/4/2026,21:00,300,L\n4/19/2026,21:00,300,L\n",
        refused="18/4/2026 and 4/19/2026 stand in one column, and one has the day first, the other the month; "
        "write the dates one way, best as in 2026-04-18",
    ),
    "the evening's date alone, and a row after midnight": Table(
        "Date,Start,Exposure,Filter\n2026-04-18,00:30,300,Ha\n",
        refused="00:30 under 2026-04-18 may be on that day, or in the night that began on it; "
        "say which: --columns dates=calendar, or --columns dates=evening",
    ),
    "a night named by both its days": Table(
        "Nacht;Uhrzeit;Filter;Belichtung\n18./19.04.2026;23:50;Ha;5 min\n18./19.04.2026;00:10;Ha;5 min\n",
        (Row(1, "2026-04-18T23:50", "2026-04-18T23:50", 300, "Ha"), Row(1, "2026-04-19T00:10", "2026-04-19T00:10", 300, "Ha")),
    ),
    "spans with counts, taken and good": Table(
        "Night,From,To,Filter,Exposure,Taken,Good\n2026-04-18,21:00,23:00,Ha,5 min,21,20\n"
        "2026-04-18,23:30,01:30,OIII,5 min,24,24\n",
        (Row(20, "2026-04-18T21:00", "2026-04-18T22:49:15", 300, "Ha"),
         Row(1, "2026-04-18T22:55", "2026-04-18T22:55", 300, "Ha", False),
         Row(24, "2026-04-18T23:30", "2026-04-19T01:25", 300, "OIII")),
        ("which frames of a row were thrown away is not told: its last ones are taken to be",),
    ),
    "a span too short for its frames": Table(
        "Date,From,To,Filter,Exposure,Count\n2026-04-18,21:00,22:00,Ha,300 s,24\n",
        refused="'From' is '21:00', and 24 × 300 s do not fit before its end",
    ),
    "counts with x, in one cell": Table(
        "Datum;Uhrzeit;Filter;Belichtung\n18.04.2026;21:00;L;24 x 300s\n18.04.2026;23:10;R;12×2min\n",
        (Row(24, "2026-04-18T21:00", "2026-04-18T22:55", 300, "L"), Row(12, "2026-04-18T23:10", "2026-04-18T23:32", 120, "R")),
    ),
    "minutes without a unit, told by what follows": Table(
        "Date,Start,Exposure,Filter\n2026-04-18,21:00,5,Ha\n2026-04-18,21:05:20,5,Ha\n2026-04-18,21:10:40,5,Ha\n",
        (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "Ha"), Row(1, "2026-04-18T21:05:20", "2026-04-18T21:05:20", 300,
         "Ha"),
         Row(1, "2026-04-18T21:10:40", "2026-04-18T21:10:40", 300, "Ha")),
        ("'Exposure' is in minutes, as the starts follow each other",),
    ),
    "minutes or seconds": Table(
        "Date,Start,Exposure,Filter\n2026-04-18,21:00,5,Ha\n",
        refused="'Exposure' may be in seconds or in minutes: 5 is both possible; "
        "say which: --columns exposure_s=Exposure:s, or --columns exposure_s=Exposure:min",
    ),
    "an exposure of two parts": Table(
        "Date,Start,Exposure,Filter\n2026-04-18,21:00,5:00,Ha\n",
        refused="5:00 may be minutes and seconds, or hours and minutes; "
        "say which: --columns exposure_s=Exposure:%M:%S, or --columns exposure_s=Exposure:%H:%M",
    ),
    "an exposure of hours and minutes by its heading": Table(
        "Date,Start,Exposure (h:mm),Filter\n2026-04-18,21:00,0:05,Ha\n", (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300,
        "Ha"),),
    ),
    "an exposure of two parts, told by what follows": Table(
        "Date,Start,Exposure,Filter\n2026-04-18,21:00,5:00,Ha\n2026-04-18,21:05:20,5:00,Ha\n",
        (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "Ha"), Row(1, "2026-04-18T21:05:20", "2026-04-18T21:05:20", 300,
         "Ha")),
        ("5:00 is m:ss, as the starts follow each other",),
    ),
    "12 hours without AM or PM": Table(
        "Date,Start,Exposure,Filter\n2026-04-18,9:36,300,Ha\n2026-04-18,10:36,300,Ha\n",
        refused="9:36 may be in the morning or in the evening: no time of the column is later than 12:59; "
        "say which: --columns start=Start:%H:%M, or --columns start=Start:%I:%M",
    ),
    "12 hours without AM or PM, answered": Table(
        "Date,Start,Exposure,Filter\n2026-04-18,9:36,300,Ha\n2026-04-18,11:36,300,Ha\n2026-04-18,12:36,300,Ha\n",
        (Row(1, "2026-04-18T21:36", "2026-04-18T21:36", 300, "Ha"), Row(1, "2026-04-18T23:36", "2026-04-18T23:36", 300, "Ha"),
         Row(1, "2026-04-19T00:36", "2026-04-19T00:36", 300, "Ha")),
        asked=("start=Start:%I:%M",),
    ),
    "a comment, and a title with the date": Table(
        "Log of the night 2026-04-18\nwind from the west\n\nStart (UT),Exp (s),Filter,Seeing\n21:00,300,Ha,2\n00:10,300,Ha,2\n",
        (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "Ha"), Row(1, "2026-04-19T00:10", "2026-04-19T00:10", 300, "Ha")),
        ("its first row is of 2026-04-18, as 'Log of the night 2026-04-18' says; times that run on over midnight are a day later",
         "not read: 'Seeing'"),
    ),
    "two tables under each other": Table(
        "Date,Start,Exposure (s),Filter\n2026-04-18,21:00,300,Ha\n\n"
        "Datum,Uhrzeit,Filter,Belichtung (min)\n2026-04-19,21:00,OIII,5\n"
        "\nDatum,Uhrzeit,Filter,Belichtung (min)\n2026-04-20,21:00,OIII,10\n",
        (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "Ha"), Row(1, "2026-04-19T21:00", "2026-04-19T21:00", 300, "OIII"),
         Row(1, "2026-04-20T21:00", "2026-04-20T21:00", 600, "OIII")),
    ),
    "blanks that do not break": Table(
        "Datum;Uhrzeit;Belichtung\u00a0(s);Filter\n18.04.2026;21:00\u00a0Uhr;1\u202f200,5;\u00a0Ha\u00a0\n",
        (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 1200.5, "Ha"),),
    ),
    "day numbers of a spreadsheet": Table(
        "Date,Start,Exposure,Filter\n46130,0.875,300,Ha\n46130.9375,,300,Ha\n".replace("46130.9375,,", "46130,0.9375,"),
        (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "Ha"), Row(1, "2026-04-18T22:30", "2026-04-18T22:30", 300, "Ha")),
        ("46130 is 2026-04-18, by the day numbers of spreadsheets (from 1900)",),
    ),
    "tabs, a byte-order mark of two bytes": Table(
        "Datum\tUhrzeit\tFilter\tBelichtung (s)\n18.04.2026\t21:00\tHα\t300\n".encode("utf-16"),
        (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "Hα"),),
        ("its byte-order mark says UTF-16-LE", "cells are parted by tabs"),
    ),
    "an old Windows export": Table(
        "Datum;Uhrzeit;Filter;Belichtung (s);Verstärkung\n18.04.2026;21:00;Ha;300;100\n".encode("cp1252"),
        (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "Ha"),), ("it is no UTF-8, and was read as Windows-1252",),
    ),
    "one number that may be thousands": Table(
        "Datum;Uhrzeit;Filter;Belichtung (s)\n18.04.2026;21:00;Ha;1,200\n",
        refused="1,200 may be a number with decimals or one of thousands; "
        "say which: --columns decimal=comma, or --columns decimal=point",
    ),
    "used: an x, or nothing": Table(
        "Date,Start,Exposure (s),Filter,Used\n2026-04-18,21:00,300,Ha,x\n2026-04-18,21:06,300,Ha,\n",
        (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "Ha"), Row(1, "2026-04-18T21:06", "2026-04-18T21:06", 300, "Ha",
         False)),
        ("an empty 'Used' means not kept (1 rows), as the others say 'x'",),
    ),
    "local times without a zone": Table(
        "Datum;Beginn (MESZ);Belichtung (s);Filter\n18.04.2026;21:00;300;Ha\n",
        refused="'Beginn (MESZ)' is a local time, and no zone is given; name it, as in --time-zone Europe/Athens",
    ),
    "local times with their zone": Table(
        "Datum;Beginn (MESZ);Belichtung (s);Filter\n18.04.2026;23:00;300;Ha\n",
        (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "Ha"),), zone="Europe/Berlin",
    ),
    "nights and totals alone": Table(
        "Datum;Filter;Bilder\n18.04.2026;Ha;24 x 300s\n",
        refused="no column tells when the frames began; name it: --columns start=HEADING; where only nights are known, list the "
        "totals as 'recalled' in the entry",
    ),
    "no headings": Table(
        "18.04.2026;21:00;Ha;300\n",
        refused="has no heading line that is understood; write one over the columns, as in Start, Exposure (s), Filter; or name "
        "your own: --columns start=HEADING --columns exposure_s=HEADING",
    ),
    "headings of one's own": Table(
        "When it began;How long;Glass\n2026-04-18 21:00;300 s;Ha\n", (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "Ha"),),
        asked=("start=When it began,exposure_s=How long,filter=Glass",),
    ),
    "a date that is none": Table(
        "Datum;Uhrzeit;Filter;Belichtung (s)\n31.02.2026;21:00;Ha;300\n",
        refused="night.csv:2:1: error: 'Datum' is '31.02.2026', no day of any year",
    ),
    "a date without its year": Table(
        "Datum;Uhrzeit;Filter;Belichtung (s)\n18.04.;21:00;Ha;300\n",
        refused="night.csv:2:1: error: 'Datum' is '18.04.', a date without its year; write the year, too",
    ),
    "more good than taken": Table(
        "Date,Start,Exposure (s),Filter,Taken,Good\n2026-04-18,21:00,300,Ha,10,12\n",
        refused="night.csv:2:28: error: 'Good' is '12', kept and thrown away do not add up to the 10 taken",
    ),
    "newest first, an offset in each row": Table(
        "Start;Exposure;Filter\n2026-04-19T00:10:00+02:00;300;Ha\n2026-04-18T23:00:00+02:00;300;Ha\n",
        (Row(1, "2026-04-18T22:10", "2026-04-18T22:10", 300, "Ha"), Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "Ha")),
    ),
    "months by name": Table(
        "Date,Time,Exposure,Filter\n\"Sat, 18 Apr 2026\",21:00,300,Ha\n19. April 2026,21:00,300,Ha\n",
        (Row(1, "2026-04-18T21:00", "2026-04-18T21:00", 300, "Ha"), Row(1, "2026-04-19T21:00", "2026-04-19T21:00", 300, "Ha")),
    ),
}  # fmt: skip
