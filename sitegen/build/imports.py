"""Which of the package's own files a module imports, itself or through others: whatever may change what its work gives."""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

_MODULE_NAME = re.compile(r"(sitegen(?:\.\w+)+)(?::\w+)?")
"""As `import_module` takes it, or with a function behind it, as `pkgutil.resolve_name` does."""


def files_behind(package: Path, module: str) -> frozenset[str]:
    """Paths inside `package` (POSIX) of the module 'sitegen.…' and of all that it imports: at the top of a file, inside a
    function, by a name in quotes (`import_module("sitegen.…")`, `resolve_name("sitegen.…:work")`). Imports for type checkers
    do not count.

    Raises ValueError where there is no such module.
    """
    if not _files_of(package, module):
        raise ValueError(f"no module {module}")
    behind: set[str] = set()
    waiting = [module]
    while waiting:
        for name in _files_of(package, waiting.pop()):
            if name not in behind:
                behind.add(name)
                waiting += _imported_by(package / name)
    return frozenset(behind)


@cache
def _imported_by(file: Path) -> tuple[str, ...]:
    """Read once a process: most files stand behind several modules."""
    return tuple(imported(ast.parse(file.read_bytes())))


def imported(tree: ast.AST) -> Iterator[str]:
    """Names of the package's modules; also of what lies in a module, since only the disk tells which is which."""
    for node in _runtime_nodes(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node.module
            yield from (f"{node.module}.{alias.name}" for alias in node.names)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str) and (named := _MODULE_NAME.fullmatch(node.value)):
            yield named[1]


def _runtime_nodes(tree: ast.AST) -> Iterator[ast.AST]:
    """As `ast.walk`, without what stands under `if TYPE_CHECKING`."""
    waiting = [tree]
    while waiting:
        node = waiting.pop()
        yield node
        if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.unparse(node.test):
            waiting += node.orelse
        else:
            waiting += ast.iter_child_nodes(node)


def _files_of(package: Path, module: str) -> list[str]:
    """The file of a module and the `__init__.py` of every package around it; empty for what is no module of this package."""
    root, *parts = module.split(".")
    if root != "sitegen":
        return []
    path = "/".join(parts)
    own = [name for name in (f"{path}.py", f"{path}/__init__.py") if parts and (package / name).is_file()]
    around = ["/".join([*parts[:depth], "__init__.py"]) for depth in range(len(parts))]
    return own + [name for name in around if (package / name).is_file()] if own else []
