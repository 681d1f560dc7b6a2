"""What pages open in the preview must hear: which site is standing, and what is wrong with the newest save."""

import json
import threading
from collections.abc import Iterable

from msgspec import Struct

from sitegen.problems import Problem, errors_in


class News(Struct, frozen=True):
    """`shown` names the standing site; it is another one after every rebuild that changed a file. `serial` counts the news."""

    serial: int
    shown: str
    problems: tuple[str, ...]

    def as_json(self) -> str:
        return json.dumps({"shown": self.shown, "problems": self.problems})


class NewsBoard:
    """One writer, many readers that wait."""

    def __init__(self, session: str) -> None:
        self._session, self._changed = session, threading.Condition()
        self._news, self._sites, self._closed = News(0, f"{session}-0", ()), 0, False

    @property
    def news(self) -> News:
        return self._news

    def tell(self, problems: Iterable[Problem], site_changed: bool) -> None:
        """After a rebuild. Warnings do not keep a site from standing, and are left to the terminal."""
        with self._changed:
            self._sites += site_changed
            errors = tuple(map(str, errors_in(problems)))
            self._news = News(self._news.serial + 1, f"{self._session}-{self._sites}", errors)
            self._changed.notify_all()

    def wait(self, serial: int, seconds: float) -> News | None:
        """The news after those with the serial `known`, as soon as there are any; None where the time is over."""
        with self._changed:
            self._changed.wait_for(lambda: self._closed or self._news.serial != serial, seconds)
            return self._news if self._news.serial != serial and not self._closed else None

    @property
    def closed(self) -> bool:
        return self._closed

    def close(self) -> None:
        with self._changed:
            self._closed = True
            self._changed.notify_all()
