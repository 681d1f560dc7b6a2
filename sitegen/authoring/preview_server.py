"""The preview's web server: the published files on 127.0.0.1 alone, each page with a script that listens for news."""

import errno
import ipaddress
import os
import re
import threading
import time
from functools import partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from importlib.resources import files
from pathlib import Path
from typing import Any

from sitegen.authoring.new_files import refuse
from sitegen.authoring.preview_news import NewsBoard
from sitegen.diary import addresses

HOST = "127.0.0.1"
OWN = "/-/"
NOT_SERVED = "-/outside"
PORTS_TRIED = 20
ANY_FREE = 0  # the system chooses
STILL_THERE_S = 15.0
# A rebuild puts the new site in the old one's place within this time.
SWITCH_S = 0.5
# A client that asks, or takes what it asked for, goes on within this time, or is gone.
REQUEST_S = 10.0
# An open page holds one connection, and a browser opens six more beside it.
MOST_CONNECTIONS = 64
_HOST_HEADER = re.compile(r"(?:\[([0-9a-f:.]+)\]|([^:\[\]]+))(?::\d{1,5})?", re.ASCII | re.IGNORECASE)
_NO_ADDRESS = (
    "<!doctype html><html lang=en><meta charset=utf-8><title>No address</title><body>"
    "<p>This is no address of a page. <a href=/>To the first page</a></p></body></html>"
)
_WAITING = (
    "<!doctype html><html lang=en><meta charset=utf-8><title>Nothing built yet</title><body>"
    "<p>No site has been built yet. This page shows it as soon as there is one.</p></body></html>"
)


class PreviewServer(ThreadingHTTPServer):
    daemon_threads = True

    def __init__(self, port: int, output: Path, board: NewsBoard) -> None:
        self.board = board
        self._free = threading.BoundedSemaphore(MOST_CONNECTIONS)
        super().__init__((HOST, port), partial(_Handler, directory=str(output)))

    def process_request(self, request: Any, client_address: Any) -> None:
        """Each connection has a thread of its own; those beyond the most are closed unanswered, and the browser asks again."""
        if not self._free.acquire(blocking=False):
            self.shutdown_request(request)
            return
        super().process_request(request, client_address)

    def process_request_thread(self, request: Any, client_address: Any) -> None:
        try:
            super().process_request_thread(request, client_address)
        finally:
            self._free.release()

    def handle_error(self, request: Any, client_address: Any) -> None:
        """A page that was closed while it was being sent is nothing to tell."""


def open_server(port: int, output: Path, board: NewsBoard) -> PreviewServer:
    """On the port, or the next that is free; on any free one for ANY_FREE. Raises DiaryProblems where none is."""
    ports = range(port, min(port + PORTS_TRIED, 65536)) if port != ANY_FREE else [ANY_FREE]
    for candidate in ports:
        try:
            return PreviewServer(candidate, output, board)
        except OSError as trouble:
            if trouble.errno not in (errno.EADDRINUSE, errno.EACCES):
                raise
    raise refuse(f"{HOST}:{port}", f"this port and the {PORTS_TRIED - 1} after it are busy", "name another with --port")


class _Handler(SimpleHTTPRequestHandler):
    server: PreviewServer
    timeout = REQUEST_S

    def do_GET(self) -> None:
        if not is_this_machine(self.headers.get("Host") or ""):
            self.send_error(HTTPStatus.FORBIDDEN)
        elif "%00" in self.path or "\0" in self.path:
            self._send(_NO_ADDRESS.encode(), "text/html; charset=utf-8", HTTPStatus.BAD_REQUEST)
        elif self.path == f"{OWN}news":
            self._stream_news()
        elif self.path.startswith(f"{OWN}refresh.js"):
            self._send(files("sitegen.authoring").joinpath("refresh.js").read_bytes(), "text/javascript; charset=utf-8")
        else:
            self._send_site()

    def do_HEAD(self) -> None:
        self.do_GET()

    def log_message(self, format: str, *args: Any) -> None:
        """The terminal is for the diary's problems."""

    def _send_site(self) -> None:
        shown = self.server.board.news.shown
        path = self._inside(Path(self.translate_path(self.path)))
        if path.is_dir() and not self.path.partition("?")[0].endswith("/"):
            self._send_to(self.path.partition("?")[0] + "/")
            return
        content = _read(path)
        if content is not None:
            page = path.is_dir() or path.suffix == ".html"
            kind = "text/html; charset=utf-8" if page else self.guess_type(str(path))
            self._send(_listening(content, shown) if page else content, kind)
            return
        missing = _read(Path(self.directory) / addresses.NOT_FOUND)
        status = HTTPStatus.NOT_FOUND if missing else HTTPStatus.SERVICE_UNAVAILABLE
        self._send(_listening(missing or _WAITING.encode(), shown), "text/html; charset=utf-8", status)

    def _inside(self, path: Path) -> Path:
        """The file asked for; one that no site has where a link leads out of the output. That itself may be a link."""
        root = os.path.realpath(self.directory)
        real = os.path.realpath(path)
        return path if real == root or real.startswith(root + os.sep) else Path(root) / NOT_SERVED

    def _send_to(self, address: str) -> None:
        self.send_response(HTTPStatus.MOVED_PERMANENTLY)
        self.send_header("Location", "/" + address.lstrip("/"))
        self.send_header("Content-Length", "0")
        self.end_headers()

    def _send(self, content: bytes, kind: str, status: HTTPStatus = HTTPStatus.OK) -> None:
        self.send_response(status)
        self.send_header("Content-Type", kind)
        self.send_header("Content-Length", str(len(content)))
        self.send_header("Cache-Control", "no-store")
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(content)

    def _stream_news(self) -> None:
        """Server-sent events, as the HTML standard has them."""
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", "text/event-stream")
        self.send_header("Cache-Control", "no-store")
        self.end_headers()
        serial = -1
        while not self.server.board.closed:
            news = self.server.board.wait(serial, STILL_THERE_S)
            serial = news.serial if news else serial
            self.wfile.write(f"data: {news.as_json()}\n\n".encode() if news else b": still there\n\n")


def is_this_machine(host_header: str) -> bool:
    """Whether a request names this machine as the one it is for, with or without a port: a page of another site whose name was
    pointed here asks under that name."""
    parts = _HOST_HEADER.fullmatch(host_header)
    if parts is None:
        return False
    name = (parts[1] or parts[2]).casefold().removesuffix(".")
    try:
        return name == "localhost" or ipaddress.ip_address(name).is_loopback
    except ValueError:
        return False


def _read(path: Path) -> bytes | None:
    """The file, or the page of a folder; waits out the moment in which one site takes the place of another."""
    until = time.monotonic() + SWITCH_S
    while True:
        try:
            return (path / "index.html" if path.is_dir() else path).read_bytes()
        except OSError:
            if time.monotonic() > until or path.parent.is_dir():
                return None
            time.sleep(0.02)


def _listening(page: bytes, shown: str) -> bytes:
    """The page with the script before the end of its body."""
    script = f'<script src="{OWN}refresh.js?shown={shown}" defer></script>\n'.encode()
    head, end, tail = page.rpartition(b"</body>")
    return head + script + end + tail if end else page + script
