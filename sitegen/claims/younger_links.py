"""A link to an entry that did not exist when the text around it says to have been written."""

from calendar import monthrange
from collections.abc import Iterator
from datetime import date

from sitegen.claims.dates import dates_in
from sitegen.claims.doubt import ClaimKind, Doubt
from sitegen.claims.evidence import Evidence
from sitegen.claims.sentence import Sentence

YEAR_DAYS = 365.25
# 'A year ago' is said after seven months and after seventeen: the half is the least that anybody calls so.
LEAST_SHARE = 0.5


def _find(sentence: Sentence, evidence: Evidence) -> Iterator[Doubt]:
    if sentence.passage.role == "quotation":
        return
    for link in sentence.links:
        published = evidence.published.get(link.slug)
        if published is None:
            continue
        written, says = _written(sentence, evidence)
        if published > written:
            wrong = f"the text {says}, and leads to the entry '{link.slug}', published on {published}"
            yield Doubt(link.start, wrong)
        elif (years := _years_ago(sentence, evidence)) and (written - published).days < LEAST_SHARE * years * YEAR_DAYS:
            days = (written - published).days
            wrong = f"the text says {years:g} years ago of the entry '{link.slug}', published {days} days before"
            yield Doubt(link.start, wrong.replace("1 years", "one year"))


def _written(sentence: Sentence, evidence: Evidence) -> tuple[date, str]:
    """The day that the text claims: that of an addition, which stands in brackets or at the paragraph's beginning, else the
    entry's; and how a problem line says it."""
    entry = evidence.view.entry
    added = _added(sentence, evidence)
    if added is not None:
        return added, f"was added by {added}"
    if entry.updated is not None and entry.updated > entry.published:
        return entry.updated, f"was updated on {entry.updated}"
    return entry.published, f"was published on {entry.published}"


def _added(sentence: Sentence, evidence: Evidence) -> date | None:
    """'(Added in October 2026.)': the last day that it may mean; None where no date is said."""
    opening = sentence.passage.text[:80].casefold()
    if not evidence.words.added & set(opening.replace("(", " ").replace(":", " ").replace(".", " ").split()[:3]):
        return None
    claims = [claim for claim in dates_in(sentence.passage.text[:80], evidence.words) if claim.year]
    for claim in claims:
        year, month = claim.year or 1, claim.month
        last = monthrange(year, month)[1]
        return date(year, month, min(claim.day or last, last))
    return None


def _years_ago(sentence: Sentence, evidence: Evidence) -> float | None:
    phrases = (years for phrase, years in evidence.words.ago.items() if sentence.holds(" ".join(phrase)))
    return max(phrases, default=None)


CLAIM = ClaimKind("younger-links", "a link to an entry that is younger than the text around it claims to be", _find)
