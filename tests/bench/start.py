"""How quick the program starts: its help and its completions, beside a bare group of `click` that prints its help.

    python tests/bench/start.py [--times 10]

Processor time (user + system) of a whole process each, the least of several; the cases take turns with the bare group, so that a
machine that slows down slows them all.
"""

import argparse
import os
import resource
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
BARE = "import click\n@click.group()\ndef main() -> None:\n    '''Bare.'''\nmain(['--help'])"
PROGRAM = "from sitegen.cli import main; main(prog_name='sitegen')"
MOST = 1.5
COMPLETED = ("sitegen re", "sitegen gather --di", "sitegen survey --sa", "sitegen outlook --cal", "sitegen begin --")
HELPS = ("", "gather", "rebuild", "survey")


def environment(**more: str) -> dict[str, str]:
    """As installed: with compiled code kept."""
    return {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"} | {
        "PYTHONPATH": str(ROOT),
        **more,
    }


def spent_s(script: str, words: tuple[str, ...], surroundings: dict[str, str]) -> float:
    """Processor seconds of one process."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run([sys.executable, "-c", script, *words], env=surroundings, stdout=subprocess.DEVNULL, check=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def cases() -> dict[str, tuple[str, tuple[str, ...], dict[str, str]]]:
    """Script, words and environment by what is shown."""
    helps = {f"sitegen {name} --help".replace("  ", " "): (PROGRAM, (*name.split(), "--help"), environment()) for name in HELPS}
    completions = {
        f"completion of '{line}'": (
            PROGRAM,
            (),
            environment(_SITEGEN_COMPLETE="bash_complete", COMP_WORDS=line, COMP_CWORD=str(line.count(" "))),
        )
        for line in COMPLETED
    }
    source = {"completion, once a shell": (PROGRAM, (), environment(_SITEGEN_COMPLETE="zsh_source"))}
    return {"a bare group": (BARE, (), environment())} | helps | completions | source


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--times", type=int, default=10)
    times = parser.parse_args().times
    chosen = cases()
    least = dict.fromkeys(chosen, float("inf"))
    for _ in range(times):
        for name, case in chosen.items():
            least[name] = min(least[name], spent_s(*case))
    bare_s = least["a bare group"]
    for name, seconds in least.items():
        print(f"{name:34} {1000 * seconds:6.0f} ms of processor, {seconds / bare_s:4.2f} times the bare group (at most {MOST})")
    print(f"load of the machine: {', '.join(f'{load:.1f}' for load in os.getloadavg())} on {os.cpu_count()} cores")


if __name__ == "__main__":
    main()
