"""Entries to facts, cards, pictures and data files."""

import json
from collections.abc import Sequence
from typing import Any

from sitegen.assembly.bench import Bench, Gone
from sitegen.assembly.entry_stars import with_stars
from sitegen.assembly.jobs import CORES, ENTRIES, FactsJob, MakeSizes
from sitegen.assembly.records import FactsOfEntry
from sitegen.diary import addresses
from sitegen.diary.entry import Entry, Picture
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import facts_of
from sitegen.facts.views import EntryView
from sitegen.keeping.keep import digest_of, hash_of_file
from sitegen.keeping.products import Product, keep_bytes, product_of
from sitegen.pages.card import card_of
from sitegen.pages.markdown_text import Resolvers, plain_text, to_html
from sitegen.pages.picture_view import PreparedPicture, main_picture, picture_view
from sitegen.pages.prepared import PreparedEntry
from sitegen.pages.ribbon import half_night_s
from sitegen.pages.subs_table import subs_ecsv
from sitegen.pictures.records import PictureProblem, PictureSettings
from sitegen.problems import Problem


def facts_of_entries(bench: Bench, chunk: Sequence[FactsJob]) -> list[FactsOfEntry]:
    """One pass of the sky for the whole chunk."""
    entries = [bench.get(ENTRIES, job.entry) for job in chunk]
    before = {job.slug: dict(job.before) for job in chunk}
    views = views_of(bench.diary, entries, before, _earlier(bench, chunk))
    return [_facts(bench, job, view) for job, view in zip(chunk, views, strict=True)]


def _earlier(bench: Bench, chunk: Sequence[FactsJob]) -> dict[str, EntryView]:
    found = {}
    for job in chunk:
        try:
            found[job.slug] = bench.get(CORES, job.earlier).view if job.earlier else None
        except Gone:
            continue
    return {slug: view for slug, view in found.items() if view is not None}


def _facts(bench: Bench, job: FactsJob, view: EntryView) -> FactsOfEntry:
    measured = with_stars(bench, view, job.measure)
    view = measured.view
    facts = facts_of(view)
    pictures, products, problems = _pictures(bench, view.entry, job.make_sizes)
    main = main_picture(pictures)
    card = card_of(view, facts, None, picture_view(main) if main else None)
    prepared = PreparedEntry(view, facts, card, tuple(pictures))
    core = digest_of(prepared)
    bench.put(CORES, core, prepared)
    return FactsOfEntry(
        key=job.key,
        marks=(),
        core=core,
        card=card,
        half_night_s=half_night_s(view.nights),
        links=_links(view.entry.body),
        words=plain_text(view.entry.body),
        products=(*_data(bench, prepared), *products),
        problems=(*problems, *measured.problems),
        stars=measured.kept,
    )


def _data(bench: Bench, prepared: PreparedEntry) -> list[Product]:
    slug = prepared.view.entry.slug
    texts = [(addresses.entry_facts(slug), json_text(prepared.facts))]
    if prepared.view.lights:
        texts.append((addresses.entry_subs(slug), subs_ecsv(prepared.facts["subs"])))
    return [keep_bytes(path, text.encode("utf-8"), bench.blobs) for path, text in texts]


def json_text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, indent=1) + "\n"


def _pictures(
    bench: Bench, entry: Entry, make_sizes: MakeSizes
) -> tuple[list[PreparedPicture], list[Product], list[Problem]]:
    pictures, products, problems = [], [], []
    for picture in entry.pictures:
        try:
            prepared, files = _picture(bench, entry, picture, make_sizes)
        except PictureProblem as wrong:
            shown, remedy = bench.frame.folder.shown(picture.file), f"named by entries/{entry.slug}.md"
            problems.append(Problem(shown, 1, 1, wrong.sentence, remedy))
        else:
            pictures.append(prepared)
            products += files
    return pictures, products, problems


def _picture(
    bench: Bench, entry: Entry, picture: Picture, make_sizes: MakeSizes
) -> tuple[PreparedPicture, list[Product]]:
    """Made once for the same file and wishes, whatever the file is called."""
    path = bench.content / picture.file
    settings = PictureSettings(stretch=dict(picture.stretch))
    inputs = hash_of_file(path), repr(settings)
    kept, made = bench.pictures.files("pictures", inputs, lambda out: make_sizes(path, out, settings))
    folder = addresses.picture(entry.slug, f"{_picture_name(picture)}/")
    inside = kept.relative_to(bench.keep).as_posix()
    products = [product_of(folder + file.name, f"{inside}/{file.name}", bench.keep) for file in made.files]
    return PreparedPicture(picture, made, folder), products


def _picture_name(picture: Picture) -> str:
    stem, _, suffix = picture.file.rpartition("/")[2].rpartition(".")
    return addresses.slug_of(f"{stem}-{suffix}" if suffix.lower() not in ("jpg", "jpeg") else stem)


def _links(body: str) -> tuple[str, ...]:
    """Names of the entries that a text leads to, whether they exist or not."""
    if "md" not in body:
        return ()
    found: dict[str, None] = {}

    def noted(name: str) -> str:
        found[name.rpartition("/")[2].removesuffix(".md")] = None
        return "#"

    to_html(body, Resolvers(entry_address=noted, fact_html=lambda *_: "", figure_html=lambda *_: ""))
    return tuple(found)
