"""Files made to exhaust whoever opens them. As a script: opens each, and prints its name, its answer, its seconds, and
the highest memory of the process in MB, tabs between them."""

import gzip
import io
import os
import resource
import struct
import sys
import tempfile
import time
import zlib
from collections.abc import Callable
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from astropy.io import fits  # noqa: E402 # run as a script
from PIL import Image, PngImagePlugin  # noqa: E402 # run as a script

from sitegen.pictures.records import PictureProblem, PictureSettings  # noqa: E402 # run as a script
from sitegen.pictures.sizes import make_sizes  # noqa: E402 # run as a script
from tests.fuzz.targets import _log, front_matter, markdown  # noqa: E402 # run as a script
from tests.trust import tiny  # noqa: E402 # run as a script

LAUGHS = "".join(f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]\n" if n else "a0: &a0 [x]\n" for n in range(12))
ENTITIES = (
    "<?xpacket begin=''?><!DOCTYPE x [<!ENTITY a0 'ha'>"
    + "".join(f"<!ENTITY a{n} '{f'&a{n - 1};' * 10}'>" for n in range(1, 12))
    + "<!ENTITY f SYSTEM 'file:///etc/passwd'>]><x:xmpmeta xmlns:x='adobe:ns:meta/'>&a11;&f;</x:xmpmeta>"
)

SMALL = zlib.compress(bytes(39))


def entry(front: str, body: str = "Text.") -> bytes:
    return f"---\ntitle: A\npublished: 2026-06-20\n{front}\n---\n{body}\n".encode()


def png(width: int, height: int, data: bytes, *before: bytes) -> bytes:
    header = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + b"".join(before) + chunk(b"IDAT", data) + chunk(b"IEND", b"")


def chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))


@cache
def zeros(count: int) -> bytes:
    packer = zlib.compressobj(9)
    return b"".join(packer.compress(bytes(10_000_000)) for _ in range(count // 10_000_000)) + packer.flush()


def with_xmp() -> bytes:
    target, text = io.BytesIO(), PngImagePlugin.PngInfo()
    text.add_itxt("XML:com.adobe.xmp", ENTITIES)
    Image.new("RGB", (40, 30)).save(target, "PNG", pnginfo=text)
    return target.getvalue()


def picture(content: bytes, folder: Path) -> str:
    (folder / "bomb").write_bytes(content)
    try:
        make_sizes(folder / "bomb", folder / "sizes", PictureSettings(widths_px=(20,), avif_effort=0))
    except PictureProblem:
        return "refused"
    return "taken"


def long_fits() -> bytes:
    header = tiny.frame({})[:2880].replace(b"NAXIS1  =                    2", b"NAXIS1  =          99999999999")
    return header + bytes(2880)


BOMBS: dict[str, tuple[Callable[[bytes, Path], str], Callable[[], bytes]]] = {
    "aliases": (front_matter, lambda: entry(LAUGHS)),
    "deep nesting": (front_matter, lambda: entry("topics: " + "[" * 100_000)),
    "deep mapping": (front_matter, lambda: entry("".join(" " * n + f"a{n}:\n" for n in range(1_400)))),
    "a key 50000 times": (front_matter, lambda: entry("title: x\n" * 50_000)),
    "a number of a million digits": (front_matter, lambda: entry("wanted: {L: " + "9" * 1_000_000 + "}")),
    "deep quotes in Markdown": (front_matter, lambda: entry("stage: trial", "> " * 200_000)),
    "brackets in Markdown": (front_matter, lambda: entry("stage: trial", "[" * 200_000 + "a" + "](b)" * 50_000)),
    "brackets, rendered": (markdown, lambda: b"[" * 15_000),
    "pictures in brackets, rendered": (markdown, lambda: b"![[" * 5_000),
    "a row of 100 MB": (_log("a.csv"), lambda: b"start,exposure_s\n" + b"2" * 100_000_000),
    "a row of 15 MB": (_log("a.csv"), lambda: b"start,exposure_s\n" + b"2," * 7_500_000),
    "a quote that never ends": (_log("a.csv"), lambda: b'start,exposure_s\n"' + b"2\n" * 7_000_000),
    "an ECSV head without end": (_log("a.ecsv"), lambda: b"# %ECSV 1.0\n# ---\n" + b"# - {name: a}\n" * 900_000),
    "a FITS of 99999999999 columns": (_log("a.fits"), long_fits),
    "a gzip of 300 MB": (_log("a.fits.gz"), lambda: gzip_zeros(300_000_000)),
    "the same as a picture": (picture, lambda: gzip_zeros(300_000_000)),
    "a sound header before it": (picture, lambda: gzip.compress(tiny.frame({})[:2880]) + gzip_zeros(300_000_000)),
    "a header without axes before it": (picture, lambda: gzip.compress(nothing()) + gzip_zeros(300_000_000)),
    "a table of 300 MB before it": (picture, lambda: gzip.compress(nothing() + table(300_000_000)) + gzip_zeros(300_000_000)),
    "300 MB of nothing behind a FITS header": (picture, lambda: nothing() + bytes(300_000_000)),
    "a FITS picture that lies": (picture, long_fits),
    "a PNG of 900 megapixels": (picture, lambda: png(30_000, 30_000, zlib.compress(bytes(100)))),
    "a PNG with 300 MB behind": (picture, lambda: png(40, 30, zeros(300_000_000))),
    "a PNG with 300 MB of text": (picture, lambda: png(4, 3, SMALL, chunk(b"zTXt", b"a\0\0" + zeros(3 * 10**8)))),
    "a PNG with 300 MB of profile": (picture, lambda: png(4, 3, SMALL, chunk(b"iCCP", b"a\0\0" + zeros(3 * 10**8)))),
    "entities in XMP": (picture, with_xmp),
}


def nothing() -> bytes:
    return fits.PrimaryHDU().header.tostring().encode()


def table(count: int) -> bytes:
    header = fits.BinTableHDU.from_columns([fits.Column("a", "B", array=[0])]).header
    header["NAXIS2"] = count
    return header.tostring().encode()


@cache
def gzip_zeros(count: int) -> bytes:
    packer = zlib.compressobj(9, wbits=31)
    return b"".join(packer.compress(bytes(10_000_000)) for _ in range(count // 10_000_000)) + packer.flush()


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        for name, (answer, content) in BOMBS.items():
            bomb, child = content(), os.fork()
            if child == 0:
                since = time.process_time()
                told = answer(bomb, Path(folder))
                peak_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
                sys.stdout.write(f"{name}\t{told}\t{time.process_time() - since:.2f}\t{peak_mb:.0f}\n")
                sys.stdout.flush()
                os._exit(0)
            _, status = os.waitpid(child, 0)
            if status:
                sys.stdout.write(f"{name}\tdied of {status}\t0\t0\n")
                sys.stdout.flush()


if __name__ == "__main__":
    main()
