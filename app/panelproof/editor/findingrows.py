"""The rows of the list of findings: what they hold and how they are painted."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QAbstractListModel, QModelIndex, QPersistentModelIndex, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QPen
from PySide6.QtWidgets import QListView, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from panelproof.editor import signs, theme
from panelproof.editor.applying import has_remedy
from panelproof.proof.finding import Finding
from panelproof.verdict import Accepted

Index = QModelIndex | QPersistentModelIndex
FINDING_ROLE = Qt.ItemDataRole.UserRole + 1
ACCEPTED_ROLE = FINDING_ROLE + 1
EDGE, SIGN = theme.UNIT, 16
LEFT = EDGE + SIGN + EDGE
APPLY = "Apply"
APPLY_WIDTH, APPLY_HEIGHT = 76, 26
WRAPPED = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop


def where(finding: Finding) -> str:
    """Return the screen and the part of a finding in words."""
    return " › ".join(filter(None, (finding.screen, finding.part))) or "the layout"


def sentence(message: str) -> str:
    """Return a message as a sentence that begins with a capital where it begins with a word."""
    return message[:1].upper() + message[1:]


def reason_of(accepted: Accepted) -> str:
    """Return which part accepts a finding, and why."""
    return f"Accepted by `{accepted.part}`: {accepted.reason}"


def spoken(finding: Finding, accepted: Accepted | None = None) -> str:
    """Return a whole finding in words, for those who hear it."""
    if accepted is not None:
        return f"accepted, {where(finding)}: {finding.message}. {reason_of(accepted)}"
    remedy = f" Remedy: {finding.remedy.sentence}." if finding.remedy else ""
    return f"{finding.level}, {where(finding)}: {finding.message}.{remedy}"


class FindingModel(QAbstractListModel):
    """The findings in the order given: most serious first; under them those that are accepted."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.findings: tuple[Finding, ...] = ()
        self.accepted: tuple[Accepted, ...] = ()

    @property
    def rows(self) -> tuple[Finding, ...]:
        """The findings of all rows."""
        return self.findings + tuple(one.finding for one in self.accepted)

    def show_findings(self, findings: Sequence[Finding], accepted: Sequence[Accepted] = ()) -> None:
        """Show other findings."""
        self.beginResetModel()
        self.findings, self.accepted = tuple(findings), tuple(accepted)
        self.endResetModel()

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """Return the number of findings."""
        return 0 if parent.isValid() else len(self.findings) + len(self.accepted)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Return a finding's message, its spoken words, the finding itself, or how it is accepted (None: not)."""
        number = index.row() - len(self.findings)
        accepted = self.accepted[number] if number >= 0 else None
        finding = accepted.finding if accepted else self.findings[index.row()]
        match role:
            case Qt.ItemDataRole.DisplayRole:
                return sentence(finding.message)
            case Qt.ItemDataRole.AccessibleTextRole:
                return spoken(finding, accepted)
            case _ if role == ACCEPTED_ROLE:
                return accepted
        return finding if role == FINDING_ROLE else None


def apply_area(area: QRect) -> QRect:
    """Return where the button of a row with a remedy is."""
    return QRect(area.right() - EDGE - APPLY_WIDTH, area.top() + EDGE - 2, APPLY_WIDTH, APPLY_HEIGHT)


