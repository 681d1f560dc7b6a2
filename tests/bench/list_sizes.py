"""How large the list pages of a diary of any size are, without building its entries.

    python tests/bench/list_sizes.py [--entries 5000] [--years 10] [--nights 5]

One entry's card, its ribbons included, stands for all: its nights lie three days apart, the entries are spread evenly over
the years, forty targets and ten topics, as in make_diary.py, with one rig and one site. Every list page is drawn; told are the
largest of each template, in elements and gzipped bytes, and how many pages miss a limit. As ribbons repeat, pages with many of
them weigh more in a real diary. Pages of entries and nights, which do not grow with the diary, and the search's files are not
made.
"""

import argparse
import gzip
import os
import random
import re
import sys
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

from msgspec.structs import replace as changed

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from sitegen.pages.card import EntryCard  # noqa: E402 # run as a script
from sitegen.pages.diary_index import DiaryIndex  # noqa: E402
from sitegen.pages.registry import PAGE_KINDS  # noqa: E402
from tests.bench.make_diary import TARGETS, TOPICS  # noqa: E402
from tests.pages.sample import layout_of, sample_book  # noqa: E402

FIRST = date(2012, 3, 1)
MOST_ELEMENTS, MOST_KB = 3000, 60.0
ELEMENT = re.compile(rb"<[a-z]")


def book_of(entries: int, years: int, nights: int) -> DiaryIndex:
    plain = sample_book()
    cards = tuple(card_of(plain.cards[0], number, entries, years, nights) for number in reversed(range(entries)))
    return replace(plain, cards=cards)


def card_of(card: EntryCard, number: int, entries: int, years: int, nights: int) -> EntryCard:
    slug, first = f"night-work-{number:05d}", FIRST + timedelta(days=number * 365 * years // entries)
    evenings = [first + timedelta(days=3 * night) for night in range(nights)]
    nights_of_card = [card.nights[place % len(card.nights)] for place in range(nights)]
    of_nights = tuple(
        changed(night, evening=day, entry=slug, thread=thread_of(number * nights + place))
        for place, (night, day) in enumerate(zip(nights_of_card, evenings, strict=True))
    )
    name = TARGETS[number % len(TARGETS)]
    return changed(
        card,
        slug=slug,
        title=f"Night work {number}, {name}",
        published=evenings[-1] + timedelta(days=2),
        stage="finished",
        summary="The night began clear and ended in thin cloud while the mount kept its place.",
        targets=(changed(card.targets[0], slug=name.lower().replace(" ", "-"), name=name),),
        topics=tuple(sorted({TOPICS[number % 10], TOPICS[number // 7 % 10]})),
        nights=of_nights,
    )


def thread_of(number: int) -> tuple[float, float]:
    """Begun and ended at a time of its own, so that drawings of years weigh what they would."""
    chance = random.Random(number)
    return round(chance.uniform(25, 50), 2), round(chance.uniform(52, 75), 2)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    for name, usual in (("entries", 5000), ("years", 10), ("nights", 5)):
        parser.add_argument(f"--{name}", type=int, default=usual)
    options = parser.parse_args()
    layout, book = layout_of("default", "en", book_of(options.entries, options.years, options.nights))
    largest: dict[str, tuple[int, float, str]] = {}
    pages = too_large = 0
    for kind in PAGE_KINDS:
        for page in kind.pages(book):
            html = layout.draw(page).encode("utf-8")
            size = len(ELEMENT.findall(html)), len(gzip.compress(html, 9)) / 1000, page.address
            largest[page.template] = max(largest.get(page.template, size), size)
            pages += 1
            too_large += size[0] > MOST_ELEMENTS or size[1] > MOST_KB
    for template, (elements, kilobytes, address) in sorted(largest.items(), key=lambda item: item[1], reverse=True):
        print(f"{template:18} {elements:6} elements {kilobytes:6.1f} kB gzipped  {address}")
    print(f"{too_large} of {pages} pages beyond {MOST_ELEMENTS} elements or {MOST_KB:.0f} kB; "
          f"load of the machine: {', '.join(f'{load:.1f}' for load in os.getloadavg())}")  # fmt: skip


if __name__ == "__main__":
    main()
