#include "optics/angle_of_view.h"

#include "base/length_text.h"
#include "optics/words.h"

#include <cmath>

namespace throwline::optics {

namespace {

AngleOfView angles_at(const PictureArea& area, Length image_distance) {
    const Length shown_width = area.width * area.squeeze;
    const Length diagonal = Length::metres(std::hypot(shown_width.m(), area.height.m()));
    return {full_angle(shown_width, image_distance), full_angle(area.height, image_distance),
            full_angle(diagonal, image_distance)};
}

} // namespace

Angle full_angle(Length side, Length focal) {
    return Angle::radians(2.0 * std::atan(side / (focal * 2.0)));
}

AngleOfView angle_of_view(const PictureArea& area, Length focal) {
    return angles_at(area, focal);
}

std::optional<AngleOfView> angle_of_view_focused(const PictureArea& area, Length focal,
                                                 Length focus) {
    if (focus <= focal) {
        return std::nullopt;
    }
    return angles_at(area, focal * (focus / (focus - focal)));
}

Working angle_of_view_working(const PictureArea& area, Length focal) {
    const AngleOfView angles = angle_of_view(area, focal);
    return {
        "angle = 2 atan(q s / 2 f), horizontal from the width, vertical from the height with q = 1",
        {{"w", "active width", mm_text(area.width)},
         {"h", "active height", mm_text(area.height)},
         {"q", "squeeze", shortest(area.squeeze)},
         {"f", "focal length", mm_text(focal)}},
        degrees_text(angles.horizontal, 2) + " x " + degrees_text(angles.vertical, 2),
        "plain geometry: rectilinear lens focused at infinity"};
}

} // namespace throwline::optics
