#include "ui/window/rows_form.h"

#include "ui/window/length_field.h"

#include <QDialog>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QPushButton>
#include <QSpinBox>

namespace throwline::ui {

namespace {

constexpr int kMostRows = 200;

QSpinBox* count_field(QFormLayout& form, const QString& label, int value) {
    auto* field = new QSpinBox;
    field->setRange(1, kMostRows);
    field->setValue(value);
    field->setAccessibleName(QString{label}.remove(QLatin1Char{'&'}));
    form.addRow(label, field);
    return field;
}

LengthField* step_field(QFormLayout& form, const QString& label, UnitSystem units) {
    auto* field =
        new LengthField{units == UnitSystem::metric ? Length::metres(1.2) : Length::feet(4), units};
    field->set_range(Length::metres(-1000), Length::metres(1000));
    field->setAccessibleName(QString{label}.remove(QLatin1Char{'&'}));
    form.addRow(label, field);
    return field;
}

} // namespace

std::optional<edit::Array> asked_rows(QWidget* over, UnitSystem units) {
    QDialog dialog{over};
    dialog.setWindowTitle(QObject::tr("Rows and columns"));
    auto* form = new QFormLayout{&dialog};
    const QSpinBox* columns = count_field(*form, QObject::tr("&Columns"), 3);
    const LengthField* across = step_field(*form, QObject::tr("one every, &across"), units);
    const QSpinBox* rows = count_field(*form, QObject::tr("&Rows"), 1);
    const LengthField* up = step_field(*form, QObject::tr("one every, &up the page"), units);
    auto* buttons = new QDialogButtonBox{QDialogButtonBox::Ok | QDialogButtonBox::Cancel, &dialog};
    form->addRow(buttons);
    const auto look = [&] {
        buttons->button(QDialogButtonBox::Ok)
            ->setEnabled(across->length().has_value() && up->length().has_value());
    };
    QObject::connect(across, &LengthField::changed, &dialog, look);
    QObject::connect(up, &LengthField::changed, &dialog, look);
    QObject::connect(buttons, &QDialogButtonBox::accepted, &dialog, &QDialog::accept);
    QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    if (dialog.exec() != QDialog::Accepted || !across->length() || !up->length()) {
        return std::nullopt;
    }
    return edit::Array{columns->value(), rows->value(), Vec2{across->length()->m(), 0.0},
                       Vec2{0.0, up->length()->m()}};
}

} // namespace throwline::ui
