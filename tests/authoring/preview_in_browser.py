"""sitegen preview as an author meets it: a real process, real saves, a real browser.

Not collected by itself: under a full run the server has been seen not to end within 20 s of Ctrl-C, which is not understood yet.
Run it by name: `python -m pytest tests/authoring/preview_in_browser.py`.
"""

import re
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import Image
from playwright.sync_api import Browser, Page, expect

from sitegen.folders import Folders

pytestmark = pytest.mark.browser
SLOW_MS = 20_000


class Preview:
    """The running command."""

    def __init__(self, base: Path) -> None:
        command = [sys.executable, "-m", "sitegen", "preview", "--port", "18200", "--jobs", "1"]
        self.process = subprocess.Popen(command, cwd=base, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
        assert self.process.stdout is not None
        self.address = self.process.stdout.readline().split()[0]

    def end(self) -> tuple[int, str]:
        self.process.send_signal(signal.SIGINT)
        said, _ = self.process.communicate(timeout=20)
        return self.process.returncode, said


@pytest.fixture
def preview(folders: Folders) -> Iterator[Preview]:
    entry = folders.content / "entries/first-light.md"
    entry.write_text(entry.read_text("utf-8") + "\n\nLong.\n" * 80, "utf-8")
    one = Preview(folders.content.parent)
    yield one
    if one.process.poll() is None:
        one.end()


@pytest.fixture
def page(browser: Browser, preview: Preview) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": 900, "height": 600})
    one = context.new_page()
    one.goto(f"{preview.address}entries/first-light/")
    expect(one.locator("h1")).to_contain_text("First light", timeout=3 * SLOW_MS)
    yield one
    context.close()


def test_an_evening_of_writing(page: Page, preview: Preview, folders: Folders) -> None:
    """The page shows before the first site stands, follows a save with its scroll kept, tells a mistake over the last good page,
    forgets it when mended, and Ctrl-C ends it all quietly."""
    violations: list[str] = []
    page.on("console", lambda message: violations.append(message.text) if "Content Security Policy" in message.text else None)
    entry = folders.content / "entries/first-light.md"
    good = entry.read_text("utf-8")

    page.evaluate("scrollTo(0, 700)")
    entry.write_text(good.replace("This entry is invented", "This entry was saved again"), "utf-8")
    expect(page.get_by_text("This entry was saved again")).to_be_attached(timeout=SLOW_MS)
    page.wait_for_function("Math.abs(scrollY - 700) < 3", timeout=SLOW_MS)

    entry.write_text(good.replace("rig: first-train", "rig: first-tran"), "utf-8")
    board = page.get_by_role("alert")
    expect(board).to_contain_text("unknown rig 'first-tran'; did you mean 'first-train'?", timeout=SLOW_MS)
    assert re.search(r"content/entries/first-light\.md:\d+:\d+: error", board.inner_text())
    expect(page.get_by_text("This entry was saved again")).to_be_attached()

    for number in range(20):
        entry.write_text(good.replace("This entry is invented", f"Burst {number}"), "utf-8")
        time.sleep(0.01)
    expect(page.get_by_text("Burst 19")).to_be_attached(timeout=SLOW_MS)
    expect(board).to_have_count(0)
    assert violations == []

    code, said = preview.end()
    assert code == 0
    assert "unknown rig 'first-tran'" in said
    assert "Traceback" not in said
    assert said.count("rebuilt in") < 10


def test_a_deleted_picture(page: Page, folders: Folders, preview: Preview) -> None:
    """Named in the page while the last good one stands; back again, the page is well."""
    picture = folders.content / "pictures/p.png"
    picture.parent.mkdir()
    Image.new("RGB", (64, 48), "navy").save(picture)
    entry = folders.content / "entries/first-light.md"
    text = entry.read_text("utf-8")
    entry.write_text(text.replace("logs: [", "pictures: [{file: pictures/p.png, alt: blue}]\nlogs: [", 1), "utf-8")
    expect(page.get_by_alt_text("blue").first).to_be_attached(timeout=SLOW_MS)
    kept = picture.read_bytes()
    picture.unlink()
    expect(page.get_by_role("alert")).to_contain_text("'pictures/p.png', which does not exist", timeout=SLOW_MS)
    expect(page.get_by_alt_text("blue").first).to_be_attached()
    picture.write_bytes(kept)
    expect(page.get_by_role("alert")).to_have_count(0, timeout=SLOW_MS)
