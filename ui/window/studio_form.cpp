#include "ui/window/studio_form.h"

#include "ui/window/length_field.h"

#include <QComboBox>
#include <QFormLayout>
#include <QPushButton>

namespace throwline::ui {

namespace {

/// What a studio usually measures; flats and grids come in steps of 4 ft where feet are used.
edit::Studio usual_studio(UnitSystem units) {
    if (units == UnitSystem::metric) {
        return {};
    }
    return {Length::feet(40), Length::feet(32), Length::feet(16), Length::feet(14),
            Length::feet(4)};
}

} // namespace

StudioForm::StudioForm(QWidget* parent)
    : QWidget{parent}, units_{new QComboBox{this}}, make_{new QPushButton{tr("Start"), this}} {
    units_->addItems({tr("Metres"), tr("Feet and inches")});
    units_->setAccessibleName(tr("Units"));
    auto* form = new QFormLayout{this};
    form->setContentsMargins(0, 0, 0, 0);
    form->addRow(tr("&Units"), units_);
    const auto field = [&](const QString& label, Length least, Length most) {
        auto* made = new LengthField{least, UnitSystem::metric, this};
        made->set_range(least, most);
        made->setAccessibleName(QString{label}.remove(QLatin1Char{'&'}));
        form->addRow(label, made);
        connect(made, &LengthField::changed, this, &StudioForm::look);
        return made;
    };
    width_ = field(tr("&Width, wall to wall"), Length::metres(1), Length::metres(200));
    depth_ = field(tr("&Depth"), Length::metres(1), Length::metres(200));
    height_ = field(tr("&Height under the roof"), Length::metres(2), Length::metres(50));
    grid_height_ = field(tr("&Pipe grid at"), Length::metres(1.5), Length::metres(50));
    pitch_ = field(tr("A pipe &every"), Length::metres(0), Length::metres(10));
    pitch_->setPlaceholderText(tr("0 for no grid"));
    form->addRow(make_);
    setTabOrder(pitch_, make_);
    make_->setDefault(true);
    connect(make_, &QPushButton::clicked, this, &StudioForm::make_wanted);
    connect(units_, &QComboBox::currentIndexChanged, this, &StudioForm::take_units);
    take_units();
}

UnitSystem StudioForm::units() const {
    return units_->currentIndex() == 0 ? UnitSystem::metric : UnitSystem::imperial;
}

void StudioForm::take_units() {
    const edit::Studio usual = usual_studio(units());
    for (const auto& [field, length] :
         {std::pair{width_, usual.width}, std::pair{depth_, usual.depth},
          std::pair{height_, usual.height}, std::pair{grid_height_, usual.grid_height},
          std::pair{pitch_, usual.pitch}}) {
        field->set_units(units());
        field->set_length(length);
    }
}

std::optional<edit::Studio> StudioForm::studio() const {
    const std::optional<Length> width = width_->length();
    const std::optional<Length> depth = depth_->length();
    const std::optional<Length> height = height_->length();
    const std::optional<Length> grid_height = grid_height_->length();
    const std::optional<Length> pitch = pitch_->length();
    if (!width || !depth || !height || !grid_height || !pitch) {
        return std::nullopt;
    }
    return edit::Studio{*width, *depth, *height, *grid_height, *pitch};
}

void StudioForm::look() {
    // The first signals come while the fields are still being made.
    if (pitch_ != nullptr) {
        make_->setEnabled(studio().has_value());
    }
}

} // namespace throwline::ui
