"""The colour of light of one wavelength, for drawing a filter in its own light.

Colour matching functions: the multi-lobe Gaussian fit of Wyman, Sloan & Shirley, *Simple Analytic Approximations to the CIE XYZ
Color Matching Functions*, JCGT 2(2), 2013 (coefficients from memory; checked in the tests against the published CIE 1931
chromaticities). The hue is then brought to one lightness in OKLCH (B. Ottosson, 2020), since spectral colours as such are
neither inside sRGB nor equally light.
"""

import math

# (height, centre nm, width below nm, width above nm)
X_LOBES = ((1.056, 599.8, 37.9, 31.0), (0.362, 442.0, 16.0, 26.7), (-0.065, 501.1, 20.4, 26.2))
Y_LOBES = ((0.821, 568.8, 46.9, 40.5), (0.286, 530.9, 16.3, 31.1))
Z_LOBES = ((1.217, 437.0, 11.8, 36.0), (0.681, 459.0, 26.0, 13.8))
VISIBLE_NM = (400.0, 690.0)


def cie_xyz(wavelength_nm: float) -> tuple[float, float, float]:
    """CIE 1931 2° tristimulus values of unit monochromatic light."""
    x, y, z = (sum(_lobe(wavelength_nm, *lobe) for lobe in lobes) for lobes in (X_LOBES, Y_LOBES, Z_LOBES))
    return x, y, z


def _lobe(wavelength_nm: float, height: float, centre: float, below: float, above: float) -> float:
    width = below if wavelength_nm < centre else above
    return height * math.exp(-0.5 * ((wavelength_nm - centre) / width) ** 2)


def hue_deg(wavelength_nm: float) -> float:
    """OKLCH hue of the light; wavelengths beyond the eye take the hue at its edge."""
    seen_nm = min(max(wavelength_nm, VISIBLE_NM[0]), VISIBLE_NM[1])
    _, a, b = _oklab(*_linear_rgb(*cie_xyz(seen_nm)))
    return math.degrees(math.atan2(b, a)) % 360.0


def filter_colour(wavelength_nm: float, lightness: float, chroma: float) -> str:
    """'#rrggbb' of that light at the given OKLCH lightness (0..1); chroma is lowered until the colour fits sRGB."""
    hue = math.radians(hue_deg(wavelength_nm))
    while chroma > 0.0:
        rgb = _rgb_of_oklab(lightness, chroma * math.cos(hue), chroma * math.sin(hue))
        if all(-1e-4 <= channel <= 1.0001 for channel in rgb):
            break
        chroma -= 0.005
    return "#" + "".join(f"{round(255 * _gamma(min(max(channel, 0.0), 1.0))):02x}" for channel in rgb)


def _linear_rgb(x: float, y: float, z: float) -> tuple[float, float, float]:
    """IEC 61966-2-1 primaries; components outside 0..1 are kept, the hue needs them."""
    return (
        3.2406 * x - 1.5372 * y - 0.4986 * z,
        -0.9689 * x + 1.8758 * y + 0.0415 * z,
        0.0557 * x - 0.2040 * y + 1.0570 * z,
    )


def _oklab(red: float, green: float, blue: float) -> tuple[float, float, float]:
    long = math.cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue)
    middle = math.cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue)
    short = math.cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue)
    return (
        0.2104542553 * long + 0.7936177850 * middle - 0.0040720468 * short,
        1.9779984951 * long - 2.4285922050 * middle + 0.4505937099 * short,
        0.0259040371 * long + 0.7827717662 * middle - 0.8086757660 * short,
    )


def _rgb_of_oklab(lightness: float, a: float, b: float) -> tuple[float, float, float]:
    long = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3
    middle = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3
    short = (lightness - 0.0894841775 * a - 1.2914855480 * b) ** 3
    return (
        4.0767416621 * long - 3.3077115913 * middle + 0.2309699292 * short,
        -1.2684380046 * long + 2.6097574011 * middle - 0.3413193965 * short,
        -0.0041960863 * long - 0.7034186147 * middle + 1.7076147010 * short,
    )


def _gamma(channel: float) -> float:
    return 12.92 * channel if channel <= 0.0031308 else 1.055 * channel ** (1 / 2.4) - 0.055
