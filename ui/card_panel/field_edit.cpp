#include "ui/card_panel/field_edit.h"

#include "base/length_text.h"

#include <QAbstractItemView>
#include <QCompleter>
#include <QFontMetrics>
#include <QKeyEvent>
#include <QPainter>

namespace throwline::ui {

namespace {

constexpr int kBeside_px = 3;
constexpr int kLeast_px = 22;
constexpr int kMostInList = 12;

QStringList list_of(const std::vector<std::string>& names) {
    QStringList list;
    for (const std::string& name : names) {
        list << QString::fromStdString(name);
    }
    return list;
}

} // namespace

FieldEdit::FieldEdit(const card::Field& field, QWidget* parent)
    : QLineEdit{parent}, FieldEditor{field, *this}, kind_{field.kind},
      choices_{list_of(field.choices)} {
    setFrame(false);
    setTextMargins(kBeside_px, 0, kBeside_px, 2);
    setStyleSheet(
        QStringLiteral("QLineEdit { border: none; padding: 0px; background: transparent; }"
                       "QLineEdit:focus { border: none; padding: 0px; }"));
    if (!choices_.isEmpty()) {
        auto* completer = new QCompleter{choices_, this};
        completer->setCaseSensitivity(Qt::CaseInsensitive);
        completer->setFilterMode(Qt::MatchContains);
        completer->setMaxVisibleItems(kMostInList);
        setCompleter(completer);
        connect(
            completer, qOverload<const QString&>(&QCompleter::activated), this,
            [this] { commit(); }, Qt::QueuedConnection);
    }
    connect(this, &QLineEdit::textChanged, this, [this] { updateGeometry(); });
    show_value(field);
}

void FieldEdit::put_text(const QString& text) {
    setText(text);
    if (hasFocus()) {
        selectAll();
    } else {
        setCursorPosition(0);
    }
}

QSize FieldEdit::sizeHint() const {
    const QString shown = text().isEmpty() ? placeholderText() : text();
    const int width = fontMetrics().horizontalAdvance(shown) + 2 * kBeside_px + 6;
    return {qMax(kLeast_px, width), fontMetrics().height() + 6};
}

QSize FieldEdit::minimumSizeHint() const {
    return {kLeast_px, sizeHint().height()};
}

void FieldEdit::nudge(int steps) {
    // In the notation that stands there: half an inch where feet or inches are shown.
    const bool inches = text().contains(QLatin1Char{'"'}) || text().contains(QLatin1Char{'\''});
    const auto read = parse_length(text().toStdString(), {.bare_unit = UnitSystem::metric});
    if (!read) {
        return;
    }
    const Length step = inches ? Length::inches(0.5) : Length::millimetres(10);
    const UnitSystem units = inches ? UnitSystem::imperial : UnitSystem::metric;
    setText(QString::fromStdString(shown(*read + step * steps, units)));
    commit();
}

void FieldEdit::offer_choices() {
    if (completer() != nullptr) {
        completer()->setCompletionPrefix(QString{});
        completer()->complete();
    }
}

/// Up and Down change a length, and open the list of choices.
bool FieldEdit::key_of_list(const QKeyEvent& event) {
    const bool up = event.key() == Qt::Key_Up;
    if (!up && event.key() != Qt::Key_Down) {
        return false;
    }
    if (kind_ == card::FieldKind::length) {
        nudge((up ? 1 : -1) * (event.modifiers().testFlag(Qt::ShiftModifier) ? 10 : 1));
        return true;
    }
    if (!choices_.isEmpty()) {
        offer_choices();
        return true;
    }
    return false;
}

void FieldEdit::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        QAbstractItemView* list = completer() != nullptr ? completer()->popup() : nullptr;
        if (list != nullptr && list->isVisible()) {
            // What is chosen in the list is taken by the list.
            if (list->currentIndex().isValid()) {
                QLineEdit::keyPressEvent(event);
                return;
            }
            list->hide();
        }
        commit();
        return;
    }
    if (!key_of_all(*event) && !key_of_list(*event)) {
        QLineEdit::keyPressEvent(event);
    }
}

void FieldEdit::focusInEvent(QFocusEvent* event) {
    QLineEdit::focusInEvent(event);
    if (event->reason() != Qt::PopupFocusReason) {
        selectAll();
    }
    tell_refusal();
}

void FieldEdit::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason) {
        commit();
        setCursorPosition(0);
    }
}

void FieldEdit::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    QPainter painter{this};
    paint_line(painter);
}

} // namespace throwline::ui
