"""What a thing of a kind owes to the project: its line in a registry, a page that shows it, an address that is spelt once."""

import ast
import re
from collections.abc import Iterable, Iterator

from tests.gate.sources import PACKAGE, Sources, calls_of, module_of, parsed, python_files, room_of

REGISTRIES = {
    "pages": ("KIND", ("PAGE_KINDS", "ENTRY_PAGE_KINDS")),
    "pages/entry_sections": ("SECTION", ("SECTIONS",)),
    "charts": ("CHART", ("CHARTS",)),
    "feeds": ("FEED", ("FEEDS",)),
    "cautions": ("CAUTION", ("CAUTIONS",)),
    "claims": ("CLAIM", ("CLAIMS",)),
    "reading/capture_logs": ("READER", ("READERS",)),
}
"""Folder to the constant in which a file of it ends, and to the tuples of its registry."""
ADDRESS_FILE = "sitegen/diary/addresses.py"
AUTHORS_FOLDERS = ("reading", "authoring", "diary")
"""Rooms that name the author's own folders, some of which are called as folders of the site (`rigs/NAME.yaml`)."""
MARKUP = re.compile(r"(?<!\?P)</?[a-zA-Z][\w:-]*(\s|/?>)|<!")
CODE_THAT_DRAWS = {
    "sitegen/charts/clean_svg.py": "SVG that matplotlib drew",
    "sitegen/charts/svg_writer.py": "SVG of computed places",
    "sitegen/pages/ribbon_card.py": "SVG of computed places, to be made a picture",
    "sitegen/pages/star_pictures.py": "SVG of computed places, in a file of its own",
    "sitegen/feeds/sitemap.py": "XML for machines",
    "sitegen/pictures/avm.py": "XML inside pictures",
}
"""Files whose text holds tags, and of what. HTML stands in templates, where a theme can change it; the preview (`authoring`) has
no theme before a first build."""


def registries_are_whole(sources: Sources) -> list[str]:
    """By what stands in the registry's tuples: a line in a comment, or a name used elsewhere, registers nothing."""
    wrong = []
    for folder, (ending, tuples) in REGISTRIES.items():
        registry = f"{PACKAGE}/{folder}/registry.py"
        named = _registered(sources[registry], ending, tuples)
        wrong += [
            line_to_add(folder, module_of(path), ending)
            for path in python_files(sources)
            if path.rpartition("/")[0] == f"{PACKAGE}/{folder}" and path != registry
            if _assigns(sources[path], ending) and module_of(path).rpartition(".")[2] not in named
        ]
    return wrong


def line_to_add(folder: str, module: str, ending: str) -> str:
    return f"add to {PACKAGE}/{folder}/registry.py: {module.rpartition('.')[2]}.{ending},"


def _registered(text: str, ending: str, tuples: Iterable[str]) -> set[str]:
    """Modules whose ENDING is an element of one of the tuples."""
    names = _names_from(text, ending)
    elements = [
        element
        for node in parsed(text).body
        if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name) and node.target.id in tuples
        if isinstance(node.value, ast.Tuple)
        for element in node.value.elts
    ]
    named = {ast.unparse(element.value) for element in elements if isinstance(element, ast.Attribute) and element.attr == ending}
    return named | {names[element.id] for element in elements if isinstance(element, ast.Name) and element.id in names}


def every_fact_is_registered(sources: Sources) -> list[str]:
    """The registry gives each fact its place and its type."""
    registry = f"{PACKAGE}/facts/registry.py"
    named = {node.attr for node in ast.walk(parsed(sources[registry])) if isinstance(node, ast.Attribute)}
    named |= {node.id for node in ast.walk(parsed(sources[registry])) if isinstance(node, ast.Name)}
    return [
        f"add to {registry}: {name.lower()}: Annotated[…, {module_of(path).rpartition('.')[2]}.{name}]"
        for path in python_files(sources)
        if room_of(path) == "facts" and path != registry
        for name in _facts(sources[path])
        if name not in named
    ]


def _facts(text: str) -> list[str]:
    """Names of the module's constants that are facts."""
    return _constants_of(text, "Fact[")


def _constants_of(text: str, kind: str) -> list[str]:
    return [
        node.target.id
        for node in parsed(text).body
        if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name)
        if ast.unparse(node.annotation).startswith(kind)
    ]


def every_rule_is_registered(sources: Sources) -> list[str]:
    """A rule that no run names would never be done."""
    registry = f"{PACKAGE}/build/registry.py"
    tuples = (node for node in ast.walk(parsed(sources[registry])) if isinstance(node, ast.Tuple))
    named = {element.id for each in tuples for element in each.elts if isinstance(element, ast.Name)}
    return [
        f"add to {registry}: {name}"
        for path in python_files(sources)
        if path.startswith(f"{PACKAGE}/build/rules/")
        for name in _constants_of(sources[path], "Rule[")
        if name not in named
    ]


