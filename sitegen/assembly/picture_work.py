"""What the heavy work on pictures is called by, and where its small answers are kept."""

from collections.abc import Callable
from typing import Any

PictureWork = Callable[..., Any]
"""`pictures.tasks.work`, handed in by who may import late."""
POINTINGS = "pointings"
"""Folder of kept records: where a picture points."""
