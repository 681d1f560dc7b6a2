"""Prepared entries to doubts about what their sentences claim."""

from collections.abc import Iterator, Sequence

from sitegen.build.context import BuildContext
from sitegen.build.rule import Outcome
from sitegen.build.rules.claims import ClaimsHeld, ClaimsJob
from sitegen.build.rules.facts import entry_file
from sitegen.build.work.kept_prepared import get_prepared
from sitegen.claims.body_passages import passages_of
from sitegen.claims.doubt import Doubt
from sitegen.claims.doubts import doubts_of, remedy_for
from sitegen.claims.entry_passages import front_matter_passages
from sitegen.claims.evidence import Evidence
from sitegen.claims.languages import VOCABULARIES
from sitegen.claims.passage import Passage
from sitegen.facts.views import EntryView
from sitegen.problems import Problem
from sitegen.reading.front_matter_places import front_matter_of, place_in


def claims_of_entries(context: BuildContext, chunk: Sequence[ClaimsJob]) -> list[Outcome[ClaimsHeld]]:
    return [_claims(context, job) for job in chunk]


def _claims(context: BuildContext, job: ClaimsJob) -> Outcome[ClaimsHeld]:
    words = VOCABULARIES.get(context.settings.language)
    if words is None:
        return Outcome(ClaimsHeld(0))
    view = get_prepared(context.store, job.prepared).view
    entry = view.entry
    passages = (*front_matter_passages(entry), *passages_of(entry.body, entry.body_line))
    doubts = list(doubts_of(passages, Evidence(view, words, dict(job.published))))
    # Places in the front matter move with lines that no record keeps: such an entry is looked at again whenever it is saved.
    reads = (entry_file(entry.slug),) if any(passage.key for passage, _ in doubts) else ()
    return Outcome(ClaimsHeld(len(doubts)), reads, problems=tuple(_problems(context, view, doubts)))


def _problems(context: BuildContext, view: EntryView, doubts: Sequence[tuple[Passage, Doubt]]) -> Iterator[Problem]:
    folder, relative = context.config.folder, entry_file(view.entry.slug)
    has_key = any(passage.key for passage, _ in doubts)
    front_matter = front_matter_of(relative, folder) if has_key else None
    for passage, doubt in doubts:
        line, column = passage.place(doubt.start) if passage.spots else (0, 0)
        if passage.key:
            place = place_in(front_matter, passage.key)
            line, column = place.line, place.column
        yield Problem(folder.shown(relative), line, column, doubt.wrong, remedy_for(passage), "warning")
