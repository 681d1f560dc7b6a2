"""Sentences about the entry of `three_nights`, by kind of claim: denied ones with both values, and sound ones.

Saturday 12 September: 20 L subs in the dark, 4 more lost to gusts, the Moon set before the first. Monday 28 September: 12 Hα
subs, 3 lost to cloud, a Moon nearly full rising in the east. Friday 9 October: 10 L subs, no Moon. The galaxy climbed in the east
each time, from 31° or 53° to over 70°. Published on 20 October 2026; it leads to 'older' (1 September 2025) and 'younger'
(3 November 2026). What the calendar says of a day, anybody can look up; the sky's numbers are those of `tests/published_values`.
"""

from datetime import date

from msgspec import Struct

from sitegen.claims.passage import Role
from tests.claims.three_nights import FRIDAY, MONDAY, SATURDAY


class Denied(Struct, frozen=True):
    """`says` and `known` are both values of the doubt, `at` the words that it points at."""

    text: str
    says: str
    known: str
    at: str = ""
    role: Role = "paragraph"
    evening: date | None = None
    nights: int = 3


class Sound(Struct, frozen=True):
    text: str
    role: Role = "paragraph"
    evening: date | None = None
    nights: int = 3


LOST = "4 subs were lost to 'guiding lost on a gust'"
DENIED: dict[tuple[str, str], tuple[Denied, ...]] = {
    ("younger-links", "en"): (
        Denied(
            "We had done the same in [the picture](younger.md).",
            "published on 2026-10-20",
            "'younger', published on 2026-11-03",
            "the picture",
        ),
        Denied(
            "(Added in October 2026.) See [what came of it](younger.md).",
            "added by 2026-10-31",
            "published on 2026-11-03",
            "what came",
        ),
        Denied("Five years ago [another camera](older.md) stood here.", "5 years ago", "414 days before", "another camera"),
    ),
    ("younger-links", "de"): (
        Denied("Wie das geht, steht in [jenem Bericht](younger.md).", "published on 2026-10-20", "2026-11-03", "jenem"),
        Denied("(Nachtrag vom 25. Oktober 2026: [die Antwort](younger.md).)", "added by 2026-10-25", "2026-11-03", "die Antwort"),
        Denied(
            "Vor vier Jahren stand in [diesem Bericht](older.md) noch das Gegenteil.", "4 years ago", "414 days before", "diesem"
        ),
    ),
    ("calendar-days", "en"): (
        Denied("It began on Friday 12 September 2026.", "'Friday 12 September 2026'", "2026-09-12 was a Saturday", "Friday"),
        Denied(
            "The plan was made on Tuesday, the 28th of September.",
            "'Tuesday, the 28th of September'",
            "2026-09-28 was a Monday",
            "Tuesday",
        ),
        Denied("The reducer came on 31 June 2026.", "'31 June 2026'", "no such day", "31 June"),
        Denied("A frame of Thursday, 2026-10-09 was lost.", "'Thursday, 2026-10-09'", "2026-10-09 was a Friday", "Thursday"),
        Denied(
            "It was [](fact:nights.moon.illuminated@2026-09-28) lit on Sunday.",
            "Sunday",
            "2026-09-28, which was a Monday",
            "Sunday",
        ),
        Denied("On Wednesday we took thirty luminance subs.", "says Wednesday", "2026-09-12 was a Saturday", "Wednesday"),
        Denied("The shed was opened on October 32, 2026.", "'October 32, 2026'", "no such day", "October"),
    ),
    ("calendar-days", "de"): (
        Denied(
            "Es begann am Freitag, dem 12. September 2026.",
            "'Freitag, dem 12. September 2026'",
            "2026-09-12 was a Saturday",
            "Freitag",
        ),
        Denied("Die zweite war Dienstag, 28. September.", "'Dienstag, 28. September'", "2026-09-28 was a Monday", "Dienstag"),
        Denied("Der Reducer kam am 30. Februar 2026.", "'30. Februar 2026'", "no such day", "30."),
        Denied("Am Donnerstag, 9.10.2026, riss es auf.", "'Donnerstag, 9.10.2026'", "2026-10-09 was a Friday", "Donnerstag"),
        Denied(
            "Er war [](fact:nights.moon.illuminated@2026-09-28) beleuchtet am Sonntag.", "Sunday", "which was a Monday", "Sonntag"
        ),
        Denied("Am Mittwoch nahmen wir zwanzig Aufnahmen.", "says Wednesday", "2026-10-09 was a Friday", "Mittwoch"),
    ),
    ("moon-up", "en"): (
        Denied(
            "The Moon was up on the first night.", "the Moon was up", "night of 2026-09-12 it stood between -45° and -27°", "Moon"
        ),
        Denied(
            "On the second night the Moon was down.",
            "the Moon was down",
            "night of 2026-09-28 it stood between 6° and 33°",
            "Moon",
        ),
        Denied("On 9 October the Moon stood above the roofs.", "was up", "2026-10-09", "Moon"),
        Denied("Moon up from dusk to the last sub.", "was up", "2026-09-12", "Moon", "note", SATURDAY),
        Denied("A moonless night.", "was down", "between 6° and 33°", "moonless", "note", MONDAY),
        Denied("With the Moon below the horizon all night, we took hydrogen on 28 September.", "was down", "2026-09-28", "Moon"),
        Denied("No Moon.", "was down", "2026-09-28", "Moon", "note", MONDAY),
        Denied("The Moon was up.", "was up", "2026-09-12", "Moon", nights=1),
    ),
    ("moon-up", "de"): (
        Denied(
            "In der ersten Nacht stand der Mond am Himmel, und der Mond stand am Himmel lange.", "was up", "2026-09-12", "Mond"
        ),
        Denied("In der zweiten Nacht war der Mond untergegangen, der Mond war untergegangen.", "was down", "2026-09-28", "Mond"),
        Denied("Mond oben.", "was up", "2026-10-09", "Mond", "note", FRIDAY),
        Denied("Eine mondlose Nacht.", "was down", "2026-09-28", "mondlose", "note", MONDAY),
        Denied("Am 28. September war der Mond die ganze Nacht unter dem Horizont.", "was down", "2026-09-28", "Mond"),
    ),
    ("low-and-high", "en"): (
        Denied("The galaxy hung low in the west on the first night.", "'low in the west' of the target", "in the east", "west"),
        Denied(
            "The Moon hung in the west on the first night.", "'in the west' of the Moon", "between -49° and -22°, in the west"
        ),
        Denied("On 28 September the Moon sank in the west.", "'in the west' of the Moon", "in the east", "west"),
        Denied(
            "The Moon glowed low in the east on the first night.",
            "'low in the east' of the Moon",
            "between -49° and -22°",
            "east",
        ),
        Denied("The Moon stood overhead on the second night.", "'overhead' of the Moon", "between 0° and 36°", "overhead"),
        Denied(
            "The galaxy stood low in the north-east on 9 October.",
            "'low in the north-east' of the target",
            "between 53° and 74°",
            "north-east",
        ),
        Denied("target low", "low at the end", "stood 79° high", "target", "ended_by", MONDAY),
    ),
    ("low-and-high", "de"): (
        Denied(
            "Die Galaxie hing in der ersten Nacht tief im Westen.", "'low in the west' of the target", "in the east", "Westen"
        ),
        Denied("Am 28. September sank der Mond im Westen.", "'in the west' of the Moon", "in the east", "Westen"),
        Denied("Der Mond stand in der zweiten Nacht im Zenit.", "'overhead' of the Moon", "between 0° and 36°", "Zenit"),
        Denied(
            "Die Galaxie stand am 9. Oktober tief im Nordosten.", "'low in the north-east'", "between 53° and 74°", "Nordosten"
        ),
        Denied("Objekt zu tief", "low at the end", "stood 79° high", "Objekt", "ended_by", MONDAY),
    ),
    ("counts", "en"): (
        Denied("We took 45 subs in all.", "45 subs", "42 kept and 7 discarded", "45"),
        Denied("We kept 14 subs.", "14 kept subs", "hold 42", "14"),
        Denied("We discarded nine subs.", "9 discarded subs", "hold 7", "nine"),
        Denied("We gathered seven hours of light.", "7 hours", "4.5", "seven"),
        Denied(
            "We took eleven hydrogen subs on 28 September.",
            "11 subs of ha in the night of 2026-09-28",
            "12 kept and 3 discarded",
            "eleven",
        ),
        Denied("The light was gathered over five nights.", "5 nights", "hold 3", "five"),
        Denied("Five nights on the galaxy", "5 nights", "hold 3", "Five", "title"),
        Denied("Four hours of hydrogen from a hill.", "4 hours of ha", "2.0", "Four", "summary"),
        Denied("26 luminance subs were taken.", "26 subs of l", "30 kept and 4 discarded", "26"),
    ),
    ("counts", "de"): (
        Denied("Wir nahmen insgesamt 45 Aufnahmen auf.", "45 subs", "42 kept and 7 discarded", "45"),
        Denied("Wir verwarfen neun Aufnahmen.", "9 discarded subs", "hold 7", "neun"),
        Denied("Zusammen sind es 45 Aufnahmen.", "45 subs", "42 kept", "45"),
        Denied("Das Licht kam aus fünf Nächten.", "5 nights", "hold 3", "fünf"),
        Denied(
            "Am 28. September nahmen wir elf Aufnahmen im Wasserstoff auf.",
            "11 subs of ha in the night of 2026-09-28",
            "12 kept",
            "elf",
        ),
    ),
    ("caption-counts", "en"): (
        Denied("Colour from five nights.", "5 nights", "hold 3", "five", "caption"),
        Denied("36 luminance subs, and hydrogen laid over them.", "36 subs of l", "30 kept", "36", "caption"),
        Denied("Eight hours of light.", "8 hours", "4.5", "Eight", "caption"),
    ),
    ("caption-counts", "de"): (
        Denied("Farbe aus fünf Nächten.", "5 nights", "hold 3", "fünf", "caption"),
        Denied("36 Aufnahmen.", "36 subs", "42 kept", "36", "caption"),
        Denied("Acht Stunden Licht.", "8 hours", "4.5", "Acht", "caption"),
    ),
    ("calm-air", "en"): (
        Denied("calm", "it was calm", LOST, "calm", "wind", SATURDAY),
        Denied("dead calm all night", "it was calm", LOST, "dead", "wind", SATURDAY),
        Denied("none", "it was clear", "3 subs were lost to 'cloud'", "none", "clouds", MONDAY),
        Denied("On the first night there was no wind.", "it was calm", LOST, "On"),
    ),
    ("calm-air", "de"): (
        Denied("windstill", "it was calm", LOST, "windstill", "wind", SATURDAY),
        Denied("die ganze Nacht kein Wind", "it was calm", LOST, "die", "wind", SATURDAY),
        Denied("In der ersten Nacht war kein Wind.", "it was calm", LOST, "In"),
    ),
}

