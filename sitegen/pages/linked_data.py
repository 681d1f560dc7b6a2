"""JSON-LD of an entry, in schema.org's words: the posting, its pictures, and its log as a data set."""

import json
from typing import Any

from sitegen.diary import addresses
from sitegen.facts.registry import SubFacts
from sitegen.pages.card import EntryCard
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.picture_element import PictureView
from sitegen.pages.picture_words import alt_words
from sitegen.pages.prepared import PreparedEntry

CONTEXT = "https://schema.org"


def entry_linked_data(prepared: PreparedEntry, book: DiaryIndex, main: PictureView | None) -> str:
    """One script's content: a graph of BlogPosting, ImageObject and Dataset, safe inside HTML."""
    card = prepared.card
    graph = [_posting(card, book, main)]
    if main is not None:
        graph.append(_picture(main, card, book))
    if prepared.view.lights:
        graph.append(_log(prepared, book))
    text = json.dumps({"@context": CONTEXT, "@graph": graph}, ensure_ascii=False)
    return text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")


def _url(book: DiaryIndex, card: EntryCard, address: str) -> str:
    """Absolute where the diary has an address, else relative to the entry's page, which a reader resolves all the same."""
    root = book.settings.address
    return f"{root.rstrip('/')}/{address}" if root else addresses.relative(addresses.entry(card.slug), address)


def _author(book: DiaryIndex) -> dict[str, Any]:
    return {"@type": "Person", "name": book.settings.author or book.settings.title}


def _posting(card: EntryCard, book: DiaryIndex, main: PictureView | None) -> dict[str, Any]:
    posting: dict[str, Any] = {
        "@type": "BlogPosting",
        "@id": _url(book, card, addresses.entry(card.slug)),
        "headline": card.title,
        "datePublished": str(card.published),
        "dateModified": str(card.last_change),
        "inLanguage": book.settings.language,
        "author": _author(book),
        "mainEntityOfPage": _url(book, card, addresses.entry(card.slug)),
    }
    if card.summary:
        posting["abstract"] = card.summary
    if card.topics:
        posting["keywords"] = list(card.topics)
    if card.targets:
        posting["about"] = [
            {"@type": "Thing", "name": target.name, "alternateName": list(target.aliases)} for target in card.targets
        ]
    if main is not None:
        posting["image"] = {"@id": _url(book, card, main.full)}
    return posting


def _picture(main: PictureView, card: EntryCard, book: DiaryIndex) -> dict[str, Any]:
    image: dict[str, Any] = {
        "@type": "ImageObject",
        "@id": _url(book, card, main.full),
        "contentUrl": _url(book, card, main.full),
        "caption": alt_words(main, book.formatter.words),
        "genre": main.type,
        "width": main.width_px,
        "height": main.height_px,
        "creator": _author(book),
        "creditText": book.settings.author or book.settings.title,
    }
    if book.settings.licence:
        image["license"] = licence_address(book.settings.licence)
    return image


def _log(prepared: PreparedEntry, book: DiaryIndex) -> dict[str, Any]:
    """The subs as a data set: what was measured, when, and where to fetch it. No licence: the diary's is that of its pictures."""
    card, lights = prepared.card, prepared.view.lights
    first, last = lights[0].sub.start, max(light.sub.end for light in lights)
    words, nights = book.formatter.words, {night.evening for night in card.nights}
    description = words.say(
        "data.description", subs=words.count("data.subs", len(lights)), of_nights=words.count("data.of_nights", len(nights)),
        title=card.title, total=_total(card, book),
    )  # fmt: skip
    data_set: dict[str, Any] = {
        "@type": "Dataset",
        "name": book.formatter.words.say("data.name", title=card.title),
        "description": description,
        "creator": _author(book),
        "temporalCoverage": f"{first:%Y-%m-%dT%H:%M:%SZ}/{last:%Y-%m-%dT%H:%M:%SZ}",
        "variableMeasured": list(SubFacts.__struct_fields__),
        "distribution": [
            {"@type": "DataDownload", "encodingFormat": kind, "contentUrl": _url(book, card, address)}
            for kind, address in (
                ("application/json", addresses.entry_facts(card.slug)),
                ("text/x-ecsv", addresses.entry_subs(card.slug)),
            )
        ],
    }
    return data_set


def _total(card: EntryCard, book: DiaryIndex) -> str:
    return book.formatter.numbers.duration(card.integration.total_s)


def licence_address(licence: str) -> str:
    """The public page of a Creative Commons SPDX id; any other licence as it was written."""
    name, _, version = licence.removeprefix("CC-").lower().rpartition("-")
    if licence.upper().startswith("CC-BY") and version.replace(".", "").isdigit():
        return f"https://creativecommons.org/licenses/{name}/{version}/"
    if licence.upper() == "CC0-1.0":
        return "https://creativecommons.org/publicdomain/zero/1.0/"
    return licence
