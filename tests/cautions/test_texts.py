"""Cautions on texts with and without danger, in both languages, written by this project. Common practice, no source: what
endangers whom is the judgement of who wrote them.

What was found at the first sight of each batch stands here, since every batch was looked at afterwards:

| batch | with danger | found | without | false |
|---|---|---|---|---|
| `texts_…`, the half looked at while the rules were written | 33 | 33 | 31 | 0 |
| `texts_…`, the half held out | 32 | 32 | 31 | 0 |
| `second_…`, written after the rules to get round them | 48 | 25 | 50 | 0 |
| `third_…`, written after the rules were widened for the second | 51 | 37 | 52 | 0 |
| `fourth_…`, written after the rules were widened for the third | 30 | 25 | | |
| `fifth_…`, written by another head after the fourth | 24 | 22 | 20 | 1 |
| `sixth_…`, by an author who never saw the code and hints more than he says | 48 | 3 | 48 | 2 |
| the half of it held out, after the rules were widened for the other half | 24 | 18 | 24 | 4 |
| the same, after they were widened for `sixth_own_2` and `_3` | 24 | 17 | 24 | 3 |
| the same, after `sixth_own_4`, knowing the kinds that were missed and no more | 24 | 20 | 24 | 3 |
| `sixth_own_1_…`, written beside that first widening, 13 kinds | 222 | | 136 | 14 |
| `sixth_own_2_…`, written after it to get round the rules, hardly naming a danger | 131 | 15 | 68 | 9 |
| `sixth_own_3_…`, after the rules were widened for that | 75 | 17 | 38 | 5 |
| `sixth_own_4_…`, after the rules were widened for that | 46 | 10 | 26 | 3 |
| `sixth_own_5_…`, after the held-out half was mended | 37 | 13 | | |
| `sixth_own_6_…`, after the rules were widened for that | 39 | 9 | | |
| `seventh_…`, by an author who never saw the code, as diaries are written; never mended | 40 | 38 | 40 | 0 |

The first two were written by one head in one hour, so the later ones say more of what a stranger's text may meet. Plain words are
found (`seventh_`: the figure that was agreed on, on texts nobody tuned for). Of dangers that are only hinted at, one in six goes
unseen in a stranger's text, and three in four of those written to get round the rules.
"""

from collections.abc import Iterable
from pathlib import Path

import pytest
import yaml

from sitegen.cautions.finding import kinds_in
from sitegen.cautions.phrases import stands_in
from sitegen.cautions.registry import CAUTIONS

HERE = Path(__file__).parent
BATCHES = ("", "second_", "third_", "fifth_", "sixth_", "seventh_", *(f"sixth_own_{number}_" for number in range(1, 5)))
DANGERS = (*BATCHES, "fourth_", "sixth_own_5_", "sixth_own_6_")
LEAST_FOUND, MOST_FALSE = 0.95, 2 / 40
"""What was agreed on before the first text was tried."""


def texts(name: str) -> list[dict[str, object]]:
    loaded: list[dict[str, object]] = yaml.safe_load((HERE / f"{name}.yaml").read_text("utf-8"))
    return loaded


def with_danger() -> Iterable[tuple[str, str, set[str]]]:
    """Language, text, and the kinds that it must get."""
    for batch in DANGERS:
        for text in texts(f"{batch}texts_with_danger"):
            assert isinstance(text["kinds"], list)
            yield str(text["language"]), str(text["text"]), set(text["kinds"])


def without_danger() -> Iterable[tuple[str, str]]:
    for batch in BATCHES:
        yield from ((str(text["language"]), str(text["text"])) for text in texts(f"{batch}texts_without_danger"))


@pytest.mark.parametrize("language", ["en", "de"])
def test_texts_in_danger_get_their_cautions(language: str) -> None:
    """At least 95 of 100 in each language."""
    judged = [(text, kinds) for spoken, text, kinds in with_danger() if spoken == language]
    missed = [text for text, kinds in judged if kinds - set(kinds_in(text))]
    assert len(judged) >= 40
    assert len(missed) <= (1 - LEAST_FOUND) * len(judged), missed


@pytest.mark.parametrize("language", ["en", "de"])
def test_texts_without_danger_get_none(language: str) -> None:
    """At most 2 of 40 in each language."""
    judged = [text for spoken, text in without_danger() if spoken == language]
    false = [(text, kinds) for text in judged if (kinds := kinds_in(text))]
    assert len(judged) >= 40
    assert len(false) <= MOST_FALSE * len(judged), false


def test_a_caution_is_of_its_own_kind() -> None:
    """Where a text is in one danger, no more than one in twenty also gets the caution of another."""
    judged = [(text, kinds, set(kinds_in(text)) - kinds) for _, text, kinds in with_danger()]
    assert len([text for text, _, others in judged if others]) <= 0.05 * len(judged), [one for one in judged if one[2]]


@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize("kind", [caution.name for caution in CAUTIONS])
def test_each_kind_has_texts_for_it_and_against_it(kind: str, language: str) -> None:
    """Against it: a harmless text that meets the first table of one of the vocabulary's dangers."""
    vocabulary = next(caution for caution in CAUTIONS if caution.name == kind).languages[language]
    firsts = {danger[0] for danger in vocabulary.dangers}
    assert any(spoken == language and kind in kinds for spoken, _, kinds in with_danger())
    harmless = [text.lower() for spoken, text in without_danger() if spoken == language]
    assert any(stands_in(first, text) for first in firsts for text in harmless)
