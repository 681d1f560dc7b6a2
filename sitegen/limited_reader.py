"""A FITS file that seems to end where its headers go on for too long: who looks for an END card reads no gigabytes of nothing."""

import gzip
import io
from pathlib import Path

MOST_HEADER_BYTES = 500 * 2880
ALLOWED_BEFORE = 1 << 26  # unpacked bytes of headers and earlier HDUs before what is looked for
GZIP_MARK = b"\x1f\x8b"


class _Plain(io.BufferedReader):
    """Headers come by `read`; pixels, which numpy takes by the file's number, are not counted."""

    _left = MOST_HEADER_BYTES

    def read(self, count: int | None = -1, /) -> bytes:
        content = super().read(self._left if count is None or count < 0 else min(count, self._left))
        self._left -= len(content)
        return content


class _Packed(gzip.GzipFile):
    """Behind gzip what is skipped has to be unpacked: that is put off until something behind it is really read."""

    _left, _next = MOST_HEADER_BYTES, 0

    def read(self, count: int | None = -1) -> bytes:
        if self._next > ALLOWED_BEFORE:
            return b""
        super().seek(self._next)
        content = super().read(self._left if count is None or count < 0 else min(count, self._left))
        self._next, self._left = self._next + len(content), self._left - len(content)
        return content

    def seek(self, offset: int, whence: int = io.SEEK_SET) -> int:
        self._next = offset + (0 if whence == io.SEEK_SET else self._next)
        return self._next

    def tell(self) -> int:
        return self._next


def limited_reader(path: Path) -> io.BufferedIOBase:
    """The file to read headers from, unpacked where it is packed by gzip. Raises OSError."""
    with path.open("rb") as stream:
        packed = stream.read(len(GZIP_MARK)) == GZIP_MARK
    return _Packed(path) if packed else _Plain(io.FileIO(path))
