"""The text of a new entry: what logs tell is filled in, what only its author knows is a marked gap."""

import json
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date, timedelta
from itertools import groupby

from msgspec import Struct

from sitegen.authoring.gather_report import NewOfNight
from sitegen.authoring.rig_fit import RigFit
from sitegen.authoring.schemas import schema_line
from sitegen.authoring.site_fit import SiteFit
from sitegen.authoring.target_fit import TargetFit
from sitegen.diary.to_write import GAP
from sitegen.facts.views import PanelView
from sitegen.reading.capture_logs.unknown_filters import unknown_filter
from sitegen.reading.model.entry_file import ENTRY_FILE
from sitegen.reading.nodes import quoted

_PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9 +._/*-]*|[A-Za-z0-9_./*-]+/[A-Za-z0-9_./*-]+")
_YAML_WORDS = frozenset({"yes", "no", "on", "off", "true", "false", "null", "y", "n"})
STILL_GATHERING = timedelta(days=60)
NIGHT_LINES = 40
CONFIRM = "to be confirmed:"


class EntryDraft(Struct, frozen=True):
    """`logs` as paths or patterns inside content/, `gathered` the one of them that was gathered; `time_zone` the clock named for
    records that do not tell theirs, which a gathered log knows by itself; `nights` of kept light frames, in time order;
    `with_schema` where the diary holds the schemas for editors; `unknown` are filters in the logs that the rig does not have,
    with the number of their subs; `unnamed` subs name no filter where the rig has some; `last_night` is the evening of the newest
    sub; `panels` are those of a mosaic."""

    name: str
    logs: tuple[str, ...]
    rig: RigFit | None
    site: SiteFit | None
    target: TargetFit | None
    nights: tuple[NewOfNight, ...]
    with_schema: bool = True
    unknown: Mapping[str, int] = {}
    unnamed: int = 0
    last_night: date | None = None
    gathered: str | None = None
    time_zone: str | None = None
    panels: tuple[PanelView, ...] = ()

    @property
    def logs_inside(self) -> tuple[str, ...]:
        return tuple(log for log in self.logs if log != self.gathered)

    @property
    def whole(self) -> bool:
        """Whether the diary has all that its logs need to be read."""
        return self.rig is not None and self.site is not None and not self.unknown and not self.unnamed


def entry_text(draft: EntryDraft, today: date) -> str:
    """A name from a table may hold a line end: in a comment it would begin a line of its own."""
    front_matter = (" ".join(line.splitlines()) for line in _front_matter(draft, today))
    return "\n".join(["---", *front_matter, "---", *_body(draft)]) + "\n"


def published_on(draft: EntryDraft, today: date) -> date:
    """The day after the last night, and not in the future."""
    return today if draft.last_night is None else min(draft.last_night + timedelta(days=1), today)


def stage_of(draft: EntryDraft, today: date) -> str:
    """A project whose last night is younger than two months goes on."""
    return "gathering" if draft.last_night is None or today - draft.last_night < STILL_GATHERING else "finished"


def _front_matter(draft: EntryDraft, today: date) -> Iterator[str]:
    if draft.with_schema:
        yield schema_line(ENTRY_FILE)
    yield f"title: {_yaml(_title(draft))}"
    yield f"published: {published_on(draft, today)}"
    yield f"#summary:  # {GAP} one or two sentences for lists and feeds"
    yield f"stage: {stage_of(draft, today)}"
    yield _target_line(draft.target)
    yield _named_line("rig", draft.rig.rig.slug if draft.rig else None, doubt_of(draft.rig))
    yield _named_line("site", draft.site.site.slug if draft.site else None, _site_doubt(draft.site))
    yield from _waited_for(draft)
    yield f"{'' if draft.whole else '#'}logs: {logs_value(draft)}"
    yield from _panel_lines(draft)
    yield f"#wanted: {{{', '.join(f'{_yaml(what)}: 4' for what in _filters(draft))}}}  # {GAP} the hours aimed for, by filter"
    yield f"#nights:  # {GAP} what only you know of them"
    yield from _night_lines(draft)
    yield f"#pictures:  # {GAP} once there is one; 'alt' says what a reader who cannot see it should know"
    yield "#  - {file: pictures/NAME.jpg, alt: , caption: }"
    yield f"#lessons: {{worked: [], failed: [], next: []}}  # {GAP} what it taught"


def logs_value(draft: EntryDraft, filter_line: str = "") -> str:
    """What stands behind 'logs:'."""
    inside, gathered = draft.logs_inside, tuple(log for log in draft.logs if log == draft.gathered)
    if filter_line:
        inside, gathered = draft.logs, ()
    clock = f", time_zone: {draft.time_zone}" if draft.time_zone and draft.logs_inside else ""
    names = ", ".join(map(_yaml, inside))
    items = f"{{files: [{names}]{filter_line}{clock}}}" if inside and (filter_line or clock) else names
    return f"[{', '.join(filter(None, (items, *map(_yaml, gathered))))}]"


def _night_lines(draft: EntryDraft) -> Iterator[str]:
    nights = [(evening, list(rows)) for evening, rows in groupby(draft.nights, key=lambda row: row.evening)]
    shown = nights if len(nights) <= NIGHT_LINES else nights[-NIGHT_LINES:]
    if left := nights[: -len(shown)]:
        yield f"#  {nights_before(len(left))}: {', '.join(summed_words(row for _, rows in left for row in rows))}"
    for evening, rows in shown:
        yield f"#  {evening}: {{clouds: , wind: , ended_by: }}  # {', '.join(map(frames_words, rows))}"


def _panel_lines(draft: EntryDraft) -> Iterator[str]:
    """As found: named here, they would be these and no others."""
    if not draft.panels:
        return
    yield "#panels:  # found in the frames; take the '#' away to name them, or write 'panels: []' if it is no mosaic"
    for panel in draft.panels:
        place = f", ra: {panel.ra_deg:.3f}, dec: {panel.dec_deg:.3f}" if panel.ra_deg is not None else ""
        hours = ", ".join(f"{light.filter_key} {light.kept_s / 3600:.1f} h" for light in panel.light)
        yield f"#  - {{name: {quoted_name(panel.name)}{place}}}  # {hours}"


def quoted_name(name: str) -> str:
    return name if name.isdigit() else _yaml(name)


def nights_before(count: int) -> str:
    return f"{count} night{'' if count == 1 else 's'} before these"


def frames_words(row: NewOfNight) -> str:
    """'Ha 12 × 300 s'."""
    return f"{row.what} {row.count} × {row.exposure_s:g} s"


def summed_words(rows: Iterable[NewOfNight]) -> list[str]:
    """The same over several nights."""
    counted: Counter[tuple[str, float]] = Counter()
    for row in rows:
        counted[row.what, row.exposure_s] += row.count
    return [f"{what} {count} × {exposure_s:g} s" for (what, exposure_s), count in sorted(counted.items())]


def _body(draft: EntryDraft) -> Iterator[str]:
    yield ""
    yield f"*{GAP} why this target, and what was hoped for.*"
    if draft.whole:
        yield ""
        yield "So far [](fact:integration.total_s) are in."
    yield ""
    yield f"*{GAP} how the nights went, and what you would do otherwise.*"


def _waited_for(draft: EntryDraft) -> Iterator[str]:
    """What the logs wait for, each with the line that ends the waiting."""
    if draft.whole:
        return
    if draft.rig is None or draft.site is None:
        yield "# The logs wait until a rig and a site are named; then take the '#' away."
    for advice in waiting_for(draft):
        yield f"# {advice}"
    if draft.rig is not None and (draft.unknown or draft.unnamed):
        yield "# The logs wait until that is done; then take the '#' away."


def waiting_for(draft: EntryDraft) -> list[str]:
    """One line each filter that the rig does not know."""
    if draft.rig is None:
        return []
    rig = draft.rig.rig
    lines = [f"{subs_words(count)} for {quoted(word)}: {unknown_filter(word, rig)[1]}" for word, count in draft.unknown.items()]
    if draft.unnamed:
        some = next(iter(sorted(rig.filters)))
        item = f"logs: {logs_value(draft, f', filter: {_yaml(some)}')}"
        what = f"{subs_words(draft.unnamed)} for the name of their filter, which no header tells"
        lines.append(f"{what}: write '{item}' if it was '{some}'")
    return lines


def subs_words(count: int) -> str:
    return f"{count} sub waits" if count == 1 else f"{count} subs wait"


def _title(draft: EntryDraft) -> str:
    """Nothing in it that the next night makes wrong."""
    return draft.target.name if draft.target else draft.name.replace("-", " ").capitalize()


def _target_line(target: TargetFit | None) -> str:
    if target is None:
        return f"#target: NGC 253  # {GAP} the headers name none"
    offered = f"; the catalogue has {target.offered} there" if target.offered else ""
    doubt = f"  # {CONFIRM} guessed from {target.by}{offered}" if target.by else ""
    if target.catalogued:
        return f"target: {_yaml(target.name)}{doubt}"
    if target.moving:
        return f"target: {{name: {_yaml(target.name)}, kind: moving}}{doubt}"
    if target.ra_deg is None or target.dec_deg is None:
        return f"#target: {_yaml(target.name)}  # {GAP} no catalogue here has it; give its ra and dec"
    return f"target: {{name: {_yaml(target.name)}, ra: {target.ra_deg}, dec: {target.dec_deg}}}{doubt}"


def _named_line(key: str, slug: str | None, doubt: str) -> str:
    if slug is None:
        return f"#{key}: NAME  # {GAP} the diary has no {key} yet; describe it in {key}s/NAME.yaml"
    return f"{key}: {slug}  # {CONFIRM} {doubt}" if doubt else f"{key}: {slug}"


def doubt_of(rig: RigFit | None) -> str:
    """What an unsure rig was guessed from, and what speaks against it."""
    if rig is None or rig.sure:
        return ""
    return f"guessed from {rig.by}{f'; {rig.against}' if rig.against else ''}"


def _site_doubt(site: SiteFit | None) -> str:
    return f"guessed from {site.by}" if site is not None and not site.sure else ""


def _filters(draft: EntryDraft) -> Sequence[str]:
    """As 'wanted' calls them: without a filter, what the camera sees."""
    counted: Counter[str] = Counter()
    for row in draft.nights:
        counted[_wanted_name(row.what, draft)] += row.count
    return [what for what, _ in sorted(counted.items(), key=lambda pair: (-pair[1], pair[0]))]


def _wanted_name(what: str, draft: EntryDraft) -> str:
    if what != "light" or draft.rig is None:
        return what
    return "colour" if draft.rig.rig.trains[-1].camera.colour == "colour" else "clear"


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
    patterns: list[str] = []
    for (folder, ending), group in sorted(chosen.items()):
        whole = len(group) > 1 and group == every.get((folder, ending))
        patterns += [f"{folder}/*{ending}"] if whole else sorted(group)
    return tuple(patterns)


def _kind_of(name: str) -> tuple[str, str]:
    """The folder, and the last two endings where the last is of a packed file."""
    folder, _, file = name.rpartition("/")
    stem, dot, last = file.rpartition(".")
    packed = last.casefold() in ("gz", "fz") and "." in stem
    return folder, f".{stem.rpartition('.')[2]}.{last}" if packed else f"{dot}{last}"
