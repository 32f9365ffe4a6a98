#include "plan/check_outline.h"

#include <fmt/format.h>

namespace throwline::plan {

namespace {

/// Corners nearer than this are one corner: no wall is shorter than a millimetre.
constexpr double kShortestSide_m = 0.001;
/// Less than a square centimetre is no room and no prism.
constexpr double kSmallestArea_m2 = 1e-4;

/// The index of the corner that begins a side without length; the number of corners when none does.
std::size_t first_empty_side(const Polygon& outline) {
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2& next = outline[(i + 1) % outline.size()];
        if ((next - outline[i]).norm() < kShortestSide_m) {
            return i;
        }
    }
    return outline.size();
}

} // namespace

void check_outline(Reading& reading, const Value& value, const Polygon& outline,
                   std::size_t most_corners) {
    if (reading.is_spoilt(value)) {
        return;
    }
    if (outline.size() < 3 || outline.size() > most_corners) {
        reading.wrong(value, fmt::format("an outline has 3 to {} corners, this one {}",
                                         most_corners, outline.size()));
        return;
    }
    const std::size_t empty = first_empty_side(outline);
    if (empty + 1 == outline.size()) {
        reading.wrong(value.item(empty), "the last corner is in the place of the first; leave it "
                                         "out, the outline closes by itself");
    } else if (empty < outline.size()) {
        reading.wrong(value.item(empty + 1), "this corner is in the place of the one before it");
    } else if (crosses_itself(outline)) {
        reading.wrong(value, "the outline crosses itself; give the corners in walking order");
    } else if (area(outline) < kSmallestArea_m2) {
        reading.wrong(value, "the outline has no area");
    }
}

} // namespace throwline::plan
