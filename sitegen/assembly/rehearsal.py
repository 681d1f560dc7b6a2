"""The newest entry read and drawn as a save of it would, for nobody: what a first save would load and look up is there then."""

from collections.abc import Iterable
from datetime import date

from sitegen.assembly.assemble import bench_of
from sitegen.assembly.bench import Bench
from sitegen.assembly.entry_drawing import draw_entries
from sitegen.assembly.entry_reading import read_entries
from sitegen.assembly.jobs import DrawJob, ReadJob
from sitegen.assembly.ledger_file import ledger_path, read_ledger
from sitegen.assembly.records import FactsOfEntry, Ledger, ReadEntry
from sitegen.assembly.surroundings import with_evenings
from sitegen.diary.settings import Settings
from sitegen.folders import Folders
from sitegen.pages.common_clock import half_clock
from sitegen.pages.theme import open_theme
from sitegen.reading.frame import DiaryReading, read_frame


def rehearse(folders: Folders, today: date) -> None:
    """Nothing where the diary has an error in its frame, or nothing of it is kept."""
    frame = read_frame(folders.content, today, str(folders.content))
    if isinstance(frame, DiaryReading) or folders.keep is None:
        return
    settings = frame.settings or Settings("")
    theme, problems = open_theme(settings.theme, folders.themes)
    bench = bench_of(folders.content, frame, settings, theme, folders.keep)
    if not problems:
        _newest(bench, read_ledger(ledger_path(folders.keep, folders.content), bench.maker)[0])


def _newest(bench: Bench, ledger: Ledger) -> None:
    newest = next(iter(ledger.facts), None)
    for read in ledger.read.values():
        if read.slug == newest:
            _save(bench, read, ledger.facts[read.slug], ledger.facts.values())


def _save(bench: Bench, read: ReadEntry, facts: FactsOfEntry, every: Iterable[FactsOfEntry]) -> None:
    read_entries(bench, [ReadJob(read.relative, read.frame, read.logs, frozenset(name for name, _ in read.marks))])
    clock = half_clock(max(one.half_night_s for one in every))
    around = (None, facts.evenings[0], None) if facts.evenings else None
    card = with_evenings(facts.card, facts.evenings)
    draw_entries(bench, [DrawJob("", facts.core, clock, (card,), (around,) if around else (), True, {})])
