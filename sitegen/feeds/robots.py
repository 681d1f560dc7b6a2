"""robots.txt: everybody is welcome, and the sitemap is here."""

from sitegen.artifact import Artifact
from sitegen.diary import addresses
from sitegen.feeds.feed import Feed, FeedSource


def make(source: FeedSource) -> list[Artifact]:
    lines = ["User-agent: *", "Allow: /"]
    if source.book.settings.address:
        lines += ["", f"Sitemap: {source.link(addresses.SITEMAP)}"]
    return [Artifact.text(addresses.ROBOTS, "\n".join(lines) + "\n")]


FEED = Feed("robots", make)
