"""What the project asks of its own source. Each check gives the lines that are wrong, in words that say what to do."""

import ast
import re
from collections.abc import Callable, Iterable, Iterator

from tests.gate.kinds import (
    addresses_are_spelt_once,
    every_chart_is_shown,
    every_fact_is_registered,
    every_rule_is_registered,
    html_stands_in_templates,
    registries_are_whole,
)
from tests.gate.names import things_bear_their_own_names
from tests.gate.sources import (
    PACKAGE,
    Sources,
    calls_of,
    imports_of,
    modules_of,
    parsed,
    python_files,
    room_of,
    table_of,
)

LONGEST_FILE, LONGEST_FUNCTION = 300, 40
"""Lines of a file; of a function, those that hold code: no docstring, no comment, no empty line."""
TOP = ("__init__", "__main__")
LATE_ROOMS = ("rebuild", "cli")
OPENING_ROOMS = frozenset(
    "reading catalogue pictures publish authoring limited_reader build rebuild cli file_moves".split()
)
"""`build` reads the store and the theme's files; `cli` writes the measurements it is asked to."""
PAGES_THAT_OPEN = ("sitegen/pages/theme.py",)
OPENERS = frozenset(
    "open read_text read_bytes write_text write_bytes unlink mkdir rmdir touch iterdir scandir listdir rglob rmtree copyfile "
    "copy2 hardlink_to symlink_to fdopen".split()
)
CLOCK_ROOMS = ("cli", "rebuild", "publish")
CLOCK_FILES = (
    "sitegen/authoring/preview.py",
    "sitegen/authoring/preview_server.py",
    "sitegen/authoring/captures/reading.py",  # how long the disk keeps a reader waiting
    "sitegen/build/fingerprint.py",  # when the files were looked at
    "sitegen/build/stats.py",
    "sitegen/build/workers.py",  # how long the end of a process may stay unknown
)
CLOCK = re.compile(r"(datetime|date|time)\.(now|utcnow|today|time|time_ns|monotonic|monotonic_ns|perf_counter|localtime|gmtime)")
CLOCK_NAMES = frozenset({"perf_counter", "monotonic", "time_ns", "monotonic_ns"})
LOADERS = ("import_module", "__import__", "LazyModule", "resolve_name")
PRINTING = ("print", "click.echo", "sys.stdout.write", "sys.stderr.write", "pprint.pprint")
FOR_OTHERS = {
    "CHARTS": "names every chart, so that a test can draw each of them",
    "__all__": "says to the type checker what a module hands on",
    "measured_stars": "lets a test hold the survey's stars against another library's, one by one",
    "key_reference": "writes the page of all keys, which a test holds against it",
}
"""What nothing in the package uses, and why it stands there all the same."""


def rooms_without_a_line(sources: Sources) -> list[str]:
    rooms = {room_of(path) for path in python_files(sources)} - set(TOP)
    return [f"DEVELOPERS.md has no line for the room '{room}'" for room in sorted(rooms - set(table_of(sources)))]


def table_points_left(sources: Sources) -> list[str]:
    table = table_of(sources)
    order = list(table)
    return [f"DEVELOPERS.md: {room} must not know {other}" for room, others in table.items() for other in sorted(others)
            if other not in order or order.index(other) >= order.index(room)]  # fmt: skip


def imports_point_left(sources: Sources) -> list[str]:
    table = table_of(sources)
    wrong = []
    for path in python_files(sources):
        room = room_of(path)
        if room in TOP:
            continue
        allowed = table.get(room, set()) | {room, "__version__"}
        wrong += [
            f"{path}:{imported.line}: {room} must not know {imported.module.split('.')[1]}"
            for imported in imports_of(path, sources)
            if imported.module.startswith(f"{PACKAGE}.") and imported.module.split(".")[1] not in allowed
        ]
    return wrong


def no_import_hides(sources: Sources) -> list[str]:
    """Heavy libraries load late in few places: only rebuild and cli import inside functions, or by a computed name."""
    wrong = []
    for path in python_files(sources):
        if room_of(path) in LATE_ROOMS:
            continue
        for node in ast.walk(parsed(sources[path])):
            if isinstance(node, ast.FunctionDef):
                inner = (each for each in ast.walk(node) if isinstance(each, ast.Import | ast.ImportFrom))
                wrong += [f"{path}:{each.lineno}: an import hides in {node.name}" for each in inner]
        wrong += [f"{path}:{line}: a module is loaded by a computed name" for line in _computed(path, sources)]
    return sorted(set(wrong))


def _computed(path: str, sources: Sources) -> Iterator[int]:
    if path in ("sitegen/lazy_module.py", "sitegen/build/resolve.py"):  # who uses them writes the name out
        return
    for node in ast.walk(parsed(sources[path])):
        if isinstance(node, ast.Call) and ast.unparse(node.func).rpartition(".")[2] in LOADERS:
            first = node.args[0] if node.args else None
            if not (isinstance(first, ast.Constant) and isinstance(first.value, str)):
                yield node.lineno


def no_relative_import(sources: Sources) -> list[str]:
    return [
        f"{path}:{node.lineno}: a relative import"
        for path in python_files(sources)
        for node in ast.walk(parsed(sources[path]))
        if isinstance(node, ast.ImportFrom) and node.level
    ]


def no_cycle(sources: Sources) -> list[str]:
    """The files can be put in an order in which each imports only earlier ones. Imports for type checking alone do not count."""
    known = modules_of(sources)
    graph = {module: _needed(path, sources, known) - {module} for module, path in known.items()}
    while free := {module for module, others in graph.items() if not others & set(graph)}:
        graph = {module: others for module, others in graph.items() if module not in free}
    rings = {module: ", ".join(sorted(others & set(graph))) for module, others in graph.items()}
    return [f"{known[module]}: in an import cycle with {others}" for module, others in rings.items()]


