#include "ui/window/length_field.h"

#include "base/length_text.h"
#include "ui/look/look.h"

namespace throwline::ui {

LengthField::LengthField(Length length, UnitSystem units, QWidget* parent)
    : QLineEdit{parent}, units_{units} {
    connect(this, &QLineEdit::textChanged, this, [this] {
        look();
        Q_EMIT changed();
    });
    set_length(length);
}

std::optional<Length> LengthField::length() const {
    return length_;
}

void LengthField::set_length(Length length) {
    setText(QString::fromStdString(shown(length, units_)));
}

void LengthField::set_units(UnitSystem units) {
    const std::optional<Length> before = length_;
    units_ = units;
    if (before) {
        set_length(*before);
    } else {
        look();
    }
}

void LengthField::set_range(Length least, Length most) {
    least_ = least;
    most_ = most;
    look();
}

void LengthField::look() {
    const Result<Length> read = parse_length(text().toStdString(), {.bare_unit = units_});
    QString reason;
    if (!read) {
        reason = QString::fromStdString(read.error().message);
    } else if (*read < least_ || *read > most_) {
        reason = tr("from %1 to %2")
                     .arg(QString::fromStdString(shown(least_, units_)),
                          QString::fromStdString(shown(most_, units_)));
    }
    length_ = reason.isEmpty() ? std::optional{*read} : std::nullopt;
    setToolTip(reason);
    setAccessibleDescription(reason);
    const QColor line = paint::line_hue(sheet::Ink::error, theme_of(palette()));
    setStyleSheet(reason.isEmpty()
                      ? QString{}
                      : QStringLiteral("border-bottom: 2px dashed %1;").arg(line.name()));
}

} // namespace throwline::ui
