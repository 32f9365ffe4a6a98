#include "survey/adjust.h"

#include "base/polygon.h"
#include "survey/blunders.h"
#include "survey/determinacy.h"
#include "survey/first_shape.h"
#include "survey/modelled.h"
#include "survey/settling.h"

#include <algorithm>

namespace throwline::survey {
namespace {

// Another shape fits as well when its misfits cost no more than this beyond the best's: three
// standard errors in one reading.
constexpr double kAsGood = 9.0;
// Shapes that differ by less than this, metres, are not mistaken for each other by anyone.
constexpr double kOneShape_m = 0.05;

// Shapes from which wrong readings are looked for.
constexpr std::size_t kMostCompared = 6;

/// Whether the same readings miss both shapes, and without those the shapes still differ: then one
/// is a mirror image of a part. Where other readings miss, each only blames another reading.
bool is_mirror_image(const Network& network, const Shape& a, const Shape& b) {
    const std::vector<int> missing = missing_readings(network, a.points);
    if (missing != missing_readings(network, b.points)) {
        return false;
    }
    const Network rest = without(network, missing);
    return difference_between(settle(rest, a.points).points, settle(rest, b.points).points).most_m
           > kOneShape_m;
}

std::optional<Undetermined> second_shape(const Network& network, const std::vector<Shape>& shapes) {
    const Shape& best = shapes.front();
    for (const Shape& shape : shapes) {
        if (&shape != &best && shape.cost < best.cost + kAsGood
            && is_mirror_image(network, best, shape)) {
            return two_shapes(network, best.points, shape.points);
        }
    }
    return std::nullopt;
}

std::span<const Shape> as_good(const std::vector<Shape>& shapes) {
    std::size_t count = 1;
    while (count < std::min(shapes.size(), kMostCompared)
           && shapes[count].cost < shapes.front().cost + kAsGood) {
        ++count;
    }
    return std::span(shapes).first(count);
}

/// Of shapes that may all be, the one with the largest floor: advice from a folded one is poor.
const Shape& widest(const Network& network, std::span<const Shape> shapes) {
    const auto floor = [&network](const Shape& shape) {
        return area(std::span(shape.points).first(static_cast<std::size_t>(network.outline)));
    };
    return *std::max_element(
        shapes.begin(), shapes.end(),
        [&floor](const Shape& a, const Shape& b) { return floor(a) < floor(b); });
}

} // namespace

tl::expected<Solution, Undetermined> solved(const Network& network) {
    const std::vector<Shape> shapes = first_shapes(network);
    const std::vector<Vec2>& best = shapes.front().points;
    if (looseness(network, best)) {
        const auto loose = looseness(network, widest(network, as_good(shapes)).points);
        return tl::make_unexpected(loose ? *loose : *looseness(network, best));
    }
    if (const auto two = second_shape(network, shapes)) {
        return tl::make_unexpected(*two);
    }
    return without_wrong_readings(network, as_good(shapes));
}

} // namespace throwline::survey
