"""What names a panel, and what only looks like it; every case as people write it, common practice, no source."""

import pytest

from sitegen.authoring.panel_names import panel_called, without_panel


@pytest.mark.parametrize(
    ("written", "target", "panel"),
    [
        ("M31 panel 2", "M31", "2"),
        ("M31_P2", "M31", "2"),
        ("M31-P02", "M31", "2"),
        ("NGC 2024 P3", "NGC 2024", "3"),
        ("M 31 (Panel 03)", "M 31", "3"),
        ("M 31 panel 1 of 4", "M 31", "1"),
        ("M31 mosaic 2x2 panel 3", "M31", "3"),
        ("M31_Tile_1-2", "M31", "1-2"),
        ("M31 Mosaik 1x2", "M31", ""),
        ("M31 mosaic 4", "M31", "4"),
        ("M31 mosaic 12 panels", "M31", ""),
        ("M31 field 2", "M31", "2"),
        ("Cygnus loop Kachel B", "Cygnus loop", "B"),
        ("IC 1805 panel NE", "IC 1805", "NE"),
        ("Rho Ophiuchi mosaic", "Rho Ophiuchi", ""),
        ("NGC 7000", "NGC 7000", ""),
        ("Panel 1", "Panel 1", ""),
        ("P2", "P2", ""),
        ("Sh2-155", "Sh2-155", ""),
        ("C/2023 P1", "C/2023 P1", ""),
        ("Propanel 4", "Propanel 4", ""),
        ("", "", ""),
    ],
)
def test_object_names_target_and_panel(written: str, target: str, panel: str) -> None:
    """The name without its panel is what a catalogue is asked for."""
    assert without_panel(written) == target
    assert panel_called(written, "") == panel


@pytest.mark.parametrize(
    ("path", "panel"),
    [
        ("astro/M31/Panel 2/L/M31_0001.fits", "2"),
        ("astro/M31/panel_1/M31_Panel_3_L_0001.fits", "3"),
        ("astro/M31/2026-09-12_M31_P2_Ha_300s_0001.fits", "2"),
        ("astro/M31_P4/lights/0001.fits", "4"),
        ("astro/M31/0001_P.fits", ""),
        ("astro/P2/0001.fits", ""),
        ("astro/M31/mosaic/L_300s_0001.fits", ""),
        ("astro/mosaic 12 panels/0001.fits", ""),
        ("astro/mosaic 2x2/0001.fits", ""),
        ("astro/mosaic_3/0001.fits", "3"),
        ("astro/field 3/0001.fits", ""),
        ("astro/C_2023 P1/0001.fits", ""),
        ("astro/solarpanel 2/0001.fits", ""),
    ],
)
def test_files_and_folders_name_panels(path: str, panel: str) -> None:
    """The file's own name before its folders, the deepest of them first."""
    assert panel_called("", path) == panel


def test_object_wins() -> None:
    """A header is believed before a folder."""
    assert panel_called("M31 panel 2", "astro/panel 1/M31_P4.fits") == "2"
