"""The texts of an entry's front matter as passages."""

from collections.abc import Iterator

from sitegen.claims.passage import Passage, Role
from sitegen.diary.entry import Entry

_NIGHT_TEXTS: tuple[Role, ...] = ("clouds", "wind", "ended_by", "note")


def front_matter_passages(entry: Entry) -> Iterator[Passage]:
    """In the order in which most authors write them. What is still to be done ('next') is a plan, and claims nothing."""
    yield Passage(entry.title, "title", key=("title",))
    if entry.summary:
        yield Passage(entry.summary, "summary", key=("summary",))
    for index, picture in enumerate(entry.pictures):
        if picture.caption:
            yield Passage(picture.caption, "caption", key=("pictures", index, "caption"))
    yield from _notes(entry)
    for kind, lessons in (("worked", entry.lessons.worked), ("failed", entry.lessons.failed)):
        for index, lesson in enumerate(lessons):
            yield Passage(lesson, "lesson", key=("lessons", kind, index))


def _notes(entry: Entry) -> Iterator[Passage]:
    for evening, note in entry.night_notes.items():
        for role in _NIGHT_TEXTS:
            text = getattr(note, role)
            if text:
                yield Passage(text, role, key=("nights", evening.isoformat(), role), evening=evening)
