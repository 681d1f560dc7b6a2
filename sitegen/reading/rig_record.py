"""rigs/NAME.yaml -> Rig, with its train as it stood from each change on."""

from collections.abc import Iterator
from typing import Any

from msgspec.structs import fields, replace

from sitegen.diary.rig import Camera, Filter, Rig, Telescope, Train, Work
from sitegen.reading.capture_logs.filter_words import filter_key
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.documents import Document
from sitegen.reading.nodes import quoted
from sitegen.reading.value_types.group import Values
from sitegen.reading.value_types.value_type import Kept

_OF_TELESCOPE = {field.name for field in fields(Telescope)}
_OF_CAMERA = {field.name for field in fields(Camera)}


def rig_of(document: Document) -> Rig | None:
    """None where the file has an error."""
    values, diagnostics = document.values, document.diagnostics
    if values is None:
        return None
    _check_order(values, diagnostics)
    _check_obstruction(values, diagnostics)
    _check_spellings(values, diagnostics)
    if not diagnostics.clean:
        return None
    filters = {short: _filter(short, kept.value) for short, kept in (values.get("filters") or {}).items()}
    work = tuple(sorted((item.value.into(Work) for item in values.items_of("work")), key=lambda work: work.date))
    words = {name: values.get(name) for name in ("name", "mount", "guiding", "other")}
    return Rig(slug=document.slug, trains=tuple(_trains(values)), filters=filters, work=work, **words)


def _trains(values: Values) -> Iterator[Train]:
    """Each change is laid over the train before it."""
    train = Train(None, values.get("telescope").into(Telescope), values.get("camera").into(Camera))
    yield train
    for item in values.items_of("changes"):
        change: dict[str, Any] = item.value.values
        telescope = replace(train.telescope, **{name: change[name] for name in change.keys() & _OF_TELESCOPE})
        camera = replace(train.camera, **{name: change[name] for name in change.keys() & _OF_CAMERA})
        train = Train(change["from"], telescope, camera, change.get("note"))
        yield train


def _filter(short: str, values: Values) -> Filter:
    return values.into(Filter, short=short, name=values.get("name") or short)


def _check_spellings(values: Values, diagnostics: Diagnostics) -> None:
    """What logs call one filter, no other may be called."""
    filters: dict[str, Kept] = values.get("filters") or {}
    owners: dict[str, str] = {}
    for short, kept in filters.items():
        for name in (short, kept.value.get("name") or short):
            owners.setdefault(filter_key(name), short)
    for short, kept in filters.items():
        for item in kept.value.items_of("spelt"):
            owner = owners.setdefault(filter_key(item.value), short)
            if owner != short:
                wrong = f"{quoted(item.value)} is a spelling of the filter '{short}' here, and of '{owner}' too"
                diagnostics.error(item, wrong, f"delete it here, or at '{owner}'")


def _check_order(values: Values, diagnostics: Diagnostics) -> None:
    latest = None
    for item in values.items_of("changes"):
        day = item.value.get("from")
        if day is None:
            continue
        if latest is not None and day <= latest:
            wrong = f"the change from {day} stands after the one from {latest}"
            diagnostics.error(item.value.place("from"), wrong, "put changes in date order, each on its own evening")
        latest = day


def _check_obstruction(values: Values, diagnostics: Diagnostics) -> None:
    """In the telescope, and again wherever a change touches either diameter."""
    aperture_mm = obstruction_mm = None
    changes = (item.value for item in values.items_of("changes"))
    for stage in filter(None, (values.get("telescope"), *changes)):
        aperture_mm = stage.get("aperture_mm") or aperture_mm
        obstruction_mm = stage.get("obstruction_mm") if stage.get("obstruction_mm") is not None else obstruction_mm
        if aperture_mm is None or obstruction_mm is None or obstruction_mm < aperture_mm:
            continue
        at = stage.place("obstruction_mm" if stage.get("obstruction_mm") is not None else "aperture_mm")
        wrong = f"the obstruction of {obstruction_mm:g} mm leaves nothing of an aperture of {aperture_mm:g} mm"
        diagnostics.error(at, wrong, "give both diameters in mm, that of the secondary as 'obstruction_mm'")
