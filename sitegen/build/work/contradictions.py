"""Warnings for the author where two entries tell otherwise of one frame."""

from collections.abc import Callable, Iterator

from sitegen.facts.contradiction import Contradiction
from sitegen.facts.views import EntryView
from sitegen.problems import Problem

_SAYS = {
    "kept": "is {here} here and {there} in the entry '{entry}'",
    "filter": "has the filter '{here}' here and '{there}' in the entry '{entry}'",
    "target": "has the target '{here}' here and '{there}' in the entry '{entry}'",
}
_CURES = {
    "kept": "write the same under 'kept' in {logs}",
    "filter": "write the same under 'filter' in {logs}",
    "target": "name one target for both: 'target' in {logs}",
}


def contradiction_problems(view: EntryView, shown: Callable[[str], str]) -> Iterator[Problem]:
    """One for each entry published before and kind of difference, at the file of this one, whose word counts in lists."""
    for contradiction in view.contradictions:
        yield Problem(
            shown(f"entries/{view.entry.slug}.md"), 1, 1, _wrong(contradiction), _remedy(contradiction, view, shown), "warning"
        )


def _wrong(contradiction: Contradiction) -> str:
    says = _SAYS[contradiction.what].format(here=contradiction.here, there=contradiction.there, entry=contradiction.earlier)
    more = "" if contradiction.frames == 1 else f", and {contradiction.frames - 1} more differ so"
    return f"the frame of {contradiction.start:%Y-%m-%d %H:%M:%S} UTC {says}{more}"


def _remedy(contradiction: Contradiction, view: EntryView, shown: Callable[[str], str]) -> str:
    """Filter and verdict stand in the logs, the target in the entries."""
    slugs = (view.entry.slug, contradiction.earlier)
    files = [f"entries/{slug}.md" for slug in slugs] if contradiction.what == "target" else dict.fromkeys(contradiction.logs)
    return f"lists count what this entry says; {_CURES[contradiction.what].format(logs=' and '.join(map(shown, files)))}"
