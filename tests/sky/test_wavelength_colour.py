"""A filter's colour is that of its light."""

import pytest

from sitegen.sky.wavelength_colour import cie_xyz, filter_colour, hue_deg

# CIE 1931 2-degree chromaticities of spectral light (CIE 15, table T.4; as printed in colorimetry textbooks, from memory)
SPECTRAL_LOCUS = {
    450: (0.1566, 0.0177),
    500: (0.0082, 0.5384),
    550: (0.3016, 0.6923),
    600: (0.6270, 0.3725),
    650: (0.7260, 0.2740),
}


@pytest.mark.parametrize("wavelength_nm", SPECTRAL_LOCUS)
def test_chromaticity_is_that_of_the_standard_observer(wavelength_nm: int) -> None:
    """The fitted colour matching functions meet the published chromaticity within 0.02, the fit's own error."""
    x, y, z = cie_xyz(wavelength_nm)
    expected = SPECTRAL_LOCUS[wavelength_nm]
    assert (x / (x + y + z), y / (x + y + z)) == (pytest.approx(expected[0], abs=0.02), pytest.approx(expected[1], abs=0.02))


def test_hues_stand_in_the_order_of_the_rainbow() -> None:
    """From Hα through green and blue-green to violet the hue only rises."""
    hues = [hue_deg(nm) for nm in (640, 589, 550, 500.7, 486.1, 450)]
    assert hues == sorted(hues)


@pytest.mark.parametrize("wavelength_nm", [400, 450, 500.7, 530, 656.3, 672.4, 850])
def test_every_band_has_a_colour_that_a_screen_can_show(wavelength_nm: float) -> None:
    """Six hex digits, for light outside the eye's range too."""
    colour = filter_colour(wavelength_nm, 0.52, 0.15)
    assert len(bytes.fromhex(colour[1:])) == 3
