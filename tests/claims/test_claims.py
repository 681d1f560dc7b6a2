"""Each kind of claim doubts what the logs, the sky and the calendar deny, and nothing else."""

import pytest

from sitegen.claims.languages import VOCABULARIES
from sitegen.claims.registry import CLAIMS
from tests.claims.samples import DENIED, SOUND, Denied, Sound
from tests.claims.three_nights import doubts

DENIED_SAMPLES = [(kind, language, sample) for (kind, language), samples in DENIED.items() for sample in samples]
SOUND_SAMPLES = [(kind, language, sample) for (kind, language), samples in SOUND.items() for sample in samples]
KINDS = {kind.key for kind in CLAIMS}


def test_every_kind_has_samples_both_ways_in_both_languages() -> None:
    """A new kind is one file, its line in the registry, and its samples."""
    wanted = {(kind, language) for kind in KINDS for language in VOCABULARIES}
    assert {key for key, samples in DENIED.items() if len(samples) >= 3} == wanted
    assert {key for key, samples in SOUND.items() if len(samples) >= 3} == wanted
    assert len(DENIED_SAMPLES) >= 40
    assert len(SOUND_SAMPLES) >= 40


@pytest.mark.parametrize(("kind", "language", "sample"), DENIED_SAMPLES, ids=lambda value: getattr(value, "text", value))
def test_a_denied_sentence_is_doubted_once_with_both_values(kind: str, language: str, sample: Denied) -> None:
    (doubt,) = doubts(sample.text, language, sample.role, sample.evening, sample.nights)
    assert sample.says in doubt.wrong
    assert sample.known in doubt.wrong
    plain = sample.text if "](" not in sample.text else None
    assert plain is None or plain[doubt.start :].startswith(sample.at)


@pytest.mark.parametrize(("kind", "language", "sample"), DENIED_SAMPLES, ids=lambda value: getattr(value, "text", value))
def test_the_doubt_comes_from_its_kind(kind: str, language: str, sample: Denied, monkeypatch: pytest.MonkeyPatch) -> None:
    """Without the kind the sentence passes: each sample holds its own kind."""
    monkeypatch.setattr("sitegen.claims.doubts.CLAIMS", tuple(other for other in CLAIMS if other.key != kind))
    assert doubts(sample.text, language, sample.role, sample.evening, sample.nights) == []


@pytest.mark.parametrize(("kind", "language", "sample"), SOUND_SAMPLES, ids=lambda value: getattr(value, "text", value))
def test_a_sound_sentence_is_left_alone(kind: str, language: str, sample: Sound) -> None:
    assert doubts(sample.text, language, sample.role, sample.evening, sample.nights) == []


@pytest.mark.parametrize(("kind", "language", "sample"), DENIED_SAMPLES, ids=lambda value: getattr(value, "text", value))
def test_the_mark_takes_a_paragraph_out(kind: str, language: str, sample: Denied) -> None:
    """Only in the body: a text of the front matter has no paragraphs."""
    if sample.role == "paragraph":
        assert doubts(f"{sample.text} [](no_doubt:)", language) == []
