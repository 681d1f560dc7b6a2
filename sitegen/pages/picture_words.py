"""What a picture is called that is no observation, and what it is for those who do not see it."""

from sitegen.pages.picture_element import PictureView
from sitegen.pages.words import Words


def type_words(view: PictureView, words: Words) -> str | None:
    """What the picture is, where it is no observation."""
    return None if view.type == "observation" else words[f"picture_type.{view.type}"]


def alt_words(view: PictureView, words: Words) -> str:
    """The picture for those who do not see it: what it is, where it is no observation, and what it shows."""
    label = type_words(view, words)
    return words.say("picture.typed_alt", type=label, alt=view.alt) if label else view.alt
