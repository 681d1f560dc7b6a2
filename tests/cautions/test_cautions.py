"""Every kind of caution is whole: named, worded and founded; and phrases mean what their table says."""

from pathlib import Path
from typing import get_args

import pytest

from sitegen.cautions.caution import COMMON_PRACTICE, Caution
from sitegen.cautions.finding import kinds_in
from sitegen.cautions.passages import kinds_in_body
from sitegen.cautions.phrases import stands_in, without
from sitegen.cautions.registry import CAUTIONS
from sitegen.diary.rig import CautionKind
from sitegen.pages.words import Words, words_from
from tests.conftest import ROOT

WORDS = ROOT / "themes/default/words"
LANGUAGES = sorted(path.stem for path in WORDS.glob("*.yaml"))


def words(language: str) -> Words:
    return words_from(language, (Path(WORDS, f"{language}.yaml").read_text("utf-8"),))


def test_the_kinds_are_those_of_the_registry() -> None:
    """In one order, which facts.json and its schema show."""
    assert [caution.name for caution in CAUTIONS] == list(get_args(CautionKind)), "name it in CautionKind of sitegen/diary/rig.py"


@pytest.mark.parametrize("caution", CAUTIONS, ids=lambda caution: caution.name)
def test_a_kind_speaks_every_language_of_the_theme(caution: Caution) -> None:
    """A vocabulary to find it, its name and what it says."""
    assert sorted(caution.languages) == LANGUAGES
    for language in LANGUAGES:
        spoken = words(language)
        assert len(spoken[f"caution.{caution.name}"]) > 60
        assert spoken[f"value.{caution.name}"] != caution.name or language == "en"


@pytest.mark.parametrize("caution", CAUTIONS, ids=lambda caution: caution.name)
def test_a_kind_names_its_basis(caution: Caution) -> None:
    """Standards, or common practice; what was cited from memory is among them."""
    assert caution.basis and all(caution.basis)
    assert set(caution.from_memory) <= set(caution.basis) - {COMMON_PRACTICE}


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("kind", ["laser", "electrical"])
def test_law_comes_first(kind: str, language: str) -> None:
    """Lasers, aircraft and mains: the local law or code goes before what a diary says."""
    says = {"en": "comes? first", "de": "(geht|gehen) vor"}
    stems = {"en": ("law", "codes"), "de": ("Recht", "Vorschriften")}
    sentence = words(language)[f"caution.{kind}"]
    assert any(stem in sentence for stem in stems[language])
    assert stands_in(says[language].replace("comes?", "(come|comes)"), sentence.lower().rstrip("."))


@pytest.mark.parametrize(
    ("phrases", "text", "is_there"),
    [
        ("point*", "we pointed it", True),
        ("point*", "an appointment", False),
        ("*leiter", "die stehleiter", True),
        ("cold water", "cold-water", True),
        ("(a|the) lens", "the lens", True),
        ("the? sun", "sun", True),
        ("# kg", "it has 12.5 kg", True),
        ("look* … the sun", "looking for a while past the sun", True),
        ("look* … the sun", "looking one two three four five six seven the sun", False),
        ("one | two", "two", True),
    ],
)
def test_phrases_mean_what_their_table_says(phrases: str, text: str, is_there: bool) -> None:
    assert stands_in(phrases, text) is is_there


def test_the_rest_of_a_sentence_is_overlooked() -> None:
    assert without("molecule* …", "of molecules and alcohol").split() == ["of"]


def test_no_phrase_is_compiled_without_its_stem() -> None:
    """One changed sentence pays only for what it speaks of."""
    from sitegen.cautions import phrases

    phrases._expression.cache_clear()
    kinds_in.cache_clear()
    assert kinds_in("Zzz.") == ()
    assert phrases._expression.cache_info().currsize == 0
    assert kinds_in("The laser pointed at the mirror.") == ("laser",)
    assert phrases._expression.cache_info().currsize > 0


LASER = "Put the laser into the focuser."


@pytest.mark.parametrize(
    ("body", "kinds"),
    [
        (LASER, ("laser",)),
        (f"- one\n- {LASER}", ("laser",)),
        (f"> {LASER}", ("laser",)),
        (f"| a | b |\n|---|---|\n| {LASER} | c |", ("laser",)),
        (f"Term\n: {LASER}", ("laser",)),
        ("## The ladder\n\nClimb to the top.", ("weight",)),
        ("| what | how |\n|---|---|\n| the ladder | climb it |", ("weight",)),
        ("The ladder.\n\nClimb to the top.", ()),
        (f"{LASER} [](no_caution:)", ()),
        (f"[](no_caution:) {LASER}\n\n{LASER}", ("laser",)),
        (f"- {LASER} [](no_caution:)\n- two", ()),
        (f"To write: {LASER}", ()),
        (f"    {LASER}", ()),
        ("Put the **laser** into [the focuser](x.md).", ("laser",)),
    ],
)
def test_a_text_is_read_part_by_part(body: str, kinds: tuple[str, ...]) -> None:
    """Lists, quotations, tables and headings; what its author denies, or has not written yet, counts for nothing."""
    assert kinds_in_body(body) == kinds
