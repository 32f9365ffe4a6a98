#include "ui/card_panel/lines_edit.h"

#include <QKeyEvent>
#include <QPainter>
#include <QTextBlock>
#include <QTextLayout>

namespace throwline::ui {

namespace {

constexpr int kBeside_px = 2;
/// As wide as the card is: wider than any card, since a row gives no more than it has.
constexpr int kWhole_px = 4000;

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
    connect(document()->documentLayout(), &QAbstractTextDocumentLayout::documentSizeChanged, this,
            [this] { updateGeometry(); });
    show_value(field);
}

int LinesEdit::shown_lines() const {
    int lines = 0;
    for (QTextBlock block = document()->begin(); block.isValid(); block = block.next()) {
        lines += qMax(1, block.layout()->lineCount());
    }
    return lines;
}

QSize LinesEdit::sizeHint() const {
    return {kWhole_px, shown_lines() * fontMetrics().lineSpacing() + 2 * kBeside_px + 4};
}

QSize LinesEdit::minimumSizeHint() const {
    return {fontMetrics().averageCharWidth() * 8, fontMetrics().lineSpacing() + 2 * kBeside_px + 4};
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

void LinesEdit::paintEvent(QPaintEvent* event) {
    QPlainTextEdit::paintEvent(event);
    QPainter painter{viewport()};
    paint_line(painter);
}

} // namespace throwline::ui
