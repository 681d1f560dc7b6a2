"""The contract of page kinds sees each harm that it is there for, done to a kind that is whole otherwise."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

import pytest
from msgspec.structs import replace

from sitegen.diary import addresses
from sitegen.feeds import sitemap
from sitegen.pages import page_layout, registry
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.lessons_page import KINDS as LESSONS
from sitegen.pages.page import Kind, Navigation, Page, PageKind
from tests.pages import test_page_contract as contract

RAIN = addresses.topic("rain")
NO_LESSONS = {"lessons": dict.fromkeys(LESSONS, ()), "years": (), "year": None}


def pages(book: DiaryIndex) -> Iterable[Page]:
    yield Page(RAIN, "lessons.html", book.formatter.words["page.lessons"], NO_LESSONS, chapter="label")


WHOLE = PageKind(name="rain", pages=pages, addresses=lambda _: (RAIN,), navigation=Navigation("label", RAIN))
"""Its navigation takes a word that the theme has."""


def in_english(book: DiaryIndex) -> Iterable[Page]:
    yield replace(next(iter(pages(book))), title="Rain")


def elsewhere(book: DiaryIndex) -> Iterable[Page]:
    yield replace(next(iter(pages(book))), address="rain/")


def in_no_section(book: DiaryIndex) -> Iterable[Page]:
    yield replace(next(iter(pages(book))), chapter="rain")


Promise = Callable[[Kind], None]
PROMISES: tuple[Promise, ...] = (
    contract.test_the_sample_shows_it,
    contract.test_its_name_and_its_place_are_its_own,
    contract.test_it_tells_its_addresses,
    contract.test_its_addresses_are_the_site_s,
    contract.test_the_sitemap_has_its_pages,
    contract.test_the_navigation_shows_where_its_pages_are,
    contract.test_the_theme_s_words_name_it,
    contract.test_facts_beside_it_name_it,
    lambda kind: contract.test_a_reader_finds_its_pages(kind, "default"),
)


@dataclass(frozen=True)
class Harm:
    kind: Kind
    promise: Promise
    seen: type[Exception] = AssertionError


HARM = {
    "it has no page": Harm(replace(WHOLE, pages=lambda _: ()), PROMISES[0]),
    "its name is another's": Harm(replace(WHOLE, name="rigs"), PROMISES[1]),
    "its place in the navigation is another's": Harm(replace(WHOLE, navigation=Navigation("sky", RAIN)), PROMISES[1]),
    "it does not tell its addresses": Harm(replace(WHOLE, addresses=lambda _: ()), PROMISES[2]),
    "its address is spelt outside addresses.py": Harm(replace(WHOLE, pages=elsewhere), PROMISES[3]),
    "the sitemap lacks it": Harm(replace(WHOLE, in_sitemap=False), PROMISES[4]),
    "its section is nowhere in the navigation": Harm(replace(WHOLE, pages=in_no_section), PROMISES[5]),
    "its title is English, whatever the theme says": Harm(replace(WHOLE, pages=in_english), PROMISES[6]),
    "it promises facts that it does not have": Harm(replace(WHOLE, has_facts=True), PROMISES[7]),
    "nothing leads to it": Harm(replace(WHOLE, navigation=None), PROMISES[8]),
    "the theme has no word for the navigation": Harm(replace(WHOLE, navigation=Navigation("rain", RAIN)), PROMISES[8], KeyError),
}


@pytest.fixture
def registered(monkeypatch: pytest.MonkeyPatch) -> Iterator[Callable[[Kind], Kind]]:
    """Puts a kind at the end of the registry, wherever that is read."""

    def put(kind: Kind) -> Kind:
        for module in (registry, sitemap, page_layout, contract):
            monkeypatch.setattr(module, "KINDS", (*registry.PAGE_KINDS, *registry.ENTRY_PAGE_KINDS, kind))
        contract.book_and_links.cache_clear()
        return kind

    yield put
    contract.book_and_links.cache_clear()


@pytest.mark.parametrize("promise", PROMISES)
def test_a_whole_kind_keeps_every_promise(promise: Promise, registered: Callable[[Kind], Kind]) -> None:
    promise(registered(WHOLE))


@pytest.mark.parametrize("name", HARM)
def test_harm_is_told(name: str, registered: Callable[[Kind], Kind]) -> None:
    harm = HARM[name]
    kind = registered(harm.kind)
    with pytest.raises(harm.seen):
        harm.promise(kind)
