"""What a process needs on its bench to make products: the diary's frame, the theme, the words, the folders of kept things."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields
from functools import cached_property, partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

from sitegen.diary.diary import Diary
from sitegen.diary.public_position import PublicSite, public_site
from sitegen.diary.settings import Settings
from sitegen.keeping.blobs import Blobs
from sitegen.keeping.keep import Keep, key_of, put_pickle, read_pickle
from sitegen.late import Late
from sitegen.pages.outer_card import OuterCard
from sitegen.pages.theme import Theme
from sitegen.reading.frame import Frame

if TYPE_CHECKING:
    from sitegen.pages.card import EntryCard
    from sitegen.pages.shown import Shower
    from sitegen.pages.site_book import SiteBook
    from sitegen.pages.site_frame import SiteFrame

number_text, shown, words = Late("sitegen.number_text"), Late("sitegen.pages.shown"), Late("sitegen.pages.words")
site_book, site_frame = Late("sitegen.pages.site_book"), Late("sitegen.pages.site_frame")
"""What draws pages loads a fifth of a second long, and who looks up what is known needs none of it."""

CHARTS = "charts"


class Gone(Exception):
    """Something that was kept is missing or damaged: what depends on it must be made from the beginning."""


@dataclass(frozen=True)
class Bench:
    """Small enough to be sent to another process. `maker` names the code that makes pages, `picture_maker` that of pictures,
    `star_maker` that of star measurements; `look` the theme, its words, and the settings and rigs that every page may show."""

    content: Path
    keep: Path
    frame: Frame
    settings: Settings
    theme: Theme
    maker: str
    picture_maker: str
    star_maker: str
    look: str

    def __getstate__(self) -> dict[str, Any]:
        """Without what this process has put up from it (an environment of templates cannot be sent)."""
        return {field.name: self.__dict__[field.name] for field in fields(self)}

    def __setstate__(self, state: dict[str, Any]) -> None:
        self.__dict__.update(state)

    @cached_property
    def blobs(self) -> Blobs:
        return Blobs(self.keep)

    @cached_property
    def pictures(self) -> Keep:
        return Keep(self.keep, self.picture_maker)

    @cached_property
    def stars(self) -> Keep:
        return Keep(self.keep, self.star_maker)

    @cached_property
    def charts(self) -> Keep:
        """Charts speak the theme's words."""
        return Keep(self.keep, key_of(self.maker, self.settings.language, self.theme.word_texts(self.settings.language)))

    def charts_used(self) -> tuple[str, ...]:
        """Keys of the charts asked for since this was asked last."""
        used = tuple(sorted(name.partition("/")[2] for name in self.charts.used))
        self.charts.used.clear()
        return used

    @cached_property
    def diary(self) -> Diary:
        """Without its entries: no step on one of them may look at the others."""
        return Diary(self.settings, self.frame.sites, self.frame.rigs, ())

    @cached_property
    def sites(self) -> Mapping[str, PublicSite]:
        return {slug: public_site(site, self.settings.privacy) for slug, site in self.frame.sites.items()}

    @cached_property
    def shower(self) -> "Shower":
        said = words.words_from(self.settings.language, self.theme.word_texts(self.settings.language))
        found: Shower = shown.Shower(number_text.NumberText(self.settings.language, said), said)
        return found

    @cached_property
    def site_frame(self) -> "SiteFrame":
        found: SiteFrame = site_frame.SiteFrame(self.settings, self.theme, self.shower.words, self.shower, self.maker)
        return found

    def book(self, cards: "Sequence[EntryCard] | Sequence[OuterCard]") -> "SiteBook":
        """A book of these cards only, newest first. With outer cards it serves feeds and the pages of one entry, which show no
        more than these have."""
        found: SiteBook = site_book.SiteBook(
            self.settings, self.sites, self.frame.rigs, tuple(cards), self.shower, partial(self.charts.value, CHARTS)
        )
        return found

    def put(self, kind: str, value: Any) -> str:
        """Keeps a record under its digest, which is given back."""
        return put_pickle(self.keep / kind, value)

    def get(self, kind: str, digest: str) -> Any:
        """A record kept before. Raises Gone where it is missing or damaged."""
        found = read_pickle(self.keep / kind / digest)
        if found is None:
            raise Gone(f"{kind}/{digest}")
        return found[0]
