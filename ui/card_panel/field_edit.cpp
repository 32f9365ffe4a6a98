#include "ui/card_panel/field_edit.h"

#include "base/length_text.h"
#include "ui/look/look.h"

#include <QAbstractItemView>
#include <QCompleter>
#include <QFontMetrics>
#include <QKeyEvent>
#include <QPainter>

namespace throwline::ui {

namespace {

constexpr int kBeside_px = 3;
constexpr int kLeast_px = 22;

QStringList list_of(const std::vector<std::string>& names) {
    QStringList list;
    for (const std::string& name : names) {
        list << QString::fromStdString(name);
    }
    return list;
}

} // namespace

FieldEdit::FieldEdit(const card::Field& field, QWidget* parent)
    : QLineEdit{parent}, key_{QString::fromStdString(field.key)}, kind_{field.kind},
      choices_{list_of(field.choices)} {
    setFrame(false);
    setObjectName(key_);
    setTextMargins(kBeside_px, 0, kBeside_px, 2);
    setStyleSheet(
        QStringLiteral("QLineEdit { border: none; padding: 0px; background: transparent; }"
                       "QLineEdit:focus { border: none; padding: 0px; }"));
    if (!choices_.isEmpty()) {
        auto* completer = new QCompleter{choices_, this};
        completer->setCaseSensitivity(Qt::CaseInsensitive);
        completer->setFilterMode(Qt::MatchContains);
        completer->setMaxVisibleItems(12);
        setCompleter(completer);
        connect(completer, qOverload<const QString&>(&QCompleter::activated), this,
                &FieldEdit::commit, Qt::QueuedConnection);
    }
    connect(this, &QLineEdit::textChanged, this, [this] { updateGeometry(); });
    show(field);
}

void FieldEdit::show(const card::Field& field) {
    setAccessibleName(QString::fromStdString(field.label));
    const QString value = field.mixed ? QString{} : QString::fromStdString(field.value);
    setPlaceholderText(field.mixed ? tr("several") : tr("\u2026"));
    const bool keeps = is_being_typed() || is_refused();
    value_ = value;
    if (!keeps) {
        setText(value_);
        setCursorPosition(0);
    }
    const QString hint = QString::fromStdString(field.hint);
    setToolTip(is_refused() ? refusal_ : hint);
    setAccessibleDescription(is_refused() ? refusal_ : hint);
}

bool FieldEdit::is_being_typed() const {
    return hasFocus() && text() != value_;
}

void FieldEdit::refuse(const QString& why) {
    refusal_ = why;
    setToolTip(why);
    setAccessibleDescription(why);
    update();
    Q_EMIT refused(why);
}

QSize FieldEdit::sizeHint() const {
    const QString shown = text().isEmpty() ? placeholderText() : text();
    const int width = fontMetrics().horizontalAdvance(shown) + 2 * kBeside_px + 6;
    return {qMax(kLeast_px, width), fontMetrics().height() + 6};
}

QSize FieldEdit::minimumSizeHint() const {
    return {kLeast_px, sizeHint().height()};
}

void FieldEdit::commit() {
    if (text() == value_) {
        refusal_.clear();
        update();
        return;
    }
    refusal_.clear();
    Q_EMIT refused({});
    Q_EMIT typed(key_, text());
}

void FieldEdit::restore() {
    refusal_.clear();
    setText(value_);
    selectAll();
    update();
    Q_EMIT refused({});
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

void FieldEdit::offer() {
    if (completer() != nullptr) {
        completer()->setCompletionPrefix(QString{});
        completer()->complete();
    }
}

void FieldEdit::keyPressEvent(QKeyEvent* event) {
    const bool far = event->modifiers().testFlag(Qt::ShiftModifier);
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (completer() != nullptr && completer()->popup()->isVisible()) {
            // What is chosen in the list is taken by the list.
            if (completer()->popup()->currentIndex().isValid()) {
                break;
            }
            completer()->popup()->hide();
        }
        commit();
        return;
    case Qt::Key_Escape:
        restore();
        return;
    case Qt::Key_F2:
        Q_EMIT working_wanted(key_);
        return;
    case Qt::Key_Up:
    case Qt::Key_Down:
        if (kind_ == card::FieldKind::length) {
            nudge((event->key() == Qt::Key_Up ? 1 : -1) * (far ? 10 : 1));
            return;
        }
        if (!choices_.isEmpty()) {
            offer();
            return;
        }
        break;
    default:
        break;
    }
    QLineEdit::keyPressEvent(event);
}

void FieldEdit::focusInEvent(QFocusEvent* event) {
    QLineEdit::focusInEvent(event);
    if (event->reason() != Qt::PopupFocusReason) {
        selectAll();
    }
    if (is_refused()) {
        Q_EMIT refused(refusal_);
    }
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
    const Theme theme = theme_of(palette());
    QPen pen{is_refused() ? paint::line_hue(sheet::Ink::error, theme)
             : hasFocus() ? choice_hue(theme)
                          : palette().color(QPalette::Dark),
             is_refused() || hasFocus() ? 2.0 : 1.0};
    if (is_refused()) {
        pen.setStyle(Qt::DashLine);
    }
    painter.setPen(pen);
    if (hasFocus()) {
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    } else {
        painter.drawLine(kBeside_px, height() - 2, width() - kBeside_px, height() - 2);
    }
}

} // namespace throwline::ui
