#pragma once

#include "sheet/drawing.h"

#include <QFont>
#include <QString>

namespace throwline::paint {

/// Size at which text is set before the painter scales it: large enough that the rounding of
/// advances does not show.
inline constexpr int kSetSize_px = 100;

/// Makes the carried font known to Qt; throws std::runtime_error when it cannot be read.
void load_sheet_fonts();

/// The sheet's font at kSetSize_px.
QFont sheet_font(bool bold);

/// Height of a capital of that font, in the same pixels.
double capital_height_px(bool bold);

/// Widths from the sheet's font.
class FontMeasure : public sheet::TextMeasure {
  public:
    double width_mm(const std::string& text, double height_mm, bool bold) const override;
};

} // namespace throwline::paint
