"""Each check of the project sees the harm it is there for: done to a copy of the sources in memory, and told."""

import re
from collections.abc import Callable

import pytest

from tests.gate import checks
from tests.gate.sources import sources_of

SOURCES = sources_of()
FACTS, REGISTRY = "sitegen/facts/optics_scale.py", "sitegen/facts/registry.py"


def _with(path: str, added: str) -> dict[str, str]:
    """The sources with lines added at the end of a file, or with the file itself."""
    return {**SOURCES, path: f"{SOURCES.get(path, '')}\n{added}\n"}


def _without(path: str, pattern: str, put: str = "") -> dict[str, str]:
    changed, count = re.subn(pattern, put, SOURCES[path], count=1, flags=re.MULTILINE)
    assert count == 1, f"nothing to sabotage: {pattern} is not in {path}"
    return {**SOURCES, path: changed}


def _with_text(path: str, pattern: str, put: str, added: str) -> dict[str, str]:
    """Both."""
    changed = _without(path, pattern, put)
    return {**changed, path: f"{changed[path]}\n{added}\n"}


HARM: dict[str, tuple[Callable[[], dict[str, str]], checks.Check, str]] = {
    "an import rightward": (
        lambda: _with(FACTS, "from sitegen.pages.card import card_of"),
        checks.imports_point_left,
        r"sitegen/facts/optics_scale\.py:\d+: facts must not know pages",
    ),
    "an import rightward inside a function": (
        lambda: _with(FACTS, "def late():\n    import sitegen.pages.card\n"),
        checks.imports_point_left,
        "facts must not know pages",
    ),
    "an import rightward by name": (
        lambda: _with(FACTS, "from importlib import import_module\ncard = import_module('sitegen.pages.card')"),
        checks.imports_point_left,
        "facts must not know pages",
    ),
    "an import rightward by a lazy proxy": (
        lambda: _with(FACTS, "from sitegen.lazy_module import LazyModule\ncard = LazyModule('sitegen.pages.card')"),
        checks.imports_point_left,
        "facts must not know pages",
    ),
    "a module loaded by a computed name": (
        lambda: _with(FACTS, "from importlib import import_module\ncard = import_module('.'.join(['sitegen', 'pages']))"),
        checks.no_import_hides,
        "a module is loaded by a computed name",
    ),
    "an import rightward by the name of a function": (
        lambda: _with(FACTS, "CARD = 'sitegen.pages.card:card_of'"),
        checks.imports_point_left,
        "facts must not know pages",
    ),
    "the name of a function that is not there": (
        lambda: _with("sitegen/build/context.py", "LOST = 'sitegen.pictures.tasks:lost'"),
        checks.named_functions_exist,
        r"sitegen/build/context\.py:\d+: sitegen\.pictures\.tasks has no lost",
    ),
    "a rule whose work is not there": (
        lambda: _without("sitegen/build/rules/lists.py", "draw_lists", "draw_list"),
        checks.named_functions_exist,
        r"sitegen/build/rules/lists\.py:\d+: sitegen\.build\.work\.lists has no draw_list",
    ),
    "a rule that no run names": (
        lambda: _without("sitegen/build/registry.py", r", FEEDS\)", ")"),
        checks.every_rule_is_registered,
        r"add to sitegen/build/registry\.py: FEEDS",
    ),
    "a hidden import": (
        lambda: _with(FACTS, "def late():\n    import json\n    return json"),
        checks.no_import_hides,
        "an import hides in late",
    ),
    "a table that points right": (
        lambda: _without("DEVELOPERS.md", r"^\| `sky` \|(.*)\|\s*\|$", r"| `sky` |\1| `pages` |"),
        checks.table_points_left,
        "sky must not know pages",
    ),
    "a room without a line": (
        lambda: _with("sitegen/weather/rain.py", '"""Rain."""'),
        checks.rooms_without_a_line,
        "no line for the room 'weather'",
    ),
    "a cycle": (
        lambda: _with("sitegen/sky/airmass.py", "from sitegen.sky.subs import sub_columns"),
        checks.no_cycle,
        r"sitegen/sky/airmass\.py: in an import cycle",
    ),
    "a cycle by 'from package import module'": (
        lambda: _with("sitegen/sky/airmass.py", "from sitegen.sky import subs"),
        checks.no_cycle,
        r"sitegen/sky/airmass\.py: in an import cycle",
    ),
    "a file opened where none may be": (
        lambda: _with(FACTS, "from pathlib import Path\ntext = Path('x').read_text()"),
        checks.files_are_opened_where_they_may,
        "facts opens no files",
    ),
    "a file opened by the system's call": (
        lambda: _with(FACTS, "import os\nfile = os.open('x', 0)"),
        checks.files_are_opened_where_they_may,
        "facts opens no files",
    ),
    "the clock read": (
        lambda: _with(FACTS, "from datetime import date\ntoday = date.today()"),
        checks.the_clock_is_read_at_the_edges,
        "hand the time in",
    ),
    "the clock read by a bare name": (
        lambda: _with(FACTS, "from time import perf_counter\nsince = perf_counter()"),
        checks.the_clock_is_read_at_the_edges,
        "hand the time in",
    ),
    "something printed": (lambda: _with(FACTS, "print('here')"), checks.only_cli_prints, "only cli prints"),
    "something written to the terminal": (
        lambda: _with(FACTS, "import sys\nsys.stderr.write('here')"),
        checks.only_cli_prints,
        "only cli prints",
    ),
    "a registry line in a comment": (
        lambda: _without("sitegen/charts/registry.py", r"^    sky_map\.CHART,", "    # sky_map.CHART,"),
        checks.registries_are_whole,
        r"add to sitegen/charts/registry\.py: sky_map\.CHART,",
    ),
    "a fact's line in a comment": (
        lambda: _without(REGISTRY, r"^    airmass: ", "    # airmass: "),
        checks.every_fact_is_registered,
        r"add to sitegen/facts/registry\.py: airmass: Annotated\[…, sub_sky\.AIRMASS\]",
    ),
    "a log reader that no registry names": (
        lambda: _with("sitegen/reading/capture_logs/rain_log.py", "READER = None"),
        checks.registries_are_whole,
        r"add to sitegen/reading/capture_logs/registry\.py: rain_log\.READER,",
    ),
    "a page kind that no registry names": (
        lambda: _with("sitegen/pages/rain_page.py", "KIND = None"),
        checks.registries_are_whole,
        r"add to sitegen/pages/registry\.py: rain_page\.KIND,",
    ),
    "a page kind named outside of the registry's tuples": (
        lambda: (
            _without("sitegen/pages/registry.py", r"^    rig_pages\.KIND,\n", "")
            | {"sitegen/pages/page_layout.py": f"{SOURCES['sitegen/pages/page_layout.py']}\nUSED = rig_pages.KIND\n"}
        ),
        checks.registries_are_whole,
        r"add to sitegen/pages/registry\.py: rig_pages\.KIND,",
    ),
    "a page kind in a list that is no registry": (
        lambda: _with_text("sitegen/pages/registry.py", r"^    rig_pages\.KIND,\n", "", "LATER = (rig_pages.KIND,)"),
        checks.registries_are_whole,
        r"add to sitegen/pages/registry\.py: rig_pages\.KIND,",
    ),
    "a chart of which a page shows nothing but its values' type": (
        lambda: _without("sitegen/pages/sky_page.py", r"drawn\(sky_map\.CHART, (.*), book\.voice\)", r"\1"),
        checks.every_chart_is_shown,
        r"sitegen/charts/sky_map\.py: no page shows this chart",
    ),
    "a chart drawn by a function that no page calls": (
        lambda: _without("sitegen/pages/entry_sections/where.py", r"finder_chart\(", "print("),
        checks.every_chart_is_shown,
        r"sitegen/charts/finder_map\.py: no page shows this chart",
    ),
    "a chart that nothing shows": (
        lambda: _with("sitegen/charts/rain.py", "CHART = None"),
        checks.every_chart_is_shown,
        r"sitegen/charts/rain\.py: no page shows this chart",
    ),
    "an address spelt in the midst of a text": (
        lambda: _with("sitegen/cli/start.py", "PLACE = f'../targets/{SLUG}/'"),
        checks.addresses_are_spelt_once,
        "'../targets/' is an address",
    ),
    "a file of the site spelt elsewhere": (
        lambda: _with("sitegen/authoring/preview.py", "PLACE = 'entries/x/facts.json'"),
        checks.addresses_are_spelt_once,
        "'entries/x/facts.json' is an address",
    ),
    "an address spelt in a template": (
        lambda: _with("themes/almanac/html/around.html", '<a href="../sky/">'),
        checks.addresses_are_spelt_once,
        r'themes/almanac/html/around\.html: href="\.\./sky/" is an address',
    ),
    "an address spelt elsewhere": (
        lambda: _with("sitegen/pages/rain_page.py", "PLACE = 'entries/x/'"),
        checks.addresses_are_spelt_once,
        "'entries/x/' is an address",
    ),
    "HTML written in code": (
        lambda: _with("sitegen/pages/entry_text.py", "def drawn(words):\n    return f'<span class=\"told\">{words}</span>'"),
        checks.html_stands_in_templates,
        "write HTML in a template",
    ),
    "a text called HTML in code": (
        lambda: _with("sitegen/pages/linked_data.py", "import markupsafe\nSAFE = markupsafe.Markup(CONTEXT)"),
        checks.html_stands_in_templates,
        "say '|safe' in the template",
    ),
    "a closing tag written in code": (
        lambda: _with("sitegen/feeds/atom.py", "END = '</p>'"),
        checks.html_stands_in_templates,
        "write HTML in a template",
    ),
    "an unused constant": (
        lambda: _with(FACTS, "NOBODY_WANTS_THIS = 3"),
        checks.nothing_is_dead,
        "NOBODY_WANTS_THIS is used nowhere",
    ),
    "an unused function": (
        lambda: _with(FACTS, "def nobody_calls_this():\n    return 3"),
        checks.nothing_is_dead,
        "nobody_calls_this is used nowhere",
    ),
    "a long file": (
        lambda: _with(FACTS, "\n" * 300),
        checks.short_files_and_functions,
        "more than 300",
    ),
    "a long function": (
        lambda: _with(FACTS, "def long():\n" + "    pass\n" * 60),
        checks.short_files_and_functions,
        "long has 61 lines",
    ),
    "a variable that says nothing": (
        lambda: _with("sitegen/sky/airmass.py", "def lifted(altitude):\n    found = altitude + 1\n    return found"),
        checks.things_bear_their_own_names,
        r"sitegen/sky/airmass\.py:\d+: 'found' says nothing of the thing",
    ),
    "an argument that says nothing": (
        lambda: _with("sitegen/sky/airmass.py", "LIFTED = [(lambda each: each + 1)(path) for path in (1, 2)]"),
        checks.things_bear_their_own_names,
        "'each' says nothing of the thing",
    ),
    "a relative import": (lambda: _with(FACTS, "from . import fact"), checks.no_relative_import, "a relative import"),
}


@pytest.mark.parametrize("name", HARM)
def test_harm_is_told(name: str) -> None:
    """What the check says of the sabotaged copy it does not say of the sources as they are."""
    sabotage, check, words = HARM[name]
    new = set(check(sabotage())) - set(check(SOURCES))
    assert any(re.search(words, line) for line in new), sorted(new)


def test_every_check_is_tried() -> None:
    assert {check for _, check, _ in HARM.values()} == set(checks.CHECKS)
