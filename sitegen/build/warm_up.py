"""What a save would load and look up, done ahead and for nobody: for a preview, whose first rebuild may have loaded little."""

from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

from msgspec.msgpack import Decoder

from sitegen.build.context import BuildContext
from sitegen.build.manifest import manifest_path, read_manifest
from sitegen.build.neighbours import with_evenings
from sitegen.build.registry import RULES
from sitegen.build.resolve import resolve
from sitegen.build.rules.entries import ENTRIES, EntryRead, ReadJob
from sitegen.build.rules.entry_pages import DrawJob, common_half_hours
from sitegen.build.rules.facts import FACTS, FactsSummary
from sitegen.build.run import MANIFEST_CODE, context_of
from sitegen.build.work.drawing import draw_entries
from sitegen.build.work.drawing_kit import kit_of
from sitegen.build.work.reading import read_entries
from sitegen.diary.settings import Settings
from sitegen.folders import Folders
from sitegen.pages.theme import open_theme
from sitegen.reading.diary_config import DiaryReading, read_config

ENTRY_READ, ENTRY_FACTS = Decoder(EntryRead), Decoder(FactsSummary)


def warm_up(folders: Folders, root: Path | None, today: date) -> None:
    """The code, the templates of the diary's theme, the words in its language, and what its newest entry needs. A diary with
    errors warms what it can."""
    for rule in RULES:
        resolve(rule.function)
    config = read_config(folders.content, today, str(folders.content))
    if isinstance(config, DiaryReading):
        return
    settings = config.settings or Settings("")
    theme, problems = open_theme(settings.theme, folders.themes)
    if problems:
        return
    with TemporaryDirectory(prefix="sitegen-") as once:
        context = context_of(folders.content, config, settings, theme, root or Path(once))
        templates = kit_of(context).page_layout.env
        for name in templates.list_templates(extensions=["html"]):
            templates.get_template(name)
        _save_newest(context)


def _save_newest(context: BuildContext) -> None:
    """Nothing where nothing is kept of an entry."""
    manifest, _ = read_manifest(manifest_path(context.root, context.content), context.versions[MANIFEST_CODE])
    facts = {name: ENTRY_FACTS.decode(record.value) for name, record in manifest.tasks.get(FACTS.name, {}).items()}
    newest = next(iter(facts), None)
    for relative, record in manifest.tasks.get(ENTRIES.name, {}).items():
        entry = ENTRY_READ.decode(record.value)
        if entry.slug == newest:
            read_entries(context, [ReadJob(relative, entry.logs, frozenset(name for name, _ in record.reads))])
            _draw(context, facts[newest], common_half_hours(facts))


def _draw(context: BuildContext, facts: FactsSummary, half_hours: float) -> None:
    evenings = ((None, facts.evenings[0], None),) if facts.evenings else ()
    card = with_evenings(facts.card, facts.evenings)
    draw_entries(context, [DrawJob(facts.prepared, half_hours, (card,), evenings, True, {})])
