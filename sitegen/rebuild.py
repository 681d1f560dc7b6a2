"""The assembly line on one screen: look, assemble, publish, remember.

Where nothing has changed since the site was built, a look is all. The heavy rooms (astropy, matplotlib, pyvips, jinja2 behind
them) are imported late, here and nowhere else.
"""

import shutil
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack, closing, contextmanager, nullcontext, suppress
from datetime import date
from importlib import import_module
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from msgspec import Struct, to_builtins
from msgspec.structs import asdict, replace

from sitegen.diary import addresses
from sitegen.folders import Folders
from sitegen.keeping.makers import VERSIONS
from sitegen.keeping.standing import Look, look, remember, standing_report
from sitegen.keeping.told import FOLDER as TOLD
from sitegen.keeping.told import keep_told, told_before
from sitegen.pages.theme import packaged_themes
from sitegen.problems import MORE_MEMORY, DiaryProblems, Problem, errors_in, system_problem
from sitegen.writing.one_at_a_time import one_at_a_time

FORGOTTEN = ("ledger", "standing", "files", "entries", "logs", "cores", "cards", "charts", "pictures", "pointings", "stars",
             VERSIONS, TOLD)  # fmt: skip
NO_MEMORY = "there is not enough memory to make the site"
DRAWING = "sitegen.assembly.entry_drawing"
LOADED_AHEAD = ("assembly.entry_facts", "assembly.feeds_of_all", "assembly.entry_drawing", "pages.site_book", "pages.site_frame")
Told = Callable[[], None] | None
Lay = list[tuple[str, int, int, int]] | None


class Report(Struct, frozen=True):
    """What a rebuild did. `made` and `kept` by kind of product, `seconds` by step; `changed`, `removed`, `carried` and `by_hand`
    as in `writing.publish`. `standing`: nothing had changed, and nothing was done. `said`: lines about what was kept."""

    entries: int
    pages: int
    files: int
    changed: int
    removed: int
    carried: tuple[str, ...]
    problems: tuple[Problem, ...]
    made: dict[str, int]
    kept: dict[str, int]
    seconds: dict[str, float]
    standing: bool = False
    said: tuple[str, ...] = ()
    by_hand: tuple[tuple[str, str], ...] = ()

    def as_json(self) -> dict[str, Any]:
        found: dict[str, Any] = to_builtins(self)
        return found


def rebuild(folders: Folders, today: date, jobs: int | None = None, fresh: bool = False, wait_told: Told = None,
            progress: Any = None) -> Report:  # fmt: skip
    """The whole site. Raises DiaryProblems, with the earlier site untouched, where the diary has any error, and where disk,
    rights or memory do not suffice. `wait_told` is called before another rebuild of this diary is waited for, `progress`
    (`assembly.steps.Progress`) whenever something is done."""
    with _alone(folders, wait_told):
        if fresh and folders.keep is not None:
            for kind in FORGOTTEN:
                shutil.rmtree(folders.keep / kind, ignore_errors=True)
        since = time.perf_counter()
        seen = look(folders, _themes(folders), today)
        told = standing_report(seen)
        if told is not None:
            return _standing(told, time.perf_counter() - since)
        with _kept(folders) as keep:
            report, lay, warnings = _rebuilt(seen, keep, jobs, progress)
        remember(seen, report.as_json(), lay)
        return replace(report, problems=(*report.problems, *warnings))


def _rebuilt(seen: Look, keep: Path, jobs: int | None, progress: Any) -> tuple[Report, Lay, tuple[Problem, ...]]:
    """What is kept is trusted; where a file of it is needed and turns out to be lost or damaged, all of it is looked through."""
    from sitegen.writing.publish import SiteAddresses, SourceLost, look_ahead, publish

    known_by = SiteAddresses(addresses.LANDMARKS, addresses.may_be_ours)

    def published(trusting: bool) -> Any:
        from sitegen.assembly.assemble import assemble

        done = assemble(seen, keep, _steps(progress), jobs, trusting=trusting, second=second)
        if errors_in(done.problems):
            raise DiaryProblems(done.problems)
        return done, publish(done.artifacts(), seen.folders.output, seen.folders.keep, ahead, known_by)

    with ExitStack() as helpers:
        second = helpers.enter_context(_second_hand(jobs))
        ahead = helpers.enter_context(closing(look_ahead(seen.folders.output, seen.folders.keep)))
        try:
            done, site = published(trusting=True)
        except SourceLost:
            done, site = published(trusting=False)
    from sitegen.assembly.assemble import tidy

    done.tally.step("writing")
    tidy(done, seen.folders.content)
    done.tally.step("tidying")
    report = Report(
        entries=done.entries,
        pages=done.pages,
        problems=done.problems,
        made=dict(done.tally.made),
        kept=dict(done.tally.kept),
        seconds={step: round(seconds, 3) for step, seconds in done.tally.seconds.items()},
        said=tuple(done.tally.said),
        **{name: value for name, value in asdict(site).items() if name not in ("lay", "warnings")},
    )
    return report, site.lay, site.warnings


def check(folders: Folders, today: date, wait_told: Told = None, progress: Any = None) -> tuple[Problem, ...]:
    """Every problem that a rebuild would meet, errors and warnings; nothing is published."""
    with _alone(folders, wait_told):
        seen = look(folders, _themes(folders), today)
        told = told_before(seen, "problems")
        if told is not None:
            return tuple(Problem(**problem) for problem in told)
        from sitegen.assembly.assemble import assemble

        with _kept(folders) as keep:
            problems = assemble(seen, keep, _steps(progress), None, checking=True).problems
        keep_told(seen, "problems", [asdict(problem) for problem in problems])
        return problems


