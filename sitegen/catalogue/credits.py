"""Whose data the program uses and under which licence: the site's credits page prints this, SOURCES.md explains it."""

from msgspec import Struct


class Credit(Struct, frozen=True):
    """One data set."""

    name: str
    used_for: str
    licence: str  # as its authors put it
    spdx: str  # its SPDX identifier, or 'NONE' for facts that no licence covers
    origin: str  # where to find it


CREDITS: tuple[Credit, ...] = (
    Credit(
        name="OpenNGC",
        used_for="positions, kinds, sizes and brightness of Messier, Caldwell, NGC and IC objects",
        licence="Creative Commons Attribution-ShareAlike 4.0",
        spdx="CC-BY-SA-4.0",
        origin="https://github.com/mattiaverga/OpenNGC",
    ),
    Credit(
        name="Open data of d3-celestial",
        used_for="dark, bright and planetary nebulae of other lists, common names, constellation figures, the Milky Way",
        licence="BSD 3-Clause; copyright 2015 Olaf Frohn",
        spdx="BSD-3-Clause",
        origin="https://github.com/ofrohn/d3-celestial",
    ),
    Credit(
        name="Gaia Data Release 3",
        used_for=(
            "stars to G = 10 in charts and plate solutions; ESA's Gaia mission, processed by its DPAC; "
            "the brightest from Hipparcos"
        ),
        licence="Creative Commons Attribution-ShareAlike 3.0 IGO",
        spdx="CC-BY-SA-3.0-IGO",
        origin="https://www.cosmos.esa.int/gaia",
    ),
    Credit(
        name="Tycho-2 Catalogue",
        used_for="stars beyond G = 10 in plate solutions; Høg et al. 2000, as packaged by Debian",
        licence="BSD 2-Clause; copyright 2000 E. Høg and the catalogue's authors",
        spdx="BSD-2-Clause",
        origin="https://cdsarc.cds.unistra.fr/viz-bin/cat/I/259",
    ),
    Credit(
        name="Constellation boundaries of Roman (1987)",
        used_for="the constellation of each object; as carried by astropy",
        licence="BSD 3-Clause (astropy)",
        spdx="BSD-3-Clause",
        origin="https://cdsarc.cds.unistra.fr/viz-bin/cat/VI/42",
    ),
    Credit(
        name="Tables of the IERS",
        used_for="the Earth's rotation and leap seconds; as carried by astropy-iers-data",
        licence="BSD 3-Clause (astropy-iers-data)",
        spdx="BSD-3-Clause",
        origin="https://www.iers.org/",
    ),
    Credit(
        name="IANA time zone database",
        used_for="the local clocks of places; as carried by tzdata",
        licence="public domain; packaged under Apache-2.0",
        spdx="Apache-2.0",
        origin="https://www.iana.org/time-zones",
    ),
    Credit(
        name="Positions compiled for this program",
        used_for="extents and names of large nebulae, and a few objects that no table above has",
        licence="facts; see the catalogue's SOURCES.md",
        spdx="NONE",
        origin="sitegen/catalogue/SOURCES.md",
    ),
)
