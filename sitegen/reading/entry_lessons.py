"""An entry's lessons, and whether what it ticks off stands in an earlier entry."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date

from msgspec import Struct

from sitegen.diary.entry import Entry, Lessons
from sitegen.diary.lesson_done import LessonDone, plain_words
from sitegen.problems import Problem, did_you_mean, hint_for
from sitegen.reading.nodes import quoted, shortened
from sitegen.reading.value_types.group import Values
from sitegen.reading.value_types.value_type import Kept

KINDS = ("worked", "failed", "next")


class DoneAt(Struct, frozen=True, gc=False):
    """What an entry ticks off, and where its author wrote so."""

    done: LessonDone
    path: str
    line: int
    column: int


class EntryPlans(Struct, frozen=True, gc=False):
    """As much of an entry as others need to tick it off, and what it ticks off itself. Of one with an error nobody knows what it
    plans: it is not `sound`."""

    slug: str = ""
    published: date = date.min
    next: tuple[str, ...] = ()
    done: tuple[DoneAt, ...] = ()
    sound: bool = True


def lessons_of(values: Values) -> Lessons:
    lessons = values.get("lessons")
    if lessons is None:
        return Lessons()
    named = [item.value for kind in KINDS for item in lessons.items_of(kind) if isinstance(item.value, Values)]
    return Lessons(
        _whats(lessons, "worked"),
        _whats(lessons, "failed"),
        _whats(lessons, "next"),
        tuple(item.value.into(LessonDone) for item in lessons.items_of("done") if _is_whole(item)),
        {item.get("what"): item.get("subject") for item in named if item.get("what") and item.get("subject")},
    )


def _whats(lessons: Values, kind: str) -> tuple[str, ...]:
    values = (item.value for item in lessons.items_of(kind))
    return tuple(value.get("what") or "" if isinstance(value, Values) else value for value in values)


def _is_whole(item: Kept) -> bool:
    return item.value.get("of") is not None and item.value.get("what") is not None


def plans_of(entry: Entry, values: Values, shown: str) -> EntryPlans:
    """Of a listed entry without an error; `shown` is its file."""
    lessons = values.get("lessons")
    items = lessons.items_of("done") if lessons is not None else ()
    done = (DoneAt(item.value.into(LessonDone), shown, item.line, item.column) for item in items)
    return EntryPlans(entry.slug, entry.published, entry.lessons.next, tuple(done))


def unmet_plans(entries: Iterable[EntryPlans]) -> Iterator[Problem]:
    """An error for each item under `done` that no earlier entry had under `next`."""
    plans = {entry.slug: entry for entry in entries if entry.slug}
    for entry in plans.values():
        for at in entry.done:
            trouble = _trouble(at.done, entry, plans)
            if trouble is not None:
                yield Problem(at.path, at.line, at.column, *trouble)


def _trouble(done: LessonDone, entry: EntryPlans, plans: Mapping[str, EntryPlans]) -> tuple[str, str] | None:
    """What is wrong with it, and the cure."""
    planned = plans.get(done.of)
    if planned is None:
        return f"no published entry is named {quoted(done.of)}", hint_for(done.of, plans.keys() - {entry.slug})
    if not planned.sound:
        return None
    if planned is entry:
        return "this ticks off a plan of the entry itself", "take it out of 'next', or let a later entry tick it off"
    if planned.published > entry.published:
        wrong = f"the entry '{done.of}' was published on {planned.published}, after this one"
        return wrong, f"let an entry of {planned.published} or later tick it off"
    if done.key[1] in {plain_words(lesson) for lesson in planned.next}:
        return None
    return f"nothing under 'next' of the entry '{done.of}' says {quoted(done.what)}", _nearest(done, planned)


def _nearest(done: LessonDone, planned: EntryPlans) -> str:
    """The plan that is most like it, as it may be copied."""
    if not planned.next:
        return "that entry has no plans"
    words = {plain_words(lesson): lesson for lesson in planned.next}
    near = did_you_mean(plain_words(done.what), words)
    if near is not None:
        return f"did you mean '{words[near]}'?"
    return "it has: " + "; ".join(f"'{shortened(lesson)}'" for lesson in planned.next[:5])
