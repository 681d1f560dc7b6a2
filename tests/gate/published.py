"""What the project asks of its expected values: a source, a tolerance, a reason for it. Each check gives what is wrong, in words
that say what to do."""

import ast
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import fields, is_dataclass
from decimal import Decimal
from types import ModuleType
from typing import Any

from tests.published_values import record

AUTHORITIES = re.compile(
    r"\b(1[5-9]|20)\d\d\b"  # a year: a paper, a book, a page
    rf"|{record.COMMON_PRACTICE}|{record.FROM_MEMORY}"
    r"|\b(computed|worked (out )?by hand|added up by hand|counted)\b"
    r"|\bas the (author wrote|log has|test hands) it\b"
    r"|\b(documentation|test suite|manual|tests|table|pages) (of|in|for)\b|/tests/"
    r"|\b(astropy|skyfield|Gaia DR|Starlink \w+ SC/) ?\d|US Naval Observatory"
)
"""How a source is told: by its year, by who computed it and how, or by the two confessions."""
REASON = re.compile(r"[a-z]{3}")
RECORDS = tuple(thing for thing in vars(record).values() if is_dataclass(thing))
TOLERANCES = ("tolerance", "tolerance_s")
DIGITS = 4
"""A number with as many digits is nobody's own choice: it came from somewhere."""
COMPARING = ("approx", "assert_allclose", "isclose", "allclose")


def module_s_values(module: ModuleType) -> list[str]:
    """Every constant of a module is a record, or holds nothing else; a text is a part of sources."""
    file = f"{module.__name__.replace('.', '/')}.py"
    constants = {name: thing for name, thing in vars(module).items() if re.fullmatch(r"[A-Z][A-Z0-9_]*", name)}
    wrong = (line for name, thing in constants.items() for line in value_s_faults(thing, name))
    return [f"{file}: {line}" for line in wrong]


def value_s_faults(thing: Any, name: str) -> Iterator[str]:
    if isinstance(thing, RECORDS):
        yield from _faults_of(thing, name)
    elif is_dataclass(thing):
        parts = {field.name: getattr(thing, field.name) for field in fields(thing)}
        records = {key: part for key, part in parts.items() if isinstance(part, RECORDS)}
        yield from () if records else (f"{name} has no value with a source",)
        for key, part in records.items():
            yield from _faults_of(part, f"{name}.{key}")
    elif isinstance(thing, Mapping | tuple | list):
        parts = thing.items() if isinstance(thing, Mapping) else enumerate(thing)
        for key, part in parts:
            yield from value_s_faults(part, f"{name}[{key!r}]")
    elif not isinstance(thing, str):
        yield f"{name}: {thing!r} stands without a source; make it a record of record.py"


def _faults_of(value: Any, name: str) -> Iterator[str]:
    if not AUTHORITIES.search(value.source):
        yield f"{name} names no source: {value.source!r}"
    for key in TOLERANCES:
        if hasattr(value, key) and not getattr(value, key) > 0:
            yield f"{name} has no tolerance"
    if hasattr(value, "why") and not REASON.search(value.why):
        yield f"{name} gives no reason for its tolerance: {value.why!r}"


def file_s_values(name: str, rows: record.Rows, heading: str) -> list[str]:
    """A CSV file says source, tolerance and reason above its rows; 'beside each' where the rows have them."""
    beside = rows.source == "beside each"
    wrong = [] if rows.rows else [f"{name} has no rows"]
    wrong += [] if beside or AUTHORITIES.search(rows.source) else [f"{name} names no source: write '# source: …' above its rows"]
    wrong += [] if re.search(r"^# tolerance: .", heading, re.MULTILINE) else [f"{name} has no '# tolerance: …' above its rows"]
    wrong += [] if REASON.search(rows.why) else [f"{name} gives no reason: write '# why: …' above its rows"]
    if beside:
        wrong += [f"{name}: {row[0]} names no source: {row[-1]!r}" for row in rows.rows if not AUTHORITIES.search(row[-1])]
    return wrong


def numbers_without_a_record(path: str, text: str) -> list[str]:
    """A test compares with a number of many digits only through a record, which says where it is from and how near is near."""
    return [
        f"{path}:{node.lineno}: {number} stands without a source; write Published({number}, tolerance, source, why).agrees(…)"
        for node in ast.walk(ast.parse(text))
        for number in _expected(node)
        if len(Decimal(repr(number)).normalize().as_tuple().digits) >= DIGITS
    ]


def _expected(node: ast.AST) -> Iterator[float]:
    if isinstance(node, ast.Call) and ast.unparse(node.func).rpartition(".")[2] in COMPARING:
        yield from _floats(node)
    elif isinstance(node, ast.Compare) and "abs(" in ast.unparse(node.left):
        yield from _floats(node.left)


def _floats(node: ast.AST) -> Iterator[float]:
    return (part.value for part in ast.walk(node) if isinstance(part, ast.Constant) and isinstance(part.value, float))


UNOPENABLE: dict[str, Callable[[str, str], bool]] = {
    r"(the project's|these) references|reference sheets?|\(references\b": lambda *_: True,
    r"the contract's|the contract\b(?! of (a|an|page|the graph|kinds)\b)": lambda _, line: "as contract" not in line,
    r"the (issue|brief)'?s?\b": lambda *_: True,
    r"the (engine's )?promises?\b(?! (that|is about))": lambda *_: True,
    r"(formulae|practice|names|sentences|house|references)\.md": lambda *_: True,
    r"(?<!, or )\bthe house\b": lambda path, _: "charts" not in path,
}
"""Documents that nobody who reads the tests can open. The house of the charts is house_style.py, which everybody can."""


def names_what_nobody_can_open(path: str, text: str) -> list[str]:
    return [
        f"{path}:{number}: {named[0]!r} is no document that a reader can open: name the source itself"
        for number, line in enumerate(text.splitlines(), 1)
        for pattern, counts in UNOPENABLE.items()
        if (named := re.search(pattern, line, re.IGNORECASE)) and counts(path, line)
    ]
