"""The line: reading, facts, drawing, lists. Each step is done again only for what its inputs say has changed."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from msgspec.structs import replace

from sitegen.assembly.bench import Bench
from sitegen.assembly.crew import Crew, Result
from sitegen.assembly.jobs import DrawJob, FactsJob, FeedsJob, ListJob, NightJob, ReadJob
from sitegen.assembly.records import DrawnPages, Ledger, Marks, ReadEntry
from sitegen.assembly.steps import Steps
from sitegen.assembly.still_holds import still_holds
from sitegen.assembly.surroundings import Surroundings, with_evenings
from sitegen.assembly.tally import Tally
from sitegen.diary.rigs_used import published_before
from sitegen.diary.same_frame import exposing_together
from sitegen.keeping.footprint import Mark
from sitegen.keeping.keep import digest_of, key_of
from sitegen.keeping.products import Product, all_whole
from sitegen.pages.card_groups import OuterBook
from sitegen.pages.common_clock import half_clock
from sitegen.pages.outer_card import OuterCard
from sitegen.problems import Problem, errors_in
from sitegen.reading.frame import entry_files
from sitegen.reading.shared_addresses import shared_addresses

IN_FEEDS = 20
READ_S, FACTS_S, PICTURE_S, DRAW_S, NIGHT_S, LIST_S, FEEDS_S, TEXT_S = 0.004, 0.02, 2.0, 0.15, 0.02, 0.3, 0.1, 0.003
"""About how long one job of each kind takes: whether processes are worth starting."""


@dataclass
class Line:
    """`marks` of the author's files, None for one too new to be trusted; `known` what the last rebuild remembered.
    `trusting`: files that are kept are taken for whole."""

    bench: Bench
    known: Ledger
    marks: Mapping[str, Mark | None]
    crew: Crew
    steps: Steps
    tally: Tally
    trusting: bool = False

    def __post_init__(self) -> None:
        self.now = Ledger(self.known.maker, frozenset(name.encode("utf-8", "backslashreplace").decode() for name in self.marks))
        self.problems: list[Problem] = []
        self.begun: tuple[str, Callable[[], DrawnPages]] | None = None

    def read(self) -> bool:
        """Whether every entry could be read."""
        frame = self.bench.frame
        digest = digest_of((frame.known, frame.folder.shown_as))
        moved = sorted(self.known.names ^ self.now.names)
        names = entry_files(frame)
        kept = {name: one for name in names if (one := self.known.read.get(name)) is not None
                and still_holds(one, digest, self.bench, self.marks, moved)}  # fmt: skip
        todo = [self._read_job(name, digest) for name in names if name not in kept]
        run = self.crew.run(self.steps.read, todo, READ_S, here=True, names=[job.relative for job in todo])
        reading = self._told("reading entries", run, todo)
        made = {one.relative: self._marked(one) for one in reading}
        self.now.read = {name: kept.get(name) or made[name] for name in names}
        self.problems += [problem for one in self.now.read.values() for problem in one.problems]
        self.problems += shared_addresses(named for one in self.now.read.values() for named in one.named)
        self.tally.count("entries read", len(made), len(names))
        self.tally.step("reading")
        return not errors_in(self.problems)

    def _read_job(self, name: str, frame: str) -> ReadJob:
        known = self.known.read.get(name)
        if known is None:
            return ReadJob(name, frame, None, frozenset())
        same = frozenset(source for source, mark in known.marks if mark is not None and self.marks.get(source) == mark)
        return ReadJob(name, frame, known.logs, same)

    def _told(self, doing: str, results: Iterator[Result], jobs: Sequence[object]) -> Iterator[Result]:
        """The results as they come, each told to who watches."""
        for done, result in enumerate(results, 1):
            self.steps.progress(doing, done, len(jobs))
            yield result

    def _marked(self, one: ReadEntry) -> ReadEntry:
        return replace(one, marks=self._marks_of(name for name, _ in one.marks))

    def _marks_of(self, names: Iterator[str] | Sequence[str]) -> Marks:
        return tuple((name, self.marks.get(name)) for name in names)

    @property
    def listed(self) -> list[ReadEntry]:
        """Newest first."""
        found = (one for one in self.now.read.values() if not one.unlisted)
        return sorted(found, key=lambda one: (-one.published.toordinal(), one.slug))

    def facts(self) -> bool:
        """Whether all pictures could be used."""
        listed = self.listed
        before = published_before((one.slug, one.published, one.rigs) for one in listed)
        common = key_of(digest_of(self.bench.frame.known), digest_of(self.bench.settings), self.bench.picture_maker)
        others = _others(listed)
        jobs = [self._facts_job(one, common, before[one.slug], others[one.slug]) for one in listed]
        todo = [job for one, job in zip(listed, jobs, strict=True) if not self._has_facts(one, job)]
        extra = {one.slug: one.extra for one in listed}
        weight = FACTS_S + PICTURE_S * sum(len(extra[job.slug]) for job in todo) / max(1, len(todo))
        made = {}
        run = self.crew.run(self.steps.facts, todo, weight, names=[_file_of(job.slug) for job in todo])
        results = self._told("computing entries", run, todo)
        for job, found in zip(todo, results, strict=True):
            made[job.slug] = replace(found, marks=self._marks_of(extra[job.slug]), shown_as=self._shown_as)
        self.now.facts = {one.slug: made.get(one.slug) or self.known.facts[one.slug] for one in listed}
        self.problems += [problem for found in self.now.facts.values() for problem in found.problems]
        self.problems += self._sky_notes()
        self.tally.count("facts of entries", len(made), len(listed))
        self.tally.step("facts and pictures")
        return not errors_in(self.problems)

    def _facts_job(
        self, one: ReadEntry, common: str, before: Mapping[str, date], others: Sequence[ReadEntry]
    ) -> FactsJob:
        """Of the other entries the key knows their frames alone, so that their texts may change."""
        known = self.known.facts.get(one.slug)
        frames = [(other.slug, other.published, other.frames) for other in others]
        key = common + key_of(one.entry, sorted(before.items()), frames)
        earlier = known.core if known is not None and known.key.startswith(common) else None
        return FactsJob(key, one.slug, one.entry or "", tuple(sorted(before.items())),
                        tuple(other.entry or "" for other in others), earlier,
                        self.steps.picture_work, self.steps.measure)  # fmt: skip

    def _has_facts(self, one: ReadEntry, job: FactsJob) -> bool:
        known = self.known.facts.get(one.slug)
        if known is None or known.key != job.key or errors_in(known.problems):
            return False
        if known.problems and known.shown_as != self._shown_as:
            return False
        same = all(mark is not None and self.marks.get(name) == mark for name, mark in known.marks)
        return same and self._whole(known.products)

    @property
    def _shown_as(self) -> str:
        return str(self.bench.frame.folder.shown_as)

    def _sky_notes(self) -> Iterator[Problem]:
        """Said once, of the entry with the newest night that has one: it is of the installed data, not of the entry."""
        noted = [(max(found.evenings), slug, found.sky_note) for slug, found in self.now.facts.items() if found.sky_note]
        for _, slug, note in sorted(noted)[-1:]:
            shown = self.bench.frame.folder.shown(f"entries/{slug}.md")
            yield Problem(shown, 1, 1, note, "a newer version of the package astropy-iers-data mends it", "warning")

    @cached_property
    def surroundings(self) -> Surroundings:
        """Of slender cards with nights that are only days; asked for when all facts are there."""
        cards = tuple(with_evenings(found.card, found.evenings) for found in self.now.facts.values())
        links = {slug: found.links for slug, found in self.now.facts.items()}
        sights = {slug: found.sights for slug, found in self.now.facts.items()}
        return Surroundings(OuterBook(cards), links, sights)

    def draw(self) -> bool:
        """Whether every text's markers lead somewhere."""
        self._begin_feeds()
        around = self.surroundings
        half_hours = half_clock(max((found.half_night_s for found in self.now.facts.values()), default=0.0))
        shared = _shared(around.book)
        jobs = [self._draw_job(card, place, half_hours, around, shared) for place, card in enumerate(around.book.cards)]
        self.now.drawn = self._drawn(jobs, [card.slug for card in around.book.cards], self.known.drawn, "entries", DRAW_S)
        night_jobs = [self._night_job(evening, slugs, half_hours, around) for evening, slugs in sorted(shared.items())]
        names = [str(evening) for evening in sorted(shared)]
        self.now.nights = self._drawn(night_jobs, names, self.known.nights, "shared nights", NIGHT_S)
        self._say_mistakes([slug for slug, drawn in self.now.drawn.items() if drawn.mistaken], around.book)
        self.tally.step("pages of entries and nights")
        return not errors_in(self.problems)

    def _draw_job(
        self, card: OuterCard, place: int, half_hours: float, around: Surroundings, shared: Mapping[date, object]
    ) -> DrawJob:
        slug = card.slug
        evenings = tuple(around.evenings[day] for day in sorted(self.now.facts[slug].evenings) if day not in shared)
        core, in_feed, known = self.now.facts[slug].core, place < IN_FEEDS, self.known.drawn.get(slug)
        key = key_of(self.bench.look, core, half_hours, around.key(slug), [around.words[three[1]] for three in evenings], in_feed)
        cards = around.cards(slug) if not self._has_drawn(known, key) else ()
        return DrawJob(key, core, half_hours, cards, evenings, in_feed, self._earlier(known))

    def _night_job(self, evening: date, slugs: Sequence[str], half_hours: float, around: Surroundings) -> NightJob:
        found = [self.now.facts[slug] for slug in slugs]
        cores, place = tuple(one.core for one in found), around.evenings[evening]
        key = key_of(self.bench.look, [one.at_night for one in found], half_hours, place)
        return NightJob(key, cores, half_hours, place, self._earlier(self.known.nights.get(str(evening))))

    def _earlier(self, known: DrawnPages | None) -> Mapping[str, tuple[str, Product]]:
        return known.pages if known else {}

    def _drawn(
        self,
        jobs: Sequence[DrawJob | NightJob | ListJob],
        names: Sequence[str],
        known: Mapping[str, DrawnPages],
        kind: str,
        weight: float,
    ) -> dict[str, DrawnPages]:
        """What is known and whole, the rest drawn."""
        tasks = {DrawJob: self.steps.draw, NightJob: self.steps.nights, ListJob: self.steps.lists}
        todo = [(name, job) for name, job in zip(names, jobs, strict=True) if not self._has_drawn(known.get(name), job.key)]
        made = {}
        if todo:
            shown = [_file_of(name) if kind == "entries" else name for name, _ in todo]
            drawing = self.crew.run(tasks[type(todo[0][1])], [job for _, job in todo], weight, 16, names=shown)
            results = self._told(f"drawing {kind}", drawing, todo)
            made = {name: found for (name, _), found in zip(todo, results, strict=True)}
        found = {name: made.get(name) or known[name] for name in names}
        self._count_pages(kind, found, known)
        return found

    def _has_drawn(self, known: DrawnPages | None, key: str) -> bool:
        return known is not None and known.key == key and self._whole(page for _, page in known.pages.values())

    def _whole(self, products: Iterable[Product]) -> bool:
        return self.trusting or all_whole(products, self.bench.keep)

    def _count_pages(self, kind: str, found: Mapping[str, DrawnPages], known: Mapping[str, DrawnPages]) -> None:
        before = {page for drawn in known.values() for _, page in drawn.pages.values()}
        pages = (page for drawn in found.values() for _, page in drawn.pages.values())
        now = [page for page in pages if page.path.endswith(".html")]
        self.tally.count(f"pages of {kind}", sum(page not in before for page in now), len(now))

    def _say_mistakes(self, slugs: Sequence[str], book: OuterBook) -> None:
        for slug in slugs:
            self.problems += self.steps.mistakes(self.bench, self.now.facts[slug].core, book.cards)

    def check_texts(self) -> None:
        """What `draw` would say of the texts, without drawing."""
        around = self.surroundings
        jobs = [(self.now.facts[card.slug].core, around.cards(card.slug)) for card in around.book.cards]
        names = [_file_of(card.slug) for card in around.book.cards]
        wrong = self._told("checking texts", self.crew.run(self.steps.texts, jobs, TEXT_S, names=names), jobs)
        self._say_mistakes([card.slug for card, errs in zip(around.book.cards, wrong, strict=True) if errs], around.book)

    def lists(self) -> None:
        """The pages that gather entries, and the feeds."""
        cards = tuple(drawn.card for drawn in self.now.drawn.values())
        key = key_of(self.bench.look, cards)
        names = self._list_names(key)
        jobs = [ListJob(key, name, cards, self._earlier(self.known.lists.get(name))) for name in names]
        self.now.lists = self._drawn(jobs, names, self.known.lists, "lists", LIST_S + 0.002 * len(cards))
        self.tally.step("lists")
        self.now.feeds = self._feeds()
        self.tally.step("feeds")

    def _list_names(self, key: str) -> tuple[str, ...]:
        """From what is remembered where nothing changed, so that what draws lists need not be loaded."""
        same = self.known.lists and all(self._has_drawn(drawn, key) for drawn in self.known.lists.values())
        return tuple(self.known.lists) if same else self.steps.list_names()

    def _begin_feeds(self) -> None:
        """While the entries are drawn, with the texts as they were: most edits are of no entry that stands in a feed."""
        if self.known.feeds is None:
            return
        before = {slug: one.feed_html for slug in list(self.now.facts)[:IN_FEEDS] if (one := self.known.drawn.get(slug))}
        texts = {slug: html for slug, html in before.items() if html is not None}
        key = self._feeds_key(texts)
        if self._has_drawn(self.known.feeds, key):
            return
        result = self.crew.begun(self.steps.feeds, self._feeds_job(key, texts))
        self.begun = (key, result) if result else None

    def _feeds(self) -> DrawnPages:
        texts = {slug: drawn.feed_html for slug, drawn in self.now.drawn.items() if drawn.feed_html is not None}
        key = self._feeds_key(texts)
        if self.known.feeds is not None and self._has_drawn(self.known.feeds, key):
            return self.known.feeds
        if self.begun and self.begun[0] == key:
            return self.begun[1]()
        return next(self.crew.run(self.steps.feeds, [self._feeds_job(key, texts)], FEEDS_S))

    def _feeds_key(self, texts: Mapping[str, str]) -> str:
        return key_of(self.bench.look, [found.core for found in self.now.facts.values()], texts)

    def _feeds_job(self, key: str, texts: Mapping[str, str]) -> FeedsJob:
        facts = self.now.facts
        evenings = sorted({evening for found in facts.values() for evening in found.evenings})
        rows = {slug: found.search_row for slug, found in facts.items()}
        return FeedsJob(key, tuple(found.card for found in facts.values()), tuple(evenings), texts, rows)


def _others(listed: Sequence[ReadEntry]) -> dict[str, list[ReadEntry]]:
    """Of each entry, those that may tell of its frames, by slug."""
    by_slug = {one.slug: one for one in listed}
    together = exposing_together((one.slug, one.stretches) for one in listed)
    return {slug: [by_slug[other] for other in sorted(together.get(slug, ()))] for slug in by_slug}


def _file_of(slug: str) -> str:
    return f"entries/{slug}.md"


def _shared(book: OuterBook) -> dict[date, list[str]]:
    """Evenings on which several entries have nights: their slugs, newest entry first."""
    found = {evening: list(dict.fromkeys(night.entry for night in nights)) for evening, nights in book.by_evening.items()}
    return {evening: slugs for evening, slugs in found.items() if len(slugs) > 1}
