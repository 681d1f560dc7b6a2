"""The preview's server: this machine only, the published bytes, and news for every open page."""

import http.client
import json
import socket
import threading
import time
from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path

import pytest
from watchfiles import Change

from sitegen.authoring import preview_server
from sitegen.authoring.preview import matters
from sitegen.authoring.preview_news import NewsBoard
from sitegen.authoring.preview_server import ANY_FREE, PreviewServer, is_this_machine, open_server
from sitegen.problems import DiaryProblems, Problem

PAGE = b"<!doctype html><html><body><p>Night</p></body></html>"


@pytest.fixture
def site(tmp_path: Path) -> Path:
    (tmp_path / "site/totals").mkdir(parents=True)
    (tmp_path / "site/index.html").write_bytes(PAGE)
    (tmp_path / "site/totals/index.html").write_bytes(PAGE)
    (tmp_path / "site/look.css").write_bytes(b"p { color: red }")
    (tmp_path / "secret.txt").write_bytes(b"not for you")
    return tmp_path / "site"


@pytest.fixture
def server(site: Path) -> Iterator[PreviewServer]:
    one = open_server(18080, site, NewsBoard("test"))
    threading.Thread(target=one.serve_forever, daemon=True).start()
    yield one
    one.board.close()
    one.shutdown()
    one.server_close()


def asked(server: PreviewServer, path: str, host: str | None = None, method: str = "GET") -> tuple[int, dict[str, str], bytes]:
    port = server.server_address[1]
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=5)
    connection.request(method, path, headers={"Host": host or f"127.0.0.1:{port}"})
    answer = connection.getresponse()
    found = answer.status, dict(answer.getheaders()), answer.read()
    connection.close()
    return found


def test_a_page_listens_and_the_file_stays(server: PreviewServer, site: Path) -> None:
    """The script stands in what is served, never in what is published; other files are served as they are."""
    status, headers, body = asked(server, "/totals/")
    assert (status, headers["Cache-Control"]) == (200, "no-store")
    assert body == PAGE.replace(b"</body>", b'<script src="/-/refresh.js?shown=test-0" defer></script>\n</body>')
    assert (site / "totals/index.html").read_bytes() == PAGE
    assert asked(server, "/look.css")[2] == b"p { color: red }"
    assert asked(server, "/-/refresh.js?shown=x")[1]["Content-Type"] == "text/javascript; charset=utf-8"


def test_it_listens_on_this_machine_alone(server: PreviewServer) -> None:
    """The socket is bound to 127.0.0.1, and a name that another site pointed here is refused."""
    assert server.socket.getsockname()[0] == "127.0.0.1"
    assert asked(server, "/", host="evil.example:18080")[0] == 403
    assert asked(server, "/-/news", host="evil.example")[0] == 403
    assert asked(server, "/", host="localhost:18080")[0] == 200


@pytest.mark.parametrize(
    "host", ["LOCALHOST", "Localhost:18080", "127.0.0.1", "127.1.2.3:18080", "[::1]", "[::1]:18080", "localhost.:80", "[0:0::1]"]
)
def test_every_name_of_this_machine_will_do(server: PreviewServer, host: str) -> None:
    """Any case (RFC 9110, 4.2.3), the whole loopback block (RFC 1122, 3.2.1.3) and that of IPv6 (RFC 4291, 2.5.3)."""
    assert asked(server, "/", host=host)[0] == 200


OTHERS = ["128.0.0.1", "127.0.0.1.evil.example", "localhost.evil.example", "[::2]", "::1", "127.1", "x@localhost", ""]


@pytest.mark.parametrize("host", OTHERS)
def test_other_names_are_refused(host: str) -> None:
    """Names that begin like one of this machine's, and addresses that are none."""
    assert not is_this_machine(host)


def test_an_address_that_is_none(server: PreviewServer) -> None:
    """No file name holds a null: a page says so, in place of an empty reply."""
    status, _, body = asked(server, "/a%00b")
    assert (status, b"This is no address of a page" in body) == (400, True)


def test_a_link_out_of_the_site_leads_nowhere(server: PreviewServer, site: Path) -> None:
    """A file or folder linked from elsewhere is not served; a link inside is, and the output may be a link itself."""
    (site / "out.txt").symlink_to(site.parent / "secret.txt")
    (site / "up").symlink_to(site.parent)
    (site / "again.css").symlink_to("look.css")
    for path in ("/out.txt", "/up/secret.txt", "/up/", "/up"):
        status, _, body = asked(server, path)
        assert (status, b"not for you" in body) == (503, False), path
    assert asked(server, "/again.css")[2] == b"p { color: red }"


