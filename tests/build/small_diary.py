"""A small diary on disk, the edits an author makes to it, and the site as bytes."""

import random
import shutil
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from unittest.mock import patch

from PIL import Image

from sitegen.folders import Folders
from tests.bench.make_diary import Size, make_diary

SETTLED_S = 0.03
THEME = "own"


def lay_out(root: Path) -> Folders:
    """Four entries, two of which share a night, one with a picture; a theme of its own with nothing in it yet."""
    content = root / "content"
    make_diary(content, Size(entries=4, nights=1, subs=5))
    _replace(content / "diary.yaml", "language: en\n", f"language: en\ntheme: {THEME}\n")
    (root / "themes" / THEME / "words").mkdir(parents=True)
    first, second = entries(content)[:2]
    _replace(second, "logs:\n", f"logs:\n  - {{files: logs/{first.stem}-*.csv, rig: long}}\n")
    _picture(content, "first", 40)
    return Folders(content, root / "themes", root / "output", root / "kept")


def entries(content: Path) -> list[Path]:
    return sorted((content / "entries").glob("*.md"))


def _replace(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    assert old in text, f"{path.name} lacks {old!r}"
    path.write_text(text.replace(old, new, 1), "utf-8")


def _picture(content: Path, name: str, shade: int) -> None:
    Image.new("RGB", (600, 400), (shade, 20, 60)).save(content / "pictures" / f"{name}.png")
    path = entries(content)[0]
    text = path.read_text("utf-8")
    told = f"  - {{file: pictures/{name}.png, alt: A plain colour}}\n"
    path.write_text(text.replace("pictures:\n", f"pictures:\n{told}", 1) if "pictures:\n" in text
                    else text.replace("lessons:\n", f"pictures:\n{told}lessons:\n", 1), "utf-8")  # fmt: skip


def sentence(folders: Folders, chance: random.Random) -> None:
    path = chance.choice(entries(folders.content))
    path.write_text(path.read_text("utf-8") + f"\nOne thing more, number {chance.randrange(1000)}.\n", "utf-8")


def link(folders: Folders, chance: random.Random) -> None:
    one, other = chance.sample(entries(folders.content), 2)
    one.write_text(one.read_text("utf-8") + f"\nSee [that night]({other.name}).\n", "utf-8")


def title(folders: Folders, chance: random.Random) -> None:
    _replace(chance.choice(entries(folders.content)), "title: ", f"title: Again {chance.randrange(1000)}, ")


def log(folders: Folders, chance: random.Random) -> None:
    path = chance.choice(sorted((folders.content / "logs").glob("*.csv")))
    path.write_text("\n".join(path.read_text("utf-8").splitlines()[:-1]) + "\n", "utf-8")


def another_log(folders: Folders, chance: random.Random) -> None:
    """One more file that a pattern finds."""
    path = chance.choice(sorted((folders.content / "logs").glob("*.csv")))
    later = path.read_text("utf-8").replace("T20:", "T02:").replace("T21:", "T03:")
    path.with_name(f"{path.stem}-late.csv").write_text(later, "utf-8")


def add(folders: Folders, chance: random.Random) -> None:
    path = chance.choice(entries(folders.content))
    new = path.with_name(f"added-{chance.randrange(1000)}.md")
    new.write_text(path.read_text("utf-8").replace("title: ", "title: A copy of "), "utf-8")


def remove(folders: Folders, chance: random.Random) -> None:
    linked = "".join(path.read_text("utf-8") for path in entries(folders.content))
    chance.choice([path for path in entries(folders.content) if f"({path.name})" not in linked]).unlink()


def rename(folders: Folders, chance: random.Random) -> None:
    linked = "".join(path.read_text("utf-8") for path in entries(folders.content))
    path = chance.choice([path for path in entries(folders.content) if f"({path.name})" not in linked])
    path.rename(path.with_name(f"renamed-{chance.randrange(1000)}.md"))


def rig(folders: Folders, chance: random.Random) -> None:
    work = f"work:\n  - {{date: 2013-01-{chance.randint(10, 28)}, part: mirror, what: turned, caution: laser}}\n"
    _replace(folders.content / "rigs" / "long.yaml", "work:\n", work)


def site(folders: Folders, chance: random.Random) -> None:
    path = folders.content / "sites" / "yard.yaml"
    _replace(path, "latitude_deg: 4", f"# moved {chance.random()}\nlatitude_deg: 4")
    _replace(path, "latitude_deg: 48.21", "latitude_deg: 47.02")


def settings(folders: Folders, chance: random.Random) -> None:
    _replace(folders.content / "diary.yaml", "title: ", f"title: Number {chance.randrange(1000)}, ")


def privacy(folders: Folders, chance: random.Random) -> None:
    path = folders.content / "diary.yaml"
    lines = [line for line in path.read_text("utf-8").splitlines() if not line.startswith("privacy")]
    lines.append(f"privacy: {{site_position: {chance.choice(('hidden', 'exact'))}}}")
    path.write_text("\n".join(lines) + "\n", "utf-8")


def word(folders: Folders, chance: random.Random) -> None:
    (folders.themes / THEME / "words" / "en.yaml").write_text(f"index:\n  newest: Newest, {chance.randrange(1000)}\n", "utf-8")


def picture(folders: Folders, chance: random.Random) -> None:
    _picture(folders.content, f"more-{chance.randrange(1000)}", chance.randrange(200))


def touch(folders: Folders, chance: random.Random) -> None:
    for path in folders.content.rglob("*"):
        path.touch()


def corrupt(folders: Folders, chance: random.Random) -> None:
    """Some of what is kept is cut short, turned over or gone."""
    assert folders.keep is not None
    kept = sorted(path for path in folders.keep.rglob("*") if path.is_file() and "published" not in path.name)
    for number, path in enumerate(chance.sample(kept, min(12, len(kept)))):
        if number % 3 == 0:
            path.unlink()
        else:
            content = path.read_bytes()
            path.write_bytes(content[: len(content) // 2] if number % 3 == 1 else bytes(255 - byte for byte in content))


def gone(folders: Folders, chance: random.Random) -> None:
    """The published site is thrown away, but for a page that somebody scribbled on."""
    front = folders.output / "index.html"
    text = front.read_text("utf-8")
    shutil.rmtree(folders.output)
    folders.output.mkdir()
    front.write_text(text.replace("<h1", "<h1 hidden"), "utf-8")


Edit = Callable[[Folders, random.Random], None]
EDITS: tuple[Edit, ...] = (
    sentence, link, title, log, another_log, add, remove, rename, rig, site, settings, privacy, word, picture, touch,
    corrupt, gone,
)  # fmt: skip


def settle() -> None:
    """Until a file that was just written may be known by its time."""
    time.sleep(SETTLED_S)


@contextmanager
def another_version() -> Iterator[None]:
    """As if sitegen itself had changed."""
    with patch("sitegen.build.run.code_versions", lambda modules, root: {module: f"another {module}" for module in modules}):
        yield


def bytes_of(output: Path) -> dict[str, bytes]:
    return {path.relative_to(output).as_posix(): path.read_bytes() for path in sorted(output.rglob("*")) if path.is_file()}
