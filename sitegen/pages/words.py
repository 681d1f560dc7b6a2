"""The theme's words: one catalogue file a language, words/LANGUAGE.yaml, keys in groups."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache

import yaml
from babel import Locale

from sitegen.diary.addresses import slug_of


@dataclass(frozen=True, slots=True)
class Words(Mapping[str, str]):
    """Every user-visible word by its key, 'group.name'. A key without words is an error: nothing is shown silently."""

    language: str
    by_key: Mapping[str, str]

    def __getitem__(self, key: str) -> str:
        return self.by_key[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self.by_key)

    def __len__(self) -> int:
        return len(self.by_key)

    def say(self, key: str, **values: object) -> str:
        """The sentence of that key with its gaps filled."""
        return self.by_key[key].format(**values)

    def phrase(self, english: str) -> str:
        """What the program says in English beside its data (a source, a use), in this language where the catalogue has it."""
        return self.by_key.get(f"phrase.{slug_of(english)}", english)

    def count(self, key: str, number: int, **values: object) -> str:
        """The sentence for that many, by the language's own plural forms ('key.one', 'key.other', …)."""
        form = _locale(self.language).plural_form(number)
        chosen = f"{key}.{form}" if f"{key}.{form}" in self.by_key else f"{key}.other"
        return self.say(chosen, n=number, **values)


def words_from(language: str, texts: tuple[str, ...]) -> Words:
    """Later texts win over earlier ones, so that a theme may replace single words of the default."""
    words: dict[str, str] = {}
    for text in texts:
        words.update(_parsed(text))
    return Words(language, words)


@cache
def _locale(language: str) -> Locale:
    return Locale.parse(language, sep="-")


@cache
def _parsed(text: str) -> dict[str, str]:
    return dict(_flat(yaml.load(text, Loader=getattr(yaml, "CBaseLoader", yaml.BaseLoader)) or {}, ""))


def _flat(node: Mapping[str, object], prefix: str) -> Iterator[tuple[str, str]]:
    for key, value in node.items():
        if isinstance(value, Mapping):
            yield from _flat(value, f"{prefix}{key}.")
        else:
            yield f"{prefix}{key}", str(value)
