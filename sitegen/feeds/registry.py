"""Every list for machines. A new one is one file and one line here."""

from sitegen.feeds import atom, facts_schema, json_feed, list_facts_schema, robots, search_index, sitemap
from sitegen.feeds.feed import Feed

FEEDS: tuple[Feed, ...] = (
    atom.FEED,
    json_feed.FEED,
    sitemap.FEED,
    robots.FEED,
    search_index.FEED,
    facts_schema.FEED,
    list_facts_schema.FEED,
)
