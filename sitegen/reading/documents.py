"""The author's structured files, each read once: which there are, what they hold, and where they are not what they should be."""

from datetime import date
from functools import partial

from msgspec import Struct

from sitegen.diary.addresses import DEVICE_NAMES, slug_of
from sitegen.reading.content_folder import ContentFolder
from sitegen.reading.diagnostics import Diagnostics, Place
from sitegen.reading.front_matter import EntryText, split_entry
from sitegen.reading.model.author_file import AuthorFile
from sitegen.reading.nodes import MapNode, Node, quoted
from sitegen.reading.text_file import read_text
from sitegen.reading.value_types.group import Values
from sitegen.reading.yaml_text import read_yaml

LONGEST_NAME = 100
_OFTEN_TYPED = {"yml": "yaml", "markdown": "md", "txt": "md"}


class Document(Struct, frozen=True):
    """One file as far as it could be read. `values` is None where nothing could; `text` only for entries."""

    slug: str
    relative: str
    diagnostics: Diagnostics
    values: Values | None
    text: EntryText | None = None


def documents_of(kind: AuthorFile, content: ContentFolder, today: date) -> tuple[Document, ...]:
    """Every file of the kind, by name."""
    return tuple(document_of(kind, relative, content, today) for relative in files_of(kind, content))


def files_of(kind: AuthorFile, content: ContentFolder) -> tuple[str, ...]:
    """Their paths inside content/, sorted."""
    return tuple(_own_files(kind.pattern.partition("/")[0], content))


def document_of(kind: AuthorFile, relative: str, content: ContentFolder, today: date) -> Document:
    """One file of a kind that may have many."""
    return _document(kind, relative, _suffix(kind), content, today)


def unread(kind: AuthorFile, relative: str, content: ContentFolder, today: date) -> Document:
    """The file as its name alone tells it."""
    slug = relative.partition("/")[2].removesuffix(_suffix(kind))
    return Document(slug, relative, Diagnostics(content.shown(relative), content, today), None)


def _suffix(kind: AuthorFile) -> str:
    return kind.pattern.partition("/")[2].removeprefix("NAME")


def single_document(kind: AuthorFile, content: ContentFolder, today: date) -> Document:
    """The one file of a kind that has no name of its own."""
    diagnostics = Diagnostics(content.shown(kind.pattern), content, today)
    stem = kind.pattern.partition(".")[0]
    if kind.pattern in content.names:
        text = read_text(content.path(kind.pattern), diagnostics)
        return Document(stem, kind.pattern, diagnostics, None if text is None else _values(kind, text, diagnostics))
    if kind.pattern in content.links_out:
        return Document(stem, kind.pattern, diagnostics, None)  # told with the other links
    other = next((name for name in content.directly_in("") if name.casefold() in (kind.pattern, f"{stem}.yml")), None)
    remedy = f"rename '{other}'" if other else "begin it with the line 'title: …'"
    diagnostics.error(Place(), f"there is no {kind.pattern}", remedy)
    return Document(stem, kind.pattern, diagnostics, None)


def _own_files(folder: str, content: ContentFolder) -> list[str]:
    """Without what editors leave beside a file."""
    return [name for name in content.under(f"{folder}/") if not name.endswith("~") and "/#" not in name]


def _document(kind: AuthorFile, relative: str, suffix: str, content: ContentFolder, today: date) -> Document:
    diagnostics = Diagnostics(content.shown(relative), content, today)
    inside = relative.partition("/")[2]
    slug = inside.removesuffix(suffix)
    if "/" in inside or not inside.endswith(suffix):
        _say_foreign(inside, suffix, kind, diagnostics)
        return Document(slug, relative, diagnostics, None)
    _check_name(slug, suffix, diagnostics)
    text = read_text(content.path(content.names[relative]), diagnostics)
    if text is None:
        return Document(slug, relative, diagnostics, None)
    if suffix != ".md":
        return Document(slug, relative, diagnostics, _values(kind, text, diagnostics))
    parts = split_entry(text, diagnostics)
    values = _values(kind, parts.front_matter, diagnostics, first_line=2) if parts else None
    return Document(slug, relative, diagnostics, values, parts)


def _values(kind: AuthorFile, text: str, diagnostics: Diagnostics, first_line: int = 1) -> Values | None:
    """None where nothing could be read, or more was wrong than there is sense in telling."""
    return diagnostics.until_full(partial(_read_values, kind, text, diagnostics, first_line))


def _read_values(kind: AuthorFile, text: str, diagnostics: Diagnostics, first_line: int) -> Values | None:
    """A file with nothing in it is a mapping without keys, so that what it lacks is told."""
    before = len(diagnostics.problems)
    node: Node | None = read_yaml(text, diagnostics, first_line)
    if node is None and len(diagnostics.problems) > before:
        return None
    if node is None:
        node = MapNode((), 1, 1)
    if not isinstance(node, MapNode):
        diagnostics.error(node, f"holds no keys of {kind.group.called}", f"write lines such as '{_first_key(kind)}'")
        return None
    return kind.group.read(node, kind.group.called, diagnostics)


def _first_key(kind: AuthorFile) -> str:
    key = kind.group.keys[0]
    return f"{key.name}: {key.example}"


def _say_foreign(inside: str, suffix: str, kind: AuthorFile, diagnostics: Diagnostics) -> None:
    folder = kind.pattern.partition("/")[0]
    if "/" in inside:
        diagnostics.error(Place(), f"{folder}/ has no folders of its own", f"move the file up into {folder}/")
        return
    stem, _, ending = inside.rpartition(".")
    meant = _OFTEN_TYPED.get(ending.lower(), ending.lower()) == suffix[1:]
    remedy = f"rename it to '{stem}{suffix}'" if meant else "move it to logs/ or pictures/, or out of content/"
    diagnostics.error(Place(), f"{folder}/ holds only {suffix} files", remedy)


def _check_name(slug: str, suffix: str, diagnostics: Diagnostics) -> None:
    """The name becomes an address: what is not safe in one is refused here."""
    meant = slug_of(slug)
    if slug in DEVICE_NAMES:
        diagnostics.error(Place(), f"{quoted(slug)} is the name of a device on Windows", f"rename it to 'the-{slug}{suffix}'")
    elif slug != meant:
        wrong = f"{quoted(slug + suffix)} cannot become an address"
        diagnostics.error(Place(), wrong, f"rename it to '{meant[:LONGEST_NAME]}{suffix}'")
    elif len(slug) > LONGEST_NAME:
        diagnostics.error(Place(), f"the name is longer than {LONGEST_NAME} characters", "shorten it")


def check_twins(documents: tuple[Document, ...]) -> None:
    """Two names that differ only in case are one address, and one file on many systems."""
    first: dict[str, Document] = {}
    for document in documents:
        earlier = first.setdefault(document.slug.casefold(), document)
        if earlier is not document:
            document.diagnostics.error(Place(), f"differs only in case from '{earlier.relative}'", "rename one of them")
