"""Recalled totals: when they were, in the words that people use, and how much follows from what is written."""

from datetime import date
from pathlib import Path

import pytest

from sitegen.diary.recalled import Recalled, When
from sitegen.reading.reader import read_diary
from sitegen.reading.value_types.period import understood
from tests.entries.diary_text import HERE, lay_out, read_diary_text

WHENS = {
    "2019": When(2019),
    "2018-04": When(2018, 4),
    "2018-04-21": When(2018, 4, 21),
    "autumn 2019": When(2019, season="autumn"),
    "Fall 2019": When(2019, season="autumn"),
    "in the autumn of 2019": When(2019, season="autumn"),
    "2019, spring": When(2019, season="spring"),
    "Herbst 2019": When(2019, season="autumn"),
    "im Frühjahr 2019": When(2019, season="spring"),
    "Winter 2019/20": When(2019, season="winter", to_next=True),
    "summer 2019/2020": When(2019, season="summer", to_next=True),
    "winter 1999-00": When(1999, season="winter", to_next=True),
    "April 2018": When(2018, 4),
    "Sept. 2018": When(2018, 9),
    "März 2018": When(2018, 3),
    "21. April 2018": When(2018, 4, 21),
    "21st of April 2018": When(2018, 4, 21),
}
NO_WHENS = ["", "2019/20", "autumn", "April", "winter 2019/21", "winter 2019/1920", "2018-13", "2018-02-30", "30 February 2018",
            "spring 2018 2019", "1066", "autumn 19", "a cold night in 2019", "2018-4-21", "5 6 April 2018"]  # fmt: skip


@pytest.mark.parametrize("text", WHENS)
def test_what_is_understood(text: str) -> None:
    """English and German, in any order of the words. Every form is common practice, no source."""
    assert understood(text) == WHENS[text]


@pytest.mark.parametrize("text", NO_WHENS)
def test_what_is_not_understood(text: str) -> None:
    """Nothing is guessed: neither the year of a season nor the century of a year."""
    assert understood(text) is None


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("2019", date(2019, 1, 1), date(2019, 12, 31)),
        ("2020-02", date(2020, 2, 1), date(2020, 2, 29)),
        ("winter 2019/20", date(2019, 1, 1), date(2020, 12, 31)),
        ("2018-04-21", date(2018, 4, 21), date(2018, 4, 21)),
    ],
)
def test_the_days_that_may_be_meant(text: str, first: date, last: date) -> None:
    """From the first to the last, by the calendar: of these days the rig's trains are shown."""
    when = understood(text)
    assert when is not None
    assert (when.first, when.last) == (first, last)


def test_an_entry_of_recalled_totals_alone_is_sound(tmp_path: Path) -> None:
    """No log, no picture, no word; the total as written, else count times exposure: 40 × 10 min are 24000 s, worked by hand."""
    lay_out(read_diary_text(HERE / "sound.diary"), tmp_path)
    first = "{filter: Ha, count: 40, exposure: 10m, when: Herbst 2019}"
    items = f"{first}, {{total: 3h20m}}, {{filter: clear, total: 1h, target: NGC 253}}"
    (tmp_path / "entries/old.md").write_text(
        f"---\ntitle: Old\npublished: 2026-06-21\ntarget: [NGC 7293, NGC 253]\nrig: dome\nsite: roof\nrecalled: [{items}]\n---\n",
        "utf-8",
    )
    reading = read_diary(tmp_path, date(2026, 11, 25))
    assert reading.problems == ()
    assert reading.diary is not None
    entry = reading.diary.entries[0]
    assert entry.subs == ()
    assert entry.recalled == (
        Recalled(24000.0, "Ha", 40, 600.0, When(2019, season="autumn"), 0, "dome", "roof"),
        Recalled(12000.0, None, None, None, None, 0, "dome", "roof"),
        Recalled(3600.0, "clear", None, None, None, 1, "dome", "roof"),
    )
