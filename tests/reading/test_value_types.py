"""Each type takes what the page of keys says an author may type, and refuses the rest in words that help."""

from datetime import date

import pytest

from sitegen.reading.value_types.address import WebAddress
from sitegen.reading.value_types.angle import Declination, RightAscension
from sitegen.reading.value_types.choice import Choice, YesOrNo
from sitegen.reading.value_types.day import Day
from sitegen.reading.value_types.language import Language
from sitegen.reading.value_types.number import Number, NumberPair
from sitegen.reading.value_types.text import LINE, PARAGRAPHS
from sitegen.reading.value_types.time_zone import TimeZone
from tests.reading.desks import read

MM = Number(unit="mm", least=0, most=2000)
PAIR = NumberPair(MM, MM, ("longer", "shorter"), one_is_both=True)


@pytest.mark.parametrize(
    ("typed", "degrees"),
    [  # 24 hours are 360 degrees, by definition
        ("287.442", 287.442),
        ("19 09 46", 15 * (19 + 9 / 60 + 46 / 3600)),
        ("19:09:46", 15 * (19 + 9 / 60 + 46 / 3600)),
        ("19h09m46s", 15 * (19 + 9 / 60 + 46 / 3600)),
        ("19h 09m 46.1s", 15 * (19 + 9 / 60 + 46.1 / 3600)),
        ("19 09.2", 15 * (19 + 9.2 / 60)),
        ("19h09m", 15 * (19 + 9 / 60)),
        ("0 00 00", 0.0),
        ("'23:59:59.9'", 15 * (23 + 59 / 60 + 59.9 / 3600)),
    ],
)
def test_right_ascension_is_degrees_or_hours(typed: str, degrees: float) -> None:
    """A plain number is degrees, a triple is hours, in each of the three ways to write it."""
    assert read(RightAscension(), typed) == (pytest.approx(degrees, abs=1e-12), [])


@pytest.mark.parametrize(
    ("typed", "degrees"),
    [
        ("-33.9", -33.9),
        ("−33.9", -33.9),
        ("+63 51 27", 63 + 51 / 60 + 27 / 3600),
        ("+63:51:27", 63 + 51 / 60 + 27 / 3600),
        ("+63d51m27s", 63 + 51 / 60 + 27 / 3600),
        ("+63°51′27″", 63 + 51 / 60 + 27 / 3600),
        ("-00 30 00", -0.5),
        ("-0:0:36", -0.01),
        ("-90", -90.0),
    ],
)
def test_declination_keeps_its_sign(typed: str, degrees: float) -> None:
    """The sign counts for minutes and seconds too, even where the degrees are zero."""
    assert read(Declination(), typed) == (pytest.approx(degrees, abs=1e-12), [])


@pytest.mark.parametrize(
    "typed", ["360", "-1", "24:00:00", "19 60 00", "19 09 60", "19h", "19 09 46 5", "abc", "1e2 3 4", "[19, 9, 46]"]
)
def test_what_is_no_right_ascension(typed: str) -> None:
    """Nothing is guessed from half an angle or from too much of one."""
    value, sentences = read(RightAscension(), typed)
    assert value is None
    assert len(sentences) == 1 and sentences[0].endswith("write degrees as 287.44, or hours as 19 09 46")


@pytest.mark.parametrize("typed", ["90.1", "-90 00 01", "12h30m00s", "north"])
def test_what_is_no_declination(typed: str) -> None:
    """Beyond the poles, or in hours, there is none."""
    value, sentences = read(Declination(), typed)
    assert value is None
    assert len(sentences) == 1 and sentences[0].endswith("write degrees as -63.86, or as -63 51 27")


@pytest.mark.parametrize(
    ("typed", "value"), [("200", 200.0), ("2e2", 200.0), (".5", 0.5), ("7.", 7.0), ("007", 7.0), ('"200"', 200.0)]
)
def test_numbers(typed: str, value: float) -> None:
    """Decimal digits with a point, in quotes or not; leading zeros are no octal."""
    assert read(MM, typed) == (value, [])


@pytest.mark.parametrize(
    ("typed", "hint"),
    [
        ("200mm", "give mm, as in 200"),
        ("200 mm", "give mm, as in 200"),
        ("0,5", "give mm, as in 0.5"),
        ("1,000", "give mm, as digits with a point"),
        ("1_000", "give mm, as digits with a point"),
        ("~200", "give mm, as digits with a point"),
        ("0x10", "give mm, as in 0"),
        ("٣", "give mm, as digits with a point"),
        ("12:30", "give mm, as in 12"),
        ("NaN", "give mm, as digits with a point"),
    ],
)
def test_what_is_no_number(typed: str, hint: str) -> None:
    """The hint names the unit and, where there is no doubt, the number."""
    assert read(MM, typed) == (None, [f"'key' is '{typed}', not a number; {hint}"])


