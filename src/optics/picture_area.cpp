#include "optics/picture_area.h"

#include <cmath>

namespace throwline::optics {

double PictureArea::aspect() const {
    return squeeze * width.m() / height.m();
}

Length PictureArea::diagonal() const {
    return Length::metres(std::hypot(width.m(), height.m()));
}

PictureArea effective_sensor(const catalogue::SensorMode& mode) {
    return {mode.width, mode.height, mode.squeeze};
}

PictureArea effective_sensor(const catalogue::SensorMode& mode, const catalogue::Lens& lens) {
    return {mode.width, mode.height, lens.squeeze};
}

PictureArea windowed(const PictureArea& area, double crop) {
    return {area.width / crop, area.height / crop, area.squeeze};
}

PictureArea cropped_to_aspect(const PictureArea& area, double aspect) {
    if (aspect >= area.aspect()) {
        return {area.width, area.width * (area.squeeze / aspect), area.squeeze};
    }
    return {area.height * (aspect / area.squeeze), area.height, area.squeeze};
}

} // namespace throwline::optics
