"""What no single key of an entry can know: whether its keys agree with each other, with the rigs, and with the logs."""

from collections.abc import Mapping

from sitegen.diary.rig import Rig
from sitegen.diary.site import Site
from sitegen.diary.sub import Sub
from sitegen.problems import hint_for
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.entry_logs import rigs_named
from sitegen.reading.known import Known
from sitegen.reading.named import check_named
from sitegen.reading.nodes import quoted
from sitegen.reading.value_types.group import Values
from sitegen.sky.solar_time import evening_at


def check_entry(values: Values, diary_records: Known, diagnostics: Diagnostics) -> None:
    """Everything that can be told before the logs are read."""
    for what, records in (("rig", diary_records.rigs), ("site", diary_records.sites)):
        name = values.get(what)
        if name is not None:
            check_named(name, values.place(what), what, records, diagnostics)
    _check_dates(values, diagnostics)
    _check_wanted(values, diary_records, diagnostics)
    _check_steps(values, diagnostics)
    _check_compared(values, diagnostics)


def check_nights(values: Values, subs: tuple[Sub, ...], sites: Mapping[str, Site | None], diagnostics: Diagnostics) -> None:
    """A note on a night without subs is most often a note under the wrong date."""
    notes = values.get("nights") or {}
    if not notes or not subs:
        return
    standing = {slug: site.longitude_deg for slug, site in sites.items() if site is not None}
    placed = [sub for sub in subs if sub.site in standing]
    evenings = {str(evening_at(sub.start, standing[sub.site])) for sub in placed}
    for day, note in notes.items():
        if placed and str(day) not in evenings:
            near = hint_for(str(day), evenings)
            remedy = f"a night is named by the date of its evening; {near}"
            diagnostics.warn(note, f"no log has a sub in the night of {day}", remedy)


def _check_dates(values: Values, diagnostics: Diagnostics) -> None:
    published, updated = values.get("published"), values.get("updated")
    if published is not None and updated is not None and updated < published:
        diagnostics.error(values.place("updated"), f"updated on {updated}, before it was published on {published}",
                   f"write 'updated: {published}' or later")


def _check_wanted(values: Values, diary_records: Known, diagnostics: Diagnostics) -> None:
    rigs = [diary_records.rigs.get(name) for name in rigs_named(values)]
    present = [rig for rig in rigs if rig is not None]
    if not rigs or len(present) < len(rigs):
        return
    filters = {short for rig in present for short in (*rig.filters, without_filter(rig))}
    for name, kept in (values.get("wanted") or {}).items():
        if name not in filters:
            diagnostics.error(kept, f"unknown filter {quoted(name)} in 'wanted'", hint_for(name, filters))


def without_filter(rig: Rig) -> str:
    """What the hours of subs through no filter are counted under."""
    return "colour" if rig.trains[-1].camera.colour == "colour" else "clear"


def _check_compared(values: Values, diagnostics: Diagnostics) -> None:
    """The earlier one is a picture like any other, with words of its own."""
    files = [picture.value.get("file") for picture in values.items_of("pictures")]
    for picture in (picture.value for picture in values.items_of("pictures")):
        other = picture.get("compare_with")
        if other is not None and (other not in files or other == picture.get("file")):
            others = [file for file in files if file is not None and file != picture.get("file")]
            wrong = f"{quoted(other)} is no other picture of this entry"
            diagnostics.error(picture.place("compare_with"), wrong, hint_for(other, others))


def _check_steps(values: Values, diagnostics: Diagnostics) -> None:
    steps = (step for picture in values.items_of("pictures") for step in picture.value.items_of("steps"))
    for step in (step.value for step in steps if isinstance(step.value, Values)):
        if step.get("file") is not None and step.node.get("alt") is None:
            diagnostics.error(step.place("file"), "the picture of a step needs 'alt'", "say in a sentence what it shows")
