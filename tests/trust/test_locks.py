"""What is installed for the two commands is pinned to its bytes."""

import re
import tomllib

import pytest

from tests.conftest import ROOT

LOCKS = {"lock.txt": (), "lock-test.txt": ("test",), "lock-spreadsheets.txt": ("spreadsheets",)}
BUILDERS = "lock-build.txt"


def logical_lines(name: str) -> list[str]:
    text = (ROOT / ".ci" / name).read_text("utf-8").replace("\\\n", " ")
    return [line for line in text.splitlines() if line.strip() and not line.strip().startswith("#")]


@pytest.mark.parametrize("name", [*LOCKS, BUILDERS])
def test_every_line_is_one_version_and_its_hashes(name: str) -> None:
    """A package at exactly one version, with SHA-256 of each of its files; no address, no option, no range."""
    lines = logical_lines(name)
    pinned = re.compile(r"[\w.\[\]-]+==[\w.+!-]+( ; [^#]+?)?(\s+--hash=sha256:[0-9a-f]{64})+\s*")
    wrong = [line for line in lines if not pinned.fullmatch(line.partition("#")[0])]
    assert wrong == []
    assert len(lines) >= 8


@pytest.mark.parametrize(("name", "extras"), LOCKS.items())
def test_every_dependency_is_locked(name: str, extras: tuple[str, ...]) -> None:
    """What pyproject.toml asks for stands in the lock, by its normalised name (PEP 503)."""
    whole = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    project = whole["project"]
    tests = [one for extra in extras for one in project["optional-dependencies"][extra]]
    wanted = [*project["dependencies"], *whole["build-system"]["requires"], *tests]
    locked = {plain(re.split(r"[=\[]", line)[0]) for line in logical_lines(name)}
    assert sorted({plain(re.split(r"[<>=!~\[; ]", one)[0]) for one in wanted} - locked) == []


def test_what_builds_is_what_is_locked() -> None:
    """The group that the builders' lock is made from holds the build backend that pip asks for, and the lock holds the group."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    group = project["dependency-groups"]["build"]
    assert set(group) >= set(project["build-system"]["requires"])
    locked = {plain(re.split(r"[=\[]", line)[0]) for line in logical_lines(BUILDERS)}
    assert {plain(re.split(r"[<>=!~\[; ]", one)[0]) for one in group} <= locked


INSTALLS = re.compile(r"\bpip (?:install|wheel)\b[^&|;\n`]*")
PLACES = ("*.md", ".ci/run", ".github/**/*.md", ".github/**/*.yml", "sitegen/authoring/*.md", "tests/bench/*.md")
DOCUMENTS = sorted(path.relative_to(ROOT).as_posix() for place in PLACES for path in ROOT.glob(place))


@pytest.mark.parametrize("document", DOCUMENTS)
def test_nothing_is_installed_without_its_hash(document: str) -> None:
    """Every install that a document or the gate tells holds to the locks, or takes only what lies on the disk and builds it with
    what the locks brought: pip would otherwise fetch a build backend of any version, and run it."""
    local = r"--no-deps --no-build-isolation (--wheel-dir \S+ )?\.(/\S+)?$|--no-deps \S+\.whl$"
    locked = r"--require-hashes -r \S*lock-build\.txt$|--require-hashes --no-build-isolation -r \S*lock(-[a-z]+)?\.txt$"
    held = re.compile(f"{locked}|{local}")
    for command in INSTALLS.findall(indented(document)):
        assert held.search(command.strip()), command


def indented(document: str) -> str:
    """The lines that are commands: set in by four blanks in a text, all in a script."""
    lines = (ROOT / document).read_text("utf-8").splitlines()
    return "\n".join(line for line in lines if not document.endswith(".md") or line.startswith("    "))


def test_the_installs_were_looked_at() -> None:
    """The README has three for each of its two commands, here and on Windows."""
    assert len(INSTALLS.findall(indented("README.md"))) == 12


def plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name.strip()).lower()
