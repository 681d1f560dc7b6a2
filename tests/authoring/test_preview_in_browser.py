"""sitegen preview as an author meets it: a real process, real saves, a real browser.

One evening for all of it, since starting costs most."""

import os
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

from sitegen.authoring.new_diary import start_diary
from tests.authoring.conftest import TODAY
from tests.browser.conftest import becomes_true

pytestmark = pytest.mark.browser
SLOW_MS = 20_000


class Preview:
    """The running command, and the entry that is being written."""

    def __init__(self, content: Path) -> None:
        self.content, self.entry = content, content / "entries/first-light.md"
        self.entry.write_text(self.entry.read_text("utf-8") + "\n\nLong.\n" * 80, "utf-8")
        command = [sys.executable, "-m", "sitegen", "preview", "--port", "18200", "--jobs", "1"]
        environment = os.environ | {"PYTHONPATH": str(Path(__file__).resolve().parents[2])}
        self.process = subprocess.Popen(
            command, cwd=content.parent, env=environment, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
        )
        assert self.process.stdout is not None
        self.address = self.process.stdout.readline().split()[0]

    def end(self) -> tuple[int, str]:
        self.process.send_signal(signal.SIGINT)
        said, _ = self.process.communicate(timeout=20)
        return self.process.returncode, said


@pytest.fixture(scope="module")
def preview(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Preview]:
    base = tmp_path_factory.mktemp("evening")
    start_diary(base / "diary", TODAY, "diary")
    one = Preview(base / "diary/content")
    yield one
    one.process.kill()
    one.process.wait()


@pytest.fixture(scope="module")
def page(browser: Browser, preview: Preview) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": 900, "height": 600})
    one = context.new_page()
    one.goto(f"{preview.address}entries/first-light/")
    expect(one.locator("h1")).to_contain_text("First light", timeout=3 * SLOW_MS)
    yield one
    context.close()


def test_an_evening_of_writing(page: Page, preview: Preview) -> None:
    """The page shows before the first site stands, follows a save with its scroll kept, tells a mistake over the last good page,
    and forgets it when mended; a burst of saves is one."""
    violations: list[str] = []
    page.on("console", lambda message: violations.append(message.text) if "Content Security Policy" in message.text else None)
    good = preview.entry.read_text("utf-8")

    page.evaluate("scrollTo(0, 700)")
    preview.entry.write_text(good.replace("This entry is invented", "This entry was saved again"), "utf-8")
    expect(page.get_by_text("This entry was saved again")).to_be_attached(timeout=SLOW_MS)
    becomes_true(page, "Math.abs(scrollY - 700) < 3")

    preview.entry.write_text(good.replace("rig: first-train", "rig: first-tran"), "utf-8")
    board = page.get_by_role("alert")
    expect(board).to_contain_text("unknown rig 'first-tran'; did you mean 'first-train'?", timeout=SLOW_MS)
    assert re.search(r"content/entries/first-light\.md:\d+:\d+: error", board.inner_text())
    expect(page.get_by_text("This entry was saved again")).to_be_attached()

    for number in range(20):
        preview.entry.write_text(good.replace("This entry is invented", f"Burst {number}"), "utf-8")
        time.sleep(0.01)
    expect(page.get_by_text("Burst 19")).to_be_attached(timeout=SLOW_MS)
    expect(board).to_have_count(0)
    assert violations == []


def test_a_deleted_picture(page: Page, preview: Preview) -> None:
    """Named in the page while the last good one stands; back again, the page is well."""
    picture = preview.content / "pictures/p.png"
    picture.parent.mkdir()
    Image.new("RGB", (64, 48), "navy").save(picture)
    text = preview.entry.read_text("utf-8")
    preview.entry.write_text(text.replace("logs: [", "pictures: [{file: pictures/p.png, alt: blue}]\nlogs: [", 1), "utf-8")
    expect(page.get_by_alt_text("blue").first).to_be_attached(timeout=SLOW_MS)
    kept = picture.read_bytes()
    picture.unlink()
    expect(page.get_by_role("alert")).to_contain_text("'pictures/p.png', which does not exist", timeout=SLOW_MS)
    expect(page.get_by_alt_text("blue").first).to_be_attached()
    picture.write_bytes(kept)
    expect(page.get_by_role("alert")).to_have_count(0, timeout=SLOW_MS)


def test_ctrl_c_while_the_page_is_open(page: Page, preview: Preview) -> None:
    """Ends it quietly; what the terminal was told names the mistake once, and far fewer rebuilds than saves."""
    assert page.url.startswith(preview.address)
    code, said = preview.end()
    assert code == 0
    assert said.count("unknown rig 'first-tran'") == 1
    assert "Traceback" not in said
    assert said.count("rebuilt in") < 12
