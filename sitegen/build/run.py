"""The graph run over one diary: from what lies in the author's folders to every file of the site, or every problem."""

from collections.abc import Iterator
from pathlib import Path

from msgspec import Struct

from sitegen.artifact import Artifact
from sitegen.build.code_version import code_versions
from sitegen.build.context import PICTURE_WORK, STAR_WORK, BuildContext
from sitegen.build.fingerprint import Fingerprint
from sitegen.build.garbage import collect_garbage, folder_or_file
from sitegen.build.graph import Build, Inputs, Progress, no_progress
from sitegen.build.manifest import DAMAGED, Manifest, living_manifests, manifest_path, read_manifest, write_manifest
from sitegen.build.prewarmed import PrewarmedWorker
from sitegen.build.registry import CHECKING, COMPUTING, DRAWING, READING, RULES
from sitegen.build.rules.facts import FACTS
from sitegen.build.stamps import reliable
from sitegen.build.stats import BuildStats
from sitegen.build.store import CacheMiss, Output, digest_of, key_of
from sitegen.build.workers import WorkerPool
from sitegen.diary import addresses
from sitegen.diary.settings import Settings
from sitegen.pages.theme import HTML, WORDS, Theme, open_theme
from sitegen.problems import Problem, errors_in, in_order
from sitegen.reading.diary_config import DiaryConfig, DiaryReading, read_config

MANIFEST_CODE = "sitegen.build.manifest"
VERSIONED = (MANIFEST_CODE, *(rule.module for rule in RULES), *(work.partition(":")[0] for work in (PICTURE_WORK, STAR_WORK)))


class Options(Struct, frozen=True):
    """`jobs`: processes to work with, None for as many as cores. `trusting`: files of the store are taken for whole, and may be
    found lost when they are published."""

    jobs: int | None = None
    checking: bool = False
    trusting: bool = False
    progress: Progress = no_progress


class Ran(Struct):
    """What a run came to. `manifest` is None where there is no site to publish: it was only checked, or a problem is an error."""

    problems: tuple[Problem, ...]
    stats: BuildStats
    context: BuildContext | None = None
    manifest: Manifest | None = None

    def outputs(self) -> Iterator[Output]:
        tasks = self.manifest.tasks if self.manifest else {}
        for rule in (*COMPUTING, *DRAWING):
            for record in tasks.get(rule.name, {}).values():
                yield from record.outputs

    def artifacts(self) -> Iterator[Artifact]:
        """Every file of the site, one after the other."""
        if self.context is None or self.manifest is None:
            return
        root = str(self.context.root)
        for output in self.outputs():
            yield output.artifact(root)
        for name, content in self.context.theme.look_files():
            yield Artifact(addresses.look(name), content)

    @property
    def entries(self) -> int:
        return len(self.manifest.tasks[FACTS.name]) if self.manifest else 0

    @property
    def pages(self) -> int:
        return sum(output.path.endswith(".html") for output in self.outputs())

    def collect_garbage(self) -> None:
        """Called when the site has been published."""
        if self.context is not None:
            collect_garbage(self.context.root, self._reached)

    def _reached(self) -> set[str]:
        """All that manifests lead to, also what a check alone asks for; of every diary whose store this is."""
        assert self.context is not None
        version = self.context.versions[MANIFEST_CODE]
        manifests = living_manifests(self.context.root, version)
        records = [record for manifest in manifests for tasks in manifest.tasks.values() for record in tasks.values()]
        outputs = {folder_or_file(output.kept) for record in records for output in record.outputs}
        return outputs.union(*(record.uses for record in records))


def run_graph(fingerprint: Fingerprint, root: Path, options: Options, prewarmed: PrewarmedWorker | None = None) -> Ran:
    """`root` is that of the store. `prewarmed` takes over small tasks."""
    stats, folders = BuildStats(), fingerprint.folders
    config = read_config(folders.content, fingerprint.today, str(folders.content))
    if isinstance(config, DiaryReading):
        return Ran(config.problems, stats)
    settings = config.settings or Settings("")
    theme, theme_problems = open_theme(settings.theme, folders.themes)
    context = context_of(folders.content, config, settings, theme, root)
    run = _Run(fingerprint, context, options, stats, tuple(theme_problems), prewarmed)
    earlier, note = read_manifest(run.path, context.versions[MANIFEST_CODE])
    stats.notes += [note] if note else []
    stats.step("looking around")
    try:
        return run.since(earlier)
    except CacheMiss:
        stats.notes.append(DAMAGED)
        return run.since(Manifest(earlier.version))


class _Run(Struct, frozen=True):
    fingerprint: Fingerprint
    context: BuildContext
    options: Options
    stats: BuildStats
    theme_problems: tuple[Problem, ...]
    prewarmed: PrewarmedWorker | None

    @property
    def path(self) -> Path:
        return manifest_path(self.context.root, self.context.content)

    def since(self, earlier: Manifest) -> Ran:
        inputs = Inputs(
            {name: reliable(stamp, self.fingerprint.looked_ns) for name, stamp in self.fingerprint.content.items()},
            str(self.context.config.folder.shown_as),
        )
        with WorkerPool(self.context, self.options.jobs, self.prewarmed) as workers:
            build = Build(self.context, inputs, earlier, workers, self.stats, self.options.progress, self.options.trusting)
            is_whole = self._through(build)
        manifest = build.finished()
        write_manifest(self.path, manifest)
        return Ran(in_order(build.problems), self.stats, self.context, manifest if is_whole else None)

    def _through(self, build: Build) -> bool:
        """Whether every page was drawn."""
        build.problems += self.context.config.problems
        is_read = build.run(READING)
        if is_read:
            build.run(COMPUTING)
        build.problems += self.theme_problems
        if not is_read:
            return False
        if self.options.checking or errors_in(build.problems):
            build.run(CHECKING)
            return False
        return build.run(DRAWING)


def context_of(content: Path, config: DiaryConfig, settings: Settings, theme: Theme, root: Path) -> BuildContext:
    files = [(path.name, path.read_bytes()) for folder in theme.folders for path in _theme_files(folder)]
    look = key_of(digest_of(settings), digest_of(config.known), digest_of(files), [str(path) for path in theme.folders])
    return BuildContext(content, root, config, settings, theme, code_versions(VERSIONED, root), look)


def _theme_files(folder: Path) -> list[Path]:
    return sorted(path for part in (HTML, WORDS) for path in (folder / part).rglob("*") if path.is_file())
