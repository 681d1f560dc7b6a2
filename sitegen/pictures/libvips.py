"""How libvips works in this process: set once, before the first picture."""

import ctypes

import pyvips

M_ARENA_MAX = -8  # <malloc.h> of the GNU C library
ARENAS = 2


def set_up() -> None:
    """libvips would remember what it decoded by file name: hold it in memory, and show the earlier picture after the
    file has changed. And its threads would each keep a heap of their own, which nearly doubles the peak of memory."""
    pyvips.cache_set_max(0)
    mallopt = getattr(ctypes.CDLL(None), "mallopt", None)
    if mallopt is not None:
        mallopt(M_ARENA_MAX, ARENAS)
