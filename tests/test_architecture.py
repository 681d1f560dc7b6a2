"""The project keeps its own rules: rooms import leftward only, files and the clock stay at the edges, every part is registered
and used. `tests/gate/checks.py` holds the rules, `tests/gate/test_sabotage.py` shows that each can fail."""

import pytest

from tests.gate.checks import CHECKS, Check
from tests.gate.sources import sources_of

SOURCES = sources_of()


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.__name__)
def test_the_project_keeps_its_rule(check: Check) -> None:
    """Each line says where, and what to do."""
    assert check(SOURCES) == []
