"""diary.yaml -> Settings."""

from sitegen.diary.settings import CaptureAnswer, CaptureSettings, MoonRule, OutlookSettings, Privacy, Settings
from sitegen.reading.documents import Document

_PARTS = {"privacy": Privacy, "moon_rule": MoonRule, "outlook": OutlookSettings}


def settings_of(document: Document) -> Settings | None:
    """None where the file has an error."""
    values = document.values
    if values is None or not document.diagnostics.clean:
        return None
    parts = {name: values.get(name).into(record) for name, record in _PARTS.items() if values.get(name)}
    if captures := values.get("captures"):
        answers = tuple(item.value.into(CaptureAnswer) for item in captures.items_of("answers"))
        parts["captures"] = captures.into(CaptureSettings, answers=answers)
    return values.into(Settings, **parts)
