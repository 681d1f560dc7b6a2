"""Where names find room on a map: one after the other, none over another."""

from collections.abc import Iterable

from msgspec import Struct, field

from sitegen.charts.house_style import TEXT

LETTER, HEIGHT = 0.63 * TEXT, 1.15 * TEXT  # a letter of a wide face, so that no reader's own face runs over
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


def box_of(x: float, y: float, side: str, text: str) -> Box:
    width = LETTER * len(text)
    left = x - {"left": 0.0, "center": width / 2, "right": width}[side]
    return left, y - HEIGHT / 2, left + width, y + HEIGHT / 2
