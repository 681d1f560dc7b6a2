"""What a harvest brought, in words and as JSON."""

from collections.abc import Iterator, Mapping
from typing import Any

from msgspec.structs import asdict, replace

from sitegen.authoring.harvest.questions import Question
from sitegen.authoring.harvest.report import Harvest, ProjectReport
from sitegen.folders import Folders

_KIND_WORDS = {"set_aside": "set aside"}


def harvest_lines(done: Harvest, folders: Folders, is_dry: bool) -> Iterator[str]:
    yield from _table(done)
    counted = ", ".join(f"{count} {_KIND_WORDS.get(kind, kind)}" for kind, count in done.kinds.items() if count)
    yield f"{done.files} files: {counted or 'nothing'}"
    yield from (f"  {reason.count} {_KIND_WORDS.get(reason.kind, reason.kind)}: {reason.why}" for reason in done.reasons)
    yield from _question_lines(done, folders)
    if is_dry:
        yield f"nothing was written; {len(done.written)} files would be"
    elif done.written:
        yield f"{len(done.written)} files written in {folders.content}/"
        yield "what only you can write is marked 'To write:' in the entries"
    else:
        yield "nothing new"


def again(done: Harvest) -> Harvest:
    """What the same harvest finds when nothing has changed since."""
    projects = tuple(replace(project, new=0, judged_anew=0, is_begun=False) for project in done.projects)
    return replace(done, projects=projects, written=())


def _table(done: Harvest) -> Iterator[str]:
    rows = [("entry", "target", "rig", "site", "nights", "kept", "thrown", "hours", "new"), *map(_row, done.projects)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    for row in rows if done.projects else ():
        left = [f"{cell:<{width}}" for cell, width in zip(row[:4], widths[:4], strict=True)]
        right = [f"{cell:>{width}}" for cell, width in zip(row[4:], widths[4:], strict=True)]
        yield "  ".join((*left, *right)).rstrip()


def _row(project: ProjectReport) -> tuple[str, ...]:
    new = f"{project.new}" + (f", {project.judged_anew} judged anew" if project.judged_anew else "")
    new += f", {project.panels} panels" if project.panels else ""
    return (
        project.entry, project.target or "-", project.rig or "-", project.site or "-", str(len(project.nights)),
        str(project.kept), str(project.discarded), f"{project.total_s / 3600:.1f}", new,
    )  # fmt: skip


def _question_lines(done: Harvest, folders: Folders) -> Iterator[str]:
    for number, question in enumerate(done.questions, start=1):
        yield f"question {number}: {question.question}"
        yield f"  answer in {folders.content}/{question.key}: {question.line}"
    if done.questions:
        yield "an answer is asked for once: it stays where it is written"


def harvest_json(done: Harvest) -> Mapping[str, Any]:
    return {
        "files": done.files,
        **done.kinds,
        "projects": [_project_json(project) for project in done.projects],
        "questions": [_question_json(question) for question in done.questions],
        "reasons": [asdict(reason) for reason in done.reasons],
        "written": list(done.written),
    }


def _project_json(project: ProjectReport) -> Mapping[str, Any]:
    return asdict(project) | {"nights": [evening.isoformat() for evening in project.nights]}


def _question_json(question: Question) -> Mapping[str, Any]:
    return asdict(question)