def _assigns(text: str, name: str) -> bool:
    targets = (
        target
        for node in parsed(text).body
        if isinstance(node, ast.Assign | ast.AnnAssign)
        for target in (node.targets if isinstance(node, ast.Assign) else [node.target])
    )
    return any(isinstance(target, ast.Name) and target.id == name for target in targets)


def _names_from(text: str, ending: str) -> dict[str, str]:
    """Names under which ENDING itself is imported, to the modules that it is imported from."""
    imports = (node for node in ast.walk(parsed(text)) if isinstance(node, ast.ImportFrom))
    pairs = ((alias, (node.module or "").rpartition(".")[2]) for node in imports for alias in node.names)
    return {alias.asname or alias.name: module for alias, module in pairs if alias.name == ending}


def every_chart_is_shown(sources: Sources) -> list[str]:
    """A page uses it, or a function of its file that draws it: an import of something else shows nothing."""
    pages = [sources[path] for path in python_files(sources) if room_of(path) == "pages"]
    used = {pair for text in pages for pair in _used_of_modules(text)}
    charts = (path for path in python_files(sources) if room_of(path) == "charts" and _assigns(sources[path], "CHART"))
    return [
        f"{path}: no page shows this chart"
        for path in charts
        if not used & {(module_of(path).rpartition(".")[2], name) for name in ("CHART", *_functions_with(sources[path], "CHART"))}
    ]


def _functions_with(text: str, name: str) -> list[str]:
    """Names of the module's functions that use a name."""
    functions = (node for node in parsed(text).body if isinstance(node, ast.FunctionDef))
    return [one.name for one in functions if name in (node.id for node in ast.walk(one) if isinstance(node, ast.Name))]


def _used_of_modules(text: str) -> Iterator[tuple[str, str]]:
    """(module, name in it) of every `module.name`, and of every name that is imported and used."""
    used = {node.id for node in ast.walk(parsed(text)) if isinstance(node, ast.Name)}
    for node in ast.walk(parsed(text)):
        if isinstance(node, ast.Attribute):
            yield ast.unparse(node.value), node.attr
        elif isinstance(node, ast.ImportFrom):
            names = (alias for alias in node.names if (alias.asname or alias.name) in used)
            yield from (((node.module or "").rpartition(".")[2], alias.name) for alias in names)


def addresses_are_spelt_once(sources: Sources) -> list[str]:
    """No text holds an address of the site, but in the file that spells them; no template holds one."""
    constants = (node.value for node in ast.walk(parsed(sources[ADDRESS_FILE])) if isinstance(node, ast.Constant))
    words = [word for word in constants if isinstance(word, str) and re.fullmatch(r"[a-z0-9.-]+(/|\.\w+)", word)]
    folders = re.compile(rf"(^|/)({'|'.join(re.escape(word) for word in words if word.endswith('/'))})")
    files = {word for word in words if not word.endswith("/")} - {"index.html"}  # a template's name, too
    in_code = [
        f"{path}:{node.lineno}: {node.value!r} is an address: name it in {ADDRESS_FILE}"
        for path in python_files(sources)
        if path != ADDRESS_FILE
        for node in _texts(sources[path])
        if " " not in node.value
        if node.value.rpartition("/")[2] in files or (room_of(path) not in AUTHORS_FOLDERS and folders.search(node.value))
    ]
    templates = ((path, text) for path, text in sources.items() if path.endswith(".html"))
    in_templates = [
        f"{path}: {found[0]} is an address: write {{{{ link(to.…) }}}}"
        for path, text in templates
        for found in re.finditer(r'(?:href|src|srcset|action)="[\w./][^"]*"', text)
    ]
    return in_code + in_templates


def _texts(text: str) -> Iterator[ast.Constant]:
    """String constants but for docstrings and parts of an author's file's path (`entries/NAME.md`)."""
    bare = {id(node.value) for node in ast.walk(parsed(text)) if isinstance(node, ast.Expr)}
    joined = (node for node in ast.walk(parsed(text)) if isinstance(node, ast.JoinedStr) and ".md" in ast.unparse(node))
    bare |= {id(part) for node in joined for part in node.values}
    for node in ast.walk(parsed(text)):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in bare:
            yield node


def html_stands_in_templates(sources: Sources) -> list[str]:
    """Nor does code say of a text that it is HTML: a template does, where it stands."""
    said = [
        f"{path}:{line}: {words}: say '|safe' in the template"
        for path in python_files(sources)
        for line, name, words in calls_of(path, sources)
        if name == "Markup"
    ]
    return said + [
        f"{path}:{node.lineno}: {node.value[:40]!r}: write HTML in a template, where a theme can change it"
        for path in python_files(sources)
        if room_of(path) != "authoring" and path not in CODE_THAT_DRAWS
        for node in _texts(sources[path])
        if MARKUP.search(node.value)
    ]
