"""Which rig took frames, by what their headers say of focal length, pixels, frame and filter."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct

from sitegen.authoring.captures.record import Frame
from sitegen.authoring.captures.trains import HeaderTrain, disagreements, header_train
from sitegen.diary.rig import Rig
from sitegen.reading.capture_logs.filter_names import NO_FILTER_WORDS, match_filter


class RigFit(Struct, frozen=True):
    """`sure` where headers told something, this rig agreed with all of it, and no other did. `by` is what it was guessed from."""

    rig: Rig
    sure: bool
    against: str = ""
    by: str = ""


def rig_of(frames: Sequence[Frame], rigs: Mapping[str, Rig]) -> RigFit | None:
    """The rig with the least against it; None where the diary has none."""
    apart = _told_apart(frames)
    words = sorted(filter_words(frames))
    judged = sorted((_against(apart, words, rig), slug) for slug, rig in rigs.items())
    if not judged:
        return None
    (against, why), slug = judged[0]
    train = header_train(apart[0].record) if apart else None
    is_told = bool(words) or any(frame.record.focal_length_mm or frame.record.pixel_um for frame in apart)
    alone = len(judged) == 1 or judged[1][0][0] > 0
    return RigFit(rigs[slug], is_told and against == 0 and alone, why, _by(train, words))


def filter_words(frames: Iterable[Frame]) -> Counter[str]:
    """Light frames by the words that name their filter."""
    return Counter(frame.record.filter_words for frame in frames
                   if frame.kind == "light" and frame.record.filter_words.casefold() not in NO_FILTER_WORDS)  # fmt: skip


def _told_apart(frames: Iterable[Frame]) -> list[Frame]:
    """One of each kind of header and evening: the others say the same."""
    kinds = {(header_train(frame.record), frame.start.date()): frame for frame in frames}
    return list(kinds.values())


def _by(train: HeaderTrain | None, words: Sequence[str]) -> str:
    if train is not None and (train.focal_length_mm or train.pixel_um):
        return f"the headers' {train}"
    return f"its filters ({', '.join(words)})" if words else "nothing: it is the first of the diary's rigs"


def _against(frames: Iterable[Frame], words: Iterable[str], rig: Rig) -> tuple[int, str]:
    """How much, and the first of it in words."""
    wrong = [wrong for frame in frames for wrong, _ in disagreements(header_train(frame.record), rig, frame)]
    unknown = [f"'{word}' is none of its filters" for word in words if match_filter(word, rig) is None]
    against = list(dict.fromkeys([*wrong, *unknown]))
    return len(against), against[0] if against else ""
