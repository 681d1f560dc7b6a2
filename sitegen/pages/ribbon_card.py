"""A night's ribbon as a drawing that brings its own colours and holds no text: for the card that stands beside a link."""

from collections.abc import Iterator

from sitegen.charts.filter_colour import colour_of, sign_of
from sitegen.pages.lanes import Lane
from sitegen.pages.ribbon import Ribbon

WIDTH, SKY, LANE = 1200, 72, 24
GROUND = ("#23221f", "#7d5c44", "#3d4457", "#232a3a", "#0a0c11")  # the dusk lamp's, from day to dark
MOON, TARGET, BED = "#dfe6f2", "#f1ede2", "#05060a"
OF_LANE = 0.34  # of the height, kept free above and below the subs


def ribbon_svg(ribbon: Ribbon) -> str:
    """SVG of 1200 × 96: the night above, all its subs in one lane below, discarded ones hollow."""
    height = SKY + LANE
    stops = "".join(f'<stop offset="{stop.share}" stop-color="{GROUND[stop.depth]}"/>' for stop in ribbon.ground)
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDTH}" height="{height}" viewBox="0 0 {WIDTH} {height}">',
        f'<linearGradient id="g" gradientUnits="userSpaceOnUse" x1="0" y1="0" x2="{WIDTH}" y2="0">{stops}</linearGradient>',
        f'<rect width="{WIDTH}" height="{height}" fill="{BED}"/><rect width="{WIDTH}" height="{SKY}" fill="url(#g)"/>',
        f'<path d="{_scaled(ribbon.moon)}" fill="{MOON}" fill-opacity="{ribbon.moon_strength}"/>' if ribbon.moon else "",
        f'<path d="{_scaled(ribbon.target)}" fill="none" stroke="{TARGET}" stroke-width="2.5"/>' if ribbon.target else "",
        *(mark for lane in ribbon.lanes for mark in _blocks(lane)),
        "</svg>",
    ]
    return "\n".join(part for part in parts if part)


def _scaled(path: str) -> str:
    """Path data in percents (M, L, V, H, Z as ribbon.py writes them) in the drawing's own units."""
    return "".join(f"M{_run(run)}" for run in path.split("M") if run)


def _run(run: str) -> str:
    line, _, closing = run.partition("V")
    points = " ".join(_point(x, y) for x, y in _pairs(line.replace("L", " ").split()))
    return f"{points}V{SKY}H{_across(closing.partition('H')[2].rstrip('Z'))}Z" if closing else points


def _pairs(numbers: list[str]) -> Iterator[tuple[str, str]]:
    return zip(numbers[::2], numbers[1::2], strict=True)


def _point(x: str, y: str) -> str:
    return f"{_across(x)} {float(y) * SKY / 100:.1f}"


def _across(x: str | float) -> str:
    return f"{float(x) * WIDTH / 100:.1f}"


def _blocks(lane: Lane) -> Iterator[str]:
    signs = sign_of(lane.bands, SKY + LANE * OF_LANE / 2, LANE * (1 - OF_LANE))
    for block in lane.blocks:
        for part in signs:
            colour = colour_of(part.band)
            paint = f'fill="{colour}"' if block.kept else f'fill="none" stroke="{colour}"'
            box = f'x="{_across(block.x)}" y="{part.y:.1f}" width="{_across(block.width)}" height="{part.height:.1f}"'
            yield f"<rect {box} {paint}/>"
