"""All targets on the sky: a map of both hemispheres, and the targets by constellation."""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from sitegen.charts import sky_map
from sitegen.charts.chart import drawn
from sitegen.charts.sky_map import SkyTarget
from sitegen.diary import addresses
from sitegen.diary.target import Target
from sitegen.facts.target_identity import constellation
from sitegen.pages.counted_light import LightTotals
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.page import Navigation, Page, PageKind


class ListedTarget(Struct, frozen=True):
    """A target in the list under the map. `constellation` None for what moves."""

    target: Target
    constellation: str | None
    entries: int
    total_s: float
    recalled_s: float


def pages(book: DiaryIndex) -> Iterable[Page]:
    listed = targets_of(book)
    words = book.formatter.words
    yield Page(
        addresses.SKY,
        "sky.html",
        words["page.sky"],
        {
            "map": drawn(sky_map.CHART, [mark for target in listed for mark in _marked(target)], book.voice),
            "constellations": _by_constellation(listed),
            "moving": [target for target in listed if target.constellation is None],
        },
        chapter="sky",
        description=words["sky.description"],
    )


def targets_of(book: DiaryIndex) -> tuple[ListedTarget, ...]:
    """Every target of the diary by name, as its newest entry knows it, with the light gathered on it."""
    newest = {target.slug: target for card in reversed(book.cards) for target in card.targets}
    listed = [ListedTarget(newest[slug], constellation(newest[slug]), len(cards), totals.total_s, totals.recalled_s)
              for slug, cards in book.by_target.items() for totals in [_totals(slug, book)]]  # fmt: skip
    return tuple(sorted(listed, key=lambda entry: (entry.target.name, entry.target.slug)))


def _totals(slug: str, book: DiaryIndex) -> LightTotals:
    return book.totals_by_target.get(slug, LightTotals())


def _marked(listed: ListedTarget) -> Iterable[SkyTarget]:
    """The target as the map shows it; none for what has no fixed place."""
    ra_deg, dec_deg = listed.target.ra_deg, listed.target.dec_deg
    if ra_deg is not None and dec_deg is not None:
        link = addresses.relative(addresses.SKY, addresses.target(listed.target.slug))
        yield SkyTarget(listed.target.name, ra_deg, dec_deg, listed.total_s, link)


def _by_constellation(listed: Sequence[ListedTarget]) -> list[tuple[str, list[ListedTarget]]]:
    names = sorted({target.constellation for target in listed if target.constellation})
    return [(name, [target for target in listed if target.constellation == name]) for name in names]


KIND = PageKind(
    name="sky",
    pages=pages,
    addresses=lambda _: (addresses.SKY,),
    navigation=Navigation("sky", addresses.SKY),
    shows="numbers",
)
