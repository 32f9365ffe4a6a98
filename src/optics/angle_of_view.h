#pragma once

#include "base/quantity.h"
#include "base/working.h"
#include "optics/picture_area.h"

#include <optional>

namespace throwline::optics {

/// Full angles across the picture. `diagonal` is across the shown picture (squeeze included).
struct AngleOfView {
    Angle horizontal;
    Angle vertical;
    Angle diagonal;
};

/// Full angle over a picture side with the lens focused at infinity: 2 atan(side / 2 focal).
/// Rectilinear lens; plain geometry. side >= 0, focal > 0.
Angle full_angle(Length side, Length focal);

/// All three angles at infinity focus; the squeeze widens the horizontal one only.
AngleOfView angle_of_view(const PictureArea& area, Length focal);

/// The same with a thin lens focused at `focus` from the front principal plane: the picture stands
/// at f u / (u - f) behind the lens, so the angle narrows. Empty when focus <= focal (no picture
/// forms). Thin-lens equation, plain geometry. Real zooms may breathe otherwise.
std::optional<AngleOfView> angle_of_view_focused(const PictureArea& area, Length focal,
                                                 Length focus);

Working angle_of_view_working(const PictureArea& area, Length focal);

} // namespace throwline::optics
