"""Records as columns: what comes back is what went in, and what is shared is one object."""

from datetime import timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace

from sitegen.build.kept_entries import get_entry, put_entry
from sitegen.build.records import dump
from sitegen.build.store import CacheMiss, Store
from sitegen.build.tables import MOST_SHARED, Table, records_of, table_of
from sitegen.build.work.kept_prepared import NO_COLUMNS, KeptPrepared, get_prepared, kept_prepared
from sitegen.diary.frame_origin import FrameOrigin
from sitegen.diary.sub import Sub
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.facts_json import facts_of
from sitegen.pages.card import card_of
from sitegen.pages.prepared import PreparedEntry
from tests.diaries import SCULPTOR, diary, entry, run


def many(count: int) -> list[Sub]:
    """Subs that differ in start and width, some of them in everything else."""
    origin = FrameOrigin(file="a.fits", ra_deg=11.9)
    return [
        replace(sub, kept=place % 7 > 0, reason=None if place % 7 else "cloud", fwhm_arcsec=2 + place / 1000,
                gain=(None, 0.0, 100.0)[place % 3], origin=origin if place % 2 else None, stars=place)
        for place, sub in enumerate(run("2026-09-12 10:00", count, 20.0))
    ]  # fmt: skip


@pytest.mark.parametrize("count", [0, 1, 2, MOST_SHARED, MOST_SHARED + 1, 1000])
def test_every_sub_comes_back(count: int) -> None:
    """Whatever the number of different values: none, one, as many as a byte tells apart, one more."""
    assert records_of(table_of(many(count), Sub), Sub) == tuple(many(count))


def test_what_is_shared_is_one_object() -> None:
    """A thousand subs of one log name one source."""
    subs = records_of(table_of([replace(sub, source="logs/a.csv") for sub in many(1000)], Sub), Sub)
    assert len({id(sub.source) for sub in subs}) == 1


def test_columns_take_a_fifth_of_the_bytes() -> None:
    """A thousand subs that share most of what they say."""
    subs = run("2026-09-12 10:00", 1000, 20.0)
    assert len(dump(table_of(subs, Sub))) < len(dump(subs)) / 5


def test_damaged_columns_are_told() -> None:
    """Columns of another length are no subs."""
    table = table_of(many(10), Sub)
    with pytest.raises(ValueError, match="columns of different lengths"):
        records_of(Table(11, table.columns), Sub)
    for columns in (table.columns[:-1], (*table.columns, table.columns[0]), ()):
        with pytest.raises(ValueError, match=r"columns of another record"):
            records_of(Table(10, columns), Sub)


def prepared_entry() -> PreparedEntry:
    """Two nights, a dark frame between lights."""
    dark = run("2026-09-12 12:30", 1, kind="dark", filter=None)
    targets = (replace(SCULPTOR, aliases=("NGC 253",)),)
    told = entry([*many(20), *dark, *run("2026-09-14 12:00", 5)], body="Fog.", targets=targets)
    (view,) = views_of(book := diary(told), book.entries)
    facts = facts_of(view)
    return PreparedEntry(view, facts, card_of(view, facts), ())


def test_an_entry_comes_back(tmp_path: Path) -> None:
    store, told = Store(tmp_path), prepared_entry().view.entry
    assert get_entry(store, put_entry(store, told)) == told


def test_a_prepared_entry_comes_back(tmp_path: Path) -> None:
    """But for the columns of its facts. Lights, their nights and their entry name the same subs."""
    store, told = Store(tmp_path), prepared_entry()
    back = get_prepared(store, store.put(kept_prepared(told)))
    assert back.facts == replace(told.facts, subs=NO_COLUMNS)
    assert back.card == told.card
    assert back.view.lights == told.view.lights
    assert [night.lights for night in back.view.nights] == [night.lights for night in told.view.nights]
    assert {id(light.sub) for light in back.view.lights} <= {id(sub) for sub in back.view.entry.subs}
    assert {id(light) for night in back.view.nights for light in night.lights} == {id(light) for light in back.view.lights}
    assert back.view.entry == told.view.entry


def test_a_damaged_one_is_made_again(tmp_path: Path) -> None:
    """Whatever is wrong inside, it is missing."""
    store, kept = Store(tmp_path), kept_prepared(prepared_entry())
    broken = KeptPrepared(kept.bare, kept.entry, kept.lights, ((0, 99), ()))
    with pytest.raises(CacheMiss):
        get_prepared(store, store.put(broken))
    with pytest.raises(CacheMiss):
        get_entry(store, store.put("no entry"))


def test_starts_keep_their_fractions() -> None:
    """To the microsecond."""
    sub = replace(many(1)[0], start=many(1)[0].start + timedelta(microseconds=1))
    assert records_of(table_of([sub], Sub), Sub) == (sub,)
