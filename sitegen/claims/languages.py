"""The languages in which claims are found."""

from collections.abc import Mapping

from sitegen.claims.english import ENGLISH
from sitegen.claims.german import GERMAN
from sitegen.claims.vocabulary import Vocabulary

VOCABULARIES: Mapping[str, Vocabulary] = {"en": ENGLISH, "de": GERMAN}
"""By the diary's language; in any other, sentences are not doubted."""