def test_half_open_clients_are_let_go(server: PreviewServer, monkeypatch: pytest.MonkeyPatch) -> None:
    """Clients that connect and ask for nothing hold no more than so many threads, and not for ever."""
    monkeypatch.setattr(preview_server._Handler, "timeout", 1.0)
    before = threading.active_count()
    with ExitStack() as clients:
        for _ in range(preview_server.MOST_CONNECTIONS + 20):
            clients.enter_context(socket.create_connection(server.server_address[:2]))
        deadline = time.monotonic() + 20
        most = before
        while time.monotonic() < deadline and (threading.active_count() > before or most == before):
            most = max(most, threading.active_count())
            time.sleep(0.01)
        assert before < most <= before + preview_server.MOST_CONNECTIONS
        assert threading.active_count() == before
        assert asked(server, "/look.css")[0] == 200


def test_nothing_outside_the_site_is_served(server: PreviewServer) -> None:
    """Steps upward, plain or encoded, lead nowhere."""
    for path in ("/../secret.txt", "/%2e%2e/secret.txt", "/totals/..%2f..%2fsecret.txt"):
        status, _, body = asked(server, path)
        assert status in (404, 503)
        assert b"not for you" not in body


def test_a_folder_without_its_slash_is_led_on(server: PreviewServer) -> None:
    """Relative links need the slash; the way leads never to another host."""
    assert asked(server, "/totals")[1]["Location"] == "/totals/"
    assert asked(server, "//totals")[1].get("Location", "/totals/") == "/totals/"


def test_before_anything_is_built_a_page_waits(tmp_path: Path) -> None:
    """It says so, and listens."""
    one = open_server(18080, tmp_path / "none", NewsBoard("test"))
    threading.Thread(target=one.serve_forever, daemon=True).start()
    status, _, body = asked(one, "/")
    one.shutdown()
    one.server_close()
    assert status == 503
    assert b"No site has been built yet" in body
    assert b"/-/refresh.js" in body


def test_a_busy_port_leads_to_the_next(server: PreviewServer, site: Path) -> None:
    """Two previews run side by side."""
    other = open_server(server.server_address[1], site, NewsBoard("other"))
    other.server_close()
    assert other.server_address[1] > server.server_address[1]


def test_any_free_port_is_the_system_s_choice(site: Path) -> None:
    """Two previews get two ports, which nobody had to name and which need no right (from 1024 on, as in every Unix)."""
    servers = [open_server(ANY_FREE, site, NewsBoard(name)) for name in ("one", "other")]
    ports = [server.server_address[1] for server in servers]
    for server in servers:
        server.server_close()
    assert ports[0] != ports[1]
    assert min(ports) >= 1024


def test_all_ports_busy_is_a_problem(site: Path) -> None:
    """Told in a sentence, with the remedy."""
    with socket.socket() as busy:
        busy.bind(("127.0.0.1", 65535))
        busy.listen()
        wanted = r"^127\.0\.0\.1:65535:1:1: error: this port and the 19 after it are busy; name another"
        with pytest.raises(DiaryProblems, match=wanted):
            open_server(65535, site, NewsBoard("x"))


def test_news_reach_an_open_page(server: PreviewServer) -> None:
    """First how things stand, then every change; a site that did not change keeps its name."""
    connection = http.client.HTTPConnection("127.0.0.1", server.server_address[1], timeout=5)
    connection.request("GET", "/-/news")
    stream = connection.getresponse()
    said = []
    for tell in (None, ((Problem("a.md", 1, 2, "wrong"), Problem("b.md", 1, 1, "doubt", "", "warning")), False), ((), True)):
        if tell is not None:
            server.board.tell(*tell)
        said.append(json.loads(stream.fp.readline().removeprefix(b"data: ")))
        stream.fp.readline()
    connection.close()
    assert said == [
        {"shown": "test-0", "problems": []},
        {"shown": "test-0", "problems": ["a.md:1:2: error: wrong"]},
        {"shown": "test-1", "problems": []},
    ]


@pytest.mark.parametrize(
    ("name", "counts"),
    [("ngc-253.md", True), ("photo.jpg", True), ("2026", True), (".ngc-253.md.swp", False), ("ngc-253.md~", False),
     ("#ngc-253.md#", False), (".#ngc-253.md", False), ("4913", False), ("x.tmp", False), (".goutputstream-AB", False)],
)  # fmt: skip
def test_what_editors_leave_is_no_save(name: str, counts: bool) -> None:
    """Swap files, backups and locks do not rebuild."""
    assert matters(Change.modified, f"/diary/content/entries/{name}") is counts
