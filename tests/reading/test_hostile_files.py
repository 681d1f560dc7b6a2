"""Files made to exhaust the reader end in a few lines."""

import os
from pathlib import Path

import pytest

from sitegen.reading.diagnostics import MOST_PROBLEMS
from sitegen.reading.reader import read_diary
from sitegen.reading.text_file import LARGEST_BYTES
from tests.entries.diary_text import HERE, lay_out, read_diary_text
from tests.reading.desks import TODAY

N = 40_000
FRONT = "---\ntitle: T\npublished: 2026-06-20\n"
HOSTILE = {
    "unknown-keys": "---\n" + "".join(f"k{n}: x\n" for n in range(N)) + "---\n",
    "unknown-filters": f"{FRONT}rig: dome\nwanted:\n" + "".join(f"  k{n}: 1\n" for n in range(N // 2)) + "---\n",
    "missing-files": f"{FRONT}star_survey:\n" + "".join(f"  - logs/f{n}.csv\n" for n in range(N)) + "---\n",
    "empty-globs": f"{FRONT}rig: dome\nsite: roof\nlogs:\n" + "".join(f"  - '**/*{n}*/**/*a*b*'\n" for n in range(N)) + "---\n",
    "unknown-zones": f"{FRONT}logs:\n"
    + "".join(f"  - {{files: a, time_zone: Europe/Athen{n}}}\n" for n in range(N // 5))
    + "---\n",
    "unknown-targets": f"{FRONT}target:\n" + "".join(f"  - smudge {n}\n" for n in range(N)) + "---\n",
    "duplicate-keys": "---\n" + "a: 1\n" * N + "---\n",
    "too-many-values": f"{FRONT}topics:\n" + "  - a\n" * 60_000 + "---\n",
    "one-long-word": f"---\ntitle: {'x' * 1_900_000}\n---\n",
    "one-long-key": f"---\n{'x' * 1_000}: 1\n? {'y' * 1_800_000}\n: 1\n---\n",
    "one-long-number": f"{FRONT}target: NGC {'1' * 1_000_000}\nwanted: {{L: {'9' * 900_000}}}\n---\n",
    "one-long-angle": f"{FRONT}target: {{name: x, ra: 1{' ' * 200_000}y, dec: '1{' ' * 200_000}'}}\n---\n",
    "one-long-address": f"{FRONT}links: [{{title: x, address: 'https://{'a.' * 900_000}'}}]\n---\n",
    "one-long-path": f"{FRONT}star_survey: [{'a/' * 900_000}]\n---\n",
    "one-long-pattern": f"{FRONT}rig: dome\nsite: roof\nlogs: ['{'**/' * 300_000}']\n---\n",
    "brackets": "---\n" + "[" * 1_900_000,
    "dashes": "---\n" + "- " * 900_000 + "\n---\n",
    "quotes": "---\n" + "'" * 1_900_000 + "\n---\n",
    "anchors": "---\n" + "".join(f"- &a{n} x\n" for n in range(N)) + "---\n",
    "text-as-long-as-a-book": FRONT + "---\n" + "a *b " * 25_000,
    "too-large": "---\n" + "# x\n" * (LARGEST_BYTES // 4) + "---\n",
}


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE)
def test_a_hostile_entry_ends_in_few_lines(text: str, tmp_path: Path) -> None:
    """Of at most a few hundred characters each."""
    content = tmp_path / "content"
    lay_out(read_diary_text(HERE / "sound.diary"), content)
    (content / "entries/first.md").write_text(text, encoding="utf-8")
    reading = read_diary(content, TODAY)
    assert reading.diary is None
    assert 1 <= len(reading.problems) <= MOST_PROBLEMS + 1
    assert max(len(str(problem)) for problem in reading.problems) < 500


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="pipes in folders are for systems that have them")
def test_a_pipe_is_no_file(tmp_path: Path) -> None:
    """Whoever opened it would wait for ever: as a log it is none, as an entry it is passed over."""
    content = tmp_path / "content"
    lay_out(read_diary_text(HERE / "sound.diary"), content)
    log = next((content / "logs").glob("*.csv"))
    log.unlink()
    for pipe in (log, content / "entries/pipe.md"):
        os.mkfifo(pipe)
    assert [problem.wrong for problem in read_diary(content, TODAY).problems] == [
        f"an item of 'logs' is 'logs/{log.name}', which does not exist"
    ]
