"""From words to the entries that have them, in parts small enough to be fetched while somebody types."""

from collections.abc import Iterable, Mapping, Sequence

PART_BYTES = 16_000
"""A part with more than one word is split by the next letter when it would be larger."""
Entries = list[int]
Index = dict[str, Entries]


def index_of(terms: Iterable[Iterable[str]]) -> Index:
    """Of every term the numbers of its entries, ascending; `terms` are those of each entry, none twice."""
    index: Index = {}
    for number, own in enumerate(terms):
        for term in own:
            index.setdefault(term, []).append(number)
    return index


def parts_of(index: Mapping[str, Entries]) -> dict[str, Index]:
    """Parts by the letters with which all their terms begin; a term is in the part of its longest beginning. Terms sorted."""
    return _split("", sorted(index), {term: short_form(entries) for term, entries in index.items()})


def _split(beginning: str, terms: Sequence[str], postings: Mapping[str, Entries]) -> dict[str, Index]:
    size = sum(len(term) + 6 + 3 * len(postings[term]) for term in terms)
    if size <= PART_BYTES or len(terms) < 2:
        return {beginning: {term: postings[term] for term in terms}} if terms else {}
    groups: dict[str, list[str]] = {}
    for term in terms:
        groups.setdefault(term[: len(beginning) + 1], []).append(term)
    parts = {beginning: {beginning: postings[beginning]}} if beginning in groups else {}
    for longer, group in groups.items():
        if longer != beginning:
            parts |= _split(longer, group, postings)
    return parts


def short_form(entries: Sequence[int]) -> Entries:
    """Steps from one entry to the next, from −1; a run of n steps of 1 is −n."""
    steps: Entries = []
    before = -1
    for number in entries:
        step, before = number - before, number
        if step == 1 and steps and (steps[-1] < 0 or steps[-1] == 1):
            steps[-1] = steps[-1] - 1 if steps[-1] < 0 else -2
        else:
            steps.append(step)
    return steps
