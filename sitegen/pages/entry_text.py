"""The author's text with its markers answered from the entry's facts."""

from collections.abc import Callable, Mapping
from functools import partial

from markupsafe import escape

from sitegen.diary import addresses
from sitegen.pages.card import EntryCard
from sitegen.pages.markdown_text import Rendered, Resolvers, to_html
from sitegen.pages.picture_view import PreparedPicture, picture_view
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.shown import fact_value
from sitegen.pages.site_book import SiteBook
from sitegen.problems import hint_for

FIGURES = ("light-gathered", "nights", "where", "train", "stars")


Link = Callable[[str], str]


def text_of(prepared: PreparedEntry, book: SiteBook, link: Link | None = None) -> Rendered:
    """HTML of the entry's body. `link` turns an address of the site into what a href holds: relative to the entry's own
    page unless another is given (a feed's are absolute)."""
    link = link or partial(addresses.relative, addresses.entry(prepared.view.entry.slug))
    return to_html(
        prepared.view.entry.body,
        Resolvers(
            entry_address=lambda name: _entry_address(name, link, book.by_slug),
            fact_html=lambda marker, words: _fact_html(marker, words, prepared, book, link),
            figure_html=lambda name, words: _figure_html(name, words, prepared, link),
        ),
        id_prefix="",
    )


def _entry_address(name: str, link: Link, slugs: Mapping[str, EntryCard]) -> str | tuple[str, str]:
    slug = name.rpartition("/")[2].removesuffix(".md")
    if slug not in slugs:
        return f"the link leads to no listed entry: '{name}'", hint_for(slug, slugs)
    return link(addresses.entry(slug))


def _fact_html(
    marker: str, words: str, prepared: PreparedEntry, book: SiteBook, link: Link
) -> str | tuple[str, str]:
    try:
        path, value = fact_value(prepared.facts, marker)
        shown = book.shower.show(path, value)
    except LookupError as missing:
        wrong, _, remedy = str(missing.args[0]).partition("; ")
        return f"{wrong} (fact:{marker})", remedy or "the facts of this entry stand in its facts.json"
    address = link(addresses.explained(shown.path))
    number = f'<a class="n" href="{escape(address)}" title="{escape(shown.how)}">{escape(shown.text)}</a>'
    if not words:
        return number
    title = escape(shown.title)
    return f'<span class="told">{escape(words)}</span><span class="beside" role="note">{title}: {number}</span>'


def _figure_html(name: str, words: str, prepared: PreparedEntry, link: Link) -> str | tuple[str, str]:
    """A figure marker leads to the section that draws it; the picture's own name shows the picture again."""
    if name in FIGURES:
        return f'<a class="figure-link" href="#{escape(name)}">{escape(words or name)}</a>'
    for one in prepared.pictures:
        if one.picture.file.rpartition("/")[2] == name:
            return _inline_picture(one, words, link)
    names = [one.picture.file.rpartition("/")[2] for one in prepared.pictures]
    return f"no figure '{name}'", hint_for(name, [*FIGURES, *names])


def _inline_picture(one: PreparedPicture, caption: str, link: Link) -> str:
    view = picture_view(one)
    source = link(view.fallback)
    figcaption = f'<span class="caption">{escape(caption)}</span>' if caption else ""
    return (
        f'<span class="in-text"><span class="lit"><img src="{escape(source)}" alt="{escape(view.alt)}" width="{view.width_px}"'
        f' height="{view.height_px}" loading="lazy"></span>{figcaption}</span>'
    )
