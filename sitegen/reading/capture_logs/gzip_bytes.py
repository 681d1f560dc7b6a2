"""The first bytes behind gzip: never more than asked for, however much a file claims to hold."""

import zlib
from collections.abc import Callable

from sitegen.reading.capture_logs.log_problems import ValueProblem

_GZIP_FORMAT = 31


def unpacking(read_more: Callable[[], bytes], start: bytes) -> Callable[[int], bytes]:
    """A function that gives at most so many of the next unpacked bytes, none at the end. It raises ValueProblem on damaged data.

    `start` holds the first packed bytes, `read_more` gives the following.
    """
    unpacker, packed = zlib.decompressobj(wbits=_GZIP_FORMAT), start

    def tap(count: int) -> bytes:
        nonlocal packed
        content = b""
        while not content and not unpacker.eof:
            packed = packed or read_more()
            if not packed:
                break
            try:
                content = unpacker.decompress(packed, count)
            except zlib.error:
                raise ValueProblem("is damaged: gzip cannot unpack it") from None
            packed = unpacker.unconsumed_tail
        return content

    return tap
