"""What draws pages in one process: the theme's templates and words, the formatter of facts, the cache of charts."""

from collections.abc import Callable, Mapping, Sequence
from functools import cached_property, lru_cache

from sitegen.build.context import BuildContext
from sitegen.build.store import Cache, key_of
from sitegen.build.work.kept_prepared import get_prepared
from sitegen.diary.public_position import PublicSite, public_site
from sitegen.number_text import NumberText
from sitegen.pages.card import EntryCard
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_summary import EntrySummary
from sitegen.pages.fact_formatter import FactFormatter
from sitegen.pages.page_layout import PageLayout
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.words import words_from

CODE = "sitegen.build.work.drawing"
"""Charts and compiled templates are kept under the version of the code behind this module."""
MOST_PREPARED = 4


class DrawingKit:
    """Put up once for a context, as its environment of templates takes long and cannot be sent to another process."""

    def __init__(self, context: BuildContext) -> None:
        self.context = context

    @cached_property
    def charts(self) -> Cache:
        """Charts speak the theme's words."""
        language = self.context.settings.language
        return Cache(self.context.store, key_of(self._version, language, self.context.theme.word_texts(language)))

    @cached_property
    def sites(self) -> Mapping[str, PublicSite]:
        return {slug: public_site(site, self.context.settings.privacy) for slug, site in self.context.config.sites.items()}

    @cached_property
    def formatter(self) -> FactFormatter:
        language = self.context.settings.language
        words = words_from(language, self.context.theme.word_texts(language))
        return FactFormatter(NumberText(language, words), words)

    @cached_property
    def page_layout(self) -> PageLayout:
        return PageLayout(self.context.settings, self.context.theme, self.formatter.words, self.formatter, self._version)

    @cached_property
    def prepared(self) -> Callable[[str], PreparedEntry]:
        """From the store. The last few stay in memory: one night after another is shared by the same entries."""
        return lru_cache(maxsize=MOST_PREPARED)(lambda name: get_prepared(self.context.store, name))

    def book(self, cards: Sequence[EntryCard] | Sequence[EntrySummary], half_hours: float = 0.0) -> DiaryIndex:
        """A book of these cards only, newest first. With outer cards it serves feeds and the pages of one entry, which show no
        more than these have."""
        rigs = self.context.config.rigs
        return DiaryIndex(
            self.context.settings, self.sites, rigs, tuple(cards),  # type: ignore[arg-type]
            self.formatter, self.charts.value, half_hours,
        )  # fmt: skip

    @property
    def _version(self) -> str:
        return self.context.versions[CODE]


@lru_cache(maxsize=1)
def kit_of(context: BuildContext) -> DrawingKit:
    """A preview stays for many rebuilds, each with a context of its own."""
    return DrawingKit(context)


def load_template(context: BuildContext) -> None:
    """The largest, ahead of the first page."""
    kit_of(context).page_layout.env.get_template("entry.html")
