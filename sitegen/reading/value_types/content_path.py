"""Paths inside content/: of one file, or of the logs a pattern finds."""

import re
import unicodedata

from msgspec import Struct

from sitegen.diary.addresses import DEVICE_NAMES
from sitegen.problems import did_you_mean
from sitegen.reading.content_folder import ContentFolder
from sitegen.reading.diagnostics import Diagnostics
from sitegen.reading.nodes import Node, quoted
from sitegen.reading.path_pattern import files_matching, is_pattern, plain_start
from sitegen.reading.value_types.value_type import JsonSchema, text_of

_DRIVE_OR_SCHEME = re.compile(r"[A-Za-z][A-Za-z0-9+.-]*:")


class ContentPath(Struct, frozen=True):
    """One existing file; read as the disk spells its path, POSIX, relative to content/. No suffixes: any will do."""

    suffixes: tuple[str, ...] = ()

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> str | None:
        text = text_of(node, label, diagnostics, "a path inside content/")
        if text is None:
            return None
        text = unicodedata.normalize("NFC", text)
        diagnostics.asked.append(text)
        trouble = path_trouble(text, diagnostics.content) or self._foreign(text)
        if trouble is None and text in diagnostics.content.names:
            return diagnostics.content.names[text]
        wrong, remedy = trouble or missing(text, diagnostics.content)
        diagnostics.error(node, f"{label} is {shown(text)}, {wrong}", remedy)
        return None

    def schema(self) -> JsonSchema:
        return {"type": "string"}

    def words(self) -> str:
        return "path inside content/"

    def _foreign(self, text: str) -> tuple[str, str] | None:
        if not self.suffixes or text.lower().endswith(self.suffixes):
            return None
        return "no picture that a page can be made from", "save it as JPEG, PNG, TIFF, WebP, AVIF or FITS"


class LogPattern(Struct, frozen=True):
    """A path or pattern (`*`, `?`, `[…]`, `**`) that finds at least one file; read as those files, sorted."""

    def read(self, node: Node, label: str, diagnostics: Diagnostics) -> tuple[str, ...] | None:
        text = text_of(node, label, diagnostics, "a path or pattern inside content/")
        if text is None:
            return None
        text = unicodedata.normalize("NFC", text)
        diagnostics.asked.append(plain_start(text))
        trouble = path_trouble(text, diagnostics.content)
        paths = () if trouble else files_matching(text, diagnostics.content)
        if paths:
            return paths
        wrong, remedy = trouble or nothing_found(text, diagnostics.content)
        diagnostics.error(node, f"{label} is {shown(text)}, {wrong}", remedy)
        return None

    def schema(self) -> JsonSchema:
        return {"type": "string"}

    def words(self) -> str:
        return "path or pattern (`*`, `?`, `[…]`, `**`) inside content/"


def shown(path: str) -> str:
    """In quotes, with what cannot be seen as an escape."""
    return quoted(path if path.isprintable() else ascii(path)[1:-1])


def path_trouble(text: str, content: ContentFolder) -> tuple[str, str] | None:
    """(what it is, remedy) of a path that may not stand in a diary wherever it leads; None where it may."""
    if "\\" in text:
        return "which has a backslash in it", f"write {quoted(text.replace(chr(92), '/'))}"
    if text.startswith(("/", "~")) or _DRIVE_OR_SCHEME.match(text):
        return "not a path inside content/", "copy the file into content/ and name it from there"
    if not text.isprintable():
        return "which holds an unprintable character", "rename the file"
    parts = text.split("/")
    if ".." in parts:
        return "which leaves content/", "copy the file into content/ and name it from there"
    if "" in parts or "." in parts:
        return "which has an empty step in it", f"write {quoted('/'.join(p for p in parts if p not in ('', '.')))}"
    return next(filter(None, (_part_trouble(part) for part in parts)), None) or _through_link(text, content)


def missing(text: str, content: ContentFolder) -> tuple[str, str]:
    """Why a path finds nothing, and what was probably meant."""
    real = content.by_folded_name.get(text.casefold())
    if real:
        return "which differs in case from the file", f"write {quoted(real)}"
    if text in content.folders:
        return "a folder", "name a file in it"
    inside = text.removeprefix("content/")
    if inside != text and inside in content.names:
        return "which does not exist", f"paths begin inside content/: write {quoted(inside)}"
    return "which does not exist", _nearest(text, content)


def nothing_found(text: str, content: ContentFolder) -> tuple[str, str]:
    """The same for a pattern."""
    if not is_pattern(text):
        wrong, remedy = missing(text, content)
        return wrong, f"write '{text}/*'" if text in content.folders else remedy
    other_case = files_matching(text, content, fold_case=True)
    if other_case:
        return "which finds no file", f"in another case it would find {quoted(other_case[0])}"
    inside = text.removeprefix("content/")
    if inside != text and files_matching(inside, content):
        return "which finds no file", f"paths begin inside content/: write {quoted(inside)}"
    return "which finds no file", _folder_hint(text, content) or "put the files there, or correct the pattern"


def _part_trouble(part: str) -> tuple[str, str] | None:
    if part.split(".")[0].strip().casefold() in DEVICE_NAMES:
        return f"in which {quoted(part)} is the name of a device on Windows", "rename it"
    if part.endswith((".", " ")) or part.startswith(" "):
        return f"in which {quoted(part)} begins or ends with a dot or blank", "not every system keeps such names; rename it"
    if ":" in part:
        return f"in which {quoted(part)} has a ':'", "not every system keeps such names; rename it"
    if part.startswith("."):
        return f"in which {quoted(part)} is hidden", "rename it"
    return None


def _through_link(text: str, content: ContentFolder) -> tuple[str, str] | None:
    steps = text.split("/")
    for count in range(1, len(steps) + 1):
        if (link := "/".join(steps[:count])) in content.links_out:
            return "which leads over a symbolic link", f"copy what {quoted(link)} points to into content/"
    return None


def _nearest(text: str, content: ContentFolder) -> str:
    """A file beside it with nearly that name, else one of that name in another folder."""
    folder, _, name = text.rpartition("/")
    beside = {path.rpartition("/")[2]: path for path in content.directly_in(folder)}
    if near := did_you_mean(name, list(beside)[:2_000]):
        return f"did you mean '{beside[near]}'?"
    elsewhere = [path for path in content.in_order if path.rpartition("/")[2] == name]
    return f"did you mean '{elsewhere[0]}'?" if elsewhere else _folder_hint(text, content)


def _folder_hint(text: str, content: ContentFolder) -> str:
    """The first folder of the path that does not exist."""
    steps = text.split("/")[:-1]
    for count in range(1, len(steps) + 1):
        folder = "/".join(steps[:count])
        if is_pattern(folder):
            return ""
        if folder not in content.folders:
            near = did_you_mean(folder, content.folders)
            return f"did you mean the folder '{near}'?" if near else f"there is no folder '{folder}'"
    return ""
