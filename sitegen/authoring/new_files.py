"""New files for the author: written whole or not at all, never over one that exists."""

import contextlib
import os
import shutil
from collections.abc import Mapping, Sequence
from pathlib import Path

from sitegen.file_moves import move
from sitegen.problems import DiaryProblems, Problem


def refuse(shown: str, wrong: str, remedy: str = "") -> DiaryProblems:
    """One problem with a file as a whole, ready to be raised."""
    return DiaryProblems([Problem(shown, 1, 1, wrong, remedy)])


def write_new(path: Path, text: str, shown: str, remedy: str) -> None:
    """Raises DiaryProblems where the file is there already, even if it appeared this very moment, or cannot be written."""
    begun = False
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("x", encoding="utf-8", newline="\n") as file:
            begun = True
            file.write(text)
    except FileExistsError as there:
        raise refuse(shown, "exists already and is left as it is", remedy) from there
    except OSError as trouble:
        if begun:
            path.unlink(missing_ok=True)
        raise refuse(shown, f"cannot be written: {trouble.strerror or 'the system refuses'}") from trouble


def write_over(path: Path, text: str, shown: str) -> None:
    """The new text in one step: a reader, or a crash, finds the old or the new one, never a part."""
    beside = path.with_name(f".{path.name}.{os.getpid()}")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with beside.open("w", encoding="utf-8", newline="\n") as file:
            file.write(text)
        move(beside, path)
    except OSError as trouble:
        with contextlib.suppress(OSError):
            beside.unlink()
        raise refuse(shown, f"cannot be written: {trouble.strerror or 'the system refuses'}") from trouble


def fill_empty_folder(folder: Path, files: Mapping[str, str], shown: str) -> None:
    """Text files by their path inside the folder. Raises DiaryProblems where anything, even hidden, lies in it."""
    try:
        if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
            what = "is not empty" if folder.is_dir() else "is a file"
            raise refuse(shown, f"{what}: a new diary begins in a folder of its own", "name one that does not exist yet")
    except OSError as trouble:
        raise refuse(shown, f"cannot be read: {trouble.strerror or 'the system refuses'}") from trouble
    above = [place for place in (folder, *folder.parents) if not place.exists()]
    try:
        for name, text in files.items():
            write_new(folder / name, text, f"{shown}/{name}", "")
    except DiaryProblems:
        _empty_again(folder, above)
        raise


def _empty_again(folder: Path, above: Sequence[Path]) -> None:
    """On a full disk, say: what was begun would be in the way of the next try. Nothing of the author's lies in it. The folders
    `above`, deepest first, were not there before."""
    with contextlib.suppress(OSError):
        for inside in folder.iterdir():
            if inside.is_dir():
                shutil.rmtree(inside, ignore_errors=True)
            else:
                inside.unlink()
        for place in above:
            place.rmdir()
