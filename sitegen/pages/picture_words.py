"""What a picture or a frame is called that is no observation, and what it is for those who do not see it."""

from collections.abc import Sequence
from typing import Protocol

from sitegen.diary.entry import PictureType
from sitegen.pages.picture_element import PictureView
from sitegen.pages.words import Words


class Typed(Protocol):
    """A picture, or what was measured in a frame of stars."""

    @property
    def type(self) -> PictureType: ...


def type_words(view: Typed, words: Words) -> str | None:
    """What the picture is, where it is no observation."""
    return None if view.type == "observation" else words[f"picture_type.{view.type}"]


def alt_words(view: PictureView, words: Words) -> str:
    """The picture for those who do not see it: what it is, where it is no observation, and what it shows."""
    return typed_words(view, view.alt, words)


def typed_words(view: Typed, said: str, words: Words) -> str:
    """What is said of it, after what it is where it is no observation."""
    label = type_words(view, words)
    return words.say("picture.typed_alt", type=label, alt=said) if label else said


def typed_title(title: str, views: Sequence[Typed], words: Words) -> str:
    """A title of all these, with what those are that are no observations; 'in part' where others are."""
    labels = [type_words(view, words) for view in views]
    others = "; ".join(dict.fromkeys(label for label in labels if label))
    key = "stars.of_type" if all(labels) else "stars.partly_of_type"
    return words.say(key, title=title, type=others) if others else title
