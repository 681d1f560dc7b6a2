"""Where names find room on a map: one after the other, none over another."""

from collections.abc import Iterable

from msgspec import Struct, field

from sitegen.charts.house_style import TEXT

LETTER, HEIGHT = 0.63 * TEXT, 1.15 * TEXT  # a letter of a wide face, so that no reader's own face runs over
SQUARE, EMOJI = 1.0 * TEXT, 1.3 * TEXT  # emoji of some systems run over their square
WIDE = (
    (0x1100, 0x115F, SQUARE), (0x2E80, 0xA4CF, SQUARE), (0xAC00, 0xD7A3, SQUARE), (0xF900, 0xFAFF, SQUARE),
    (0xFE30, 0xFE6F, SQUARE), (0xFF00, 0xFF60, SQUARE), (0xFFE0, 0xFFE6, SQUARE), (0x1F000, 0x1FAFF, EMOJI),
    (0x20000, 0x3FFFF, SQUARE),
)  # fmt: skip
"""First and last letter of the blocks that are wide (Unicode Standard Annex 11, East Asian Width), and their width. Written
out, since the tables of Python's versions differ and a chart may not."""
Box = tuple[float, float, float, float]


class Lettering(Struct):
    """Boxes (left, bottom, right, top) in units that are taken; names stay within `edge`."""

    edge: Box
    taken: list[Box] = field(default_factory=list)

    def keep_clear(self, x: float, y: float, radius: float) -> None:
        self.taken.append((x - radius, y - radius, x + radius, y + radius))

    def find(self, x: float, y: float, text: str, gap: float) -> tuple[float, float, str] | None:
        """(x, y, 'left' | 'right' | 'center') of a free place beside a mark with that gap, None where there is none."""
        places = (
            (x + gap, y, "left"), (x - gap, y, "right"), (x, y - gap - HEIGHT / 2, "center"), (x, y + gap + HEIGHT / 2, "center"),
            (x + 0.7 * gap, y - gap, "left"), (x - 0.7 * gap, y - gap, "right"),
            (x + 0.7 * gap, y + gap, "left"), (x - 0.7 * gap, y + gap, "right"),
        )  # fmt: skip
        return self.first_free(places, text)

    def first_free(self, places: Iterable[tuple[float, float, str]], text: str) -> tuple[float, float, str] | None:
        for place in places:
            box = box_of(*place, text)
            if self._free(box):
                self.taken.append(box)
                return place
        return None

    def _free(self, box: Box) -> bool:
        left, bottom, right, top = self.edge
        inside = left <= box[0] and bottom <= box[1] and box[2] <= right and box[3] <= top
        return inside and not any(
            box[0] < other[2] and other[0] < box[2] and box[1] < other[3] and other[1] < box[3] for other in self.taken
        )


def width_of(text: str) -> float:
    """Units that a line takes in the house's size, at most, whatever face the reader has; without any font's measures."""
    return sum(map(_width, text))


def _width(letter: str) -> float:
    return next((width for first, last, width in WIDE if first <= ord(letter) <= last), LETTER)


def box_of(x: float, y: float, side: str, text: str) -> Box:
    width = width_of(text)
    left = x - {"left": 0.0, "center": width / 2, "right": width}[side]
    return left, y - HEIGHT / 2, left + width, y + HEIGHT / 2
