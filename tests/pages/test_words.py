"""The theme's words: one catalogue, two languages, nothing shown that is not in it."""

import re

import pytest

from sitegen.catalogue.credits import CREDITS
from sitegen.facts.places import PLACES
from sitegen.pages.credits_page import LIBRARIES
from sitegen.pages.words import Words, words_from
from tests.conftest import ROOT

THEME = ROOT / "themes" / "default"


def words(language: str) -> Words:
    return words_from(language, ((THEME / "words" / f"{language}.yaml").read_text("utf-8"),))


def test_both_languages_say_the_same_things() -> None:
    """German has every key of English; beyond them only what stands in English in the registry of facts."""
    english, german = words("en"), words("de")
    assert set(english) - set(german) == set()
    assert {key for key in set(german) - set(english) if not key.startswith(("fact.", "value.", "phrase."))} == set()


@pytest.mark.parametrize("key", sorted(words("en")))
def test_gaps_are_the_same(key: str) -> None:
    """A sentence has the same gaps in both languages, or a page would stop at it."""
    assert set(re.findall(r"{(\w*)}", words("en")[key])) == set(re.findall(r"{(\w*)}", words("de")[key]))


def test_every_fact_is_explained_in_german() -> None:
    """Title and explanation of each fact of the registry."""
    german = words("de")
    paths = list(PLACES)
    assert [path for path in paths if f"fact.{path}.how" not in german or f"fact.{path}.title" not in german] == []


def test_sources_and_uses_are_told_in_german() -> None:
    """Each fact's source, each library's and each data set's use; names of books and people stay as they are."""
    german = words("de")
    told = [fact.source for fact in PLACES.values()]
    told += [*LIBRARIES.values(), *(one.used_for for one in CREDITS)]
    same = {"W. R. Dawes, Memoirs of the RAS 35, 137 (1867)"}
    assert {one for one in told if german.phrase(one) == one} == same


def test_templates_use_only_words_of_the_catalogue() -> None:
    """Every literal key in a template is in the catalogue (those put together from parts are seen when pages are drawn)."""
    english = words("en")
    used = {
        key
        for path in sorted((THEME / "html").glob("*.html"))
        for key in re.findall(r"say(?:_count)?\('([a-z_.]+)'[,)]", path.read_text("utf-8"))
    }
    assert len(used) > 60
    assert {key for key in used if key not in english and f"{key}.other" not in english} == set()


def test_templates_hold_no_words_of_their_own() -> None:
    """Text between tags is made of marks, digits and what the catalogue says."""
    told = []
    for path in sorted((THEME / "html").glob("*.html")):
        text = re.sub(r"{#.*?#}|{%.*?%}|{{.*?}}|<(script|style)\b.*?</\1>", "", path.read_text("utf-8"), flags=re.S)
        bare = re.sub(r"<[^>]*>", "\n", text)
        told += [f"{path.name}: {word}" for word in re.findall(r"[A-Za-z]{3,}", bare)]
    assert told == []


def test_plural_forms_follow_the_language() -> None:
    """One night, two nights; eine Nacht, zwei Nächte."""
    assert words("en").count("entry.nights", 1) == "1 night"
    assert words("en").count("entry.nights", 2) == "2 nights"
    assert words("de").count("entry.nights", 1) == "1 Nacht"
    assert words("de").count("entry.nights", 5) == "5 Nächte"


def test_a_theme_may_replace_single_words() -> None:
    """Later catalogues win key by key."""
    laid = words_from("en", ("nav: {diary: Diary, sky: Sky}", "nav: {diary: Entries}"))
    assert dict(laid) == {"nav.diary": "Entries", "nav.sky": "Sky"}
