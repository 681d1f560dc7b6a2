"""The door to matplotlib: its classes by their own names, loaded when something is drawn."""

from typing import TYPE_CHECKING

from sitegen.late import Late

if TYPE_CHECKING:
    import matplotlib
    from matplotlib.axes import Axes
    from matplotlib.backends.backend_svg import FigureCanvasSVG
    from matplotlib.figure import Figure
    from matplotlib.patches import Circle, Patch, PathPatch, Polygon, Rectangle
    from matplotlib.path import Path
    from matplotlib.ticker import MaxNLocator
else:
    matplotlib = Late("matplotlib")
    Axes = Late("matplotlib.axes", "Axes")
    FigureCanvasSVG = Late("matplotlib.backends.backend_svg", "FigureCanvasSVG")
    Figure = Late("matplotlib.figure", "Figure")
    Circle, Patch, PathPatch, Polygon, Rectangle = (
        Late("matplotlib.patches", name) for name in ("Circle", "Patch", "PathPatch", "Polygon", "Rectangle")
    )
    Path = Late("matplotlib.path", "Path")
    MaxNLocator = Late("matplotlib.ticker", "MaxNLocator")

__all__ = [
    "Axes", "Circle", "Figure", "FigureCanvasSVG", "MaxNLocator", "Patch", "Path", "PathPatch",
    "Polygon", "Rectangle", "matplotlib",
]  # fmt: skip
