"""Frames whose headers name nothing are named by what stands near their pointing."""

import pytest

from sitegen.authoring.target_fit import _by_place


@pytest.mark.parametrize(("off_deg", "named"), [(0.0, True), (0.24, True), (0.26, False)])
def test_a_name_is_offered_within_a_quarter_degree(off_deg: float, named: bool) -> None:
    """The Helix (337.4107, -20.8372 in SIMBAD, from memory), with nothing else of the catalogue so near it: the limit is the
    program's own, the catalogue's place is good to 0.005 degrees."""
    fit = _by_place("", (337.4107, -20.8372 + off_deg))
    assert fit is not None
    assert fit.name == ("NGC 7293" if named else "a field without a name")
