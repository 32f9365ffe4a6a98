#include "sheet/furniture.h"

#include "base/length_text.h"
#include "sheet/check_ruler.h"

#include <array>
#include <cmath>
#include <fmt/format.h>

namespace throwline::sheet {

namespace {

constexpr double kPad_mm = 3.0;
constexpr double kInch_mm = 25.4;
constexpr double kFoot_m = 0.3048;
constexpr double kBar_mm = 1.4;

void add_words(Marks& marks, const std::string& words, const Vec2& at, TextAnchor anchor) {
    marks.emplace_back(Text{words, at, kLetter_mm, anchor, 0.0, false, Ink::lettering});
}

/// The longest of 1, 2, 5, 10, ... units that is drawn no longer than `most_mm`.
double round_length(double unit_mm, double most_mm) {
    double best = 1.0;
    for (double decade = 1.0; decade * unit_mm <= most_mm; decade *= 10.0) {
        for (const double step : {1.0, 2.0, 5.0}) {
            best = step * decade * unit_mm <= most_mm ? step * decade : best;
        }
    }
    return best;
}

/// A bar in `parts` fields, filled and open in turn, lettered at both ends.
void draw_bar(Marks& marks, const Vec2& from, double length_mm, int parts, const std::string& end) {
    const Pen edge = pen(Ink::lettering, kFine_mm);
    for (int i = 0; i < parts; ++i) {
        const double left = from.x() + length_mm * i / parts;
        const double right = from.x() + length_mm * (i + 1) / parts;
        const std::vector<Vec2> corners{{left, from.y()},
                                        {right, from.y()},
                                        {right, from.y() + kBar_mm},
                                        {left, from.y() + kBar_mm}};
        marks.emplace_back(outline(corners, edge, i % 2 == 0 ? solid(Ink::lettering) : Fill{}));
    }
    add_words(marks, "0", {from.x(), from.y() - 0.9}, TextAnchor::start);
    add_words(marks, end, {from.x() + length_mm, from.y() - 0.9}, TextAnchor::end);
}

void draw_scale_bar(Marks& marks, const Vec2& from, double unit_mm, std::string_view unit,
                    double most_mm) {
    const double units = round_length(unit_mm, most_mm);
    const int parts = std::fmod(units, 5.0) == 0.0 ? 5 : units == 1.0 ? 4 : 2;
    draw_bar(marks, from, units * unit_mm, parts, fmt::format("{:.0f} {}", units, unit));
}

} // namespace

void draw_rulers(Marks& marks, const Box& box, const PlanFrame& frame, UnitSystem units) {
    const double top_mm = box.top + kPad_mm + kLetter_mm;
    const double check_left_mm = box.right() - kPad_mm - 4.0 * kInch_mm;
    const double most_mm = std::min(100.0, check_left_mm - box.left - 4.0 * kPad_mm);
    const double foot_mm = frame.mm(kFoot_m);
    const bool metric = units == UnitSystem::metric;
    const Vec2 first{box.left + kPad_mm, top_mm};
    const Vec2 second = first + Vec2{0.0, 8.5};
    draw_scale_bar(marks, metric ? first : second, frame.mm_per_m, "m", most_mm);
    draw_scale_bar(marks, metric ? second : first, foot_mm, "ft", most_mm);
    const Vec2 right{1.0, 0.0};
    const Vec2 up{0.0, -1.0};
    const Vec2 check{check_left_mm, top_mm + 0.6};
    draw_check_ruler(marks, check, right, up);
    add_words(marks, kCheckWords, check + Vec2{0.0, 3.8}, TextAnchor::start);
    const Vec2 inches = check + Vec2{0.0, 9.5};
    draw_check_ruler(marks, inches, right, up, {4.0 * kInch_mm, kInch_mm / 8.0, 8});
    add_words(marks, "must measure 4 in", inches + Vec2{0.0, 3.8}, TextAnchor::start);
}

void draw_upright_ruler(Marks& marks, const Vec2& foot) {
    draw_check_ruler(marks, foot, Vec2{0.0, -1.0}, Vec2{1.0, 0.0});
    marks.emplace_back(Text{"100 mm", foot + Vec2{2.6 + kLetter_mm, -kCheckLength_mm / 2.0},
                            kLetter_mm, TextAnchor::middle, 1.5707963267948966, false,
                            Ink::lettering});
}

} // namespace throwline::sheet
