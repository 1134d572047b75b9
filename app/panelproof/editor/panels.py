"""Panel sizes that are common in the trade, under plain names.

Pixels and inches are common practice; millimetres of the visible glass are what makers usually give for such
a panel, written from memory, so measure yours or look into its data sheet.
"""

from __future__ import annotations

from dataclasses import dataclass

from panelproof.layout.panel import Panel, Shape


@dataclass(frozen=True, slots=True)
class CommonPanel:
    """One entry of the list; `group` is the kind of glass, `inches` the diagonal."""

    group: str
    inches: str
    panel: Panel

    @property
    def title(self) -> str:
        """The entry in words, such as "1.14 in · 240 × 135"."""
        shape = "" if self.panel.shape == "rectangular" else f", {self.panel.shape}"
        return f"{self.inches} in · {self.panel.width} × {self.panel.height}{shape}"


def _mono(group: str, inches: str, size: tuple[int, int], glass: tuple[float, float]) -> CommonPanel:
    panel = Panel(*size, "mono", refresh="whole", width_mm=glass[0], height_mm=glass[1])
    return CommonPanel(group, inches, panel)


def _colour(
    group: str, inches: str, size: tuple[int, int], glass: tuple[float, float], radius: int = 0
) -> CommonPanel:
    shape: Shape = "rounded" if radius else "rectangular"
    panel = Panel(*size, "rgb565", shape, radius, width_mm=glass[0], height_mm=glass[1])
    return CommonPanel(group, inches, panel)


LCD, OLED, PAPER = "Colour LCD", "Small OLED", "E-paper"
COMMON = (
    _colour(LCD, "0.96", (160, 80), (21.7, 10.8)),
    _colour(LCD, "1.14", (240, 135), (24.9, 14.9)),
    CommonPanel(LCD, "1.28", Panel(240, 240, shape="round", width_mm=32.4, height_mm=32.4)),
    _colour(LCD, "1.3", (240, 240), (23.4, 23.4)),
    _colour(LCD, "1.44", (128, 128), (25.5, 26.5)),
    _colour(LCD, "1.47", (320, 172), (32.4, 17.4), 28),
    _colour(LCD, "1.69", (280, 240), (32.6, 28.0), 40),
    _colour(LCD, "1.8", (160, 128), (35.0, 28.0)),
    _colour(LCD, "1.9", (320, 170), (42.7, 22.7)),
    _colour(LCD, "2.0", (320, 240), (40.8, 30.6)),
    _colour(LCD, "2.4", (320, 240), (49.0, 36.7)),
    _colour(LCD, "2.8", (320, 240), (57.6, 43.2)),
    _colour(LCD, "3.5", (480, 320), (73.4, 49.0)),
    _mono(OLED, "0.42", (72, 40), (9.2, 5.2)),
    _mono(OLED, "0.49", (64, 32), (11.2, 5.6)),
    _mono(OLED, "0.91", (128, 32), (22.4, 5.6)),
    _mono(OLED, "0.96", (128, 64), (21.7, 10.9)),
    _mono(OLED, "1.3", (128, 64), (29.4, 14.7)),
    _colour(OLED, "1.5", (128, 128), (26.9, 26.9)),
    _mono(PAPER, "1.54", (200, 200), (27.6, 27.6)),
    _mono(PAPER, "2.13", (250, 122), (48.6, 23.7)),
    _mono(PAPER, "2.9", (296, 128), (66.9, 29.1)),
    _mono(PAPER, "4.2", (400, 300), (84.8, 63.6)),
)
