#include "survey/adjust.h"
#include "survey/blunders.h"
#include "survey/determinacy.h"
#include "survey/first_shape.h"

namespace throwline::survey {
namespace {

// Another shape fits as well when its misfits cost no more than this beyond the best's: three
// standard errors in one reading.
constexpr double kAsGood = 9.0;

} // namespace

tl::expected<Solution, Undetermined> solved(const Network& network) {
    const std::vector<Shape> shapes = first_shapes(network);
    const std::vector<Vec2>& best = shapes.front().points;
    if (const auto loose = looseness(network, best)) {
        return tl::make_unexpected(*loose);
    }
    if (shapes.size() > 1 && shapes[1].cost < shapes[0].cost + kAsGood) {
        return tl::make_unexpected(two_shapes(network, best, shapes[1].points));
    }
    if (std::optional<Solution> solution = without_wrong_readings(network, best)) {
        return *std::move(solution);
    }
    Undetermined nothing;
    nothing.needed = 0;
    return tl::make_unexpected(nothing);
}

} // namespace throwline::survey
