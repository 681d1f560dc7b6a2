"""Every kind of caution is whole: named, worded and founded; and phrases mean what their table says."""

import re
from pathlib import Path
from time import process_time
from typing import get_args

import pytest
import yaml

from sitegen.cautions.caution import COMMON_PRACTICE, NEARBY, NEXT, Caution, needs_of
from sitegen.cautions.dangers import Danger, Text
from sitegen.cautions.finding import kinds_in
from sitegen.cautions.index import PhraseIndex
from sitegen.cautions.passages import kinds_in_body
from sitegen.cautions.phrases import expression, parts, stands_in
from sitegen.cautions.registry import CAUTIONS
from sitegen.cautions.spoken import may_be
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
        ("*heiz*", "die tauheizung", True),
        ("mond*finsternis", "die mondteilfinsternis", True),
        ("(steh|tritt)leiter", "die trittleiter", True),
        ("(a pair|two) of discs", "a pair of discs", True),
        ("couldn't feel", "i couldn't feel it", True),
        ("cold water", "cold, water", False),
        ("-# (°|degrees)", "it had -12 degrees", True),
    ],
)
def test_phrases_mean_what_their_table_says(phrases: str, text: str, is_there: bool) -> None:
    """The expression and the index agree."""
    assert stands_in(phrases, text) is is_there
    assert PhraseIndex((phrases,)).tables_met(text) == ({0} if is_there else set())
    assert PhraseIndex((phrases,)).words_met(text).keys() == ({0} if is_there else set())


@pytest.mark.parametrize("caution", CAUTIONS, ids=lambda caution: caution.name)
@pytest.mark.parametrize("language", LANGUAGES)
def test_no_phrase_is_lost_in_the_index(caution: Caution, language: str) -> None:
    """Each phrase, with its signs read in the plainest way, is found by the index."""
    vocabulary = caution.languages[language]
    tables = {table for danger in vocabulary.dangers for table in danger} | {vocabulary.harmless}
    for phrase in {phrase for table in tables - {NEXT, NEARBY} for phrase in parts(table)}:
        assert PhraseIndex((phrase,)).tables_met(plainest(phrase)) == {0}, phrase


def plainest(phrase: str) -> str:
    """The first reading of each group, each optional word, nothing for stars, a number for '#', a word for the rest."""
    words = re.sub(r"\(([^|)]*)[^)]*\)", r"\1", phrase).replace("?", "").replace("#", "7").replace("…", "x")
    return " ".join(word.replace("*", "") or "x" for word in words.split())


def test_the_rest_of_a_sentence_is_overlooked() -> None:
    assert PhraseIndex(("molecule* …",)).without(0, "of molecules and alcohol").split() == ["of"]


def test_each_table_of_a_danger_is_met_by_words_of_its_own() -> None:
    """'asleep' is no driver and no sleeper at once."""
    asleep = "asleep | the wheel"
    danger = Danger("driving", (0, 1), 1)
    index = PhraseIndex((asleep, asleep))
    assert not Text(["he fell asleep"], index).holds(danger, 0)
    assert Text(["he fell asleep at the wheel"], index).holds(danger, 0)


@pytest.mark.parametrize(("reach", "is_met"), [(1, False), (2, False), (3, True)])
def test_a_danger_reaches_so_many_sentences(reach: int, is_met: bool) -> None:
    """Before or behind the sentence of its first table."""
    index, danger = PhraseIndex(("stool", "tiptoe")), Danger("weight", (0, 1), reach)
    assert Text(["a stool", "stars", "on tiptoe"], index).holds(danger, 0) is is_met
    assert Text(["on tiptoe", "stars", "a stool"], index).holds(danger, 2) is is_met


def test_what_stands_last_in_a_danger_says_how_far_it_reaches() -> None:
    assert [needs_of(("a", "b", *far))[1] for far in ((), (NEXT,), (NEARBY,))] == [1, 2, 3]
    assert {needs_of(("a", "b", *far))[0] for far in ((), (NEXT,), (NEARBY,))} == {("a", "b")}


@pytest.mark.parametrize(
    ("text", "languages"),
    [
        ("the boot of the car", ["en"]),
        ("das boot und der see", ["de"]),
        ("boot, see, hand", ["de", "en"]),
        ("the sign said das boot", ["de", "en"]),
    ],
)
def test_a_vocabulary_reads_no_other_language(text: str, languages: list[str]) -> None:
    assert [language for language in LANGUAGES if may_be(language, text.split())] == languages


def test_an_endless_word_costs_no_time() -> None:
    """Common practice, no source: half a second is a thousand times what 3,000 letters take, and a seventh of what they would."""
    start = process_time()
    assert kinds_in("b" * 3_000) == ()
    assert process_time() - start < 0.5


def test_an_endless_sentence_costs_little_time() -> None:
    """Every text with a danger, without a full stop. Common practice, no source: ten seconds are six times what it takes, and a
    fifth of what it would."""
    texts = " ".join(text for path in sorted(Path(__file__).parent.glob("*with_danger.yaml")) for text in texts_of(path))
    start = process_time()
    assert set(kinds_in(re.sub("[.!?:]", "", texts))) == set(get_args(CautionKind))
    assert process_time() - start < 10


def texts_of(path: Path) -> list[str]:
    return [str(entry["text"]) for entry in yaml.safe_load(path.read_text("utf-8"))]


def test_no_phrase_is_compiled_without_its_words() -> None:
    """One changed sentence pays only for what it speaks of."""
    expression.cache_clear()
    kinds_in.cache_clear()
    assert kinds_in("Zzz.") == ()
    assert expression.cache_info().currsize == 0
    assert kinds_in("It was 12 degrees below freezing, and I had no gloves.") == ("cold",)
    assert 0 < expression.cache_info().currsize < 50


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
