"""From a valid diary to every artifact of its site: the rooms in their order."""

import json
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

from sitegen.artifact import Artifact
from sitegen.diary import addresses
from sitegen.diary.diary import Diary
from sitegen.diary.entry import Entry, Picture
from sitegen.diary.public_position import public_site
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import facts_of
from sitegen.facts.views import EntryView
from sitegen.feeds.feed import NEWEST, FeedSource, absolute
from sitegen.feeds.registry import FEEDS
from sitegen.folders import Folders
from sitegen.keeping.keep import Keep, hash_of_file
from sitegen.number_text import NumberText
from sitegen.pages.card import card_of
from sitegen.pages.entry_page import entry_page
from sitegen.pages.entry_text import text_of
from sitegen.pages.markdown_text import plain_text
from sitegen.pages.night_pages import night_pages
from sitegen.pages.page import Page
from sitegen.pages.passband_styles import passband_css
from sitegen.pages.picture_view import PreparedPicture, main_picture, picture_view
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.registry import PAGE_KINDS
from sitegen.pages.ribbon import clock_half_hours
from sitegen.pages.shown import Shower
from sitegen.pages.site_book import SiteBook
from sitegen.pages.site_frame import SiteFrame
from sitegen.pages.subs_table import subs_ecsv
from sitegen.pages.theme import Theme, open_theme
from sitegen.pages.words import words_from
from sitegen.pictures.records import MadePicture, PictureProblem, PictureSettings
from sitegen.pictures.sizes import make_sizes
from sitegen.problems import Problem, errors_in


@dataclass(frozen=True, slots=True)
class Assembled:
    """`artifacts` is empty where a problem is an error."""

    artifacts: tuple[Artifact, ...]
    problems: tuple[Problem, ...]
    pages: int


def assemble(diary: Diary, folders: Folders, keep: Keep) -> Assembled:
    """Facts, pictures, pages and lists of the whole diary."""
    theme, shower, prepared, book, problems = _made_ready(diary, folders, keep)
    if errors_in(problems):
        return Assembled((), tuple(problems), 0)
    pages = _pages(prepared, book)
    frame = SiteFrame(diary.settings, theme, shower.words, shower)
    artifacts = [
        *(Artifact.text(addresses.file_of(page.address), frame.draw(page)) for page in pages),
        *_data(prepared),
        *_feeds(prepared, book),
        *_picture_files(prepared, folders, keep),
        *_static(theme, diary),
    ]
    return Assembled(tuple(artifacts), tuple(problems), len(pages))


def problems_of(diary: Diary, folders: Folders, keep: Keep) -> tuple[Problem, ...]:
    """What is wrong with pictures, texts and theme of a diary whose files are valid."""
    return tuple(_made_ready(diary, folders, keep)[-1])


def _made_ready(
    diary: Diary, folders: Folders, keep: Keep
) -> tuple[Theme, Shower, tuple[PreparedEntry, ...], SiteBook, list[Problem]]:
    theme, theme_problems = open_theme(diary.settings.theme, folders.themes)
    words = words_from(diary.settings.language, theme.word_texts(diary.settings.language))
    shower = Shower(NumberText(diary.settings.language, words), words)
    views = views_of(diary, diary.entries)
    prepared, picture_problems = _prepared(views, folders, keep)
    book = _book(diary, prepared, shower)
    problems = [*theme_problems, *picture_problems, *_text_problems(prepared, book, folders)]
    return theme, shower, prepared, book, problems


def _prepared(
    views: Sequence[EntryView], folders: Folders, keep: Keep
) -> tuple[tuple[PreparedEntry, ...], list[Problem]]:
    found, problems = [], []
    half_hours = clock_half_hours(night for view in views for night in view.nights)
    for view in views:
        pictures = []
        for picture in view.entry.pictures:
            made = _made_picture(view.entry, picture, folders, keep)
            if isinstance(made, Problem):
                problems.append(made)
            else:
                pictures.append(made)
        facts = facts_of(view)
        main = main_picture(pictures)
        card = card_of(view, facts, half_hours, picture_view(main) if main else None)
        found.append(PreparedEntry(view, facts, card, tuple(pictures)))
    return tuple(found), problems


