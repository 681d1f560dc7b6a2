"""One page a night: all that was done in it, its Moon, its hours."""

from collections.abc import Iterable
from datetime import date
from operator import attrgetter
from typing import Any
from zoneinfo import ZoneInfo

from sitegen.cautions.sources import of_night
from sitegen.diary import addresses
from sitegen.facts.places import places_in
from sitegen.facts.registry import ConditionsFacts, NightFacts, PolarFacts
from sitegen.pages.card import EntryCard
from sitegen.pages.cautions_shown import CautionsSaid
from sitegen.pages.counted_light import light_totals
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.entry_sections.nights import advice_words, large_ribbon
from sitegen.pages.entry_sections.where import OF_BODY
from sitegen.pages.fact_formatter import Shown
from sitegen.pages.list_facts import list_facts
from sitegen.pages.page import EntryPageKind, Page
from sitegen.pages.prepared import PreparedEntry

CONDITION_KEYS = tuple(f"conditions.{field}" for field in ConditionsFacts.__struct_fields__)
POLAR_KEYS = tuple(f"polar.{field}" for field in PolarFacts.__struct_fields__)
BODY_KEYS = tuple(f"target.{key}" for key in OF_BODY)


def night_pages(prepared: Iterable[PreparedEntry], book: DiaryIndex) -> Iterable[Page]:
    """Every night of the named entries. Nights shared with another entry must come with all their entries."""
    evenings = sorted(book.by_evening)
    position = {evening: index for index, evening in enumerate(evenings)}
    parts: dict[date, list[dict[str, Any]]] = {}
    cards: dict[date, dict[str, EntryCard]] = {}
    for entry in prepared:
        for index, night in enumerate(entry.view.nights):
            parts.setdefault(night.evening, []).append(_part(entry, index, book))
            cards.setdefault(night.evening, {})[entry.card.slug] = entry.card
    for evening, parts_of_night in sorted(parts.items()):
        place = position[evening]
        totals = light_totals((evening, part["card"].light) for part in parts_of_night)
        yield Page(
            addresses.night(evening),
            "night.html",
            book.formatter.words.say("night.title", day=book.formatter.numbers.day(evening)),
            {
                "evening": evening,
                "parts_of_night": parts_of_night,
                "total_s": totals.total_s,
                "shared_s": totals.shared_s,
                "earlier": evenings[place - 1] if place else None,
                "later": evenings[place + 1] if place + 1 < len(evenings) else None,
            },
            chapter="nights",
            facts=list_facts("nights", evening.isoformat(), cards[evening].values(), totals, [evening]),
        )


def _part(prepared: PreparedEntry, index: int, book: DiaryIndex) -> dict[str, Any]:
    night, card = prepared.view.nights[index], prepared.card.nights[index]
    zone, page = ZoneInfo(night.site.time_zone), CautionsSaid()
    large = large_ribbon(night, card, prepared, book)
    return {
        "entry": (prepared.card.slug, prepared.card.title),
        "site": (night.site.slug, night.site.name),
        "card": card,
        "large": large,
        "cautions_of_ribbon": page.shown(large.cautions) if large else (),
        "advice": advice_words(card, book),
        "note": night.note,
        "cautions": page.shown(of_night(night.note)) if night.note else (),
        "integration_s": card.integration_s,
        "facts": _facts(prepared.facts.nights[index], zone, book),
        "zone": night.site.time_zone,
    }


def _facts(night: NightFacts, zone: ZoneInfo, book: DiaryIndex) -> list[Shown]:
    """What only moving targets have is left out of the others' nights, and so is what nobody noted or read."""
    evening = date.fromisoformat(night.evening_of)
    skipped = ["evening_of", "site", *(BODY_KEYS if night.target.positions_from is None else ())]
    skipped += POLAR_KEYS if night.polar.error_arcmin is None else ()
    skipped += [key for key in CONDITION_KEYS if attrgetter(key)(night) is None]
    wanted = (place for place in places_in(NightFacts) if place.key not in skipped)
    return [book.formatter.show(place.path, attrgetter(place.attribute)(night), zone, evening) for place in wanted]


def _addresses(book: DiaryIndex) -> list[str]:
    return [addresses.night(evening) for evening in book.by_evening]


KIND = EntryPageKind(name="nights", pages=night_pages, addresses=_addresses, has_facts=True)
