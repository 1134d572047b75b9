"""What a field can ever show: its format, its arguments, its other texts, and the extremes of it all."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import UNSET
from msgspec.structs import replace
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from panelproof.content.format import Conversion, conversions
from panelproof.content.spec import Argument, Choice, Content, FreeText, RealRange, WholeRange
from panelproof.editor import theme
from panelproof.editor.sheet.entry import ChoiceEntry, LineEntry, LinesEntry
from panelproof.problem import Problem
from panelproof.proof.measure import Measure
from panelproof.proof.words import grouped, quoted

KINDS: dict[str, tuple[tuple[str, str], ...]] = {
    "whole": (("whole numbers", "whole"),),
    "real": (("real numbers", "real"), ("whole numbers", "whole")),
    "text": (("one of these texts", "choice"), ("free text", "free")),
    "character": (("one of these characters", "choice"), ("character codes", "whole")),
}
NEW: dict[str, Argument] = {
    "whole": WholeRange(0, 100),
    "real": RealRange(0.0, 100.0),
    "choice": Choice(("A", "B")),
    "free": FreeText(16, ranges=((" ", "~"),)),
}


def _kind(argument: Argument) -> str:
    return {WholeRange: "whole", RealRange: "real", Choice: "choice", FreeText: "free"}[type(argument)]


def fitted(format_: str, arguments: tuple[Argument, ...]) -> tuple[Argument, ...]:
    """Return one argument for each conversion: those there are where they fit, else new ones.

    Raises Problem where the format cannot be used.
    """
    result: list[Argument] = []
    for number, conversion in enumerate(conversions(format_)):
        kinds = [kind for _, kind in KINDS[conversion.kind]]
        old = arguments[number] if number < len(arguments) else None
        result.append(old if old is not None and _kind(old) in kinds else NEW[kinds[0]])
    return tuple(result)


class ContentEditor(QWidget):
    """Edits one content; `commit` takes a new one or says why not."""

    def __init__(self, commit: Callable[[Content], Problem | None]) -> None:
        super().__init__()
        self._commit = commit
        self._content = Content("")
        self._arguments: list[ArgumentEditor] = []
        column = QVBoxLayout(self)
        theme.space(column)
        self.format = LineEntry("Format", self._set_format, "such as %.1f °C")
        column.addWidget(self.format)
        self._rows = QVBoxLayout()
        theme.space(self._rows)
        column.addLayout(self._rows)
        self.fault = LineEntry(
            "Fault text", lambda text: self._set(fault=text or None), "shown without a reading"
        )
        self.first = LineEntry(
            "First text", lambda text: self._set(first=text or None), "before the first reading"
        )
        self.also = LinesEntry("Also", lambda lines: self._set(also=lines), "further texts, one a line")
        for entry in (self.fault, self.first, self.also):
            column.addWidget(entry)
        self.extremes = QLabel()
        self.extremes.setWordWrap(True)
        self.extremes.setAccessibleName("Extremes of what the field can show")
        theme.set_role(self.extremes, "small")
        column.addWidget(self.extremes)

    def show_content(self, content: Content, measure: Measure | None) -> None:
        """Show a content and its figures."""
        self._content = content
        self.format.show_value(content.format)
        self.fault.show_value(content.fault or "")
        self.first.show_value(content.first or "")
        self.also.show_value(content.also)
        found = conversions(content.format)
        wanted = [
            (conversion.kind, type(argument))
            for conversion, argument in zip(found, content.arguments, strict=True)
        ]
        if [editor.shape for editor in self._arguments] != wanted:
            for editor in self._arguments:
                self._rows.removeWidget(editor)
                editor.hide()
                editor.deleteLater()
            self._arguments = [
                ArgumentEditor(conversion, argument, self._setter(number))
                for number, (conversion, argument) in enumerate(zip(found, content.arguments, strict=True))
            ]
            for editor in self._arguments:
                self._rows.addWidget(editor)
        for editor, argument in zip(self._arguments, content.arguments, strict=True):
            editor.show_argument(argument)
        self.extremes.setText(_figures(measure) if measure else "")

    def _setter(self, number: int) -> Callable[[Argument], Problem | None]:
        def commit(argument: Argument) -> Problem | None:
            arguments = list(self._content.arguments)
            arguments[number] = argument
            return self._commit(replace(self._content, arguments=tuple(arguments)))

        return commit

    def _set_format(self, text: str) -> Problem | None:
        try:
            arguments = fitted(text, self._content.arguments)
        except Problem as problem:
            return problem
        return self._commit(replace(self._content, format=text, arguments=arguments))

    def _set(self, fault: object = UNSET, first: object = UNSET, also: object = UNSET) -> Problem | None:
        given = {"fault": fault, "first": first, "also": also}
        changes = {key: value for key, value in given.items() if value is not UNSET}
        return self._commit(replace(self._content, **changes))


def _figures(measure: Measure) -> str:
    rows = [
        ("texts", grouped(measure.texts)),
        ("longest", f"{quoted(measure.longest.text)}, {measure.longest.pixels} px wide"),
        ("shortest", f"{quoted(measure.shortest.text)}, {measure.shortest.pixels} px wide"),
        ("tallest", f"{quoted(measure.tallest.text)}, {measure.tallest.pixels} px high"),
        ("text buffer", f"{measure.bytes} bytes"),
    ]
    return "\n".join(f"{word}: {value}" for word, value in rows)


class ArgumentEditor(QWidget):
    """One argument of a format."""

    def __init__(
        self, conversion: Conversion, argument: Argument, commit: Callable[[Argument], Problem | None]
    ) -> None:
        super().__init__()
        self.shape = (conversion.kind, type(argument))
        self._commit, self._argument = commit, argument
        column = QVBoxLayout(self)
        theme.space(column, 0, theme.TIGHT)
        self._kind = ChoiceEntry(conversion.source, self._set_kind, KINDS[conversion.kind])
        self._kind.control.setAccessibleName(f"What {conversion.source} can be")
        column.addWidget(self._kind)
        self._lines: dict[str, LineEntry | LinesEntry] = {}
        if isinstance(argument, WholeRange | RealRange):
            words = [("least", "Least"), ("greatest", "Greatest")]
            if isinstance(argument, WholeRange):
                words.append(("step", "Step"))
            for key, caption in words:
                self._lines[key] = LineEntry(caption, self._number_setter(key))
        elif isinstance(argument, Choice):
            self._lines["texts"] = LinesEntry("Texts", lambda lines: self._change(texts=lines), "one a line")
        else:
            self._lines["longest"] = LineEntry("Longest", self._number_setter("longest"), "characters")
            self._lines["shortest"] = LineEntry("Shortest", self._number_setter("shortest"), "characters")
            self._lines["characters"] = LineEntry("Characters", lambda text: self._change(characters=text))
            self._lines["ranges"] = LineEntry("Ranges", self._set_ranges, "such as a-z 0-9; ␣ is a space")
        for entry in self._lines.values():
            column.addWidget(entry)

    def show_argument(self, argument: Argument) -> None:
        """Show an argument of the same kind."""
        self._argument = argument
        self._kind.show_value(_kind(argument))
        for key, entry in self._lines.items():
            value = getattr(argument, key)
            if isinstance(entry, LinesEntry):
                entry.show_value(value)
            elif key == "ranges":
                entry.show_value(" ".join(f"{first}-{last}".replace(" ", "␣") for first, last in value))
            else:
                entry.show_value(
                    f"{value:g}" if isinstance(value, float) and abs(value) < 1e6 else str(value)
                )

    def _set_kind(self, kind: str) -> Problem | None:
        return None if kind == _kind(self._argument) else self._commit(NEW[kind])

    def _change(self, **changes: object) -> Problem | None:
        return self._commit(replace(self._argument, **changes))

    def _number_setter(self, key: str) -> Callable[[str], Problem | None]:
        def commit(text: str) -> Problem | None:
            try:
                value = float(text) if isinstance(self._argument, RealRange) else int(text)
            except ValueError:
                whole = "" if isinstance(self._argument, RealRange) else "whole "
                return Problem(f"`{text}` is no {whole}number")
            return self._change(**{key: value})

        return commit

    def _set_ranges(self, text: str) -> Problem | None:
        pairs = []
        for word in text.split():
            if len(word) != 3 or word[1] != "-":
                return Problem(
                    f"`{word}` is no range of characters; write the first, a hyphen and the last, such as a-z"
                )
            pairs.append((word[0].replace("␣", " "), word[2].replace("␣", " ")))
        return self._change(ranges=tuple(pairs))
