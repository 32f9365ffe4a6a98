#include "ui/card_panel/lines_edit.h"

#include <QKeyEvent>
#include <QPainter>
#include <QTextBlock>
#include <QTextLayout>
#include <QWheelEvent>
#include <algorithm>

namespace throwline::ui {

namespace {

constexpr int kBeside_px = 2;
/// As wide as the card is: wider than any card, since a row gives no more than it has.
constexpr int kWhole_px = 4000;
/// The line beneath, and the air over it.
constexpr int kLine_px = 4;
constexpr auto kBroken = QTextOption::WrapAtWordBoundaryOrAnywhere;

/// How many lines a text takes that is broken at a width.
int lines_at(const QTextDocument& text, const QFont& font, int width) {
    QTextOption option;
    option.setWrapMode(kBroken);
    int lines = 0;
    for (QTextBlock block = text.begin(); block.isValid(); block = block.next()) {
        QTextLayout layout{block.text(), font};
        layout.setTextOption(option);
        layout.beginLayout();
        for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
            line.setLineWidth(std::max(width, 1));
        }
        layout.endLayout();
        lines += std::max(1, layout.lineCount());
    }
    return lines;
}

} // namespace

LinesEdit::LinesEdit(const card::Field& field, QWidget* parent)
    : QPlainTextEdit{parent}, FieldEditor{field, *this} {
    setFrameShape(QFrame::NoFrame);
    setTabChangesFocus(true);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    document()->setDocumentMargin(kBeside_px);
    setStyleSheet(
        QStringLiteral("QPlainTextEdit { border: none; padding: 0px; background: transparent; }"
                       "QPlainTextEdit:focus { border: none; padding: 0px; }"));
    setWordWrapMode(kBroken);
    connect(this, &QPlainTextEdit::textChanged, this, [this] { updateGeometry(); });
    show_value(field);
}

QSize LinesEdit::sizeHint() const {
    return {kWhole_px, heightForWidth(kWhole_px)};
}

int LinesEdit::heightForWidth(int width) const {
    return lines_at(*document(), font(), width - 2 * kBeside_px - cursorWidth())
               * fontMetrics().lineSpacing()
           + 2 * kBeside_px + kLine_px;
}

QSize LinesEdit::minimumSizeHint() const {
    return {fontMetrics().averageCharWidth() * 8,
            fontMetrics().lineSpacing() + 2 * kBeside_px + kLine_px};
}

void LinesEdit::keyPressEvent(QKeyEvent* event) {
    const bool is_enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (is_enter && event->modifiers().testFlag(Qt::ControlModifier)) {
        commit();
        return;
    }
    if (!key_of_all(*event)) {
        QPlainTextEdit::keyPressEvent(event);
    }
}

void LinesEdit::focusInEvent(QFocusEvent* event) {
    QPlainTextEdit::focusInEvent(event);
    tell_refusal();
}

void LinesEdit::focusOutEvent(QFocusEvent* event) {
    QPlainTextEdit::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason) {
        commit();
    }
}

void LinesEdit::wheelEvent(QWheelEvent* event) {
    event->ignore();
}

void LinesEdit::paintEvent(QPaintEvent* event) {
    QPlainTextEdit::paintEvent(event);
    QPainter painter{viewport()};
    paint_line(painter);
}

} // namespace throwline::ui
