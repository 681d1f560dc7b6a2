"""An entry's pictures: made once for the same file and wishes, whatever the file is called; asked where they point; told
what they carry inside."""

import json
from collections.abc import Iterator
from pathlib import Path
from types import NoneType
from typing import Any

from msgspec import Struct, field
from msgspec.structs import replace

from sitegen.build.context import PICTURE_WORK, BuildContext
from sitegen.build.resolve import resolve
from sitegen.build.store import Cache, Output, hash_of_file
from sitegen.build.work.picture_priors import exposures, fullest_ribbon, pointing_prior
from sitegen.build.workers import working_on
from sitegen.diary import addresses
from sitegen.diary.entry import Picture
from sitegen.facts.measured_scale import measured
from sitegen.facts.mosaic_field import turned
from sitegen.facts.views import EntryView, PointedPicture
from sitegen.pages.overlay import overlay_of
from sitegen.pages.picture_view import PreparedPicture, PreparedStep, main_picture
from sitegen.pictures.embedding import with_packet
from sitegen.pictures.packet_values import packet, packet_values
from sitegen.pictures.pointing_records import Pointing
from sitegen.pictures.records import MadeFile, MadePicture, MadeTiles, PictureProblem, PictureSettings
from sitegen.problems import Problem

TILES = "tiles"
CARD_AT_LEAST_PX = 1200
Published = tuple[MadePicture, MadeTiles | None]
Pair = tuple[MadePicture, MadePicture]


class MadePictures(Struct):
    """`labelled_objects`: names of what is marked in its pictures, as target pages spell them; `uses` names what lies in
    the store for it."""

    view: EntryView
    pictures: list[PreparedPicture] = field(default_factory=list)
    outputs: list[Output] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    uses: tuple[str, ...] = ()
    has_card: bool = False

    @property
    def labelled_objects(self) -> tuple[str, ...]:
        marked = {
            slug for prepared in self.pictures if prepared.overlay for marked in prepared.overlay.objects for slug in marked.slugs
        }
        return tuple(sorted(marked))


def make_pictures(context: BuildContext, view: EntryView) -> MadePictures:
    """Everything of all the entry's pictures; the view comes back with where they point and what that measures."""
    entry_pictures = MadePictures(view)
    makers = _Maker(context, view, entry_pictures, context.cache_of(PICTURE_WORK))
    for picture in view.entry.pictures:
        prepared = makers.prepared(picture)
        if prepared is not None:
            entry_pictures.pictures.append(prepared)
    makers.pairs()
    makers.card()
    entry_pictures.uses = makers.cache.taken_used()
    return entry_pictures


