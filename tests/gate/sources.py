"""The package's source files as text, so that a check can be run on them as they are, and on a sabotaged copy in memory."""

import ast
import re
from collections.abc import Iterator, Mapping
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = "sitegen"
_LAZY = {"import_module", "importlib.import_module", "__import__", "LazyModule"}
_MODULE_NAME = re.compile(rf"{PACKAGE}(\.\w+)+")
_FUNCTION_NAME = re.compile(rf"({PACKAGE}(?:\.\w+)+):\w+")

Sources = Mapping[str, str]
"""Text by path relative to the repository, POSIX: Python files of the package, templates of the themes, and DEVELOPERS.md."""


class Import(NamedTuple):
    """`module` is a file of the package or a library; `late` where it stands in a function or a call, so that it loads later."""

    module: str
    line: int
    late: bool


def sources_of(root: Path = ROOT) -> dict[str, str]:
    files = [*(root / PACKAGE).rglob("*.py"), *(root / "themes").rglob("*.html"), root / "DEVELOPERS.md"]
    return {path.relative_to(root).as_posix(): path.read_text("utf-8") for path in sorted(files)}


def python_files(sources: Sources) -> list[str]:
    return [path for path in sources if path.endswith(".py")]


@lru_cache(maxsize=4096)
def parsed(text: str) -> ast.Module:
    return ast.parse(text)


def room_of(path: str) -> str:
    return path.split("/")[1].removesuffix(".py")


def module_of(path: str) -> str:
    return path.removesuffix(".py").replace("/", ".").removesuffix(".__init__")


def modules_of(sources: Sources) -> dict[str, str]:
    """Path by module name."""
    return {module_of(path): path for path in python_files(sources)}


def imports_of(path: str, sources: Sources) -> list[Import]:
    """Every import, those inside functions, behind `TYPE_CHECKING`, by name in a call (`import_module`, `LazyModule`) and by the
    name of a function in a text ('sitegen.room.module:function') included.

    `from package import module` names the module, not the package alone.
    """
    return list(_imports(sources[path], frozenset(modules_of(sources))))


@lru_cache(maxsize=4096)
def _imports(text: str, known: frozenset[str]) -> tuple[Import, ...]:
    tree = parsed(text)
    late = _lines_in_functions(tree)
    return tuple(imported for node in ast.walk(tree) for imported in _imported(node, known, late))


def _lines_in_functions(tree: ast.Module) -> set[int]:
    functions = (node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda))
    return {line for function in functions for line in range(function.lineno, (function.end_lineno or function.lineno) + 1)}


def _imported(node: ast.AST, known: frozenset[str], late: set[int]) -> Iterator[Import]:
    if isinstance(node, ast.Import):
        yield from (Import(alias.name, node.lineno, node.lineno in late) for alias in node.names)
    elif isinstance(node, ast.ImportFrom):
        for name in _from(node, known):
            yield Import(name, node.lineno, node.lineno in late)
    elif isinstance(node, ast.Call) and ast.unparse(node.func) in _LAZY:
        for name in _named_in(node):
            yield Import(name, node.lineno, True)
    elif isinstance(node, ast.Constant) and isinstance(node.value, str) and (named := _FUNCTION_NAME.fullmatch(node.value)):
        yield Import(named[1], node.lineno, True)


def _from(node: ast.ImportFrom, known: frozenset[str]) -> list[str]:
    module = node.module or ""
    inner = [f"{module}.{alias.name}" for alias in node.names if f"{module}.{alias.name}" in known]
    return inner if len(inner) == len(node.names) else [module, *inner]


def _named_in(call: ast.Call) -> Iterator[str]:
    """Module names written out in the call, whatever the call is made of."""
    texts = (node.value for node in ast.walk(call) if isinstance(node, ast.Constant) and isinstance(node.value, str))
    yield from (text for text in texts if _MODULE_NAME.fullmatch(text))


def calls_of(path: str, sources: Sources) -> Iterator[tuple[int, str, str]]:
    """(line, the last name of what is called, all of it) of every call."""
    for node in ast.walk(parsed(sources[path])):
        if isinstance(node, ast.Call):
            words = ast.unparse(node.func)
            yield node.lineno, words.rpartition(".")[2], words


def table_of(sources: Sources) -> dict[str, set[str]]:
    """Room to the rooms it may import, from the table in DEVELOPERS.md. 'all but …': the rooms before it less those named."""
    rooms: dict[str, set[str]] = {}
    for line in sources["DEVELOPERS.md"].splitlines():
        cells = [cell.strip() for cell in line.strip("|").split("|")]
        if len(cells) == 4 and re.fullmatch(r"`\w+`", cells[0]):
            named = set(re.findall(r"`(\w+)`", cells[3]))
            rooms[cells[0].strip("`")] = set(rooms) - named if cells[3].startswith("all") else named
    return rooms
