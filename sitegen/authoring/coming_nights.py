"""The coming nights of every entry still gathering, from where the author truly stands. Nothing of it is published."""

from datetime import date, datetime, timedelta

from sitegen.diary.diary import Diary
from sitegen.diary.public_position import public_site
from sitegen.diary.settings import Privacy
from sitegen.facts.diary_in_sky import views_of
from sitegen.facts.integration_by_filter import by_filter
from sitegen.facts.outlook import Outlook, Wish, needs_of, outlook_of
from sitegen.facts.views import EntryView
from sitegen.sky.night_time import evening_of

# Until six in the morning, mean solar time, the night in progress is the one asked about.
NEXT_NIGHT_AFTER = timedelta(hours=6)


def coming_nights(diary: Diary, now: datetime, first: date | None = None, nights: int | None = None) -> tuple[Outlook, ...]:
    """One outlook for each target with a fixed place. Without `first`, from the night in progress or else the next."""
    gathering = [entry for entry in diary.entries if entry.stage == "gathering"]
    settings = diary.settings
    outlooks = []
    for view in views_of(diary, gathering):
        slug = site_of(view)
        if slug is None:
            continue
        site = public_site(diary.sites[slug], Privacy("exact"))
        evening = first or first_evening(now, diary.sites[slug].longitude_deg)
        wish_for = [target for target in view.entry.targets if target.ra_deg is not None]
        for target in wish_for:
            wish = Wish(view.entry.slug, view.entry.title, target, needs_of(by_filter(view), view.filters))
            count, limit_deg = nights or settings.outlook.nights, settings.outlook.minimum_altitude_deg
            outlooks.append(outlook_of(wish, site, evening, count, limit_deg, settings.moon_rule, season=True))
    return tuple(outlooks)


def site_of(view: EntryView) -> str | None:
    """Where the newest night was spent, else the site the entry names."""
    return view.nights[-1].site.slug if view.nights else view.entry.site


def first_evening(now: datetime, longitude_deg: float) -> date:
    moment = (now + NEXT_NIGHT_AFTER).timestamp()
    evening: date = evening_of([moment], [longitude_deg]).astype(object)[0]
    return evening