class _Maker(Struct):
    context: BuildContext
    view: EntryView
    entry_pictures: MadePictures
    cache: Cache
    names: set[str] = field(default_factory=set)
    kept: dict[str, Path] = field(default_factory=dict)

    def prepared(self, picture: Picture) -> PreparedPicture | None:
        """None where the file cannot be used; the problem is noted."""
        try:
            pointing = self._pointing(picture) if picture.role != "setup" else None
            sizes, tiles, folder = self._published(picture, pointing)
        except PictureProblem as wrong:
            self._note(picture.file, wrong)
            return None
        self._tell(picture, sizes, pointing or Pointing(None, None, None))
        solution = pointing.solution if pointing else None
        overlay = overlay_of(solution, self.view.entry.targets) if solution else None
        steps = tuple(self._step(picture, step.what, step.file, step.alt) for step in picture.steps)
        return PreparedPicture(picture, sizes, folder, f"{folder}{TILES}/" if tiles else None, pointing, overlay, steps)

    def _note(self, file: str, wrong: PictureProblem) -> None:
        shown, remedy = self.context.config.folder.shown(file), f"named by entries/{self.view.entry.slug}.md"
        self.entry_pictures.problems.append(Problem(shown, 1, 1, wrong.sentence, remedy))

    def _step(self, of: Picture, what: str, file: str | None, alt: str | None) -> PreparedStep:
        if file is None:
            return PreparedStep(what)
        picture = Picture(file, alt or "", what, "process", stretch=of.stretch if file == of.file else {}, type=of.type)
        try:
            sizes, tiles, folder = self._published(picture, None)
        except PictureProblem as wrong:
            self._note(file, wrong)
            return PreparedStep(what)
        return PreparedStep(what, PreparedPicture(picture, sizes, folder, f"{folder}{TILES}/" if tiles else None))

    def _inputs(self, picture: Picture) -> tuple[Path, PictureSettings, tuple[str, str]]:
        path = self.context.content / picture.file
        settings = PictureSettings(stretch=dict(picture.stretch))
        return path, settings, (hash_of_file(path), repr(settings))

    def _pointing(self, picture: Picture) -> Pointing | None:
        """None where nobody says and nobody asks."""
        path, settings, inputs = self._inputs(picture)
        prior = pointing_prior(self.view, picture)
        scratch = self.cache.scratch
        asked = ("pointing", *inputs, repr(prior))
        pointing: Pointing = self.cache.value(asked, Pointing, lambda: _work("point", path, prior, settings, scratch))
        return pointing if pointing.solution or prior.by_stars else None

    def _published(self, picture: Picture, pointing: Pointing | None) -> tuple[MadePicture, MadeTiles | None, str]:
        path, settings, inputs = self._inputs(picture)
        kept, (sizes, tiles) = self.cache.folder(inputs, Published, lambda out: _work("publish", path, out, settings))
        folder = addresses.picture(self.view.entry.slug, f"{self._name(picture)}/")
        self.kept[folder] = kept
        values = packet_values(self.view.entry, picture, self.context.settings, exposures(self.view))
        solution = pointing.solution if pointing else None
        for file in sizes.files:
            words = packet(values, solution, file.width_px, file.height_px)
            self.entry_pictures.outputs.append(self._carrying(folder, kept, file, words))
        self.entry_pictures.outputs += self._tiles(folder, kept, tiles, sizes.full.name) if tiles else []
        return sizes, tiles, folder

    def _carrying(self, folder: str, kept: Path, file: MadeFile, words: bytes) -> Output:
        """New words cost no new encoding: they are laid into a copy."""
        if file.mime == "image/avif":
            return self._output(folder + file.name, kept / file.name)
        content = with_packet((kept / file.name).read_bytes(), words)
        return self.context.store.put_file(folder + file.name, content)

    def _output(self, address: str, file: Path) -> Output:
        return self.context.store.output_of(address, file)

    def _tiles(self, folder: str, kept: Path, tiles: MadeTiles, full: str) -> Iterator[Output]:
        """All but the full JPEG, which carries words. `info.json` names the place where the tiles will lie, where the diary has
        an address."""
        for name in tiles.names:
            if name != "info.json" and f"{TILES}/{name}" != full:
                yield self._output(f"{folder}{TILES}/{name}", kept / TILES / name)
        info = json.loads((kept / TILES / "info.json").read_bytes())
        root = self.context.settings.address
        info["id"] = f"{root.rstrip('/')}/{folder}{TILES}" if root else "."
        content = json.dumps(info, indent=1).encode("ascii") + b"\n"
        yield self.context.store.put_file(f"{folder}{TILES}/info.json", content)

    def _name(self, picture: Picture) -> str:
        """After the file; a second file of one name in another folder is told apart by a number."""
        stem, _, suffix = picture.file.rpartition("/")[2].rpartition(".")
        plain = addresses.slug_of(f"{stem}-{suffix}" if suffix.lower() not in ("jpg", "jpeg") else stem)
        name, number = plain, 1
        while name in self.names:
            number += 1
            name = f"{plain}-{number}"
        self.names.add(name)
        return name

    def _tell(self, picture: Picture, sizes: MadePicture, pointing: Pointing) -> None:
        size = sizes.width_px, sizes.height_px
        pointed = PointedPicture(picture.file, *size, pointing.solution, pointing.origin, pointing.reason, picture.type)
        pictures = (*self.entry_pictures.view.pictures, pointed)
        optics = measured(self.view.optics, pictures)
        mosaic = turned(self.view.mosaic, optics, pictures)
        self.entry_pictures.view = replace(self.entry_pictures.view, pictures=pictures, optics=optics, mosaic=mosaic)

    def pairs(self) -> None:
        """Two pictures to be laid over each other are brought to one size where they are not."""
        by_file = {prepared.picture.file: prepared for prepared in self.entry_pictures.pictures}
        for place, after in enumerate(self.entry_pictures.pictures):
            before = by_file.get(after.picture.compare_with or "")
            if before is not None and _size(before.made) != _size(after.made):
                self.entry_pictures.pictures[place] = self._paired(before, after)

    def _paired(self, before: PreparedPicture, after: PreparedPicture) -> PreparedPicture:
        (path, settings, inputs), (earlier, _, others) = self._inputs(after.picture), self._inputs(before.picture)
        make = lambda out: _work("pair", earlier, path, out, settings)  # noqa: E731 # nothing but this call
        try:
            kept, pair = self.cache.folder(("pair", others, inputs), Pair, make)
        except PictureProblem as wrong:
            self._note(after.picture.file, wrong)
            return after
        folder = f"{after.folder}compared/"
        for name, sizes in zip(("before", "after"), pair, strict=True):
            self.entry_pictures.outputs += [
                self._output(f"{folder}{name}/{file.name}", kept / name / file.name) for file in sizes.files
            ]
        return replace(after, pair=(replace(before, made=pair[0], folder=f"{folder}before/"),
                                    replace(after, made=pair[1], folder=f"{folder}after/")))  # fmt: skip

    def card(self) -> None:
        """The picture beside a link to the entry, with the ribbon of its fullest night."""
        main = main_picture(self.entry_pictures.pictures)
        if main is None:
            return
        wide = (file for file in main.made.of_type("image/jpeg") if file.width_px >= CARD_AT_LEAST_PX)
        path = self.kept[main.folder] / next(wide, main.made.full).name
        drawing = fullest_ribbon(self.view)
        inputs = ("card", self.kept[main.folder].name, path.name, drawing)
        try:
            kept, _ = self.cache.folder(inputs, NoneType, lambda out: _work("card", path, drawing, out))
        except PictureProblem as wrong:
            self._note(main.picture.file, wrong)
            return
        address = addresses.entry_card_picture(self.view.entry.slug)
        self.entry_pictures.outputs.append(self._output(address, kept / addresses.CARD_PICTURE))
        self.entry_pictures.has_card = True


def _work(name: str, path: Path, *given: Any) -> Any:
    """The room's work by its name, which loads libraries for pictures."""
    working_on(path)
    return resolve(PICTURE_WORK)(name, path, *given)


def _size(sizes: MadePicture) -> tuple[int, int]:
    return sizes.width_px, sizes.height_px
