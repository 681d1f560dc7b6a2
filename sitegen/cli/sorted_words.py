"""What became of the files of a run, in words: each kind with its number and evidence, and the command that mends it."""

from collections.abc import Iterator, Mapping
from typing import Any

from sitegen.authoring.captures.trains import HeaderTrain
from sitegen.authoring.gather_report import KindCount, Sorting
from sitegen.cli.retyped import Typed, free_name
from sitegen.folders import Folders

MOST_TARGETS = 10
PICTURES = (".jpg", ".jpeg", ".tif", ".tiff")
_NOT_COUNTED = {"copy": "copies", "combined": "combined frames", "focus run": "frames of focus runs"}


def sorted_lines(sorting: Sorting, typed: Typed, folders: Folders, clock_cure: str | None) -> Iterator[str]:
    """None where nothing was left out and nothing needs a word. `clock_cure` reads frames in the camera's own clock."""
    for by, count in sorting.discarded_by.items():
        yield f"discarded by {by}: {count}"
    for kind, words in _NOT_COUNTED.items():
        if count := sorting.count(kind):
            yield f"not counted: {count} {_one(words, count)} ({', '.join(_evidence(sorting, kind))})"
    if count := sorting.count("passed over"):
        yield f"passed over: {count} ({', '.join(_passed_over(sorting))})"
    if not (sorting.kept or sorting.discarded) and any(ending in PICTURES for ending in sorting.passed_over):
        yield f"pictures in a folder are no frames unless a pattern names them, as in '{typed.logs[0]}/*{_picture(sorting)}'"
    yield from _other_targets(sorting, typed, folders)
    yield from _other_trains(sorting, typed, folders)
    if sorting.placeless and sorting.target:
        verb = "tells" if sorting.placeless == 1 else "tell"
        yield f"{frames_counted(sorting.placeless)} {verb} neither pointing nor a known object: taken for {sorting.target}"
    if sorting.clockless and sorting.read_as == "UTC":
        cure = f"; with the clock of the camera: {clock_cure}" if clock_cure else ""
        verb = "does not tell its" if sorting.clockless == 1 else "do not tell their"
        yield f"{frames_counted(sorting.clockless)} {verb} clock: read as UTC{cure}"


def _picture(sorting: Sorting) -> str:
    return next(ending for ending in sorting.passed_over if ending in PICTURES)


def _evidence(sorting: Sorting, kind: str) -> Iterator[str]:
    alike: dict[str, list[KindCount]] = {}
    for left_out in sorting.left_out:
        if left_out.kind == kind:
            alike.setdefault(left_out.why, []).append(left_out)
    for why, group in alike.items():
        whats = ", ".join(f"{left_out.count} {left_out.what}" for left_out in group if left_out.what)
        count = sum(left_out.count for left_out in group)
        yield f"{whats}: {why}" if whats else f"{why}: {count}"


def _passed_over(sorting: Sorting) -> Iterator[str]:
    yield from (f"{count} {ending}" for ending, count in sorting.passed_over.items())
    yield from (f"{left_out.count} where {left_out.why}" if " is " in left_out.why else f"{left_out.count} {left_out.why}"
                for left_out in sorting.left_out if left_out.kind == "passed over")  # fmt: skip


def _other_targets(sorting: Sorting, typed: Typed, folders: Folders) -> Iterator[str]:
    targets = list(sorting.other_targets.items())
    for target, count in targets[:MOST_TARGETS]:
        command = typed.again("--target", target, name=free_name(target, folders, typed.name))
        yield f"{frames_counted(count)} of {target} set aside: {command}"
    if left := targets[MOST_TARGETS:]:
        more = "1 more target" if len(left) == 1 else f"{len(left)} more targets"
        yield f"{frames_counted(sum(count for _, count in left))} of {more} set aside"


def _other_trains(sorting: Sorting, typed: Typed, folders: Folders) -> Iterator[str]:
    for other in sorting.other_trains:
        name = free_name(f"{typed.name}-{_short(other.train)}", folders, typed.name)
        target = ("--target", sorting.target) if sorting.target else ()
        yield (
            f"{frames_counted(other.count)} of another train ({other.train}) set aside: describe it in rigs/{name}.yaml "
            f"({_rig_keys(other.train)}), then {typed.again(*target, '--rig', name, name=name)}"
        )


def _short(train: HeaderTrain) -> str:
    return f"{train.focal_length_mm:.0f}mm" if train.focal_length_mm else "other-train"


def _rig_keys(train: HeaderTrain) -> str:
    """What the header tells, as the rig's file has it; '…' for what only its owner knows."""
    binning = train.binning or 1
    pixel = train.pixel_um / binning if train.pixel_um else None
    width, height = (side * binning if side else None for side in (train.width_px, train.height_px))
    colour = "colour" if train.colour else "mono"
    camera = f"pixel_um: {_number(pixel)}, width_px: {_number(width)}, height_px: {_number(height)}, colour: {colour}"
    return f"name: …, telescope: {{focal_length_mm: {_number(train.focal_length_mm)}}}, camera: {{{camera}}}"


def _number(value: float | None) -> str:
    return f"{value:.6g}" if value else "…"


def frames_counted(count: int) -> str:
    return f"{count} frame{'' if count == 1 else 's'}"


def _one(words: str, count: int) -> str:
    if count != 1:
        return words
    return {"copies": "copy", "combined frames": "combined frame", "frames of focus runs": "frame of a focus run"}[words]


def sorting_json(sorting: Sorting) -> Mapping[str, Any]:
    """The kinds add up to the files and the rows of tables."""
    return {
        "files": sorting.files,
        "rows": sorting.rows,
        "kinds": sorting.kinds,
        "evidence": [
            {"kind": left_out.kind, "what": left_out.what, "why": left_out.why, "count": left_out.count}
            for left_out in sorting.left_out
        ],
        "passed_over": dict(sorting.passed_over),
        "discarded_by": dict(sorting.discarded_by),
        "set_aside": {
            "targets": dict(sorting.other_targets),
            "trains": [{"train": str(other.train), "count": other.count} for other in sorting.other_trains],
        },
        "target": sorting.target or None,
        "placeless": sorting.placeless,
        "clockless": sorting.clockless,
        "clock": sorting.read_as,
    }
