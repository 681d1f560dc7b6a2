"""The one place where an address of the published site is spelt.

Addresses are relative to the site's root, POSIX, and end in '/' where they name a page in a folder of its own.
"""

import re
import unicodedata
from datetime import date
from hashlib import sha256

INDEX = ""
SKY = "sky/"
TOTALS = "totals/"
LESSONS = "lessons/"
SEARCH = "search/"
EXPLAINED = "explained/"
CREDITS = "credits/"
NIGHTS = "nights/"
TARGETS = "targets/"
RIGS = "rigs/"
SITES = "sites/"
TOPICS = "topics/"
YEARS = "years/"
ENTRIES = "entries/"
OUTLOOK = "outlook/"
NOT_FOUND = "404.html"
ATOM = "atom.xml"
JSON_FEED = "feed.json"
SITEMAP = "sitemap.xml"
ROBOTS = "robots.txt"
FACTS_SCHEMA = "facts.schema.json"
LIST_FACTS_SCHEMA = "list-facts.schema.json"
_SPELT = [text for name, text in tuple(globals().items()) if name.isupper() and isinstance(text, str)]
"""All that stands above: a new page or feed is one line there, and `may_be_ours` knows it."""
LOOK = "look/"
CARD_PICTURE = "card.jpg"
DEVICE_NAMES = frozenset({"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10))})
"""No file or folder can have one of these names on Windows (Microsoft, *Naming Files, Paths, and Namespaces*)."""
ENTRY_FACTS = "facts.json"
ENTRY_SUBS = "subs.ecsv"
PICTURES = "pictures/"
SEARCH_INDEX = f"{LOOK}search-index.js"
LANDMARKS = (FACTS_SCHEMA, SEARCH_INDEX, f"{EXPLAINED}index.html")
"""A folder that holds all of these was once published by sitegen, whatever record of that is lost."""


def entry(slug: str) -> str:
    return f"{ENTRIES}{slug}/"


def entry_facts(slug: str) -> str:
    return f"{entry(slug)}{ENTRY_FACTS}"


def list_facts(page: str) -> str:
    """The numbers of a list page, beside it."""
    return f"{page}facts.json"


def search_part(name: str) -> str:
    """A part of the search index, which the search page fetches when it is asked for."""
    return f"{LOOK}search/{name}.js"


def entry_subs(slug: str) -> str:
    return f"{entry(slug)}{ENTRY_SUBS}"


def entry_card_picture(slug: str) -> str:
    return f"{entry(slug)}{CARD_PICTURE}"


def picture(slug: str, name: str) -> str:
    """A file made from one of the entry's pictures."""
    return f"{entry(slug)}{PICTURES}{name}"


def target(slug: str) -> str:
    return f"{TARGETS}{slug}/"


def rig(slug: str) -> str:
    return f"{RIGS}{slug}/"


def site(slug: str) -> str:
    return f"{SITES}{slug}/"


def topic(slug: str) -> str:
    return f"{TOPICS}{slug}/"


def year(number: int) -> str:
    return f"{YEARS}{number:04d}/"


def month(day: date) -> str:
    """The nights of that day's month, and the entries published in it."""
    return f"{year(day.year)}{day.month:02d}/"


def in_year(page: str, number: int) -> str:
    """What belongs to one year of a page that would grow without bound."""
    return f"{page}{number:04d}/"


def night(evening: date) -> str:
    return f"{NIGHTS}{evening.isoformat()}/"


def explained(path: str) -> str:
    """Where one computed number is explained; `path` as in facts.json, 'nights.moon.illuminated'."""
    return f"{EXPLAINED}#{explained_anchor(path)}"


def explained_anchor(path: str) -> str:
    return "fact-" + path.replace(".", "-").replace("_", "-")


def look(name: str) -> str:
    """A file of the theme's folder look/, or one that the site adds to it."""
    return f"{LOOK}{name}"


_PAGES = frozenset(text for text in _SPELT if text.endswith("/"))
_ROOT_FILES = frozenset(text or "index.html" for text in _SPELT if not text.endswith("/"))
_BESIDE_LISTS = ("index.html", ENTRY_FACTS)
_BESIDE_ENTRIES = ("index.html", ENTRY_FACTS, ENTRY_SUBS, CARD_PICTURE)


def may_be_ours(path: str) -> bool:
    """Whether the site may have this file, by its path alone. A film that the author laid into an entry's folder is none."""
    folder, _, below = path.partition("/")
    if path in _ROOT_FILES or f"{folder}/" in (LOOK, SKY):
        return True
    if f"{folder}/" == ENTRIES and below:
        _, _, file = below.partition("/")
        return file in _BESIDE_ENTRIES or file.startswith(PICTURES) or below == "index.html"
    name, _, file = below.rpartition("/")
    _, _, part = name.partition("/")
    return f"{folder}/" in _PAGES and file in _BESIDE_LISTS and (not part or part.isdecimal())


def file_of(address: str) -> str:
    """The file that a web server gives for an address."""
    path = address.partition("#")[0]
    return f"{path}index.html" if path == "" or path.endswith("/") else path


def relative(here: str, there: str) -> str:
    """The link from page `here` to `there`, naming index.html so that it works from disk."""
    path, hash_sign, anchor = there.partition("#")
    start, end = file_of(here).split("/")[:-1], file_of(path).split("/")
    shared = 0
    while shared < len(start) and shared < len(end) - 1 and start[shared] == end[shared]:
        shared += 1
    return "/".join([*[".."] * (len(start) - shared), *end[shared:]]) + hash_sign + anchor


HASH_DIGITS = 6
MOST_LATIN = 0x2FFF
"""Beyond lie the scripts and signs (emoji, ideographs) that may make up a name without a letter."""


def slug_of(text: str) -> str:
    """Lower-case ASCII letters, digits and hyphens: 'NGC 6744' -> 'ngc-6744'. 'Hα' loses what has no ASCII form.

    A name of which no letter is left, as in Cyrillic or Chinese, gets a short hash of itself, so that two such names are two
    pages. 'con' becomes 'con-x', as Windows has no folder of that name.
    """
    plain = unicodedata.normalize("NFKD", text.replace("+", " plus "))
    slug = re.sub(r"[^a-z0-9]+", "-", plain.encode("ascii", "ignore").decode().lower()).strip("-")
    if not re.search("[a-z]", slug) and any(letter.isalpha() or ord(letter) > MOST_LATIN for letter in plain):
        return f"{slug or 'x'}-{sha256(plain.casefold().encode('utf-8')).hexdigest()[:HASH_DIGITS]}"
    return f"{slug}-x" if slug in DEVICE_NAMES else slug or "x"
