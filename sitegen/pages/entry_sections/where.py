"""Where it lies: the target's place on the sky, and how large it is in the field."""

from dataclasses import dataclass

from sitegen.diary.target import Target
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.shown import Shown
from sitegen.pages.site_book import SiteBook

ROWS = ("ra_deg", "dec_deg", "constellation", "kind", "size_arcmin", "magnitude")


@dataclass(frozen=True, slots=True)
class Place:
    target: Target
    rows: tuple[Shown, ...]


@dataclass(frozen=True, slots=True)
class Where:
    places: tuple[Place, ...]


def section(prepared: PreparedEntry, book: SiteBook) -> Where | None:
    targets = prepared.view.entry.targets
    return Where(tuple(place_of(target, book) for target in targets)) if targets else None


def place_of(target: Target, book: SiteBook) -> Place:
    values = {
        "ra_deg": target.ra_deg,
        "dec_deg": target.dec_deg,
        "constellation": target.constellation,
        "kind": target.kind,
        "size_arcmin": list(target.size_arcmin) if target.size_arcmin else None,
        "magnitude": target.magnitude,
    }
    rows = tuple(book.shower.show(f"target.{key}", values[key]) for key in ROWS if values[key] is not None)
    return Place(target, rows)
