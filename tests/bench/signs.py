"""Turns round one sign at a time in the formulae: does a test go red for each?

    python tests/bench/signs.py [sitegen/sky/moon.py ...] [--jobs 2]

Every `+`, `-` and unary minus in `sitegen/sky` and `sitegen/facts` counts as a formula's sign; texts that are joined, and
places in lists, are among them. A sign that nobody misses is printed with its place: a gap in the tests, or it changes nothing.
"""

import argparse
import ast
import contextlib
import io
import os
import sys
from collections.abc import Iterator
from importlib.machinery import SourceFileLoader
from multiprocessing import get_context
from pathlib import Path
from types import CodeType
from typing import NamedTuple

import pytest

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))
FORMULAE = ("sitegen/sky", "sitegen/facts")
TESTS = ("tests/sky", "tests/facts", "tests/authoring/test_outlook.py", "tests/authoring/test_outlook_hours.py",
         "tests/whole/test_witnesses_told.py")  # fmt: skip
LIBRARIES = ("numpy", "erfa", "astropy.time", "astropy.coordinates")


class Sign(NamedTuple):
    file: str
    number: int
    """Among the signs of its file, as `ast.walk` meets them."""
    line: int


class _Turned(ast.NodeTransformer):
    def __init__(self, number: int) -> None:
        self.left = number

    def generic_visit(self, node: ast.AST) -> ast.AST:
        node = super().generic_visit(node)
        if not is_sign(node):
            return node
        self.left -= 1
        if self.left != -1:
            return node
        if isinstance(node, ast.UnaryOp):
            return node.operand
        assert isinstance(node, ast.BinOp)
        return ast.copy_location(ast.BinOp(node.left, ast.Sub() if isinstance(node.op, ast.Add) else ast.Add(), node.right), node)


def is_sign(node: ast.AST) -> bool:
    if isinstance(node, ast.UnaryOp):
        return isinstance(node.op, ast.USub)
    return isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub)


def turned(text: str, number: int) -> ast.Module:
    module: ast.Module = ast.fix_missing_locations(_Turned(number).visit(ast.parse(text)))
    return module


def signs_in(file: str) -> Iterator[Sign]:
    """In the order in which they are turned."""
    found: list[ast.AST] = []

    class Counting(ast.NodeVisitor):
        def generic_visit(self, node: ast.AST) -> None:
            super().generic_visit(node)
            if is_sign(node):
                found.append(node)

    Counting().visit(ast.parse((ROOT / file).read_text("utf-8")))
    yield from (Sign(file, number, node.lineno) for number, node in enumerate(found))  # type: ignore[attr-defined]


def is_missed(sign: Sign) -> bool:
    """Whether all tests pass with it turned round. Run in a process of its own, which has loaded none of the package."""
    path = str(ROOT / sign.file)
    really = SourceFileLoader.get_code

    def get_code(loader: SourceFileLoader, name: str) -> CodeType | None:
        if os.path.realpath(loader.path) != path:
            return really(loader, name)
        return compile(turned(Path(path).read_text("utf-8"), sign.number), path, "exec")

    SourceFileLoader.get_code = get_code  # type: ignore[assignment, method-assign]
    os.chdir(ROOT)
    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
        return pytest.main(["-x", "-q", "-p", "no:cacheprovider", "-p", "no:xdist", *TESTS]) == pytest.ExitCode.OK


def main() -> None:
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("files", nargs="*")
    words.add_argument("--jobs", type=int, default=2)
    asked = words.parse_args()
    files = asked.files or sorted(str(path.relative_to(ROOT)) for room in FORMULAE for path in (ROOT / room).glob("*.py"))
    signs = [sign for file in files for sign in signs_in(file)]
    for library in LIBRARIES:
        __import__(library)
    missed = 0
    with get_context("fork").Pool(asked.jobs, maxtasksperchild=1) as pool:
        if not pool.apply(is_missed, (Sign(files[0], -1, 0),)):
            raise SystemExit("a test is red before any sign is turned round")
        for sign, nobody in zip(signs, pool.imap(is_missed, signs, chunksize=1), strict=True):
            missed += nobody
            if nobody:
                print(f"{sign.file}:{sign.line}: nobody misses sign {sign.number}", flush=True)
    print(f"{len(signs)} signs turned round, {missed} missed by no test")


if __name__ == "__main__":
    main()
