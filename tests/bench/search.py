"""The search page of a large diary: what it weighs before anybody types, and how soon a hit is there, on a slow processor.

    python tests/bench/search.py SITE [--words galaxy focus 'm 15' ngc] [--slower 4]

SITE is an output folder, served from disk through a bare HTTP server. First load: the HTML and every file that is fetched before
a key is pressed, gzipped as a host would. A hit: from the key to the first row in the list, the median of nine, with the
processor slowed down by Chromium itself.
"""

import argparse
import gzip
import shutil
import threading
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from statistics import median
from urllib.parse import urlsplit

from playwright.sync_api import Page, Response, sync_playwright

TIMES = 9
HIT_MS = """async (asked) => {
  const field = document.querySelector('#q'), hits = document.querySelector('#hits');
  field.value = '';
  field.dispatchEvent(new Event('input', { bubbles: true }));
  await new Promise((done) => setTimeout(done, 300));
  const start = performance.now();
  field.value = asked;
  field.dispatchEvent(new Event('input', { bubbles: true }));
  while (!hits.querySelector('li')) {
    if (performance.now() - start > 5000) return -1;
    await new Promise((done) => { const port = new MessageChannel(); port.port1.onmessage = done; port.port2.postMessage(0); });
  }
  return performance.now() - start;
}"""


class Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        pass


def measured(page: Page, site: Path, port: int, words: list[str], slower: float) -> None:
    loaded: list[str] = []

    def seen(response: Response) -> None:
        loaded.append(urlsplit(response.url).path)

    page.on("response", seen)
    page.goto(f"http://127.0.0.1:{port}/search/index.html", wait_until="networkidle")
    sizes = {path: len(gzip.compress((site / path.lstrip("/")).read_bytes(), 6)) for path in dict.fromkeys(loaded)}
    for path, size in sizes.items():
        print(f"  {path:44} {size / 1000:8.1f} kB gzipped")
    print(f"  first load {sum(sizes.values()) / 1000:.1f} kB gzipped (at most 60)")
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slower})
    for word in words:
        times = [page.evaluate(HIT_MS, word) for _ in range(TIMES)]
        count = page.locator(".found").text_content()
        print(f"  {word!r:20} first time {times[0]:6.1f} ms, median {median(times):6.1f} ms (at most 50), {count}")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("site", type=Path)
    parser.add_argument("--words", nargs="+", default=["night", "clear", "m 15", "foc", "guiding ha"])
    parser.add_argument("--slower", type=float, default=4.0)
    asked = parser.parse_args()
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=asked.site))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        measured(browser.new_page(), asked.site, server.server_port, asked.words, asked.slower)
        browser.close()


if __name__ == "__main__":
    main()
