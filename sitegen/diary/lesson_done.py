"""What an entry ticks off of an earlier entry's list of things to do."""

from msgspec import Struct


class LessonDone(Struct, frozen=True, gc=False):
    """`of` is the slug of the entry that had it under `next`, `what` the author's words for it."""

    of: str
    what: str

    @property
    def key(self) -> tuple[str, str]:
        return self.of, plain_words(self.what)


def plain_words(lesson: str) -> str:
    """What two sentences share that say the same: not their case, blanks, or full stop."""
    return " ".join(lesson.split()).rstrip(".").rstrip().casefold()
