"""How libvips works in this process: set once, before the first picture."""

import ctypes
import logging

import pyvips

M_ARENA_MAX = -8  # <malloc.h> of the GNU C library
ARENAS = 2
THREADS = 2  # AVIF encodes to other bytes on one thread than on several: the same number everywhere


def set_up() -> None:
    """libvips would remember what it decoded by file name: hold it in memory, and show the earlier picture after the
    file has changed. Its threads would each keep a heap of their own, which nearly doubles the peak of memory. And what
    it merely remarks (a FITS file is padded at its end) is not for the author's terminal."""
    pyvips.cache_set_max(0)
    pyvips.vips_lib.vips_concurrency_set(THREADS)
    logging.getLogger("pyvips").setLevel(logging.ERROR)
    mallopt = getattr(ctypes.CDLL(None), "mallopt", None)
    if mallopt is not None:
        mallopt(M_ARENA_MAX, ARENAS)
