"""The text of a new entry: what logs tell is filled in, what only its author knows is a marked gap."""

import json
import re
from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from itertools import groupby

from msgspec import Struct

from sitegen.authoring.gathering import NewOfNight
from sitegen.authoring.rig_fit import RigFit
from sitegen.authoring.schemas import schema_line
from sitegen.authoring.site_fit import SiteFit
from sitegen.authoring.target_fit import TargetFit
from sitegen.diary.to_write import GAP
from sitegen.reading.model.entry_file import ENTRY_FILE

_PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9 +._/*-]*|[A-Za-z0-9_./*-]+/[A-Za-z0-9_./*-]+")
_YAML_WORDS = frozenset({"yes", "no", "on", "off", "true", "false", "null", "y", "n"})


class EntryDraft(Struct, frozen=True):
    """`logs` as paths or patterns inside content/; `nights` of light frames, in time order; `with_schema` where the diary holds
    the schemas for editors; `unknown` are filters in the logs that the rig does not have."""

    name: str
    logs: tuple[str, ...]
    rig: RigFit | None
    site: SiteFit | None
    target: TargetFit | None
    nights: tuple[NewOfNight, ...]
    with_schema: bool = True
    unknown: tuple[str, ...] = ()

    @property
    def whole(self) -> bool:
        """Whether the diary has all that its logs need to be read."""
        return self.rig is not None and self.site is not None and not self.unknown


def entry_text(draft: EntryDraft, today: date) -> str:
    return "\n".join(["---", *_front_matter(draft, today), "---", *_body(draft)]) + "\n"


def _front_matter(draft: EntryDraft, today: date) -> Iterator[str]:
    if draft.with_schema:
        yield schema_line(ENTRY_FILE)
    yield f"title: {_yaml(_title(draft))}"
    yield f"published: {today}"
    yield f"#summary:  # {GAP} one or two sentences for lists and feeds"
    yield "stage: gathering"
    yield _target_line(draft.target)
    yield _named_line("rig", draft.rig.rig.slug if draft.rig else None, draft.rig, _doubt(draft.rig))
    yield _named_line("site", draft.site.site.slug if draft.site else None, draft.site)
    if not draft.whole:
        yield f"# The logs wait until {_waited_for(draft)}; then take the '#' away."
    yield f"{'' if draft.whole else '#'}logs: [{', '.join(map(_yaml, draft.logs))}]"
    yield f"#wanted: {{{', '.join(f'{_yaml(what)}: 4' for what in _filters(draft))}}}  # {GAP} the hours aimed for, by filter"
    yield f"#nights:  # {GAP} what only you know of them"
    for evening, rows in groupby(draft.nights, key=lambda row: row.evening):
        yield f"#  {evening}: {{clouds: , wind: , ended_by: }}  # {', '.join(_words(row) for row in rows)}"
    yield f"#pictures:  # {GAP} once there is one; 'alt' says what a reader who cannot see it should know"
    yield "#  - {file: pictures/NAME.jpg, alt: , caption: }"
    yield f"#lessons: {{worked: [], failed: [], next: []}}  # {GAP} what it taught"


def _body(draft: EntryDraft) -> Iterator[str]:
    yield ""
    yield f"*{GAP} why this target, and what was hoped for.*"
    if draft.whole:
        yield ""
        yield "So far [](fact:integration.total_s) are in."
    yield ""
    yield f"*{GAP} how the nights went, and what you would do otherwise.*"


def _waited_for(draft: EntryDraft) -> str:
    if draft.rig is None or draft.site is None:
        return "a rig and a site are named"
    return f"rigs/{draft.rig.rig.slug}.yaml has {', '.join(map(repr, draft.unknown))} among its filters"


def _title(draft: EntryDraft) -> str:
    """Nothing in it that the next night makes wrong."""
    return draft.target.name if draft.target else draft.name.replace("-", " ").capitalize()


def _target_line(target: TargetFit | None) -> str:
    if target is None:
        return f"#target: M 101  # {GAP} the headers name none"
    if target.catalogued:
        return f"target: {_yaml(target.name)}"
    if target.ra_deg is None or target.dec_deg is None:
        return f"#target: {_yaml(target.name)}  # {GAP} no catalogue here has it; give its ra and dec"
    place = f"ra: {target.ra_deg}, dec: {target.dec_deg}"
    return f"target: {{name: {_yaml(target.name)}, {place}}}  # {GAP} no catalogue here has it; is the name right?"


def _named_line(key: str, slug: str | None, fit: RigFit | SiteFit | None, doubt: str = "") -> str:
    if slug is None or fit is None:
        return f"#{key}: NAME  # {GAP} the diary has no {key} yet; describe it in {key}s/NAME.yaml"
    return f"{key}: {slug}" if fit.sure else f"{key}: {slug}  # {GAP} the logs leave it open{doubt}; is it this one?"


def _doubt(fit: RigFit | None) -> str:
    return f" ({fit.against})" if fit is not None and fit.against else ""


def _filters(draft: EntryDraft) -> Sequence[str]:
    return list(dict.fromkeys(row.what for row in sorted(draft.nights, key=lambda row: -row.count)))


def _words(row: NewOfNight) -> str:
    return f"{row.what} {row.count} × {row.exposure_s:g} s"


def _yaml(text: str) -> str:
    """Bare where YAML takes it for text, else in double quotes."""
    plain = _PLAIN.fullmatch(text) and text.casefold() not in _YAML_WORDS and text == text.strip()
    return text if plain else json.dumps(text, ensure_ascii=False)


def patterns_of(inside: Iterable[str], names: Iterable[str]) -> tuple[str, ...]:
    """Paths inside content/, those that are all of a folder's files of one ending drawn together."""
    every: dict[tuple[str, str], set[str]] = {}
    for name in names:
        every.setdefault(_kind_of(name), set()).add(name)
    chosen: dict[tuple[str, str], set[str]] = {}
    for name in inside:
        chosen.setdefault(_kind_of(name), set()).add(name)
    found: list[str] = []
    for (folder, ending), group in sorted(chosen.items()):
        whole = len(group) > 1 and group == every.get((folder, ending))
        found += [f"{folder}/*{ending}"] if whole else sorted(group)
    return tuple(found)


def _kind_of(name: str) -> tuple[str, str]:
    """The folder, and the last two endings where the last is of a packed file."""
    folder, _, file = name.rpartition("/")
    stem, dot, last = file.rpartition(".")
    packed = last.casefold() in ("gz", "fz") and "." in stem
    return folder, f".{stem.rpartition('.')[2]}.{last}" if packed else f"{dot}{last}"
