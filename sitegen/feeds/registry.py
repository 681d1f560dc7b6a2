"""Every list for machines. A new one is one file and one line here."""

from sitegen.feeds import atom, facts_schema, json_feed, robots, search_index, sitemap
from sitegen.feeds.feed import Feed

FEEDS: tuple[Feed, ...] = (
    atom.FEED,
    json_feed.FEED,
    sitemap.FEED,
    robots.FEED,
    search_index.FEED,
    facts_schema.FEED,
)
