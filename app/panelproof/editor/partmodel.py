"""The rows of the list of parts: what they hold and how they are painted."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import (
    QAbstractListModel,
    QMimeData,
    QModelIndex,
    QPersistentModelIndex,
    QRect,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QFont, QPainter, QPen
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from panelproof.editor import signs, theme
from panelproof.editor.partrows import Row

Index = QModelIndex | QPersistentModelIndex
ROW_ROLE = Qt.ItemDataRole.UserRole + 1
HEIGHT, EDGE, SIGN, SWITCH = 44, theme.UNIT, 16, 24
MIME = "application/x-panelproof-order"


class PartModel(QAbstractListModel):
    """The rows; a change of their number or names resets them, anything else only repaints."""

    renamed = Signal(str, str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.rows: tuple[Row, ...] = ()

    def names(self) -> tuple[str, ...]:
        """Return the names in drawing order."""
        return tuple(row.name for row in self.rows)

    def show_rows(self, rows: tuple[Row, ...]) -> bool:
        """Show other rows; True where they are others by name."""
        if tuple(row.name for row in rows) == self.names():
            old, self.rows = self.rows, rows
            for number, (before, after) in enumerate(zip(old, rows, strict=True)):
                if before != after:
                    self.dataChanged.emit(self.index(number), self.index(number))
            return False
        self.beginResetModel()
        self.rows = rows
        self.endResetModel()
        return True

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """Return the number of parts."""
        return 0 if parent.isValid() else len(self.rows)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Return a row's name, its spoken words, or the row itself."""
        row = self.rows[index.row()]
        match role:
            case Qt.ItemDataRole.DisplayRole | Qt.ItemDataRole.EditRole:
                return row.name
            case Qt.ItemDataRole.AccessibleTextRole:
                return row.spoken
            case Qt.ItemDataRole.ToolTipRole:
                return row.tip or None
        return row if role == ROW_ROLE else None

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Ask for another name."""
        old = self.rows[index.row()].name
        if role == Qt.ItemDataRole.EditRole and value != old:
            self.renamed.emit(old, str(value).strip())
        return True

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Every row can be chosen, renamed and dragged; drops go between rows."""
        flags = Qt.ItemFlag
        if not index.isValid():
            return flags.ItemIsDropEnabled
        return (
            flags.ItemIsEnabled | flags.ItemIsSelectable | flags.ItemIsEditable | flags.ItemIsDragEnabled
            | flags.ItemNeverHasChildren
        )  # fmt: skip

    def supportedDropActions(self) -> Qt.DropAction:
        """Rows are moved."""
        return Qt.DropAction.MoveAction

    def mimeTypes(self) -> list[str]:
        """Rows are dragged inside the list only."""
        return [MIME]

    def mimeData(self, indexes: Sequence[QModelIndex]) -> QMimeData:
        """Return what is dragged."""
        data = QMimeData()
        data.setData(MIME, "\n".join(self.rows[index.row()].name for index in indexes).encode())
        return data


def switches(area: QRect) -> tuple[QRect, QRect]:
    """Return where a row's two switches are: shown, and locked."""
    top = area.top() + 2
    right = area.right() - EDGE // 2 - SWITCH
    return QRect(right - SWITCH, top, SWITCH, SWITCH - 4), QRect(right, top, SWITCH, SWITCH - 4)


def name_area(area: QRect) -> QRect:
    """Return where a row's name stands."""
    left = area.left() + EDGE + SIGN + EDGE
    return QRect(left, area.top() + 3, switches(area)[0].left() - left - EDGE // 2, HEIGHT // 2 - 2)


class PartDelegate(QStyledItemDelegate):
    """Paints a row: the kind, the name, the switches; below, the longest text, the spare, the verdict."""

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Return the same height for each row."""
        del option, index
        return QSize(160, HEIGHT)

    def updateEditorGeometry(self, editor: QWidget, option: QStyleOptionViewItem, index: Index) -> None:
        """Rename where the name stands."""
        del index
        area: QRect = option.rect
        editor.setGeometry(name_area(area).adjusted(-4, -2, 0, 4))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one row."""
        row = index.data(ROW_ROLE)
        area: QRect = option.rect
        state: QStyle.StateFlag = option.state
        tones = theme.colours()
        chosen = bool(state & QStyle.StateFlag.State_Selected)
        text, quiet = (tones.on_accent, tones.on_accent) if chosen else (tones.text, tones.quiet)
        painter.save()
        if chosen:
            painter.fillRect(area, tones.accent)
        elif state & QStyle.StateFlag.State_MouseOver:
            painter.fillRect(area, tones.sunken)
        painter.setPen(tones.line)
        painter.drawLine(area.bottomLeft(), area.bottomRight())
        if state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(tones.on_accent if chosen else tones.accent, 1, Qt.PenStyle.DotLine))
            painter.drawRect(area.adjusted(1, 1, -2, -2))
        if row.hidden:
            painter.setOpacity(0.6)
        signs.draw(painter, QRectF(area.left() + EDGE, area.top() + 5, SIGN, SIGN), row.figure.kind, quiet)
        self._name(painter, name_area(area), row, (text, quiet))
        self._below(painter, area, row, chosen)
        painter.setOpacity(1)
        shown, locked = switches(area)
        looks: tuple[tuple[QRect, bool, signs.Sign], ...] = (
            (shown, row.hidden, "hidden" if row.hidden else "shown"),
            (locked, row.locked, "locked" if row.locked else "unlocked"),
        )
        for place, on, sign in looks:
            painter.setOpacity(1 if on else 0.55)
            square = QRectF(place.center().x() - 7, place.center().y() - 7, 15, 15)
            signs.draw(painter, square, sign, text if on else quiet)
        painter.restore()

    def _name(self, painter: QPainter, area: QRect, row: Row, tones: tuple[QColor, QColor]) -> None:
        body = theme.font("body")
        self._text(painter, area, row.name, tones[0], body)
        used = painter.fontMetrics().horizontalAdvance(row.name) + EDGE
        if used < area.width() - 2 * EDGE:
            self._text(
                painter, area.adjusted(used, 0, 0, 0), row.figure.detail, tones[1], theme.font("small")
            )

    def _below(self, painter: QPainter, area: QRect, row: Row, chosen: bool) -> None:
        tones, small = theme.colours(), theme.font("small")
        tone = tones.on_accent if chosen else signs.colour(row.verdict)
        quiet = tones.on_accent if chosen else tones.quiet
        line = QRect(area.left() + EDGE, area.top() + HEIGHT // 2, area.width() - 2 * EDGE, HEIGHT // 2 - 4)
        signs.draw(painter, QRectF(line.left() + 1, line.center().y() - 6, 14, 14), row.verdict, tone)
        self._text(painter, line.adjusted(SIGN + EDGE, 0, 0, 0), signs.WORDS[row.verdict], tone, small)
        width = painter.fontMetrics().horizontalAdvance(row.spare_words) + 2
        spare = QRect(line.right() - width, line.top(), width, line.height())
        self._text(painter, spare, row.spare_words, quiet, small)

    @staticmethod
    def _text(painter: QPainter, area: QRect, text: str, tone: QColor, font: QFont) -> None:
        painter.setFont(font)
        painter.setPen(tone)
        elided = painter.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, area.width())
        painter.drawText(area, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, elided)
