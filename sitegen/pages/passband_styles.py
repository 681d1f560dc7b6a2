"""The stylesheet of the filters' colours: each passband in its own, on night ground in every lamp."""

from collections.abc import Callable, Mapping

from sitegen.charts.filter_colour import colour_of, passbands_of, red_of
from sitegen.diary.rig import Rig


def passband_css(rigs: Mapping[str, Rig]) -> str:
    """Rules `.nm656-line` for every passband of the diary's filters, and `.nm` for what has no hue."""
    bands = sorted({band for rig in rigs.values() for rig_filter in rig.filters.values() for band in passbands_of(rig_filter)})
    rules = "".join(f".nm{band}{{fill:var(--nm{band});stroke:var(--nm{band});stroke-width:0}}\n" for band in ["", *bands])
    return (
        f":root{{{_colours(bands, colour_of)}}}\n"
        f':root[data-lamp="red"],:root:has(#lamp-red:checked){{{_colours(bands, red_of)}}}\n'
        f"{rules}path.gone{{fill:none;stroke-width:1px}}\n"
    )


def _colours(bands: list[str], colour: Callable[[str], str]) -> str:
    return "".join(f"--nm{band}:{colour(band)};" for band in ["", *bands])
