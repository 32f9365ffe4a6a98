#include "plan/difference_words.h"

#include "base/length_text.h"
#include "base/utf8.h"
#include "plan/differences.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::plan {

namespace {

/// A sideways part below this share of the whole is within what "to the left" means.
constexpr double kStraightShare = 0.02;

std::string trimmed(double value) {
    const double rounded = std::round(value * 10.0) / 10.0;
    return fixed(rounded, rounded == std::round(rounded) ? 0 : 1);
}

std::string metric_text(Length distance) {
    // The limits are those at which rounding reaches the next unit.
    if (distance < Length::millimetres(99.95)) {
        return trimmed(distance.mm()) + " mm";
    }
    if (distance < Length::millimetres(999.5)) {
        return trimmed(distance.m() * 100.0) + " cm";
    }
    return metres_text(distance);
}

std::string imperial_text(Length distance) {
    return distance < Length::inches(1.0) ? feet_inches(distance, {16})
                                          : feet_inches(distance, {4});
}

bool is_told(double part_m, double other_m) {
    return std::abs(part_m) >= std::max(kSlightMove.m(), kStraightShare * std::abs(other_m));
}

/// To a tenth of the smallest move that is told by itself.
std::string working_metres(Length length) {
    return metres_text(length, 4);
}

std::string across_text(double x_m, UnitSystem units) {
    return fmt::format("{} to the {}", distance_text(Length::metres(x_m), units),
                       x_m < 0.0 ? "left" : "right");
}

std::string along_text(double y_m, UnitSystem units) {
    return fmt::format("{} {} the sheet", distance_text(Length::metres(y_m), units),
                       y_m < 0.0 ? "down" : "up");
}

} // namespace

std::string distance_text(Length distance, UnitSystem units) {
    const Length size = Length::metres(std::abs(distance.m()));
    switch (units) {
    case UnitSystem::metric:
        return metric_text(size);
    case UnitSystem::imperial:
        return imperial_text(size);
    }
    return {};
}

std::string shift_text(const Vec2& shift, UnitSystem units) {
    const bool across = is_told(shift.x(), shift.y());
    const bool along = is_told(shift.y(), shift.x());
    if (across && along) {
        return across_text(shift.x(), units) + " and " + along_text(shift.y(), units);
    }
    return across ? across_text(shift.x(), units) : along_text(shift.y(), units);
}

Working shift_working(const Vec2& shift, UnitSystem units) {
    return {
        .formula = "distance = sqrt(x² + y²)",
        .inputs = {{"x", "to the right on the sheet", working_metres(Length::metres(shift.x()))},
                   {"y", "up the sheet", working_metres(Length::metres(shift.y()))}},
        .result = distance_text(Length::metres(shift.norm()), units),
        .source = "plain geometry"};
}

std::string rise_text(Length rise, UnitSystem units) {
    return fmt::format("{} by {}", rise < Length{} ? "lowered" : "raised",
                       distance_text(rise, units));
}

Working rise_working(Length before, Length now, UnitSystem units) {
    return {.formula = "rise = height now - height before",
            .inputs = {{"", "height before", working_metres(before)},
                       {"", "height now", working_metres(now)}},
            .result =
                fmt::format("{}{}", now < before ? "-" : "", distance_text(now - before, units)),
            .source = "plain geometry"};
}

std::string turn_text(Angle turn) {
    const double turn_deg = Angle::radians(wrapped(turn.rad())).deg();
    return fmt::format("{}° {}", trimmed(std::abs(turn_deg)),
                       turn_deg < 0.0 ? "clockwise" : "anticlockwise");
}

std::string short_text(const std::string& text) {
    constexpr std::size_t kLongest = 60;
    return in_quotes(text, kLongest);
}

} // namespace throwline::plan
