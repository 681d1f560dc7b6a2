"""Names that say nothing of the thing: a variable or an argument bears the thing's own noun."""

import ast
from collections.abc import Iterator

from tests.gate.sources import Sources, parsed, python_files

GENERIC = frozenset("found one told known made each".split())


def things_bear_their_own_names(sources: Sources) -> list[str]:
    return [
        f"{path}:{line}: '{name}' says nothing of the thing: use its own noun"
        for path in python_files(sources)
        for line, name in _generic_names(parsed(sources[path]))
    ]


def _generic_names(tree: ast.Module) -> Iterator[tuple[int, str]]:
    """Variables, loop variables and arguments; the fields of a record belong to those who read it."""
    fields = {id(field.target) for node in ast.walk(tree) if isinstance(node, ast.ClassDef) for field in _annotated(node)}
    for node in ast.walk(tree):
        if isinstance(node, ast.arg) and node.arg in GENERIC:
            yield node.lineno, node.arg
        elif isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store) and node.id in GENERIC and id(node) not in fields:
            yield node.lineno, node.id


def _annotated(node: ast.ClassDef) -> Iterator[ast.AnnAssign]:
    return (part for part in node.body if isinstance(part, ast.AnnAssign))
