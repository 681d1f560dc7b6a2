"""The rig of every set-up on the disk: one of the diary's, a new one, or a question."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from datetime import date

from msgspec import Struct, field

from sitegen.authoring.captures.record import Frame, FrameFile
from sitegen.authoring.harvest.known_logs import KnownLogs
from sitegen.authoring.harvest.new_rigs import NewRig, new_rig
from sitegen.authoring.harvest.questions import Answers, Question, asked_of
from sitegen.authoring.harvest.trains import SetUp, SetUps, bears_name, in_chains, rig_of
from sitegen.diary.rig import Rig

EveningOf = Callable[[Frame], date]
_NO_TRAIN = "which rig took {}? Their headers tell neither telescope nor camera"
_RIG = "rig: RIG"


class SortedRigs(Struct):
    """`slugs` in the order of the frames, None where only a question is left; `groups` likewise, for telling copies: frames of
    one telescope and camera share one. `missing` are new rigs that no header tells enough of."""

    slugs: list[str | None]
    groups: list[str]
    new: list[NewRig] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)


class RigRequest(Struct, frozen=True):
    """`rigs` are the diary's, `called` what headers call their telescopes; `also` are frames that are only looked at for what
    they tell of their rigs."""

    rigs: Mapping[str, Rig]
    called: Mapping[str, str]
    answers: Answers
    logs: KnownLogs
    also: Sequence[Frame]
    evening_of: EveningOf


def sort_rigs(frames: Sequence[Frame], request: RigRequest) -> SortedRigs:
    rigs, called, evening_of = request.rigs, request.called, request.evening_of
    set_ups = SetUps(frames, request.also)
    by_set_up = _by_set_up(set_ups.set_ups, rigs, called)
    waiting = [set_up for set_up in set_ups.set_ups if id(set_up) not in by_set_up and set_up.first is not None and set_up.tells]
    changed = {id(set_up): old for set_up in waiting if (old := _changed(set_up, rigs, called)) is not None}
    new = list(_described([set_up for set_up in waiting if id(set_up) not in changed], rigs, evening_of))
    by_set_up |= {id(set_up): described.slug for described, chain in new if not described.missing for set_up in chain}
    slugs = [_slug(frame, by_set_up.get(id(set_up)), request) for frame, set_up in
             zip(frames, set_ups.of_frame, strict=True)]  # fmt: skip
    numbers = {id(set_up): f"{number}" for number, set_up in enumerate(set_ups.set_ups)}
    groups = [slug or numbers[id(set_up)] for slug, set_up in zip(slugs, set_ups.of_frame, strict=True)]
    asked = _Asked(frames, set_ups, slugs)
    questions = [
        *(_change_question(set_up, changed[id(set_up)], asked) for set_up in waiting if id(set_up) in changed),
        *(_missing_question(rig, chain, asked) for rig, chain in new if rig.missing),
        *asked_of(_NO_TRAIN, _RIG, asked.about(set_up for set_up in set_ups.set_ups if not set_up.tells)),
    ]
    return SortedRigs(slugs, groups, [rig for rig, _ in new if not rig.missing], [item for item in questions if item.files])


def _by_set_up(set_ups: Iterable[SetUp], rigs: Mapping[str, Rig], called: Mapping[str, str]) -> dict[int, str]:
    """The diary's rig of each set-up. A rig is one telescope: of several that fit, the one that bears its name, else the one with
    most frames; the others are other rigs."""
    fitting: dict[str, list[SetUp]] = {}
    for set_up in set_ups:
        rig = rig_of(set_up, rigs.values(), called) if set_up.tells else None
        if rig is not None:
            fitting.setdefault(rig.slug, []).append(set_up)
    by_set_up: dict[int, str] = {}
    for slug, group in fitting.items():
        first = min(group, key=lambda set_up: (not bears_name(rigs[slug], set_up, called), -set_up.trains.total()))
        same = [set_up for set_up in group if not set_up.names[0] or set_up.names[0] == first.names[0]]
        by_set_up |= dict.fromkeys(map(id, same), slug)
    return by_set_up


def _slug(frame: Frame, slug: str | None, request: RigRequest) -> str | None:
    """The author's answer, else the rig of the log that has the frame, else what its header tells."""
    answered = request.answers.about(frame.file).rig
    if answered in request.rigs:
        return answered
    log = request.logs.of(frame)
    if log is None or log.front_matter is None or log.front_matter.rig is None:
        return slug
    return log.front_matter.rig.slug


class _Asked:
    """Light frames of set-ups that have no rig."""

    def __init__(self, frames: Sequence[Frame], set_ups: SetUps, slugs: Sequence[str | None]) -> None:
        self.files: dict[int, list[FrameFile]] = {}
        for frame, set_up, slug in zip(frames, set_ups.of_frame, slugs, strict=True):
            if slug is None and frame.kind == "light" and frame.file is not None:
                self.files.setdefault(id(set_up), []).append(frame.file)

    def about(self, set_ups: Iterable[SetUp]) -> list[FrameFile]:
        return [file for set_up in set_ups for file in self.files.get(id(set_up), ())]


def _described(
    set_ups: Iterable[SetUp], rigs: Mapping[str, Rig], evening_of: EveningOf
) -> Iterator[tuple[NewRig, list[SetUp]]]:
    taken = set(rigs)
    for chain in in_chains(set_ups):
        evenings = [evening_of(set_up.first) for set_up in chain if set_up.first is not None]
        rig = new_rig(chain, evenings, taken)
        taken.add(rig.slug)
        yield rig, chain


def _changed(set_up: SetUp, rigs: Mapping[str, Rig], called: Mapping[str, str]) -> Rig | None:
    """The rig of the diary that bears the telescope's name, and stood otherwise than these headers tell."""
    return next((rig for rig in rigs.values() if bears_name(rig, set_up, called)), None)


def _change_question(set_up: SetUp, rig: Rig, asked: _Asked) -> Question:
    assert set_up.first is not None
    day, files = f"{set_up.first.start:%Y-%m-%d}", len(asked.about([set_up]))
    telescope = set_up.spelt[0]
    wording = f"did '{rig.slug}' change on {day}? From then on, {files} frames of '{telescope}' tell {set_up.main}"
    train = set_up.main
    keys = f"focal_length_mm: {train.focal_length_mm:g}" if train.focal_length_mm else "factor: FACTOR"
    return Question(wording, f"rigs/{rig.slug}.yaml: changes", f"- {{from: {day}, {keys}}}", files)


def _missing_question(rig: NewRig, chain: Sequence[SetUp], asked: _Asked) -> Question:
    files = len(asked.about(chain))
    wording = f"what is {', '.join(rig.missing)} of '{rig.name}'? {files} frames wait for it: no header tells it"
    keys = ", ".join(f"{key}: {value}" for key, value in rig.standing[0].keys.items() if value is not None)
    return Question(wording, f"rigs/{rig.slug}.yaml", f"describe it there; the headers tell {keys}", files)
