"""The stylesheet of the filters' colours: each passband in its own light, once for every lamp."""

from collections.abc import Mapping

from sitegen.diary.rig import Rig
from sitegen.pages.card import passbands_of
from sitegen.sky.wavelength_colour import filter_colour

# lightness and chroma (OKLCH) of a mark on each lamp's ground; the red lamp shows lightness only
PAPER, DUSK = (0.52, 0.15), (0.76, 0.13)
NO_HUE = {"paper": "#6b665c", "dusk": "#b9b5ab", "red": "#b81c00"}
RED_STEPS = ("#8a1500", "#a81a00", "#c81e00", "#e62600")


def passband_css(rigs: Mapping[str, Rig]) -> str:
    """Rules `.nm656` for every passband of the diary's filters, and `.nm0` for what has no hue."""
    bands = sorted({band for rig in rigs.values() for rig_filter in rig.filters.values() for band in passbands_of(rig_filter)})
    paper = _colours("paper", {band: filter_colour(band, *PAPER) for band in bands})
    dusk = _colours("dusk", {band: filter_colour(band, *DUSK) for band in bands})
    red = _colours("red", {band: _red(band) for band in bands})
    rules = "".join(f".nm{band}{{fill:var(--nm{band});stroke:var(--nm{band});stroke-width:0}}\n" for band in [0, *bands])
    return (
        f":root{{{paper}}}\n"
        f"@media (prefers-color-scheme:dark){{:root:not([data-lamp]){{{dusk}}}}}\n"
        f':root[data-lamp="dusk"],:root:has(#lamp-dusk:checked){{{dusk}}}\n'
        f':root[data-lamp="paper"],:root:has(#lamp-paper:checked){{{paper}}}\n'
        f':root[data-lamp="red"],:root:has(#lamp-red:checked){{{red}}}\n'
        f"{rules}.s.gone{{fill:none;stroke-width:1px}}\n"
    )


def _colours(lamp: str, by_band: Mapping[int, str]) -> str:
    return "".join(f"--nm{band}:{colour};" for band, colour in [(0, NO_HUE[lamp]), *sorted(by_band.items())])


def _red(band: int) -> str:
    """Only the red channel may shine: longer waves brighter, in four steps the letter beside them confirms."""
    return RED_STEPS[min(3, max(0, (band - 400) // 75))]
