#include "ui/floor/typed_line.h"

#include <QKeyEvent>
#include <QToolTip>
#include <algorithm>

namespace throwline::ui {

TypedLine::TypedLine(QWidget* parent) : QLineEdit{parent} {
    hide();
    setAccessibleName(QStringLiteral("Length, angle or value"));
    setToolTip(QStringLiteral("A length, with a direction if you like: 2.4 m, 8' 30°; Enter sets "
                              "it, Esc leaves it"));
    connect(this, &QLineEdit::textEdited, this, &TypedLine::changed);
}

void TypedLine::open(const QPoint& near_px, const QString& text) {
    const QSize size{fontMetrics().averageCharWidth() * 16, sizeHint().height()};
    const QRect inside = parentWidget()->rect().adjusted(4, 4, -4, -4);
    QRect place{near_px + QPoint{16, 18}, size};
    place.moveLeft(std::clamp(place.left(), inside.left(), inside.right() - size.width()));
    place.moveTop(std::clamp(place.top(), inside.top(), inside.bottom() - size.height()));
    setGeometry(place);
    setText(text);
    show();
    raise();
    setFocus(Qt::OtherFocusReason);
    deselect();
    end(false);
    Q_EMIT changed(text);
}

void TypedLine::refuse(const QString& why) {
    setAccessibleDescription(why);
    QToolTip::showText(mapToGlobal(QPoint{0, height()}), why, this);
}

void TypedLine::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        Q_EMIT entered(text());
        return;
    case Qt::Key_Escape:
        Q_EMIT left();
        return;
    default:
        QLineEdit::keyPressEvent(event);
    }
}

void TypedLine::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    if (isVisible() && event->reason() != Qt::PopupFocusReason
        && event->reason() != Qt::ActiveWindowFocusReason) {
        Q_EMIT left();
    }
}

/// What is typed here is meant for here, not for the window's short cuts.
bool TypedLine::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        event->accept();
        return true;
    }
    return QLineEdit::event(event);
}

} // namespace throwline::ui
