"""A library, or a name in one, that loads when it is first used: a rebuild that draws nothing pays for no drawing library.

Only for the few libraries that take a tenth of a second and more, each at one door of its room, and for the rooms that draw pages
with several of them (`build/workers.py`).
"""

from importlib import import_module
from typing import Any


class LazyModule:
    """Stands in for a module, or for a class in it."""

    def __init__(self, module: str, name: str | None = None) -> None:
        self._module, self._name = module, name

    def _loaded(self) -> Any:
        module = import_module(self._module)
        return module if self._name is None else getattr(module, self._name)

    def __getattr__(self, name: str) -> Any:
        return getattr(self._loaded(), name)

    def __call__(self, *args: Any, **named: Any) -> Any:
        return self._loaded()(*args, **named)

    def __or__(self, other: Any) -> Any:
        return Any
