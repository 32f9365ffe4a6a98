#include "sheet/text_box.h"

#include "sheet/marks.h"

#include <numbers>

namespace throwline::sheet {

namespace {

/// Share of a text's width that lies before the point it is anchored at.
double share_before(TextAnchor anchor) {
    switch (anchor) {
    case TextAnchor::start:
        return 0.0;
    case TextAnchor::middle:
        return 0.5;
    case TextAnchor::end:
        return 1.0;
    }
    return 0.0;
}

} // namespace

std::array<Vec2, 4> text_corners(const Text& text, const TextMeasure& measure) {
    const double width_mm = measure.width_mm(text.text, text.height_mm, text.bold);
    const Vec2 along = paper_direction(text.turn_rad) * width_mm;
    const Vec2 up = paper_direction(text.turn_rad + std::numbers::pi / 2.0) * text.height_mm;
    const Vec2 foot = text.at - along * share_before(text.anchor) - up * kDescent;
    const Vec2 rise = up * (1.0 + kDescent);
    return {foot, foot + along, foot + along + rise, foot + rise};
}

Box text_box(const Text& text, const TextMeasure& measure) {
    const std::array<Vec2, 4> corners = text_corners(text, measure);
    Vec2 low = corners.front();
    Vec2 high = corners.front();
    for (const Vec2& corner : corners) {
        low = low.cwiseMin(corner);
        high = high.cwiseMax(corner);
    }
    return {low.x(), low.y(), high.x() - low.x(), high.y() - low.y()};
}

} // namespace throwline::sheet
