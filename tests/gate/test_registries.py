"""Registries judged by value: what the files of a room hold, against what its registry holds once all is loaded."""

from collections.abc import Iterable, Mapping
from importlib import import_module
from pathlib import Path
from types import ModuleType

import pytest

from sitegen.facts.fact import Fact
from sitegen.facts.places import PLACES
from tests.gate.kinds import REGISTRIES, line_to_add
from tests.gate.sources import PACKAGE, ROOT


def modules_in(folder: str) -> dict[str, ModuleType]:
    """Every file of a room, loaded, but for the registry itself."""
    files = sorted(path.stem for path in Path(ROOT, PACKAGE, folder).glob("*.py"))
    names = (f"{PACKAGE}.{folder.replace('/', '.')}.{stem}" for stem in files if stem not in ("registry", "__init__"))
    return {name: import_module(name) for name in names}


def held(folder: str) -> list[object]:
    """All that the registry of a room holds."""
    registry = import_module(f"{PACKAGE}.{folder.replace('/', '.')}.registry")
    _, tuples = REGISTRIES[folder]
    return [thing for name in tuples for thing in getattr(registry, name)]


def missing(folder: str, modules: Mapping[str, ModuleType], registered: Iterable[object]) -> list[str]:
    """A line for each file whose thing is not registered."""
    ending, _ = REGISTRIES[folder]
    known = {id(thing) for thing in registered}
    return [
        line_to_add(folder, name, ending)
        for name, module in modules.items()
        if hasattr(module, ending) and id(getattr(module, ending)) not in known
    ]


@pytest.mark.parametrize("folder", REGISTRIES)
def test_every_file_is_registered(folder: str) -> None:
    assert missing(folder, modules_in(folder), held(folder)) == []


@pytest.mark.parametrize("folder", REGISTRIES)
def test_a_missing_line_is_told(folder: str) -> None:
    """Each line of each registry, taken out by itself."""
    ending, _ = REGISTRIES[folder]
    modules = modules_in(folder)
    for thing in held(folder):
        (name,) = (name for name, module in modules.items() if getattr(module, ending, None) is thing)
        others = [other for other in held(folder) if other is not thing]
        assert missing(folder, modules, others) == [f"add to sitegen/{folder}/registry.py: {name.rpartition('.')[2]}.{ending},"]


@pytest.mark.parametrize("folder", REGISTRIES)
def test_what_is_registered_stands_once(folder: str) -> None:
    assert len(held(folder)) == len({id(thing) for thing in held(folder)})


def test_every_fact_is_published() -> None:
    """Each constant of the room that is a fact stands in a record of the registry."""
    published = set(map(id, PLACES.values()))
    facts = {(name, key): value for name, module in modules_in("facts").items() for key, value in vars(module).items()
             if isinstance(value, Fact)}  # fmt: skip
    assert len(facts) > 60
    assert [place for place, fact in facts.items() if id(fact) not in published] == []
