"""Author files where nobody looks: passed over in silence, they would seem lost."""

from collections.abc import Iterator

from sitegen.problems import Problem, did_you_mean
from sitegen.reading.content_folder import ContentFolder
from sitegen.reading.model.author_file import AuthorFile

ENDINGS = (".md", ".yaml", ".yml")


def stray_files(content: ContentFolder, kinds: tuple[AuthorFile, ...]) -> list[Problem]:
    """Warnings for files in a folder whose name is nearly right, or in none; errors for links that are not followed."""
    single = {kind.pattern for kind in kinds if "/" not in kind.pattern}
    folders = [kind.pattern.partition("/")[0] for kind in kinds if "/" in kind.pattern]
    return [*_outside(content, single, folders), *_misnamed(content, folders), *_linked(content, single, folders)]


def _outside(content: ContentFolder, single: set[str], folders: list[str]) -> Iterator[Problem]:
    for name in content.directly_in(""):
        stem = name.partition(".")[0]
        meant = {other for other in single if other.partition(".")[0] == stem.casefold() and other not in content.names}
        if name.endswith(ENDINGS) and name not in single and not meant and stem.casefold() != "readme":
            where = "/, ".join(folders)
            yield Problem(content.shown(name), 1, 1, "lies where nothing is read", f"move it into one of {where}/", "warning")


def _misnamed(content: ContentFolder, folders: list[str]) -> Iterator[Problem]:
    for folder in sorted(folder for folder in content.folders if "/" not in folder and folder not in folders):
        near = did_you_mean(folder, folders)
        if near and any(name.endswith(ENDINGS) for name in content.directly_in(folder)):
            yield Problem(content.shown(folder), 1, 1, "a folder of which nothing is read", f"did you mean '{near}'?", "warning")


def _linked(content: ContentFolder, single: set[str], folders: list[str]) -> Iterator[Problem]:
    for link in sorted(content.links_out):
        if link in single or link.partition("/")[0] in folders:
            remedy = "copy what it points to into content/"
            yield Problem(content.shown(link), 1, 1, "a symbolic link that is not followed", remedy)
