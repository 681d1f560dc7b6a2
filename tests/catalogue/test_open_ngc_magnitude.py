"""OpenNGC's magnitudes where its own two columns contradict each other."""

from sitegen.catalogue.lookup import find_object


def test_a_core_magnitude_is_not_given_as_the_whole_object_s() -> None:
    """NGC 253 shines at about 7.1 to 8 (any atlas); OpenNGC's V of 11.11 beside B of 7.94 is its core's, so none is given."""
    found = find_object("NGC 253")
    assert found is not None
    assert found.magnitude is None


def test_an_undisputed_magnitude_stays() -> None:
    """M 31: V 3.44 (OpenNGC, from NED; 3.4 in the Revised New General Catalogue, from memory)."""
    found = find_object("M 31")
    assert found is not None
    assert found.magnitude == 3.44
