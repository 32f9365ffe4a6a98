#include "optics/coverage.h"

#include "base/length_text.h"
#include "optics/words.h"

namespace throwline::optics {

namespace {

const char* const kPinhole = "plain geometry: pinhole at the entrance pupil";

} // namespace

Coverage coverage(const PictureArea& area, Length focal, Length distance) {
    const double magnification = distance / focal;
    return {area.width * (area.squeeze * magnification), area.height * magnification};
}

std::optional<Coverage> coverage_focused(const PictureArea& area, Length focal, Length distance) {
    if (distance <= focal) {
        return std::nullopt;
    }
    return coverage(area, focal, distance - focal);
}

Length focal_for_width(const PictureArea& area, Length wanted_width, Length distance) {
    return area.width * (area.squeeze * (distance / wanted_width));
}

Length focal_for_height(const PictureArea& area, Length wanted_height, Length distance) {
    return area.height * (distance / wanted_height);
}

Length distance_for_width(const PictureArea& area, Length focal, Length wanted_width) {
    return focal * (wanted_width / (area.width * area.squeeze));
}

Length distance_for_height(const PictureArea& area, Length focal, Length wanted_height) {
    return focal * (wanted_height / area.height);
}

Working coverage_working(const PictureArea& area, Length focal, Length distance) {
    const Coverage covered = coverage(area, focal, distance);
    return {"width = q w D / f; height = h D / f",
            {{"w", "active width", mm_text(area.width)},
             {"h", "active height", mm_text(area.height)},
             {"q", "squeeze", shortest(area.squeeze)},
             {"f", "focal length", mm_text(focal)},
             {"D", "distance", distance_text(distance)}},
            distance_text(covered.width) + " x " + distance_text(covered.height),
            kPinhole};
}

Working distance_for_height_working(const PictureArea& area, Length focal, Length wanted_height) {
    return {"D = f H / h",
            {{"f", "focal length", mm_text(focal)},
             {"H", "wanted height of the frame", distance_text(wanted_height)},
             {"h", "active height", mm_text(area.height)}},
            distance_text(distance_for_height(area, focal, wanted_height)),
            kPinhole};
}

} // namespace throwline::optics
