"""Names in any script: charts show them as they are written, and no measure needs a font that has them.

pytest turns every warning into an error, a missing glyph's among them.
"""

import re
from pathlib import Path
from xml.etree.ElementTree import fromstring

import pytest

from sitegen import charts
from sitegen.charts import light_gathered, sky_map
from sitegen.charts.chart import Drawn, drawn
from sitegen.charts.finder_map import finder_chart
from sitegen.charts.finder_values import FinderValues
from sitegen.charts.lettering import box_of, width_of
from sitegen.charts.light_gathered import FilterLight
from sitegen.charts.plain_letters import as_written, plain_letters
from sitegen.charts.sky_map import SkyTarget
from tests.charts.speaking import VOICE

NAMES = {
    "latin": "NGC 253",
    "cyrillic": "Туманность Пеликан",
    "greek": "Νεφέλωμα του Ωρίωνα",
    "chinese": "猎户座大星云",
    "arabic": "سديم الجبار",
    "devanagari": "अद्भुत",
    "emoji": "🔭🌌",
}
ANY_SCRIPT = pytest.mark.parametrize("name", NAMES.values(), ids=NAMES)


def texts(chart: Drawn | None) -> list[tuple[str, float, float]]:
    """What stands written in all panels, and where."""
    assert chart is not None
    elements = [element for svg in chart.svgs for element in fromstring(svg).iter("text")]
    return [(element.text or "", float(element.attrib["x"]), float(element.attrib["y"])) for element in elements]


def sky_with(name: str) -> Drawn | None:
    return drawn(sky_map.CHART, (SkyTarget(name, 11.888, -25.288, 1.0, "a/index.html"),), VOICE, "map")


def bars_of(short: str) -> Drawn | None:
    lights = (FilterLight(short, "some", ("656-line",), 3600.0), FilterLight("L", "L", (), 7200.0))
    return drawn(light_gathered.CHART, lights, VOICE, "k")


def test_every_chart_writes_by_the_house_s_own_hand() -> None:
    """No map hands matplotlib a text itself, which would then be measured letter by letter."""
    own_hand = re.compile(r"\.(text|annotate|set_[xy]label|set_title)\(")
    files = {path.name: path.read_text("utf-8") for path in Path(charts.__file__).parent.glob("*.py")}
    assert [name for name, code in files.items() if own_hand.search(code)] == ["map_figure.py"]


@ANY_SCRIPT
def test_a_target_on_the_sky(name: str) -> None:
    """Its name is in the map, letter by letter."""
    assert name in [text for text, _, _ in texts(sky_with(name))]


@ANY_SCRIPT
def test_a_target_in_its_finder_map(name: str) -> None:
    """There it is bold, which is another face."""
    chart = finder_chart(FinderValues(name, 11.888, -25.288, (27.5, 6.8), ()), VOICE, "finder")
    assert name in [text for text, _, _ in texts(chart)]


@ANY_SCRIPT
def test_a_filter_beside_its_bar(name: str) -> None:
    """A tick label is written as it is, too."""
    assert name in [text for text, _, _ in texts(bars_of(name))]


@ANY_SCRIPT
def test_the_place_of_a_label_does_not_hang_on_its_letters(name: str) -> None:
    """The filter's line stands as high as a plain one's, whether a font has its letters or not."""
    strange, plain = ({text: y for text, _, y in texts(bars_of(short))} for short in (name, "R"))
    assert strange[name] == plain["R"]


AWKWARD = ("", "NGC 253", "a & b", "&#26143;", "&amp;#38;", "&lt;", "<b>", "$x$", "12\u202fh", "\x85")


@pytest.mark.parametrize("text", [*NAMES.values(), *AWKWARD])
def test_plain_letters_and_back(text: str) -> None:
    """matplotlib gets ASCII; what comes back is the text, even where that looks like a reference itself."""
    assert plain_letters(text).isascii()
    assert as_written(plain_letters(text)) == text


def test_a_name_that_looks_like_a_reference_is_shown_as_it_is() -> None:
    """Nothing that an author writes is taken for a letter's number."""
    assert "&#26143; &amp; 星" in [text for text, _, _ in texts(sky_with("&#26143; &amp; 星"))]


def test_wide_letters_are_given_their_room() -> None:
    """A square letter takes its own height in width, at least, and more than a Latin one (Unicode Standard Annex 11)."""
    assert width_of("星") == pytest.approx(width_of("星云") / 2)
    assert width_of("星") > 1.5 * width_of("M")
    assert width_of("🔭") >= width_of("星")
    left, _, right, _ = box_of(0.0, 0.0, "left", "猎户座大星云")
    assert (left, right) == (0.0, width_of("猎户座大星云"))
