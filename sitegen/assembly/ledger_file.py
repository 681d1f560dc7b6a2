"""The ledger as it lies among kept things: the name of its maker, then the records, under a checksum.

Records of known kinds are written and read by `msgspec`, which makes nothing else, in a tenth of the time of a pickle.
"""

from contextlib import suppress
from pathlib import Path

from msgspec import msgpack

from sitegen.assembly.records import Ledger
from sitegen.keeping.keep import key_of, read_checked, write_checked

DAMAGED = "what was kept from earlier is damaged: everything is made again"
ANOTHER_S = "what was kept from earlier is another version's: everything is made again"


def ledger_path(keep: Path, content: Path) -> Path:
    return keep / "ledger" / key_of(str(content.absolute()))


def write_ledger(path: Path, ledger: Ledger) -> None:
    """Not where a name in it is no text, as some disks allow for a file: what it tells of is made again."""
    with suppress(UnicodeEncodeError):
        write_checked(path, ledger.maker.encode() + b"\n" + msgpack.encode(ledger))


def read_ledger(path: Path, made_by: str) -> tuple[Ledger, str | None]:
    """An empty ledger where there is none, or it is another maker's, or damaged; then with a line that says so."""
    if not path.exists():
        return Ledger(made_by), None
    try:
        maker, _, body = read_checked(path).partition(b"\n")
        if maker != made_by.encode():
            return Ledger(made_by), ANOTHER_S
        return msgpack.decode(body, type=Ledger), None
    except (OSError, ValueError):
        return Ledger(made_by), DAMAGED