class FindingDelegate(QStyledItemDelegate):
    """Paints a finding: level and place; the message; the remedy, and its button."""

    def __init__(self, view: QListView) -> None:
        super().__init__(view)
        self._view = view
        self.faint = False
        """Whether the findings are of an earlier layout."""

    def _texts(self, finding: Finding, accepted: Accepted | None) -> list[tuple[str, QFont]]:
        texts = [(sentence(finding.message), theme.font("body"))]
        if accepted is not None:
            texts.append((reason_of(accepted), theme.font("small")))
        elif finding.remedy:
            texts.append((f"Remedy: {finding.remedy.sentence}", theme.font("small")))
        return texts

    def _width(self, pressable: bool) -> int:
        spare = APPLY_WIDTH + 2 * EDGE if pressable else EDGE
        return max(self._view.viewport().width() - LEFT - spare, 80)

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Return the height that the wrapped texts take."""
        del option
        finding, accepted = index.data(FINDING_ROLE), index.data(ACCEPTED_ROLE)
        pressable = accepted is None and has_remedy(finding)
        width = self._width(pressable)
        height = EDGE + QFontMetrics(theme.font("small")).height() + 2
        for text, font in self._texts(finding, accepted):
            height += QFontMetrics(font).boundingRect(0, 0, width, 10000, WRAPPED, text).height() + 2
        least = APPLY_HEIGHT + 2 * EDGE if pressable else 0
        return QSize(120, max(height + EDGE - 2, least))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one finding."""
        finding: Finding = index.data(FINDING_ROLE)
        accepted: Accepted | None = index.data(ACCEPTED_ROLE)
        area: QRect = option.rect
        state: QStyle.StateFlag = option.state
        tones = theme.colours()
        painter.save()
        chosen = bool(state & QStyle.StateFlag.State_Selected)
        if chosen:
            painter.fillRect(area, tones.sunken)
            painter.fillRect(QRect(area.left(), area.top(), 3, area.height()), tones.accent)
        painter.setPen(tones.line)
        painter.drawLine(area.bottomLeft(), area.bottomRight())
        if state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(tones.accent, 1, Qt.PenStyle.DotLine))
            painter.drawRect(area.adjusted(4, 1, -2, -3))
        if self.faint:
            painter.setOpacity(0.5)
        self._words(painter, area, finding, accepted)
        if accepted is None and has_remedy(finding):
            self._button(painter, apply_area(area))
        painter.restore()

    def _words(self, painter: QPainter, area: QRect, finding: Finding, accepted: Accepted | None) -> None:
        tones = theme.colours()
        level: signs.Sign = finding.level
        tone, small = signs.colour(level), theme.font("small")
        if accepted is not None:
            tone = tones.quiet
        top = area.top() + EDGE
        signs.draw(painter, QRectF(area.left() + EDGE, top, SIGN, SIGN), level, tone)
        strong = QFont(small)
        strong.setWeight(QFont.Weight.DemiBold)
        painter.setFont(strong)
        word = signs.WORDS[level].capitalize() if accepted is None else "Accepted"
        line = QFontMetrics(strong).height()
        left = area.left() + LEFT
        painter.setPen(tone)
        painter.drawText(QRect(left, top, 200, line), Qt.AlignmentFlag.AlignVCenter, word)
        painter.setFont(small)
        painter.setPen(tones.quiet)
        after = left + QFontMetrics(strong).horizontalAdvance(word) + EDGE
        width = self._width(accepted is None and has_remedy(finding))
        place = painter.fontMetrics().elidedText(
            where(finding), Qt.TextElideMode.ElideRight, left + width - after
        )
        painter.drawText(QRect(after, top, width, line), Qt.AlignmentFlag.AlignVCenter, place)
        top += line + 2
        tints: tuple[QColor, ...] = (tones.text if accepted is None else tones.quiet, tones.quiet)
        for (text, font), tint in zip(self._texts(finding, accepted), tints, strict=False):
            painter.setFont(font)
            painter.setPen(tint)
            used = painter.drawText(QRect(left, top, width, 10000), int(WRAPPED), text)
            top += used.height() + 2

    def _button(self, painter: QPainter, area: QRect) -> None:
        tones = theme.colours()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(tones.accent)
        painter.setBrush(tones.raised)
        painter.drawRoundedRect(QRectF(area).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)
        painter.setFont(theme.font("body"))
        painter.drawText(area, Qt.AlignmentFlag.AlignCenter, APPLY)
