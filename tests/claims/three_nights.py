"""An entry of three nights whose numbers, Moon and sky are known, for sentences to be held against."""

from datetime import date
from functools import cache

from sitegen.claims.body_passages import passages_of
from sitegen.claims.doubt import Doubt
from sitegen.claims.doubts import doubts_of
from sitegen.claims.evidence import Evidence
from sitegen.claims.languages import VOCABULARIES
from sitegen.claims.passage import Passage, Role
from sitegen.diary.entry import Entry
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.views import EntryView
from tests.diaries import diary, entry, run

SATURDAY, MONDAY, FRIDAY = date(2026, 9, 12), date(2026, 9, 28), date(2026, 10, 9)
PUBLISHED = {"older": date(2025, 9, 1), "younger": date(2026, 11, 3)}


def three_nights() -> Entry:
    """30 luminance subs of 5 min and 12 in Hα of 10 min kept, 7 of both discarded: 2.5 and 2 hours."""
    return entry([
        *run("2026-09-12T12:00:00", 20),
        *run("2026-09-12T13:45:00", 4, kept=False, reason="guiding lost on a gust"),
        *run("2026-09-28T11:00:00", 12, 600.0, filter="Ha"),
        *run("2026-09-28T13:30:00", 3, 600.0, filter="Ha", kept=False, reason="cloud"),
        *run("2026-10-09T12:00:00", 10),
    ])  # fmt: skip


@cache
def view_of(nights: int = 3) -> EntryView:
    """The entry under its sky; of its first night alone with 1."""
    subs = three_nights().subs if nights == 3 else three_nights().subs[:24]
    one = entry(list(subs))
    (view,) = views_of(diary(one), [one], {}, {}, {one.slug: []})
    return view


def doubts(text: str, language: str, role: Role = "paragraph", evening: date | None = None, nights: int = 3) -> list[Doubt]:
    evidence = Evidence(view_of(nights), VOCABULARIES[language], PUBLISHED)
    passages = passages_of(text, 1) if role == "paragraph" else [Passage(text, role, key=(role,), evening=evening)]
    return [doubt for _, doubt in doubts_of(passages, evidence)]
