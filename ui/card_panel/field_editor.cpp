#include "ui/card_panel/field_editor.h"

#include "ui/card_panel/field_edit.h"
#include "ui/card_panel/lines_edit.h"
#include "ui/look/look.h"

#include <QKeyEvent>
#include <QPainter>
#include <utility>

namespace throwline::ui {

namespace {

constexpr int kBeside_px = 3;

QString tr(const char* words) {
    return QObject::tr(words);
}

} // namespace

FieldEditor::FieldEditor(const card::Field& field, QWidget& widget)
    : widget_{widget}, key_{QString::fromStdString(field.key)} {
    widget_.setObjectName(key_);
}

void FieldEditor::show_value(const card::Field& field) {
    widget_.setAccessibleName(QString::fromStdString(field.label));
    put_placeholder(field.mixed ? tr("several") : QStringLiteral("\u2026"));
    const bool keeps = is_being_typed() || is_refused();
    value_ = field.mixed ? QString{} : QString::fromStdString(field.value);
    if (!keeps && text_now() != value_) {
        put_text(value_);
    }
    QString hint = QString::fromStdString(field.hint);
    if (field.working) {
        hint += (hint.isEmpty() ? QString{} : QStringLiteral("; ")) + tr("F2 shows the working");
    }
    widget_.setToolTip(is_refused() ? refusal_ : hint);
    widget_.setAccessibleDescription(is_refused() ? refusal_ : hint);
}

bool FieldEditor::is_being_typed() const {
    return widget_.hasFocus() && text_now() != value_;
}

std::optional<FieldEditor::Unfinished> FieldEditor::unfinished() const {
    if (!is_being_typed() && !is_refused()) {
        return std::nullopt;
    }
    return Unfinished{text_now(), refusal_, widget_.hasFocus(), cursor()};
}

void FieldEditor::go_on(const Unfinished& typed) {
    put_text(typed.text);
    if (typed.has_keyboard) {
        widget_.setFocus(Qt::OtherFocusReason);
        put_cursor(typed.cursor);
    }
    if (!typed.refusal.isEmpty()) {
        refuse(typed.refusal);
    }
}

void FieldEditor::refuse(const QString& why) {
    refusal_ = why;
    widget_.setToolTip(why);
    widget_.setAccessibleDescription(why);
    widget_.update();
    tell_refusal();
}

void FieldEditor::commit() {
    const bool was_refused = is_refused();
    refusal_.clear();
    if (was_refused && hearer_.refused) {
        hearer_.refused({});
    }
    const QString typed = text_now();
    if (typed == value_ || !hearer_.typed) {
        widget_.update();
        return;
    }
    // Taken until it is refused, so that the value as the plan writes it takes the text's place.
    const QString before = std::exchange(value_, typed);
    hearer_.typed(typed);
    if (is_refused()) {
        value_ = before;
    }
}

void FieldEditor::restore() {
    refusal_.clear();
    put_text(value_);
    widget_.update();
    if (hearer_.refused) {
        hearer_.refused({});
    }
}

void FieldEditor::tell_refusal() const {
    if (is_refused() && hearer_.refused) {
        hearer_.refused(refusal_);
    }
}

bool FieldEditor::key_of_all(const QKeyEvent& event) {
    if (event.key() == Qt::Key_Escape) {
        restore();
        return true;
    }
    if (event.key() == Qt::Key_F2) {
        if (hearer_.working_wanted) {
            hearer_.working_wanted();
        }
        return true;
    }
    return false;
}

void FieldEditor::paint_line(QPainter& painter) const {
    const Theme theme = theme_of(widget_.palette());
    const bool has_keyboard = widget_.hasFocus();
    QPen pen{is_refused()   ? paint::line_hue(sheet::Ink::error, theme)
             : has_keyboard ? choice_hue(theme)
                            : widget_.palette().color(QPalette::Dark),
             is_refused() || has_keyboard ? 2.0 : 1.0};
    if (is_refused()) {
        pen.setStyle(Qt::DashLine);
    }
    painter.setPen(pen);
    const QRect box = widget_.rect();
    if (has_keyboard) {
        painter.drawRect(box.adjusted(1, 1, -1, -1));
    } else {
        painter.drawLine(kBeside_px, box.height() - 2, box.width() - kBeside_px, box.height() - 2);
    }
}

FieldEditor* editor_for(const card::Field& field, QWidget* parent) {
    if (field.kind == card::FieldKind::many_lines) {
        return new LinesEdit{field, parent};
    }
    return new FieldEdit{field, parent};
}

} // namespace throwline::ui
