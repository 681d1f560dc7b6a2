"""Turns round one sign at a time in the formulae: does a test go red for each?

    python tests/bench/signs.py [sitegen/sky/moon.py ...] [--jobs 2]

Every `+`, `-` and unary minus in `sitegen/sky` and `sitegen/facts` counts as a formula's sign; texts that are joined, and
places in lists, are among them. A sign that nobody misses is printed with its place: a gap in the tests, or it changes nothing.
"""

import argparse
import ast
import os
import subprocess
import sys
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from importlib.machinery import SourceFileLoader
from pathlib import Path
from types import CodeType
from typing import NamedTuple

import pytest

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))
TESTS = {
    "sitegen/sky": ("tests/sky", "tests/facts"),
    "sitegen/facts": ("tests/facts", "tests/authoring/test_outlook_hours.py", "tests/authoring/test_outlook.py",
                      "tests/whole/test_witnesses_told.py"),
}  # fmt: skip
"""By the room whose formulae they hold, the quick ones first."""


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
    """Whether all tests pass with it turned round."""
    command = [sys.executable, __file__, sign.file, "--turn", str(sign.number)]
    return subprocess.run(command, cwd=ROOT, capture_output=True, check=False).returncode == pytest.ExitCode.OK


def tests_with(sign: Sign) -> int:
    """The exit status of the tests, in this process, which has loaded none of the package."""
    path = str(ROOT / sign.file)
    really = SourceFileLoader.get_code

    def get_code(loader: SourceFileLoader, name: str) -> CodeType | None:
        if os.path.realpath(loader.path) != path:
            return really(loader, name)
        return compile(turned(Path(path).read_text("utf-8"), sign.number), path, "exec")

    SourceFileLoader.get_code = get_code  # type: ignore[assignment, method-assign]
    return pytest.main(["-x", "-q", "-p", "no:cacheprovider", "-p", "no:xdist", *TESTS[sign.file.rpartition("/")[0]]])


def main() -> None:
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("files", nargs="*")
    words.add_argument("--jobs", type=int, default=2)
    words.add_argument("--turn", type=int, help="run the tests with this sign of the one file turned round; -1 for none of them")
    asked = words.parse_args()
    if asked.turn is not None:
        sys.exit(tests_with(Sign(asked.files[0], asked.turn, 0)))
    files = asked.files or sorted(str(path.relative_to(ROOT)) for room in TESTS for path in (ROOT / room).glob("*.py"))
    signs = [sign for file in files for sign in signs_in(file)]
    if not all(is_missed(Sign(file, -1, 0)) for file in {Path(file).parent: file for file in files}.values()):
        raise SystemExit("a test is red before any sign is turned round")
    missed = 0
    with ThreadPoolExecutor(asked.jobs) as pool:
        for sign, nobody in zip(signs, pool.map(is_missed, signs), strict=True):
            missed += nobody
            if nobody:
                print(f"{sign.file}:{sign.line}: nobody misses sign {sign.number}", flush=True)
    print(f"{len(signs)} signs turned round, {missed} missed by no test")


if __name__ == "__main__":
    main()
