"""A rig's file from the headers of its frames: telescope, camera, filters met, and what changed over the years."""

import json
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from msgspec import Struct

from sitegen.authoring.captures.trains import HeaderTrain
from sitegen.authoring.harvest.trains import CALLED, SetUp
from sitegen.authoring.schemas import schema_line
from sitegen.diary.addresses import slug_of
from sitegen.reading.capture_logs.filter_words import FilterWords, filter_words
from sitegen.reading.model.rig_file import RIG_FILE

PASSBANDS: dict[str, tuple[str, str, str, float]] = {
    "l": ("L", "luminance", "broadband", 550),
    "clear": ("Clear", "clear", "broadband", 550),
    "r": ("R", "red", "broadband", 640),
    "g": ("G", "green", "broadband", 535),
    "b": ("B", "blue", "broadband", 450),
    "ha": ("Ha", "hydrogen-alpha", "narrowband", 656.3),
    "hb": ("Hb", "hydrogen-beta", "narrowband", 486.1),
    "oiii": ("OIII", "oxygen III", "narrowband", 500.7),
    "sii": ("SII", "sulphur II", "narrowband", 672.4),
    "nii": ("NII", "nitrogen II", "narrowband", 658.3),
}
"""By passband: short name, name, kind, centre in nm. Lines: wavelengths in air, common knowledge; broad filters: common practice,
no source."""
_CAMERA_KEYS = ("pixel_um", "width_px", "height_px", "colour")


class Standing(Struct, frozen=True):
    """A train from an evening on, as the keys of a rig's file have it; a value is None where no header tells it. `camera` is its
    name, '' where it has none."""

    evening: date
    keys: dict[str, float | int | str | None]
    camera: str

    @property
    def missing(self) -> list[str]:
        return [key for key, value in self.keys.items() if value is None]


class NewRig(Struct, frozen=True):
    slug: str
    name: str
    called: str
    camera: str
    standing: tuple[Standing, ...]
    filters: Counter[str]

    @property
    def missing(self) -> list[str]:
        return self.standing[0].missing


def new_rig(chain: Sequence[SetUp], evenings: Sequence[date], taken: Iterable[str]) -> NewRig:
    """Of set-ups that follow each other, each with its first evening; `taken` are slugs of other rigs."""
    telescope, camera = next((set_up.spelt for set_up in chain if any(set_up.spelt)), ("", ""))
    standing = tuple(Standing(evening, _keys(set_up.main), set_up.spelt[1]) for evening, set_up in
                     zip(evenings, chain, strict=True))  # fmt: skip
    words: Counter[str] = Counter()
    for set_up in chain:
        words.update(set_up.filters)
    focal_length = standing[0].keys["focal_length_mm"]
    name = telescope or (f"{focal_length:g} mm" if focal_length else camera or "The train")
    return NewRig(_free(slug_of(name), standing[0], set(taken)), name, telescope, camera, standing, words)


def _free(slug: str, standing: Standing, taken: set[str]) -> str:
    pixel_um = standing.keys["pixel_um"]
    by_pixel = [f"{slug}-{pixel_um:g}um".replace(".", "-")] if pixel_um else []
    wanted = [slug, *by_pixel, *(f"{slug}-{number}" for number in range(2, len(taken) + 3))]
    return next(name for name in wanted if name not in taken)


def _keys(train: HeaderTrain) -> dict[str, float | int | str | None]:
    binning = train.binning or 1
    width, height = (side * binning if side else None for side in (train.width_px, train.height_px))
    pixel_um = round(train.pixel_um / binning, 4) if train.pixel_um else None
    return {"focal_length_mm": train.focal_length_mm, "pixel_um": pixel_um, "width_px": width, "height_px": height,
            "colour": "colour" if train.colour else "mono"}  # fmt: skip


def rig_text(rig: NewRig) -> str:
    return "\n".join(_lines(rig)) + "\n"


def _lines(rig: NewRig) -> Iterator[str]:
    first = rig.standing[0].keys
    yield schema_line(RIG_FILE)
    yield "# From the headers of frames, by sitegen harvest: no aperture, and perhaps a reducer in the focal length."
    if rig.called:
        yield f"{CALLED}{' '.join(rig.called.split())}"
    yield f"name: {_quoted(rig.name)}"
    yield "telescope:"
    yield f"  focal_length_mm: {_text(first['focal_length_mm'])}"
    yield "  #aperture_mm: 200"
    yield "camera:"
    if rig.camera:
        yield f"  name: {_quoted(rig.camera)}"
    yield from (f"  {key}: {_text(first[key])}" for key in _CAMERA_KEYS)
    yield from _filter_lines(rig.filters)
    yield from _change_lines(rig.standing)


def _filter_lines(words: Counter[str]) -> Iterator[str]:
    """Words of which no passband is known are asked for: nothing is guessed of them."""
    passbands = sorted({filter_words(word) for word in words if filter_words(word).passband}, key=_in_order)
    widths: dict[str, list[float | None]] = {}
    for parts in passbands:
        widths.setdefault(parts.passband, []).append(parts.width_nm if parts.in_nm else None)
    if widths:
        yield "filters:"
    for passband, each_nm in widths.items():
        yield from _of_passband(passband, [width_nm for width_nm in each_nm if width_nm is not None])


def _in_order(parts: FilterWords) -> tuple[int, float]:
    return list(PASSBANDS).index(parts.passband), parts.width_nm or 0.0


def _of_passband(passband: str, widths_nm: Sequence[float]) -> Iterator[str]:
    """One filter, or one for each of the widths that headers tell apart."""
    short, name, kind, centre_nm = PASSBANDS[passband]
    different = list(dict.fromkeys(widths_nm))
    for width_nm in (*different, *([] if different else [None])):
        own = f"{short}-{width_nm:g}nm".replace(".", "_") if len(different) > 1 else short
        width = f", width_nm: {width_nm:g}" if width_nm is not None else ""
        yield f"  {own}: {{name: {name}, kind: {kind}, centre_nm: {centre_nm:g}{width}}}"


def _change_lines(standing: Sequence[Standing]) -> Iterator[str]:
    """Each with the keys that are other than before."""
    if len(standing) > 1:
        yield "changes:"
    before = dict(standing[0].keys)
    for later in standing[1:]:
        changed = {key: value for key, value in later.keys.items() if value is not None and value != before[key]}
        if not changed:
            continue
        before |= changed
        camera = f", name: {_quoted(later.camera)}" if later.camera else ""
        keys = "".join(f", {key}: {_text(value)}" for key, value in changed.items()) + camera
        yield f"  - {{from: {later.evening}{keys}, note: as the headers tell from then on}}"


def _text(value: object) -> str:
    return f"{value:.6g}" if isinstance(value, float) else str(value)


def _quoted(text: str) -> str:
    return json.dumps(" ".join(text.split()), ensure_ascii=False)
