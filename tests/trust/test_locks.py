"""What is installed for the two commands is pinned to its bytes."""

import re
import tomllib

import pytest

from tests.conftest import ROOT

LOCKS = {"lock.txt": (), "lock-test.txt": ("test",)}


def logical_lines(name: str) -> list[str]:
    text = (ROOT / ".ci" / name).read_text("utf-8").replace("\\\n", " ")
    return [line for line in text.splitlines() if line.strip() and not line.strip().startswith("#")]


@pytest.mark.parametrize("name", LOCKS)
def test_every_line_is_one_version_and_its_hashes(name: str) -> None:
    """A package at exactly one version, with SHA-256 of each of its files; no address, no option, no range."""
    lines = logical_lines(name)
    pinned = re.compile(r"[\w.\[\]-]+==[\w.+!-]+( ; [^#]+?)?(\s+--hash=sha256:[0-9a-f]{64})+\s*")
    wrong = [line for line in lines if not pinned.fullmatch(line.partition("#")[0])]
    assert wrong == []
    assert len(lines) >= 20


@pytest.mark.parametrize(("name", "extras"), LOCKS.items())
def test_every_dependency_is_locked(name: str, extras: tuple[str, ...]) -> None:
    """What pyproject.toml asks for stands in the lock, by its normalised name (PEP 503)."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    wanted = [*project["dependencies"], *(one for extra in extras for one in project["optional-dependencies"][extra])]
    locked = {plain(re.split(r"[=\[]", line)[0]) for line in logical_lines(name)}
    assert sorted({plain(re.split(r"[<>=!~\[; ]", one)[0]) for one in wanted} - locked) == []


def plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name.strip()).lower()
