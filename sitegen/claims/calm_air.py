"""Wind said to be calm, or no cloud, in a night whose subs were lost to gusts or cloud."""

from collections import Counter
from collections.abc import Iterator

from sitegen.claims.doubt import ClaimKind, Doubt
from sitegen.claims.evidence import Evidence
from sitegen.claims.guards import is_aside, night_named
from sitegen.claims.languages import VOCABULARIES
from sitegen.claims.sentence import Sentence
from sitegen.claims.vocabulary import Words
from sitegen.facts.views import NightView

# A capture program writes its reasons in a language of its own.
WIND = tuple(sign for words in VOCABULARIES.values() for sign in words.wind)
CLOUD = tuple(sign for words in VOCABULARIES.values() for sign in words.cloud)


def _find(sentence: Sentence, evidence: Evidence) -> Iterator[Doubt]:
    words, role = evidence.words, sentence.passage.role
    if role == "wind" and _is_only(sentence, words.calm, words.throughout):
        yield from _lost(sentence, evidence, WIND, "calm")
    elif role == "clouds" and _is_only(sentence, words.clear, words.throughout):
        yield from _lost(sentence, evidence, CLOUD, "clear")
    elif role in ("paragraph", "note", "lesson") and _tells_calm(sentence, evidence):
        yield from _lost(sentence, evidence, WIND, "calm")


def _tells_calm(sentence: Sentence, evidence: Evidence) -> bool:
    """Of a whole night."""
    words = evidence.words
    return sentence.holds(*words.calm_phrases) and not is_aside(sentence, evidence) and not words.at_times & sentence.vocabulary


def _is_only(sentence: Sentence, condition: Words, beside: Words) -> bool:
    """Nothing else is said: 'calm but for one gust' is not calm."""
    return (
        bool(condition & sentence.vocabulary)
        and sentence.vocabulary <= condition | beside
        and sentence.passage.text.strip() == sentence.text.strip()
    )


def _lost(sentence: Sentence, evidence: Evidence, signs: tuple[str, ...], weather: str) -> Iterator[Doubt]:
    nights = night_named(sentence, evidence)
    reasons = Counter(reason for night in nights for reason in _reasons(night, signs, evidence.words.negations))
    if reasons:
        reason, _ = reasons.most_common(1)[0]
        subs = sum(reasons.values())
        lost = f"{subs} subs were" if subs > 1 else "one sub was"
        in_logs = f"{lost} lost to '{reason}' in the night of {nights[0].evening}"
        yield Doubt(sentence.start, f"the text says that it was {weather}, and {in_logs}")


def _reasons(night: NightView, signs: tuple[str, ...], negations: Words) -> Iterator[str]:
    for light in night.lights:
        reason = light.sub.reason or ""
        folded = reason.casefold()
        if not light.sub.kept and any(sign in folded for sign in signs) and not negations & set(folded.split()):
            yield reason


CLAIM = ClaimKind("calm-air", "wind said to be calm, or a clear sky, where subs were lost to gusts or cloud", _find)
