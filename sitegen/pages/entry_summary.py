"""What feeds show of an entry, and the pages of other entries: its name, day, and what it is about."""

from datetime import date

from msgspec import Struct

from sitegen.diary.entry import Stage
from sitegen.diary.lesson_done import LessonDone
from sitegen.diary.target import Target
from sitegen.pages.picture_element import PictureView


class Evening(Struct, frozen=True, gc=False):
    """As much of a night as tells that there was one: the evening it began, and the entry."""

    evening: date
    entry: str


class EntrySummary(Struct, frozen=True):
    """`recalled_years`: years of which it recalls hours without a log; `done`: what it ticks off of earlier entries."""

    slug: str
    title: str
    published: date
    updated: date | None
    summary: str | None
    stage: Stage
    targets: tuple[Target, ...]
    rigs: tuple[str, ...]
    sites: tuple[str, ...]
    topics: tuple[str, ...]
    nights: tuple[Evening, ...]
    picture: PictureView | None
    recalled_years: tuple[int, ...]
    done: tuple[LessonDone, ...]

    @property
    def last_change(self) -> date:
        return self.updated or self.published
