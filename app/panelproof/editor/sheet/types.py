"""The types: their font, size and rendering, and their glyphs as the pixels that will be handed over."""

from __future__ import annotations

from pathlib import Path

from msgspec.structs import replace
from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QImage, QPainter, QPaintEvent
from PySide6.QtWidgets import QFileDialog, QLabel, QPushButton, QWidget

from panelproof.editor import entries, theme
from panelproof.editor.hub import Hub
from panelproof.editor.sheet.entry import ChoiceEntry, LineEntry, TickEntry
from panelproof.editor.sheet.lists import ListSheet
from panelproof.firmware.glyphdata import texts_by_type
from panelproof.glyphs.catalogue import fonts
from panelproof.glyphs.type import Type
from panelproof.layout.document import Layout, TypeSpec
from panelproof.material import Material
from panelproof.problem import Problem
from panelproof.proof.words import listed


def needed(material: Material, name: str) -> str:
    """Return every character that the layout's texts need of a type, in order."""
    graphs, texts = texts_by_type(material).get(name, ([], []))
    return "".join(sorted(set().union(*texts, *(graph.alphabet() for graph in graphs))))


class GlyphView(QWidget):
    """Characters of a type as bitmaps at their size, on their baselines; missing ones boxed and named."""

    def __init__(self) -> None:
        super().__init__()
        self._type: Type | None = None
        self._characters = ""
        self.setAccessibleName("Glyphs that the layout needs")

    def show_type(self, type_: Type, characters: str) -> None:
        """Show characters of a type."""
        self._type, self._characters = type_, characters
        self.setFixedHeight(max(self._laid(max(self.width(), 200))[1], 24))
        self.update()

    def _scale(self) -> int:
        assert self._type is not None
        return 1 if self._type.ascent + self._type.descent > 24 else 2

    def _laid(self, room: int) -> tuple[list[tuple[str, int, int, int]], int]:
        """Return (character, x, top, width) of each cell, and the height of all."""
        assert self._type is not None
        scale, places, x, y = self._scale(), [], 0, 0
        height = (self._type.ascent + self._type.descent) * scale + 6
        for char in self._characters:
            glyph = self._type.glyph(char)
            width = (
                max((max(glyph.advance, glyph.width) if glyph else self._type.ascent // 2 + 2) * scale, 4) + 6
            )
            if x and x + width > room:
                x, y = 0, y + height + 2
            places.append((char, x, y, width))
            x += width + 2
        return places, y + height

    def resizeEvent(self, _: object) -> None:
        if self._type is not None:
            self.setFixedHeight(max(self._laid(max(self.width(), 40))[1], 24))

    def paintEvent(self, _: QPaintEvent) -> None:
        if self._type is None:
            return
        painter, tones, scale = QPainter(self), theme.colours(), self._scale()
        height = (self._type.ascent + self._type.descent) * scale + 6
        for char, x, y, width in self._laid(self.width())[0]:
            painter.fillRect(x, y, width, height, tones.raised)
            glyph = self._type.glyph(char)
            if glyph is None:
                painter.setPen(tones.fault)
                painter.drawRect(x, y, width - 1, height - 1)
                painter.drawLine(x, y, x + width - 1, y + height - 1)
                continue
            if not glyph.rows:
                continue
            image = QImage(glyph.width, glyph.height, QImage.Format.Format_ARGB32)
            image.fill(Qt.GlobalColor.transparent)
            for row, bits in enumerate(glyph.rows):
                for column in range(glyph.width):
                    if bits >> column & 1:
                        tone = tones.text
                        level = glyph.levels[row * glyph.width + column] if glyph.levels else 15
                        image.setPixelColor(
                            column, row, type(tone)(tone.red(), tone.green(), tone.blue(), level * 17)
                        )
            target = QRect(
                x + 3 + max(glyph.left, 0) * scale,
                y + 3 + (self._type.ascent - glyph.top) * scale,
                glyph.width * scale,
                glyph.height * scale,
            )
            painter.drawImage(target, image)


class TypeSheet(ListSheet):
    """The types of the layout."""

    noun = "type"

    def __init__(self, hub: Hub) -> None:
        super().__init__(hub)
        self._font = FontEntry("Font", lambda font: self._set(font=font))
        self._file = QPushButton("From a file…")
        self._file.setAccessibleName("Take the font from a file")
        self._file.clicked.connect(self._ask)
        self._size = LineEntry("Size", self._set_size, "pixels; a bitmap font has its own")
        words = (("one bit", "one-bit"), ("antialiased, 16 levels", "antialiased"))
        self._rendering = ChoiceEntry("Rendering", lambda word: self._set(rendering=word), words)
        self._kerning = TickEntry("Kerning", "on", lambda on: self._set(kerning=on))
        self._hinting = TickEntry("Hinting", "on", lambda on: self._set(hinting=on))
        for row in (self._font, self._file, self._size, self._rendering, self._kerning, self._hinting):
            self.column.addWidget(row)
        self._facts = QLabel()
        self._facts.setWordWrap(True)
        theme.set_role(self._facts, "small")
        self.column.addWidget(self._facts)
        self.glyphs = GlyphView()
        self.column.addWidget(self.glyphs)

    def names(self) -> list[str]:
        return [spec.name for spec in self.hub.layout.types]

    def _spec(self) -> TypeSpec:
        return next(spec for spec in self.hub.layout.types if spec.name == self.chosen)

    def added(self) -> tuple[Layout, str]:
        layout = self.hub.layout
        spec = self._spec() if self.chosen else TypeSpec("text", "SourceSansPro", 16)
        return entries.add_type(layout, spec)

    def deleted(self) -> Layout:
        return entries.delete_type(self.hub.layout, self.chosen)

    def renamed(self, new: str) -> Layout:
        return entries.rename_type(self.hub.layout, self.chosen, new)

    def _set(self, **changes: object) -> Problem | None:
        changed = replace(self._spec(), **changes)
        return self.do(
            f"type `{self.chosen}`", lambda: entries.set_type(self.hub.layout, self.chosen, changed)
        )

    def _set_size(self, text: str) -> Problem | None:
        if text and not text.isdecimal():
            return Problem(f"`{text}` is no whole number of pixels")
        return self._set(size=int(text) if text else None)

    def _ask(self) -> None:
        kinds = "Fonts (*.ttf *.otf *.ttc *.bdf *.pcf *.pcf.gz)"
        chosen, _ = QFileDialog.getOpenFileName(self, "Take a font from a file", str(self.hub.folder), kinds)
        if chosen:
            path = Path(chosen)
            inside = path.is_relative_to(self.hub.folder)
            self._font.tell(
                self._set(font=path.relative_to(self.hub.folder).as_posix() if inside else str(path))
            )

    def show_chosen(self) -> None:
        spec, type_ = self._spec(), self.hub.material.types[self.chosen]
        self._font.show_font(spec.font)
        self._size.show_value(str(spec.size or ""))
        self._rendering.show_value(spec.rendering)
        self._kerning.show_value(spec.kerning)
        self._hinting.show_value(spec.hinting)
        characters = needed(self.hub.material, self.chosen)
        missing = [f"`{char}`" for char in characters if type_.glyph(char) is None]
        facts = [f"{type_.ascent + type_.descent} px a line, {len(characters)} characters needed"]
        if missing:
            facts.append(f"✕ missing: {listed(missing)}")
        self._facts.setText("\n".join(facts))
        self.glyphs.show_type(type_, characters)


class FontEntry(ChoiceEntry):
    """The fonts that a layout can name; looked for when the list is opened."""

    def __init__(self, caption: str, commit: object) -> None:
        super().__init__(caption, commit)  # type: ignore[arg-type]
        self._filled = False

    def show_font(self, name: str) -> None:
        """Show the font that is chosen."""
        if self.combo.findData(name) < 0:
            self.combo.addItem(name, name)
        self.show_value(name)

    def eventFilter(self, watched: object, event: object) -> bool:
        kinds = (event.Type.MouseButtonPress, event.Type.KeyPress)  # type: ignore[attr-defined]
        if not self._filled and event.type() in kinds:  # type: ignore[attr-defined]
            self._filled = True
            chosen = self.combo.currentData()
            self.offer([(f"{one.name}  ({one.kind}, {one.origin})", one.name) for one in fonts()])
            self.show_font(chosen)
        return super().eventFilter(watched, event)
