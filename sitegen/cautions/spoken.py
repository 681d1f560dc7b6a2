"""Which language a text may be in: English and German share words ('boot', 'see', 'not'), so the vocabulary of one misreads the
other."""

from collections.abc import Iterable

_ENGLISH = (
    "the and of to my with it its we i at for from were had is are our your you they he she his this that by be been as which "
    "while without when where there their but after before into through a"
)
_GERMAN = (
    "der das und ist nicht ich wir ein eine einen einem einer mit auf im dem von zu für es sich bei zum zur aus nach habe haben "
    "wurde noch aber auch wie mir mich uns sie er als wenn dann beim hatte waren sind kein keine ohne über unter vor durch wird "
    "nur schon doch mal ins um vom des"
)
_COMMON = {"en": frozenset(_ENGLISH.split()), "de": frozenset(_GERMAN.split())}
"""Common words of one that are none of the other's."""


def may_be(language: str, words: Iterable[str]) -> bool:
    """Unless it has common words of another language and none of this."""
    own = _COMMON.get(language)
    present = set(words)
    return own is None or not own.isdisjoint(present) or all(common.isdisjoint(present) for common in _COMMON.values())
