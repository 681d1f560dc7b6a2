"""'Low in the west', 'high', 'overhead': where Moon or target stood while subs were taken."""

from collections.abc import Callable, Iterator

from msgspec import Struct

from sitegen.claims.doubt import ClaimKind, Doubt
from sitegen.claims.evidence import Evidence
from sitegen.claims.guards import is_aside, night_named
from sitegen.claims.sentence import Sentence
from sitegen.claims.sky_of_night import Directed, moon_directed, target_directed
from sitegen.claims.vocabulary import Vocabulary
from sitegen.facts.views import NightView

# Common practice, no source: nobody calls 40° low, nor 25° high, nor 55° overhead.
NEVER_LOW_DEG, NEVER_HIGH_DEG, NEVER_OVERHEAD_DEG = 40.0, 25.0, 55.0
UNDER_HORIZON_DEG = -1.5
FARTHEST_WORDS = 12
"""From the Moon or the target to what is said of it."""
COMPASS = {"N": "north", "S": "south", "E": "east", "W": "west"}


class PlaceSaid(Struct, frozen=True):
    """`half` as 'SW', '' where no direction is said; `height` is 'low', 'high', 'overhead' or ''."""

    height: str
    half: str
    start: int

    def is_denied(self, altitude_deg: float, half: str) -> bool:
        """By one moment."""
        return (
            (self.height == "low" and altitude_deg > NEVER_LOW_DEG)
            or (self.height == "high" and altitude_deg < NEVER_HIGH_DEG)
            or (self.height == "overhead" and altitude_deg < NEVER_OVERHEAD_DEG)
            or altitude_deg < UNDER_HORIZON_DEG
            or any(_OPPOSITE[letter] in half for letter in self.half)
        )

    def __str__(self) -> str:
        direction = "-".join(COMPASS[letter] for letter in self.half)
        return " ".join(part for part in (self.height, f"in the {direction}" if direction else "") if part)


_OPPOSITE = {"N": "S", "S": "N", "E": "W", "W": "E"}


def _find(sentence: Sentence, evidence: Evidence) -> Iterator[Doubt]:
    if sentence.passage.role == "ended_by":
        yield from _of_end(sentence, evidence)
        return
    place = _place_in(sentence, evidence.words)
    subject = _subject(sentence, evidence) if place else None
    if place is None or subject is None or _is_unclear(sentence, evidence) or not _is_said_of_it(sentence, place, evidence):
        return
    called, path_of = subject
    for night in night_named(sentence, evidence)[:1]:
        path = path_of(night, bool(evidence.words.at_times & sentence.vocabulary))
        if path and all(place.is_denied(*moment) for moment in path):
            yield Doubt(place.start, f"the text says '{place}' of {called}, {_known(path, night)}")


def _is_unclear(sentence: Sentence, evidence: Evidence) -> bool:
    words = evidence.words
    return is_aside(sentence, evidence) or bool((words.negations | words.habits) & sentence.vocabulary)


def _is_said_of_it(sentence: Sentence, place: PlaceSaid, evidence: Evidence) -> bool:
    """Whether its subject stands before it in the same part of the sentence, and nothing goes on with 'of the frame'."""
    words = evidence.words
    before = [word.text for word in sentence.words if word.start < place.start]
    behind = [word.text for word in sentence.words if word.start > place.start][:1]
    names = words.moon | words.target | set(" ".join(target.name for target in evidence.view.entry.targets).casefold().split())
    last = max((index for index, word in enumerate(before) if word in names), default=None)
    if last is None or set(behind) & words.in_picture:
        return False
    between = set(before[last + 1 :])
    return not between & words.clauses and len(before) - last <= FARTHEST_WORDS


def _place_in(sentence: Sentence, words: Vocabulary) -> PlaceSaid | None:
    """The one place; None where two directions are said, or none with the height that it needs: 'high cloud', 'low voltage'."""
    halves = [(index, words.directions[word.text]) for index, word in enumerate(sentence.words) if word.text in words.directions]
    at = [(index, half) for index, half in halves if _is_behind(sentence, index, words)]
    if len(halves) > 1 or len(at) != len(halves):
        return None
    overhead = sentence.holds(*words.overhead)
    height = "overhead" if overhead else _height(sentence, at[0][0] if at else len(sentence.words), words, bool(at))
    if not at and not overhead:
        return None
    start = sentence.words[at[0][0]].start if at else _start_of(sentence, words.overhead)
    return PlaceSaid(height, at[0][1] if at else "", start)


def _is_behind(sentence: Sentence, index: int, words: Vocabulary) -> bool:
    """Whether 'in the' stands before it."""
    before = [word.text for word in sentence.words[:index]]
    return any(tuple(before[-len(phrase) :]) == phrase for phrase in words.in_the)


def _height(sentence: Sentence, direction: int, words: Vocabulary, has_direction: bool) -> str:
    """Said right before the direction: 'low in the west', 'high up in the north'."""
    near = {word.text for word in sentence.words[max(0, direction - 4) : direction]} if has_direction else set()
    return "low" if near & set(words.low) else "high" if near & set(words.high) else ""


def _start_of(sentence: Sentence, phrases: tuple[str, ...]) -> int:
    last = {phrase.split()[-1] for phrase in phrases}
    return next((word.start for word in sentence.words if word.text in last), sentence.start)


def _subject(sentence: Sentence, evidence: Evidence) -> tuple[str, Callable[[NightView, bool], Directed]] | None:
    """The Moon or the target, where only one of them is named."""
    words = evidence.words
    moon, target = bool(words.moon & sentence.vocabulary), _names_target(sentence, evidence)
    if moon == target:
        return None
    return ("the Moon", moon_directed) if moon else ("the target", target_directed)


def _names_target(sentence: Sentence, evidence: Evidence) -> bool:
    """By a noun such as 'galaxy', or by its name, in an entry of one target."""
    targets = evidence.view.entry.targets
    if len(targets) != 1:
        return False
    return bool(evidence.words.target & sentence.vocabulary) or targets[0].name.casefold() in sentence.text.casefold()


def _of_end(sentence: Sentence, evidence: Evidence) -> Iterator[Doubt]:
    """`ended_by: target low`."""
    words = evidence.words
    if not (set(words.low) & sentence.vocabulary and words.target & sentence.vocabulary):
        return
    for night in night_named(sentence, evidence)[:1]:
        path = target_directed(night, False)
        if path and path[-1][0] > NEVER_LOW_DEG:
            wrong = f"the text says that the target was low at the end of the night, and it stood {path[-1][0]:.0f}° high"
            yield Doubt(sentence.start, wrong)


def _known(path: Directed, night: NightView) -> str:
    altitudes = [altitude for altitude, _ in path]
    halves = {letter for letter in COMPASS if _always(letter, path)}
    where = "-".join(COMPASS[letter] for letter in "NSEW" if letter in halves)
    altitude = f"stood between {round(min(altitudes))}° and {round(max(altitudes))}°"
    return f"and in the night of {night.evening} it {altitude}{f', in the {where}' if where else ''}"


def _always(letter: str, path: Directed) -> bool:
    return all(_OPPOSITE[letter] not in half for _, half in path) and any(letter in half for _, half in path)


CLAIM = ClaimKind("low-and-high", "'low in the west' and its like, of the Moon or the target", _find)
