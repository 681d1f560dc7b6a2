"""The rooms import leftward only, as the table in DEVELOPERS.md says; heavy libraries stay where they may."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "sitegen"
SOURCES = sorted(PACKAGE.rglob("*.py"))
OPENING_ROOMS = {"reading", "catalogue", "pictures", "keeping", "writing", "authoring"}
LONGEST_FILE, LONGEST_FUNCTION = 300, 60


def table() -> dict[str, set[str]]:
    """Room to the rooms it may import, from the Markdown table. 'all but …' takes the rooms before it less those named."""
    rooms: dict[str, set[str]] = {}
    for line in (ROOT / "DEVELOPERS.md").read_text("utf-8").splitlines():
        cells = [cell.strip() for cell in line.strip("|").split("|")]
        if len(cells) == 4 and re.fullmatch(r"`\w+`", cells[0]):
            named = set(re.findall(r"`(\w+)`", cells[3]))
            rooms[cells[0].strip("`")] = set(rooms) - named if cells[3].startswith("all") else named
    return rooms


def room_of(path: Path) -> str:
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


def imports_of(path: Path) -> Iterator[tuple[str, int, bool]]:
    """(module, line, whether it hides inside a function) of every import, `if TYPE_CHECKING` included."""
    tree = ast.parse(path.read_text("utf-8"))
    inside = {
        id(node)
        for function in ast.walk(tree)
        if isinstance(function, ast.FunctionDef | ast.AsyncFunctionDef)
        for node in ast.walk(function)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from ((alias.name, node.lineno, id(node) in inside) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}:{node.lineno}: relative import"
            module = node.module or ""
            names = (f"sitegen.{alias.name}" for alias in node.names) if module == "sitegen" else (module,)
            yield from ((name, node.lineno, id(node) in inside) for name in names)


def test_every_room_stands_in_the_table() -> None:
    """A new folder or file under sitegen/ needs its line in DEVELOPERS.md."""
    rooms = {room_of(path) for path in SOURCES} - {"__init__", "__main__"}
    assert rooms - set(table()) == set()


def test_the_table_itself_points_left() -> None:
    """A room may only name rooms above it in the table."""
    order = list(table())
    wrong = [f"{room} must not know {other}" for room, others in table().items() for other in others
             if other not in order or order.index(other) >= order.index(room)]  # fmt: skip
    assert wrong == []


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_imports_point_left(path: Path) -> None:
    """No file imports a room that its own may not know."""
    room = room_of(path)
    if room in ("__init__", "__main__"):
        return
    allowed = table()[room] | {room, "__version__"}
    wrong = [
        f"{path.relative_to(ROOT)}:{line}: {room} must not know {module.split('.')[1]}"
        for module, line, _ in imports_of(path)
        if module.startswith("sitegen.") and module.split(".")[1] not in allowed
    ]
    assert wrong == []


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_no_import_hides(path: Path) -> None:
    """Only rebuild.py and cli.py import late, so that heavy libraries load when they are needed and nowhere else."""
    if room_of(path) in ("rebuild", "cli"):
        return
    hidden = [f"{path.relative_to(ROOT)}:{line}: {module}" for module, line, inside in imports_of(path) if inside]
    assert hidden == []


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_files_and_functions_stay_short(path: Path) -> None:
    """Files under 300 lines, functions under 60."""
    text = path.read_text("utf-8")
    assert len(text.splitlines()) <= LONGEST_FILE
    long = [
        f"{node.name}: {node.end_lineno - node.lineno + 1} lines"
        for node in ast.walk(ast.parse(text))
        if isinstance(node, ast.FunctionDef) and node.end_lineno and node.end_lineno - node.lineno + 1 > LONGEST_FUNCTION
    ]
    assert long == []


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_only_cli_prints(path: Path) -> None:
    """print and click.echo belong to cli.py."""
    if room_of(path) == "cli":
        return
    called = [
        node.lineno
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Call) and ast.unparse(node.func) in ("print", "click.echo")
    ]
    if path.name.startswith("trim_"):
        return
    assert called == []


def test_no_import_cycle_between_files() -> None:
    """The files of the package can be put in an order in which each imports only earlier ones."""
    known = {".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__") for path in SOURCES}
    graph = {}
    for path in SOURCES:
        name = ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
        graph[name] = {module for module, _, inside in imports_of(path) if module in known and not inside} - {name}
    graph["sitegen.pages.page"].discard("sitegen.pages.site_book")  # for type checking only
    while True:
        free = {name for name, others in graph.items() if not others & set(graph)}
        if not free:
            break
        graph = {name: others for name, others in graph.items() if name not in free}
    assert graph == {}


def test_registries_name_every_file() -> None:
    """A file that ends in FACTS or KIND must stand in its registry; the message is the line to add."""
    missing = []
    for room, ending in (("facts", "FACTS"), ("pages", "KIND"), ("charts", "CHART"), ("feeds", "FEED")):
        registry = PACKAGE / room / "registry.py"
        if not registry.exists():
            continue
        text = registry.read_text("utf-8")
        for path in sorted((PACKAGE / room).glob("*.py")):
            if re.search(rf"^{ending}\b.*=", path.read_text("utf-8"), re.M) and path != registry:
                line = f"{path.stem}.{ending}"
                if line not in text:
                    missing.append(f"add to {registry.relative_to(ROOT)}: {line},")
    assert missing == []
