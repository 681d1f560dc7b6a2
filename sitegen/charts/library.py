"""The door to matplotlib: its classes by their own names, loaded when a map is drawn."""

from typing import TYPE_CHECKING

from sitegen.lazy_module import LazyModule

if TYPE_CHECKING:
    import matplotlib
    from matplotlib.axes import Axes
    from matplotlib.backends.backend_svg import FigureCanvasSVG
    from matplotlib.figure import Figure
    from matplotlib.patches import Circle, Ellipse, Patch, PathPatch, Polygon
    from matplotlib.path import Path
else:
    matplotlib = LazyModule("matplotlib")
    Axes = LazyModule("matplotlib.axes", "Axes")
    FigureCanvasSVG = LazyModule("matplotlib.backends.backend_svg", "FigureCanvasSVG")
    Figure = LazyModule("matplotlib.figure", "Figure")
    Circle, Ellipse, Patch, PathPatch, Polygon = (
        LazyModule("matplotlib.patches", name) for name in ("Circle", "Ellipse", "Patch", "PathPatch", "Polygon")
    )
    Path = LazyModule("matplotlib.path", "Path")

__all__ = ["Axes", "Circle", "Ellipse", "Figure", "FigureCanvasSVG", "Patch", "Path", "PathPatch", "Polygon", "matplotlib"]
