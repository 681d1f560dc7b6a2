"""Every section of an entry's page: a new one is a file, its place in `entry.html`, and a line here."""

from sitegen.pages.entry_sections import gathered, mosaic, nights, quality, recalled, since, stars, taught, train, where
from sitegen.pages.entry_sections.section import EntrySection

SECTIONS: tuple[EntrySection, ...] = (
    gathered.SECTION,
    mosaic.SECTION,
    recalled.SECTION,
    nights.SECTION,
    quality.SECTION,
    where.SECTION,
    train.SECTION,
    since.SECTION,
    stars.SECTION,
    taught.SECTION,
)

FIGURES = tuple(section.figure for section in SECTIONS if section.figure)
"""Names to which the author's text can lead, in the order of the page."""
