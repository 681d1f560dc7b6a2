"""Which cautions the pictures of an entry call for, figure by figure, and what else stands above its text."""

from collections.abc import Mapping

from sitegen.cautions.sources import in_order, of_picture, of_texts
from sitegen.diary.rig import CautionKind
from sitegen.pages.picture_view import PreparedPicture, main_picture
from sitegen.pages.prepared import PreparedEntry


def kinds_of_figure(shown: PreparedPicture, under: PreparedPicture | None) -> tuple[CautionKind, ...]:
    """Of the picture, and of the earlier one that it is laid over."""
    pictures = [layer.picture for layer in (shown, under) if layer is not None]
    return in_order(kind for picture in pictures for kind in of_picture(picture))


def main_kinds(prepared: PreparedEntry) -> tuple[CautionKind, ...]:
    """Of the figure at the top of the entry's page, whose picture feeds name beside the text."""
    main = main_picture(prepared.pictures)
    if main is None:
        return ()
    under = next((other for other in prepared.pictures if other.picture.file == main.picture.compare_with), None)
    return kinds_of_figure(main, under)


def kinds_above(prepared: PreparedEntry) -> tuple[CautionKind, ...]:
    """Of what an entry's page shows above the text: the summary, and the figure."""
    return in_order((*of_texts((prepared.view.entry.summary,)), *main_kinds(prepared)))


def kinds_by_name(prepared: PreparedEntry) -> Mapping[str, tuple[CautionKind, ...]]:
    """By the name that `![](figure:NAME)` gives a picture, of those that call for any."""
    pictures = (shown.picture for shown in prepared.pictures)
    named = ((picture.file.rpartition("/")[2], of_picture(picture)) for picture in pictures)
    return {name: kinds for name, kinds in named if kinds}
