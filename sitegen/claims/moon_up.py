"""The Moon said to be up or down in a night whose subs had it otherwise."""

from collections.abc import Iterator, Sequence

from sitegen.claims.doubt import ClaimKind, Doubt
from sitegen.claims.evidence import Evidence
from sitegen.claims.guards import is_aside, night_named
from sitegen.claims.sentence import Sentence
from sitegen.claims.sky_of_night import Altitudes, moon_all_night, moon_of_subs
from sitegen.facts.views import NightView

# A degree of refraction, hills and the disc's own size decide nothing.
NEAR_HORIZON_DEG = 1.5
# 'All night' is not doubted for a sub or two.
FEW = 0.15


def _find(sentence: Sentence, evidence: Evidence) -> Iterator[Doubt]:
    says_up = _says_up(sentence, evidence)
    if says_up is None or is_aside(sentence, evidence):
        return
    for night in night_named(sentence, evidence)[:1]:
        altitudes = _asked(sentence, night, evidence)
        if altitudes and _is_denied(altitudes, says_up, sentence.holds(*evidence.words.all_night)):
            at = next((word.start for word in sentence.words if word.text.startswith(("moon", "mond"))), sentence.start)
            yield Doubt(at, f"the text says that the Moon was {'up' if says_up else 'down'}, {_known(altitudes, night)}")


def _says_up(sentence: Sentence, evidence: Evidence) -> bool | None:
    """None where it says neither, or both, or that it was down to a sliver."""
    words = evidence.words
    if sentence.holds(*words.no_moon) and not words.in_picture & sentence.vocabulary:
        return False
    if sentence.passage.role == "note" and words.moonless & sentence.vocabulary:
        return False
    if not words.moon & sentence.vocabulary or words.negations & sentence.vocabulary:
        return None
    if sentence.holds(*words.moon_waning):
        return None
    up, down = sentence.holds(*words.moon_up), sentence.holds(*words.moon_down)
    return up if up != down else None


def _asked(sentence: Sentence, night: NightView, evidence: Evidence) -> Altitudes:
    """Over the subs; from sunset to sunrise where the sentence speaks of a part of the night."""
    all_night = sentence.holds(*evidence.words.all_night)
    part = bool(evidence.words.at_times & sentence.vocabulary) and not all_night
    return moon_all_night(night) if part else moon_of_subs(night)


def _is_denied(altitudes: Altitudes, says_up: bool, all_night: bool) -> bool:
    """By every sub; by more than a few of them where the whole night is said."""
    sign = -1 if says_up else 1
    denying = sum(sign * altitude > NEAR_HORIZON_DEG for altitude in altitudes)
    return denying > FEW * len(altitudes) if all_night else denying == len(altitudes)


def _known(altitudes: Sequence[float], night: NightView) -> str:
    lowest, highest = min(altitudes), max(altitudes)
    return f"and in the night of {night.evening} it stood between {round(lowest)}° and {round(highest)}°"


CLAIM = ClaimKind("moon-up", "the Moon said to be up or down, against its altitude in that night", _find)
