"""Diaries that differ only in what nobody may learn."""

from dataclasses import replace
from random import Random

from tests.trust.tiny import Wishes

CARDS = "SITELAT SITELONG SITEELEV OBSGEO-B OBSGEO-L OBSGEO-H LAT-OBS LONG-OBS ALT-OBS GPS_LAT OBSLAT".split()
WORDS = "OBSERVER AUTHOR OWNER HOSTNAME SERIALNO CAMSN SITENAME PATH SWOWNER USERNAME COMMENT HISTORY".split()
CELL_DEG, CELL_M = 0.1, 100.0
MIDDLE = Wishes(latitude=-36.8, longitude=174.8, elevation=100.0)


def word(chance: Random) -> str:
    return "".join(chance.choice("abcdefghijkmnopqrstuvwxyz/ ") for _ in range(chance.randint(3, 24))).strip() or "a"


def header(chance: Random) -> dict[str, str | float]:
    """Private keywords, some of them, in any order."""
    numbers = {card: chance.uniform(-90, 90) for card in chance.sample(CARDS, chance.randint(0, len(CARDS)))}
    return {**numbers, **{card: word(chance) for card in chance.sample(WORDS, chance.randint(0, len(WORDS)))}}


def neighbour(chance: Random) -> Wishes:
    """Somewhere in the same rounding cell, elevation included; with other private keywords, EXIF and owners."""
    inside = 0.499
    return replace(
        MIDDLE,
        latitude=MIDDLE.latitude + chance.uniform(-inside, inside) * CELL_DEG,
        longitude=MIDDLE.longitude + chance.uniform(-inside, inside) * CELL_DEG,
        elevation=MIDDLE.elevation + chance.uniform(-inside, inside) * CELL_M,
        owner=word(chance),
        header=header(chance),
        backwards=chance.random() < 0.5,
    )


def hidden(chance: Random) -> Wishes:
    """Anywhere in the country whose clocks the diary keeps, its position hidden."""
    return replace(
        neighbour(chance), position="hidden", latitude=chance.uniform(-46, -35), longitude=chance.uniform(168, 178),
        elevation=chance.uniform(0, 2000),
    )  # fmt: skip
