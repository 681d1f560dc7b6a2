"""The assembly line on one screen: lock, fingerprint, run the graph, publish, save.

Where nothing has changed since the site was built, the fingerprint tells, and nothing heavy is loaded. The room that runs the
graph is imported late, here and nowhere else.
"""

import shutil
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack, closing, contextmanager, nullcontext, suppress
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, Any

from msgspec import Struct, to_builtins
from msgspec.structs import asdict, replace

from sitegen.build.fingerprint import Fingerprint, save_report, save_result, saved_report, saved_result, take_fingerprint
from sitegen.diary import addresses
from sitegen.folders import Folders
from sitegen.pages.theme import packaged_themes
from sitegen.problems import MORE_MEMORY, DiaryProblems, Problem, errors_in, system_problem
from sitegen.publish.file_lock import file_lock

if TYPE_CHECKING:
    from sitegen.build.run import Ran
    from sitegen.publish.publish import Published

STORE = "store"
"""Everything that was made before lies there, below the folder of kept things; `--fresh` deletes it."""
FORMER = ("ledger", "standing", "files", "entries", "logs", "cores", "cards", "charts", "pictures", "pointings", "stars",
          "versions", "told")  # fmt: skip
"""What versions before the store left there."""
NO_MEMORY = "there is not enough memory to make the site"
DRAWING = "sitegen.build.work.drawing"
TEMPLATE = "sitegen.build.work.drawing_kit:load_template"
OnWait = Callable[[], None] | None


class Report(Struct, frozen=True):
    """What a rebuild did. `made` and `kept` by kind of product, `seconds` by stage; `changed`, `removed`, `carried` and `by_hand`
    as in `publish.publish`. `standing`: nothing had changed, and nothing was done. `said`: lines about what was kept."""

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
        report: dict[str, Any] = to_builtins(self)
        return report


def rebuild(folders: Folders, today: date, jobs: int | None = None, fresh: bool = False, on_wait: OnWait = None,
            progress: Any = None) -> Report:  # fmt: skip
    """The whole site. Raises DiaryProblems, with the earlier site untouched, where the diary has any error, and where disk,
    rights or memory do not suffice. `on_wait` is called before another rebuild of this diary is waited for, `progress`
    (`build.graph.Progress`) whenever something is done."""
    with _alone(folders, on_wait), _store(folders) as root:
        if fresh:
            shutil.rmtree(root, ignore_errors=True)
        since = time.perf_counter()
        fingerprint = _fingerprint(folders, today)
        saved = saved_report(fingerprint)
        if saved is not None:
            return _standing(saved, time.perf_counter() - since)
        ran, site = _published(fingerprint, root, jobs, progress)
        ran.collect_garbage()
        _remove_former(folders.keep)
        ran.stats.step("tidying")
        report = _report(ran, site)
        save_report(fingerprint, report.as_json(), site.files_now)
        return replace(report, problems=(*report.problems, *site.warnings))


def check(folders: Folders, today: date, on_wait: OnWait = None, progress: Any = None) -> tuple[Problem, ...]:
    """Every problem that a rebuild would meet, errors and warnings: the same graph, stopped before pages."""
    with _alone(folders, on_wait):
        fingerprint = _fingerprint(folders, today)
        saved = saved_result(fingerprint, "problems")
        if saved is not None:
            return tuple(Problem(**problem) for problem in saved)
        from sitegen.build.graph import no_progress
        from sitegen.build.run import Options, run_graph

        with _store(folders) as root:
            problems = run_graph(fingerprint, root, Options(checking=True, progress=progress or no_progress)).problems
        save_result(fingerprint, "problems", [asdict(problem) for problem in problems], lasting=not problems)
        return problems


def reveals(folders: Folders, today: date) -> Any:
    """Lines (`diary.reveals.Reveal`) of what the diary makes public about its author; none while it has errors."""
    from sitegen.diary.reveals import Reveal, reveals_of

    fingerprint = _fingerprint(folders, today)
    saved = saved_result(fingerprint, "reveals")
    if saved is not None:
        return tuple(Reveal(*line) for line in saved)
    from sitegen.reading.reader import read_diary

    diary = read_diary(folders.content, today, str(folders.content)).diary
    lines = reveals_of(diary) if diary is not None else ()
    save_result(fingerprint, "reveals", lines, lasting=not lines)
    return lines


