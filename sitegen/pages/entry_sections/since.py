"""What was done to the entry's rigs since the entry before it with the same rig."""

from datetime import date

from msgspec import Struct

from sitegen.cautions.sources import of_change, of_work
from sitegen.diary.rig import CautionKind, Rig, Train, Work
from sitegen.markdown.marks import without_marks
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_neighbours import beside
from sitegen.pages.entry_sections.section import EntrySection
from sitegen.pages.prepared import PreparedEntry


class Done(Struct, frozen=True):
    """Work on a part, or a change of the train (`part` None)."""

    date: date
    part: str | None
    what: str | None
    note: str | None
    cautions: tuple[CautionKind, ...] = ()


class Since(Struct, frozen=True):
    """`earlier` is (slug, title, published) of the entry before; None where this is the first with the rig."""

    slug: str
    name: str
    earlier: tuple[str, str, date] | None
    done: tuple[Done, ...]


def section(prepared: PreparedEntry, book: DiaryIndex) -> tuple[Since, ...] | None:
    """One a rig. A first entry without any work before it has nothing to say."""
    histories = tuple(_since(prepared, book.rigs[slug], book) for slug in prepared.card.rigs)
    return tuple(history for history in histories if history.earlier or history.done) or None


def _since(prepared: PreparedEntry, rig: Rig, book: DiaryIndex) -> Since:
    earlier, _ = beside(prepared.card, book.by_rig[rig.slug])
    work = [_done(work) for of, work in prepared.view.work if of.slug == rig.slug]
    changes = [_changed(train) for of, train in prepared.view.changes if of.slug == rig.slug]
    named = (earlier.slug, earlier.title, earlier.published) if earlier else None
    return Since(rig.slug, rig.name, named, tuple(sorted([*changes, *work], key=lambda done: (done.date, done.part is not None))))


def _changed(train: Train) -> Done:
    assert train.from_evening is not None  # no change leads to the first train
    return Done(train.from_evening, None, None, without_marks(train.note or ""), of_change(train))


def _done(work: Work) -> Done:
    return Done(work.date, without_marks(work.part), without_marks(work.what), without_marks(work.note or ""), of_work(work))


SECTION = EntrySection("since", section)
