"""The author's text with its markers answered from the entry's facts."""

from collections.abc import Callable, Iterable, Mapping
from functools import partial

from msgspec.structs import replace

from sitegen.diary import addresses
from sitegen.diary.rig import CautionKind
from sitegen.pages.card import EntryCard
from sitegen.pages.cautions_shown import CautionsSaid, Flags
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.registry import FIGURES
from sitegen.pages.fact_formatter import fact_value
from sitegen.pages.markdown_text import Rendered, Resolvers, to_html
from sitegen.pages.picture_cautions import kinds_above, kinds_by_name, main_kinds
from sitegen.pages.picture_view import picture_view
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.text_parts import CautionInText, FigureLink, NumberInText, PictureInText, TextParts
from sitegen.problems import hint_for

Link = Callable[[str], str]


def text_of(prepared: PreparedEntry, book: DiaryIndex, link: Link | None = None) -> Rendered:
    """The entry's body, as its page shows it; or, with a `link`, as feeds do. That turns an address of the site into what a href
    holds, relative to the entry's own page unless another is given (a feed's are absolute)."""
    flags = _flags(prepared, in_feed=link is not None)
    link = link or partial(addresses.relative, addresses.entry(prepared.view.entry.slug))
    return to_html(
        prepared.view.entry.body,
        Resolvers(
            entry_address=lambda name: _entry_address(name, link, book.by_slug),
            fact=lambda marker, words: _fact(marker, words, prepared, book),
            figure=lambda name, words: _figure(name, words, prepared),
        ),
        id_prefix="",
        flags=flags,
    )


def _flags(prepared: PreparedEntry, in_feed: bool) -> Flags:
    """The page has summary and picture above the text, with their cautions. A feed names the picture without a place, so that its
    cautions stand at the top of the text."""
    flags = replace(prepared.card.flags, pictures=kinds_by_name(prepared))
    if in_feed:
        return replace(flags, head=tuple(dict.fromkeys((*flags.head, *main_kinds(prepared)))))
    above = kinds_above(prepared)
    return replace(flags, head=tuple(kind for kind in flags.head if kind not in above), above=above)


def cautions_said(parts: TextParts, above: Iterable[CautionKind]) -> CautionsSaid:
    """What the page has said above the text and in it, for the sections that stand below."""
    return CautionsSaid((*above, *(part.caution for part in parts if isinstance(part, CautionInText))))


def _entry_address(name: str, link: Link, slugs: Mapping[str, EntryCard]) -> str | tuple[str, str]:
    slug = name.rpartition("/")[2].removesuffix(".md")
    if slug not in slugs:
        return f"the link leads to no listed entry: '{name}'", hint_for(slug, slugs)
    return link(addresses.entry(slug))


def _fact(marker: str, words: str, prepared: PreparedEntry, book: DiaryIndex) -> NumberInText | tuple[str, str]:
    try:
        path, value = fact_value(prepared.facts, marker)
        return NumberInText(book.formatter.show(path, value), words)
    except LookupError as missing:
        wrong, _, remedy = str(missing.args[0]).partition("; ")
        return f"{wrong} (fact:{marker})", remedy or f"the facts of this entry stand in its {addresses.ENTRY_FACTS}"


def _figure(name: str, words: str, prepared: PreparedEntry) -> FigureLink | PictureInText | tuple[str, str]:
    """A figure marker leads to the section that draws it; the picture's own name shows the picture again."""
    if name in FIGURES:
        return FigureLink(name, words or name)
    for picture in prepared.pictures:
        if picture.picture.file.rpartition("/")[2] == name:
            return PictureInText(picture_view(picture), words)
    names = [picture.picture.file.rpartition("/")[2] for picture in prepared.pictures]
    return f"no figure '{name}'", hint_for(name, [*FIGURES, *names])
