"""Long columns of facts.json, read back by the rule that the schema states."""

import json
import math
from datetime import datetime, timedelta
from typing import Any

import jsonschema
import pytest
from msgspec.structs import replace

from sitegen.facts.column_runs import MOST_PLAIN, Runs, published_column
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import as_json, facts_of
from sitegen.facts.places import places_in
from sitegen.facts.registry import EntryFacts, SubFacts
from sitegen.feeds.facts_schema import facts_schema
from tests.diaries import diary, entry, run

ALTITUDES = [round(60 * math.sin(0.00002 * place) + 0.2, 3) for place in range(40_000)]


def read_back(column: dict[str, Any]) -> list[Any]:
    """By the words of the schema alone; times as moments."""
    values: list[Any] = []
    for count, first, step in zip(column["count"], column["first"], column["step"], strict=True):
        values += [_value(first, step, number, column["decimals"]) for number in range(count)]
    return values


def _value(first: Any, step: float, number: int, decimals: int) -> Any:
    if isinstance(first, str) and first.endswith("Z"):
        return datetime.fromisoformat(first) + timedelta(seconds=round(number * step, decimals))
    return first if first is None or isinstance(first, str | bool) else round(first + number * step, decimals)


def column_of(values: list[Any], unit: str = "°", decimals: int | None = 3) -> dict[str, Any]:
    runs = published_column(values, unit, decimals)
    assert isinstance(runs, Runs)
    return {"count": runs.count, "first": runs.first, "step": runs.step, "decimals": runs.decimals}


def many_subs(count: int) -> EntryFacts:
    """Of one night at two seconds a sub, some of them thrown away."""
    subs = [replace(sub, kept=place % 300 > 2) for place, sub in enumerate(run("2026-09-12 11:00", count, 1.75, 0.25))]
    book = diary(entry(subs))
    return facts_of(views_of(book, book.entries)[0])


@pytest.mark.parametrize(
    ("values", "decimals"),
    [
        (ALTITUDES, 3),
        ([*ALTITUDES[:9000], *[None] * 2500, *ALTITUDES[9000:12_000]], 3),
        ([place * 7919 % 1000 / 1000 for place in range(MOST_PLAIN + 1)], 3),
        ([-0.5 if place % 2 else 86400.1234 for place in range(MOST_PLAIN + 1)], 4),
    ],
    ids=["smooth", "with a gap", "without order", "to and fro"],
)
def test_every_number_comes_back(values: list[float | None], decimals: int) -> None:
    """Each value to its last published digit, by first + k × step rounded, unknown ones as null."""
    assert read_back(column_of(values, decimals=decimals)) == values


def test_smooth_columns_become_few_runs() -> None:
    """A smooth column of 40,000 altitudes is in fewer than a thirtieth as many runs, one without order in half as many."""
    assert len(column_of(ALTITUDES)["count"]) < len(ALTITUDES) / 30
    jumping = [place * 7919 % 1000 / 1000 for place in range(MOST_PLAIN + 1)]
    assert len(column_of(jumping)["count"]) <= len(jumping) / 2 + 1


def test_no_value_lies_between_two_roundings() -> None:
    """first + k × step is at least a hundredth of the last digit away from where readers could round to either side."""
    column = column_of(ALTITUDES)
    at = 0
    for count, first, step in zip(column["count"], column["first"], column["step"], strict=True):
        assert all(abs(first + number * step - ALTITUDES[at + number]) < 0.000495 for number in range(count))
        at += count


def test_times_texts_and_truths_come_back() -> None:
    """Even steps of a third of a second are few runs of times; words and truths are repeated."""
    moments = [datetime.fromisoformat("2026-09-12T11:00:00Z") + timedelta(milliseconds=333 * place) for place in range(20_000)]
    texts = [moment.isoformat(timespec="milliseconds").replace("+00:00", "Z") for moment in moments]
    times = column_of(texts, "UTC", None)
    assert read_back(times) == moments
    assert times["count"] == [20_000] and times["step"] == [0.333]
    words = ["L"] * 6000 + ["Ha"] * 6000
    assert column_of(words, "", None) == {"count": [6000, 6000], "first": ["L", "Ha"], "step": [0, 0], "decimals": 0}
    counts = [place if place % 100 else None for place in range(MOST_PLAIN + 5)]
    assert read_back(column_of(counts, "", None)) == counts
    assert len(column_of(counts, "", None)["count"]) == 202
    truths = [place != 5 for place in range(MOST_PLAIN + 5)]
    assert read_back(column_of(truths, "", None)) == truths


def test_up_to_the_limit_columns_stay_plain() -> None:
    """Ten thousand values are an array of ten thousand."""
    assert published_column(ALTITUDES[:MOST_PLAIN], "°", 3) == ALTITUDES[:MOST_PLAIN]


def test_both_shapes_follow_the_schema() -> None:
    """An entry of many subs says schema 2 and has runs, one of few says 1 and has arrays; jsonschema takes both."""
    few, many = as_json(many_subs(300)), as_json(many_subs(MOST_PLAIN + 1))
    assert (few["schema"], many["schema"]) == (1, 2)
    for found in (few, many):
        jsonschema.validate(found, facts_schema())
    assert {type(column) for column in few["subs"].values()} == {list}
    assert {type(column) for column in many["subs"].values()} == {dict}


def test_the_schema_takes_no_runs_under_schema_1() -> None:
    """Who reads schema 1 meets arrays alone."""
    many = as_json(many_subs(MOST_PLAIN + 1)) | {"schema": 1}
    with pytest.raises(jsonschema.ValidationError, match="is not of type 'array'"):
        jsonschema.validate(many, facts_schema())


def test_what_is_published_is_what_was_computed() -> None:
    """Each column of an entry of many subs, read back, is the column of its facts, and is far smaller."""
    facts = many_subs(12_000)
    published = as_json(facts)
    for place in places_in(SubFacts):
        column = list(getattr(facts.subs, place.attribute))
        expected = [datetime.fromisoformat(text) for text in column] if place.key == "start" else column
        assert read_back(published["subs"][place.key]) == expected, place.key
    assert len(json.dumps(published["subs"])) < 12_000 * 8