def _published(fingerprint: Fingerprint, root: Path, jobs: int | None, progress: Any) -> "tuple[Ran, Published]":
    """The store is trusted; where a file of it is needed and turns out to be lost or damaged, all of it is looked through."""
    from sitegen.publish.publish import SiteAddresses, SourceLost, prefetch, publish

    known_by = SiteAddresses(addresses.LANDMARKS, addresses.may_be_ours)
    output, state = fingerprint.folders.output, fingerprint.folders.keep

    def run(trusting: bool) -> "tuple[Ran, Published]":
        from sitegen.build.graph import no_progress
        from sitegen.build.run import Options, run_graph

        ran = run_graph(fingerprint, root, Options(jobs, trusting=trusting, progress=progress or no_progress), prewarmed)
        if errors_in(ran.problems):
            raise DiaryProblems(ran.problems)
        site = publish(ran.artifacts(), output, state, scan, known_by)
        ran.stats.step("writing")
        return ran, site

    with ExitStack() as helpers:
        prewarmed = helpers.enter_context(_prewarmed(jobs))
        scan = helpers.enter_context(closing(prefetch(output, state)))
        try:
            return run(trusting=True)
        except SourceLost:
            return run(trusting=False)


def _report(ran: "Ran", site: "Published") -> Report:
    stats = ran.stats
    seconds = {stage: round(seconds, 3) for stage, seconds in stats.seconds.items()}
    return Report(ran.entries, ran.pages, site.files, site.changed, site.removed, site.carried, ran.problems, dict(stats.made),
                  dict(stats.kept), seconds, said=tuple(stats.notes), by_hand=site.by_hand)  # fmt: skip


def _standing(saved: dict[str, Any], seconds: float) -> Report:
    """The report of the site as it stands: everything kept, nothing made."""
    problems = tuple(Problem(**problem) for problem in saved["problems"])
    every = {kind: saved["made"].get(kind, 0) + saved["kept"].get(kind, 0) for kind in {**saved["made"], **saved["kept"]}}
    return Report(saved["entries"], saved["pages"], saved["files"], 0, 0, tuple(saved["carried"]), problems,
                  dict.fromkeys(every, 0), every, {"looking around": round(seconds, 3)}, True)  # fmt: skip


@contextmanager
def _alone(folders: Folders, on_wait: OnWait) -> Iterator[None]:
    """One rebuild of a diary at a time, as they share the store. What the machine refuses is told as a problem."""
    try:
        with _locked(folders.keep, on_wait):
            yield
    except OSError as trouble:
        roots = (folders.keep or folders.output, folders.output, folders.content, folders.themes)
        raise DiaryProblems([system_problem(trouble, folders.output.name, roots)]) from trouble
    except MemoryError as trouble:
        raise DiaryProblems([Problem(folders.output.name, 1, 1, NO_MEMORY, MORE_MEMORY)]) from trouble
    except Exception as trouble:
        from sitegen.build.death import death_of_a_worker

        if (died := death_of_a_worker(trouble, folders.content)) is not None:
            raise DiaryProblems([died]) from trouble
        raise


@contextmanager
def _locked(keep: Path | None, on_wait: OnWait) -> Iterator[None]:
    """On a read-only disk no lock can be taken, and no other rebuild can be running."""
    with ExitStack() as stack:
        if keep is not None:
            with suppress(OSError):
                keep.mkdir(parents=True, exist_ok=True)
                stack.enter_context(file_lock(keep / "lock", on_wait))
        yield


@contextmanager
def _store(folders: Folders) -> Iterator[Path]:
    """The root of the store; a folder for this once where nothing shall be kept."""
    if folders.keep is not None:
        yield folders.keep / STORE
        return
    with TemporaryDirectory(prefix="sitegen-") as once:
        yield Path(once)


def _fingerprint(folders: Folders, today: date) -> Fingerprint:
    themes = tuple(dict.fromkeys((folders.themes.absolute(), packaged_themes())))
    return take_fingerprint(folders, themes, today, folders.keep / STORE if folders.keep else None)


def _remove_former(keep: Path | None) -> None:
    if keep is not None:
        for name in FORMER:
            shutil.rmtree(keep / name, ignore_errors=True)


def _prewarmed(jobs: int | None) -> Any:
    """The prewarmed worker; none with one process, nor in one that stays and has imported the drawing modules already."""
    if jobs == 1 or DRAWING in sys.modules:
        return nullcontext()
    from sitegen.build.prewarmed import PrewarmedWorker

    return closing(PrewarmedWorker(_loading))


def _loading(contexts: list[Any]) -> Iterator[None]:
    """The modules of the rules, in their order. Entries are read meanwhile by this process."""
    from sitegen.build.registry import RULES
    from sitegen.build.resolve import resolve

    for rule in RULES:
        if rule.prewarmed:
            resolve(rule.function)
            yield
    for context in contexts:
        with suppress(Exception):  # what is wrong with a theme is told by who draws with it
            resolve(TEMPLATE)(context)
        yield