def _made_picture(entry: Entry, picture: Picture, folders: Folders, keep: Keep) -> PreparedPicture | Problem:
    """Made once for the same file and wishes, whatever the file is called."""
    path = folders.content / picture.file
    settings = PictureSettings(stretch=dict(picture.stretch))
    try:
        _, made = keep.files("pictures", _picture_inputs(path, settings), lambda out: make_sizes(path, out, settings))
    except PictureProblem as wrong:
        return Problem(f"{folders.content}/{picture.file}", 1, 1, wrong.sentence, f"named by entries/{entry.slug}.md")
    return PreparedPicture(picture, made, addresses.picture(entry.slug, f"{_picture_name(picture)}/"))


def _picture_inputs(path: Path, settings: PictureSettings) -> tuple[str, str]:
    return hash_of_file(path), repr(settings)


def _picture_name(picture: Picture) -> str:
    stem, _, suffix = picture.file.rpartition("/")[2].rpartition(".")
    return addresses.slug_of(f"{stem}-{suffix}" if suffix.lower() not in ("jpg", "jpeg") else stem)


def _book(diary: Diary, prepared: Sequence[PreparedEntry], shower: Shower) -> SiteBook:
    sites = {slug: public_site(site, diary.settings.privacy) for slug, site in diary.sites.items()}
    return SiteBook(diary.settings, sites, diary.rigs, tuple(one.card for one in prepared), shower)


def _text_problems(prepared: Sequence[PreparedEntry], book: SiteBook, folders: Folders) -> Iterator[Problem]:
    for one in prepared:
        entry = one.view.entry
        path = f"{folders.content}/entries/{entry.slug}.md"
        for mistake in text_of(one, book).mistakes:
            yield Problem(path, entry.body_line + mistake.line, 1, mistake.wrong, mistake.remedy)


def _pages(prepared: Sequence[PreparedEntry], book: SiteBook) -> list[Page]:
    return [
        *(entry_page(one, book) for one in prepared),
        *night_pages(prepared, book),
        *(page for kind in PAGE_KINDS for page in kind.pages(book)),
    ]


def _data(prepared: Iterable[PreparedEntry]) -> Iterator[Artifact]:
    for one in prepared:
        slug = one.view.entry.slug
        yield Artifact.text(addresses.entry_facts(slug), json_text(one.facts))
        if one.view.lights:
            yield Artifact.text(addresses.entry_subs(slug), subs_ecsv(one.facts["subs"]))


def _feeds(prepared: Sequence[PreparedEntry], book: SiteBook) -> Iterator[Artifact]:
    link = partial(absolute, book)
    newest = {one.view.entry.slug: text_of(one, book, link).html for one in prepared[:NEWEST]}
    source = FeedSource(book, newest, {one.view.entry.slug: plain_text(one.view.entry.body) for one in prepared})
    for feed in FEEDS:
        artifact = feed.make(source)
        if artifact is not None:
            yield artifact


def json_text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, indent=1) + "\n"


def _picture_files(prepared: Iterable[PreparedEntry], folders: Folders, keep: Keep) -> Iterator[Artifact]:
    for one in prepared:
        for picture in one.pictures:
            path = folders.content / picture.picture.file
            settings = PictureSettings(stretch=dict(picture.picture.stretch))
            kept, made = keep.files("pictures", _picture_inputs(path, settings), _never)
            for file in made.files:
                yield Artifact(picture.folder + file.name, kept / file.name)


def _never(folder: Path) -> MadePicture:
    raise RuntimeError("a picture made a moment ago is gone")


def _static(theme: Theme, diary: Diary) -> Iterator[Artifact]:
    yield Artifact.text(addresses.static("passbands.css"), passband_css(diary.rigs))
    for name, content in theme.static_files():
        yield Artifact(addresses.static(name), content)