def reveals(folders: Folders, today: date) -> Any:
    """Lines (`diary.reveals.Reveal`) of what the diary makes public about its author; none while it has errors."""
    from sitegen.diary.reveals import Reveal, reveals_of

    seen = look(folders, _themes(folders), today)
    told = told_before(seen, "reveals")
    if told is not None:
        return tuple(Reveal(*one) for one in told)
    from sitegen.reading.reader import read_diary

    diary = read_diary(folders.content, today, str(folders.content)).diary
    found = reveals_of(diary) if diary is not None else ()
    keep_told(seen, "reveals", found)
    return found


@contextmanager
def _alone(folders: Folders, wait_told: Told) -> Iterator[None]:
    """One rebuild of a diary at a time, as they share what is kept; what the machine refuses is told as a problem."""
    try:
        with _held(folders.keep, wait_told):
            yield
    except OSError as trouble:
        roots = (folders.keep or folders.output, folders.output, folders.content, folders.themes)
        raise DiaryProblems([system_problem(trouble, folders.output.name, roots)]) from trouble
    except MemoryError as trouble:
        raise DiaryProblems([Problem(folders.output.name, 1, 1, NO_MEMORY, MORE_MEMORY)]) from trouble
    except Exception as trouble:
        from sitegen.assembly.death import death_of_a_worker

        if (died := death_of_a_worker(trouble, folders.content)) is not None:
            raise DiaryProblems([died]) from trouble
        raise


@contextmanager
def _held(keep: Path | None, wait_told: Told) -> Iterator[None]:
    """On a disk that cannot be written there is nobody to wait for."""
    with ExitStack() as stack:
        if keep is not None:
            with suppress(OSError):
                keep.mkdir(parents=True, exist_ok=True)
                stack.enter_context(one_at_a_time(keep / "lock", wait_told))
        yield


@contextmanager
def _kept(folders: Folders) -> Iterator[Path]:
    """Where products are kept; a folder for this once where nothing shall be."""
    if folders.keep is not None:
        yield folders.keep
        return
    with TemporaryDirectory(prefix="sitegen-") as once:
        yield Path(once)


def _themes(folders: Folders) -> tuple[Path, ...]:
    return tuple(dict.fromkeys((folders.themes.absolute(), packaged_themes())))


def _standing(told: Any, seconds: float) -> Report:
    """The report of the site as it stands: everything kept, nothing made."""
    problems = tuple(Problem(**problem) for problem in told["problems"])
    every = {kind: told["made"].get(kind, 0) + told["kept"].get(kind, 0) for kind in {**told["made"], **told["kept"]}}
    return Report(told["entries"], told["pages"], told["files"], 0, 0, tuple(told["carried"]), problems,
                  dict.fromkeys(every, 0), every, {"looking around": round(seconds, 3)}, True)  # fmt: skip


def _steps(progress: Any = None) -> Any:
    from sitegen.assembly.steps import Steps, unwatched

    return Steps(_read, _facts, _draw, _nights, _lists, _texts, _feeds, _mistakes, _picture_work, _measure, _list_names,
                 progress or unwatched)  # fmt: skip


def _second_hand(jobs: int | None) -> Any:
    """Of nobody where one process shall do, and in one that stays and has loaded everything before."""
    if jobs == 1 or DRAWING in sys.modules:
        return nullcontext()
    from sitegen.assembly.second_hand import SecondHand

    return closing(SecondHand(_loading))


def _loading(met: list[Any]) -> Iterator[None]:
    """In the order in which tasks will ask for it. Entries are read meanwhile, where they are looked for."""
    for name in LOADED_AHEAD:
        import_module(f"sitegen.{name}")
        yield
    for bench in met:
        with suppress(Exception):  # what is wrong with a theme is told by who draws with it
            bench.site_frame.env.get_template("entry.html")
        yield


def _read(bench: Any, chunk: Sequence[Any]) -> Any:
    from sitegen.assembly.entry_reading import read_entries

    return read_entries(bench, chunk)


def _facts(bench: Any, chunk: Sequence[Any]) -> Any:
    from sitegen.assembly.entry_facts import facts_of_entries

    return facts_of_entries(bench, chunk)


def _draw(bench: Any, chunk: Sequence[Any]) -> Any:
    from sitegen.assembly.entry_drawing import draw_entries

    return draw_entries(bench, chunk)


def _nights(bench: Any, chunk: Sequence[Any]) -> Any:
    from sitegen.assembly.entry_drawing import draw_nights

    return draw_nights(bench, chunk)


def _lists(bench: Any, chunk: Sequence[Any]) -> Any:
    from sitegen.assembly.lists import draw_lists

    return draw_lists(bench, chunk)


def _texts(bench: Any, chunk: Sequence[Any]) -> Any:
    from sitegen.assembly.entry_texts import texts_that_err

    return texts_that_err(bench, chunk)


def _feeds(bench: Any, chunk: Sequence[Any]) -> Any:
    from sitegen.assembly.feeds_of_all import make_feeds

    return make_feeds(bench, chunk)


def _mistakes(*text: Any) -> Any:
    from sitegen.assembly.entry_texts import mistakes_of

    return mistakes_of(*text)


def _picture_work(name: str, *given: Any) -> Any:
    from sitegen.assembly.crew import working_on
    from sitegen.pictures.tasks import work

    working_on(given[0])
    return work(name, *given)


def _measure(kind: str, path: Path, shown: str, file: str) -> Any:
    from sitegen.assembly.crew import working_on
    from sitegen.reading.star_measuring import ring_of, survey_of

    working_on(path)
    return (survey_of if kind == "survey" else ring_of)(path, shown, file)


def _list_names() -> tuple[str, ...]:
    from sitegen.assembly.lists import list_names

    return list_names()
