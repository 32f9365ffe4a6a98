#include "sheet/check_ruler.h"

#include <cmath>

namespace throwline::sheet {

void draw_check_ruler(Marks& marks, const Vec2& from, const Vec2& along, const Vec2& ticks_towards,
                      const RulerTicks& ticks) {
    const Pen hair = pen(Ink::lettering, kHair_mm);
    marks.emplace_back(
        line(from, from + along * ticks.length_mm, pen(Ink::lettering, kConstruction_mm)));
    const int count = static_cast<int>(std::lround(ticks.length_mm / ticks.step_mm));
    for (int i = 0; i <= count; ++i) {
        const Vec2 at = from + along * (ticks.step_mm * i);
        const double tick_mm = i % ticks.major == 0 ? 2.0 : 1.0;
        marks.emplace_back(line(at, at + ticks_towards * tick_mm, hair));
    }
}

} // namespace throwline::sheet
