#include "sheet/written_sheet.h"

#include <limits>
#include <stdexcept>

namespace throwline::test {

Stroke nearest_stroke(const std::vector<Stroke>& strokes, const Vec2& from, const Vec2& to) {
    double least = std::numeric_limits<double>::max();
    Stroke nearest;
    for (const Stroke& stroke : strokes) {
        for (const Stroke& way : {stroke, Stroke{stroke.to, stroke.from}}) {
            const double away = (way.from - from).norm() + (way.to - to).norm();
            if (away < least) {
                least = away;
                nearest = way;
            }
        }
    }
    if (strokes.empty()) {
        throw std::runtime_error{"there is no stroke on the sheet"};
    }
    return nearest;
}

} // namespace throwline::test
