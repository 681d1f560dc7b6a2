"""A theme: its templates, its look and its words, file by file over those of the default theme."""

from collections.abc import Iterator
from pathlib import Path

from msgspec import Struct

from sitegen.problems import Problem, hint_for

DEFAULT = "default"
PARTS = HTML, LOOK, WORDS = "html", "look", "words"
# Themes were written while the folders had these names.
_EARLIER_NAMES = {"templates": HTML, "static": LOOK}


class Theme(Struct, frozen=True):
    """`folders`: the chosen theme first, the default one last."""

    folders: tuple[Path, ...]

    def word_texts(self, language: str) -> tuple[str, ...]:
        """Word catalogues to lay over each other: English, then the wanted language, the default theme before the chosen."""
        wanted = [f"{WORDS}/{name}.yaml" for name in dict.fromkeys(("en", language.partition("-")[0], language))]
        paths = [folder / name for name in wanted for folder in reversed(self.folders)]
        return tuple(path.read_text("utf-8") for path in paths if path.is_file())

    def look_files(self) -> Iterator[tuple[str, bytes]]:
        """(name below look/, content), sorted by name."""
        paths: dict[str, Path] = {}
        for folder in reversed(self.folders):
            look = folder / LOOK
            paths.update({path.relative_to(look).as_posix(): path for path in look.rglob("*") if path.is_file()})
        for name in sorted(paths):
            yield name, paths[name].read_bytes()


def packaged_themes() -> Path:
    """The themes that come with sitegen: inside the installed package, or beside it in a checkout."""
    package = Path(__file__).resolve().parents[1]
    inside = package / "themes"
    return inside if inside.is_dir() else package.parent / "themes"


def open_theme(name: str, themes: Path) -> tuple[Theme, list[Problem]]:
    """The theme of that name in the author's folder, else in the package; the default theme under it."""
    packaged = packaged_themes()
    default = next(folder for folder in (themes / DEFAULT, packaged / DEFAULT) if folder.is_dir())
    own = next((folder for folder in (themes / name, packaged / name) if folder.is_dir()), None)
    if own is None:
        names = [folder.name for root in (themes, packaged) if root.is_dir() for folder in root.iterdir() if folder.is_dir()]
        return Theme((default,)), [Problem(f"{themes}/{name}", 1, 1, f"no theme '{name}'", hint_for(name, names))]
    under = packaged / DEFAULT
    return Theme(tuple(dict.fromkeys((own, default, under)))), _unknown_folders(own, f"{themes}/{name}")


def _unknown_folders(theme: Path, shown_path: str) -> list[Problem]:
    """A misnamed folder would be passed over without a word, and the default theme shown in its place."""
    folders = sorted(path.name for path in theme.iterdir() if path.is_dir() and path.name[0] not in "._")
    unknown = [name for name in folders if name not in PARTS]
    return [Problem(f"{shown_path}/{name}", 1, 1, f"'{name}' is no folder of a theme", _folder_hint(name)) for name in unknown]


def _folder_hint(name: str) -> str:
    return f"did you mean '{_EARLIER_NAMES[name]}'?" if name in _EARLIER_NAMES else hint_for(name, PARTS)