def _needed(path: str, sources: Sources, known: Iterable[str]) -> set[str]:
    checking = _type_checking_lines(sources[path])
    imports = (each for each in imports_of(path, sources) if not each.late and each.line not in checking)
    return {each.module for each in imports} & set(known)


def _type_checking_lines(text: str) -> set[int]:
    blocks = (node for node in ast.walk(parsed(text)) if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.unparse(node.test))
    return {line for block in blocks for line in range(block.lineno, (block.end_lineno or block.lineno) + 1)}


def short_files_and_functions(sources: Sources) -> list[str]:
    wrong = []
    for path in python_files(sources):
        lines = sources[path].splitlines()
        wrong += [f"{path}: {len(lines)} lines, more than {LONGEST_FILE}"] if len(lines) > LONGEST_FILE else []
        functions = (node for node in ast.walk(parsed(sources[path])) if isinstance(node, ast.FunctionDef))
        lengths = ((node, _code_lines(node, lines)) for node in functions)
        wrong += [f"{path}:{node.lineno}: {node.name} has {length} lines, more than {LONGEST_FUNCTION}"
                  for node, length in lengths if length > LONGEST_FUNCTION]  # fmt: skip
    return wrong


def _code_lines(function: ast.FunctionDef, lines: list[str]) -> int:
    """Its signature counts."""
    first = function.body[0]
    is_documented = isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant)
    docstring = range(first.lineno, (first.end_lineno or first.lineno) + 1) if is_documented else range(0)
    numbers = range(function.lineno, (function.end_lineno or function.lineno) + 1)
    code = (lines[number - 1].strip() for number in numbers if number not in docstring)
    return sum(bool(line) and not line.startswith("#") for line in code)


def files_are_opened_where_they_may(sources: Sources) -> list[str]:
    return [
        f"{path}:{line}: {words}: {room_of(path)} opens no files"
        for path in python_files(sources)
        if room_of(path) not in OPENING_ROOMS and path not in PAGES_THAT_OPEN
        for line, name, words in calls_of(path, sources)
        if name in OPENERS or words.startswith(("os.open", "shutil.", "tempfile."))
    ]


def the_clock_is_read_at_the_edges(sources: Sources) -> list[str]:
    return [
        f"{path}:{line}: {words}: hand the time in"
        for path in python_files(sources)
        if room_of(path) not in CLOCK_ROOMS and path not in CLOCK_FILES
        for line, _, words in calls_of(path, sources)
        if CLOCK.fullmatch(words) or words in CLOCK_NAMES
    ]


def only_cli_prints(sources: Sources) -> list[str]:
    return [
        f"{path}:{line}: {words}: only cli prints"
        for path in python_files(sources)
        if room_of(path) != "cli"
        for line, _, words in calls_of(path, sources)
        if words in PRINTING
    ]


def named_functions_exist(sources: Sources) -> list[str]:
    """Every 'module:function' in a text, and the work of every rule, which is named from `sitegen.build` on."""
    wrong = []
    for path in python_files(sources):
        for line, module, name in _named_functions(sources[path]):
            file = f"{module.replace('.', '/')}.py"
            defined = {known for known, _ in _defined(sources.get(file, ""))}
            wrong += [] if name in defined else [f"{path}:{line}: {module} has no {name}"]
    return wrong


def _named_functions(source: str) -> Iterator[tuple[int, str, str]]:
    for node in ast.walk(parsed(source)):
        text = node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else ""
        if named := re.fullmatch(r"(sitegen(?:\.\w+)+|work\.\w+):(\w+)", text):
            module = named[1] if named[1].startswith("sitegen.") else f"{PACKAGE}.build.{named[1]}"
            yield node.lineno, module, named[2]


def nothing_is_dead(sources: Sources) -> list[str]:
    """Every function, class and constant of a module is used by another line of the package, or by a template."""
    used = {name for path in python_files(sources) for name in _uses(sources[path])}
    used |= {word for path, text in sources.items() if path.endswith(".html") for word in re.findall(r"\w+", text)}
    return [
        f"{path}:{line}: {name} is used nowhere in the package"
        for path in python_files(sources)
        for name, line in _defined(sources[path])
        if name not in used and name not in FOR_OTHERS
    ]


def _uses(text: str) -> Iterator[str]:
    """Names read, attributes, names imported from elsewhere, and names in texts (an annotation in quotes, 'module:function')."""
    for node in ast.walk(parsed(text)):
        if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load):
            yield node.id
        elif isinstance(node, ast.Attribute):
            yield node.attr
        elif isinstance(node, ast.ImportFrom):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.Constant) and isinstance(node.value, str) and len(node.value) < 200:
            yield from re.findall(r"\w+", node.value)


def _defined(text: str) -> Iterator[tuple[str, int]]:
    for node in parsed(text).body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            yield node.name, node.lineno
        elif isinstance(node, ast.Assign):
            yield from ((target.id, node.lineno) for target in node.targets if isinstance(target, ast.Name))
        elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
            yield node.target.id, node.lineno


Check = Callable[[Sources], list[str]]
CHECKS: tuple[Check, ...] = (
    rooms_without_a_line,
    table_points_left,
    imports_point_left,
    no_import_hides,
    no_relative_import,
    no_cycle,
    short_files_and_functions,
    files_are_opened_where_they_may,
    the_clock_is_read_at_the_edges,
    only_cli_prints,
    registries_are_whole,
    every_fact_is_registered,
    every_rule_is_registered,
    named_functions_exist,
    every_chart_is_shown,
    addresses_are_spelt_once,
    html_stands_in_templates,
    nothing_is_dead,
    things_bear_their_own_names,
)