def test_a_number_out_of_range_is_told_its_range() -> None:
    """With the unit, and with infinity caught."""
    assert read(MM, "2001") == (None, ["'key' is 2001, out of range; it may be 0 to 2000, in mm"])
    assert read(Number(above=0), "0") == (None, ["'key' is 0, out of range; it may be above 0"])
    assert read(Number(), "1e999") == (None, ["'key' is 1e999, out of range; it may be "])


def test_a_pair_may_be_one_number() -> None:
    """A round object needs its size once."""
    assert read(PAIR, "[11.5, 9.8]") == ((11.5, 9.8), [])
    assert read(PAIR, "12") == ((12.0, 12.0), [])
    assert read(PAIR, "{a: 1}")[0] is None


@pytest.mark.parametrize("typed", ["2026-04-18", '"2026-04-18"', "2024-02-29"])
def test_dates(typed: str) -> None:
    """ISO 8601 days, whatever YAML would make of them."""
    assert read(Day(), typed) == (date.fromisoformat(typed.strip('"')), [])


@pytest.mark.parametrize(
    "typed", ["2026-02-29", "2026-13-01", "26-04-18", "0026-04-18", "18 April 2026", "2026-W16-6", "20260418"]
)
def test_what_is_no_date(typed: str) -> None:
    """Days that never were, and forms that could be read two ways."""
    assert read(Day(), typed) == (None, [f"'key' is '{typed}', not a date; write year-month-day, as in 2026-04-18"])


def test_yes_and_no() -> None:
    """In every way YAML has had for them."""
    assert [read(YesOrNo(), typed)[0] for typed in ("true", "yes", "On", "NO", "false", "off")] == [True] * 3 + [False] * 3
    assert read(YesOrNo(), "1") == (None, ["'key' is '1', not true or false; write true or false"])


def test_choices_keep_the_words_of_yaml_as_words() -> None:
    """A filter called NO stays one."""
    assert read(Choice(("NO", "OIII")), "NO") == ("NO", [])


def test_text_is_one_line_or_keeps_its_paragraphs() -> None:
    """A title may be broken anywhere; a caption keeps its lines."""
    assert read(LINE, "|\n  two\n  lines")[0] == "two lines"
    assert read(PARAGRAPHS, "|\n  two\n  lines\n")[0] == "two\nlines"
    assert read(LINE, "2026")[0] == "2026"


@pytest.mark.parametrize("typed", ["en", "en-GB", "pt-BR", "zh-Hant-TW", "el"])
def test_languages(typed: str) -> None:
    """Tags of BCP 47 that are known to the Unicode locale data."""
    assert read(Language(), typed) == (typed, [])


@pytest.mark.parametrize("typed", ["Europe/Athens", "Pacific/Auckland", "UTC", "Etc/GMT+5", "America/Argentina/Buenos_Aires"])
def test_time_zones(typed: str) -> None:
    """Names of the IANA database."""
    assert read(TimeZone(), typed) == (typed, [])


@pytest.mark.parametrize("typed", ["posix/Europe/Athens", "Europe", "/etc/localtime", "'Europe/../Europe/Athens'", "''"])
def test_what_is_no_time_zone(typed: str) -> None:
    """Folders and files beside the zones, which differ from machine to machine."""
    assert read(TimeZone(), typed)[0] is None


@pytest.mark.parametrize(
    "typed", ["https://example.org/", "http://localhost:8000/a?b=c#d", "https://[2001:db8::1]/", "HTTPS://Example.org/x"]
)
def test_addresses(typed: str) -> None:
    """Absolute http and https addresses."""
    assert read(WebAddress(), typed) == (typed, [])


@pytest.mark.parametrize(
    "typed",
    [
        "'javascript:alert(1)'",
        "' javascript://example.org/%0aalert(1)'",
        "'vbscript:x'",
        "'//example.org'",
        "'https:example.org'",
    ],
)
def test_what_is_no_address(typed: str) -> None:
    """Nothing that a browser would run, nothing relative."""
    assert read(WebAddress(), typed)[0] is None