SOUND: dict[tuple[str, str], tuple[Sound, ...]] = {
    ("younger-links", "en"): (
        Sound("We had done the same in [the first picture](older.md)."),
        Sound("(Added on 4 November 2026: [the answer](younger.md).)"),
        Sound("A year ago [the small camera](older.md) stood here."),
        Sound("> As they write: see [that](younger.md)."),
    ),
    ("younger-links", "de"): (
        Sound("Wie das geht, steht in [jenem Bericht](older.md)."),
        Sound("(Nachtrag vom 4. November 2026: [die Antwort](younger.md).)"),
        Sound("Vor einem Jahr stand in [diesem Bericht](older.md) noch das Gegenteil."),
    ),
    ("calendar-days", "en"): (
        Sound("It began on Saturday 12 September 2026."),
        Sound("On Monday, the 28th of September, it cleared."),
        Sound(
            "Lit [](fact:nights.moon.illuminated@2026-09-28) on Monday, [](fact:nights.moon.illuminated@2026-10-09) on Friday."
        ),
        Sound("We took these on Saturday; the subs of Sunday morning were the best."),
        Sound("On Wednesday the club takes its subs."),
        Sound("In May 2026 there were 31 subs, and we may march on."),
        Sound("29 February 2028 will be a long night."),
        Sound("In June 31 frames were lost to the heat."),
        Sound("The wire broke on a Thursday."),
    ),
    ("calendar-days", "de"): (
        Sound("Es begann am Samstag, dem 12. September 2026."),
        Sound("Am Montag, 28.9.2026, riss es auf."),
        Sound("Am Mittwoch nahm der Verein seine Aufnahmen auf."),
        Sound("Am Montag nahmen wir zwölf Aufnahmen auf."),
        Sound("Der Draht riss an einem Donnerstag."),
    ),
    ("moon-up", "en"): (
        Sound("The Moon was up on the second night."),
        Sound("On the first night the Moon was down."),
        Sound("The Moon was up on both nights."),
        Sound("In the evening of 12 September the Moon was up until shortly after dusk."),
        Sound("If the Moon was up, we took hydrogen."),
        Sound("The Moon was not up on the first night."),
        Sound("A friend wrote that the Moon was up on the first night."),
        Sound("Moon up before dawn.", "note", SATURDAY),
        Sound("The Moon was up."),
        Sound("On such evenings the Moon was up.", nights=1),
        Sound("On both evenings the Moon was up.", nights=1),
        Sound("> The Moon was up on the first night."),
        Sound("| night |\n|---|\n| The Moon was up on the first night. |"),
        Sound("The Moon was down to a sliver on the second night."),
        Sound("No Moon in the frame on the second night, and no dust."),
        Sound("The moonless hours of the second night were few."),
        Sound("The lamp in the hall shone like the Moon on the first night."),
        Sound("A year ago the Moon was up at this hour, on the first night too."),
        Sound("No Moon.", "note", FRIDAY),
    ),
    ("moon-up", "de"): (
        Sound("In der zweiten Nacht stand der Mond am Himmel, der Mond war aufgegangen."),
        Sound("Der Mond war untergegangen in der ersten Nacht."),
        Sound("In beiden Nächten war der Mond untergegangen."),
        Sound("Wenn der Mond schien, nahmen wir Wasserstoff."),
        Sound("Mondlos.", "note", FRIDAY),
        Sound("Bei einem Freund stand der Mond am Himmel in der ersten Nacht."),
    ),
    ("low-and-high", "en"): (
        Sound("The galaxy climbed high in the east on the first night."),
        Sound("On the second night the Moon hung low in the east."),
        Sound("A fire glowed low in the west on the first night."),
        Sound("From the gate the galaxy stands low in the west.", nights=1),
        Sound("On the first night the galaxy lay in the west of the frame."),
        Sound("The galaxy passes overhead in November."),
        Sound("The galaxy was lost when a plane flew low in the west on the first night."),
        Sound("The galaxy stood clear, and a fire burnt low in the west on the first night."),
        Sound("The Moon had set, and the galaxy rose in the west on the first night."),
        Sound("The galaxy will be low in the west on the first night."),
        Sound("In December the galaxy sinks low in the west."),
        Sound("Another group had the galaxy low in the west."),
        Sound("target low", "ended_by", date(2026, 9, 13)),
        Sound("The Moon was nearly overhead at the neighbours' hill on the second night."),
    ),
    ("low-and-high", "de"): (
        Sound("Die Galaxie stieg in der ersten Nacht im Osten."),
        Sound("In der zweiten Nacht stand der Mond tief im Osten."),
        Sound("Ein Feuer glühte in der ersten Nacht tief im Westen."),
        Sound("Im Dezember steht die Galaxie tief im Westen."),
        Sound("Im Bild lag die Galaxie in der ersten Nacht im Westen des Feldes."),
    ),
    ("counts", "en"): (
        Sound("We took 49 subs in all, and kept 42 subs."),
        Sound("Thirty luminance subs were taken, or 30 subs in all."),
        Sound("The gusts cost us four subs."),
        Sound("We lost three subs of hydrogen to cloud."),
        Sound("The light was gathered over three nights."),
        Sound("We took about fifty subs."),
        Sound("Next year we will take 120 subs."),
        Sound("Somebody took 120 subs."),
        Sound("Print two subs side by side."),
        Sound("Had we taken 60 subs in all?"),
        Sound("Class 9 took 13 subs of the Moon in the interval."),
        Sound("We took eight subs, and changed the filter."),
        Sound("In six nights of rain the subs were taken from the shelf."),
        Sound("The dog came along over five nights, and got a blanket."),
        Sound("We took the tube home after seven hours of driving."),
        Sound("We gathered two and a half hours of luminance."),
        Sound("Four and a half hours of light came to this."),
        Sound("In [the year before](older.md) we took 120 subs."),
        Sound("We drove five hours, and got home at dawn."),
        Sound("The first two nights gave little."),
        Sound("We did not take 60 subs."),
        Sound("We took more than 40 subs."),
        Sound("> We took 120 subs in all."),
        Sound("After midnight we took three exposures of seven."),
        Sound("We kept 10 subs on 9 October."),
        Sound("`We took 60 subs`, says the printout."),
        Sound("We got [](fact:integration.kept) subs."),
    ),
    ("counts", "de"): (
        Sound("Wir nahmen insgesamt 49 Aufnahmen auf."),
        Sound("Die Böen kosteten vier Aufnahmen."),
        Sound("Das Licht kam aus drei Nächten."),
        Sound("Nächstes Jahr sollen es 120 Aufnahmen werden, insgesamt."),
        Sound("Jemand nahm 120 Aufnahmen auf."),
        Sound("Es kamen etwa fünfzig oder etwa 50 Aufnahmen zusammen."),
        Sound("Am 28. September nahmen wir zwölf Aufnahmen auf."),
        Sound("Wir nahmen keine 60 Aufnahmen auf."),
        Sound("Die ersten zwei Nächte brachten wenig."),
        Sound("Wir nahmen acht Aufnahmen, und dann wechselte das Filter."),
    ),
    ("caption-counts", "en"): (
        Sound("Colour from three nights.", "caption"),
        Sound("30 luminance subs.", "caption"),
        Sound("One luminance sub as it came from the camera.", "caption"),
        Sound("Two and a half hours of luminance.", "caption"),
        Sound("Some forty subs.", "caption"),
        Sound("Two rings side by side, and five stars.", "caption"),
    ),
    ("caption-counts", "de"): (
        Sound("Farbe aus drei Nächten.", "caption"),
        Sound("42 Aufnahmen.", "caption"),
        Sound("Eine Aufnahme, wie sie aus der Kamera kam.", "caption"),
    ),
    ("calm-air", "en"): (
        Sound("calm but for one gust", "wind", SATURDAY),
        Sound("calm", "wind", MONDAY),
        Sound("none, then a bank in the west", "clouds", MONDAY),
        Sound("none", "clouds", SATURDAY),
        Sound("There was no wind before half past nine on the first night."),
        Sound("There was no wind on the second night."),
        Sound("On the first night the fog was still there."),
    ),
    ("calm-air", "de"): (
        Sound("windstill bis auf eine Bö", "wind", SATURDAY),
        Sound("windstill", "wind", MONDAY),
        Sound("keine, dann Schleier", "clouds", MONDAY),
        Sound("In der zweiten Nacht war kein Wind."),
    ),
}
