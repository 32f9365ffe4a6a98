#include "survey/first_shape.h"

#include "base/polygon.h"
#include "survey/modelled.h"
#include "survey/placing.h"
#include "survey/screen.h"
#include "survey/settling.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace throwline::survey {
namespace {

// Misfit, in standard errors, up to which it is an error of reading.
constexpr double kReadingError = 4.0;
// Cost of a misfit that is ten times as large, more: a reading wrong by 3 m is less likely than one
// wrong by 0.3 m by the factor exp(9).
constexpr double kCostOfTenfold = 18.0;
// An outline that crosses itself gives way to any other that a few wrong readings explain.
constexpr double kCrossing = 200.0;
// A point on the wrong side of the wall: more than doubt, less than a reading wrong by a metre.
constexpr double kWrongSide = 30.0;
// A point this near to the wall may be on either side: what stands against the wall.
constexpr double kAtTheWall_m = 0.05;
// Two shapes that differ by less are one.
constexpr double kSameShape_m = 0.02;
// Shapes that are adjusted, of one beginning, and beginnings tried when nothing fits.
constexpr std::size_t kMostAdjusted = 24;
constexpr std::size_t kMostBeginnings = 6;
// Readings that are left out in turn when no shape fits, and how often a better shape starts anew.
constexpr std::size_t kMostDoubted = 12;
constexpr int kMostDoubtRounds = 3;
// Shapes that are placed worse than the best by more are not adjusted: two readings wrong by 1 m.
constexpr double kPlacedWorse = 14.0;
// Scales of the loss, standard errors: at first a wrong reading of some decimetres still guides.
constexpr double kCoarseScale = 30.0;
constexpr double kFineScale = 2.5;
constexpr SettleOptions kQuick{.cauchy_scale = 0.0, .most_rounds = 25, .stop_m = 1e-5};

Vec2 mirrored(const Vec2& point) {
    return {point.x(), -point.y()};
}

std::span<const Vec2> outline_of(const Network& network, std::span<const Vec2> points) {
    return points.first(static_cast<std::size_t>(network.outline));
}

/// In the datum, and mirrored where the outline runs the other way round than it was walked.
std::vector<Vec2> as_walked(const Network& network, std::span<const Vec2> points) {
    std::vector<Vec2> shape = in_datum(points);
    const bool anticlockwise = signed_area(outline_of(network, shape)) > 0.0;
    if (anticlockwise != (network.walk == Walk::anticlockwise)) {
        std::transform(shape.begin(), shape.end(), shape.begin(), mirrored);
    }
    return shape;
}

bool is_at_the_wall(std::span<const Vec2> outline, const Vec2& point) {
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2& next = outline[(i + 1) % outline.size()];
        if (distance_to_segment(point, outline[i], next) <= kAtTheWall_m) {
            return true;
        }
    }
    return false;
}

double wrong_sides(const Network& network, std::span<const Vec2> points) {
    const std::span<const Vec2> outline = outline_of(network, points);
    double cost = 0.0;
    for (int point = network.outline; point < network.points; ++point) {
        const Vec2& at = points[static_cast<std::size_t>(point)];
        const bool outside = std::find(network.outside.begin(), network.outside.end(), point)
                             != network.outside.end();
        if (!is_at_the_wall(outline, at) && contains(outline, at, 0.0) == outside) {
            cost += kWrongSide;
        }
    }
    return cost;
}

/// Whether a shape is one that errors of reading alone explain.
bool fits(const Network& network, const Shape& shape) {
    const double readings = static_cast<double>(network.observations.size());
    return shape.cost < readings + 4.0 * std::sqrt(2.0 * readings);
}

Shape costed(const Network& network, std::vector<Vec2> points) {
    const double cost = cost_of(network, points);
    return {std::move(points), cost};
}

std::vector<Vec2> robustly_settled(const Network& network, std::span<const Vec2> start) {
    SettleOptions options = kQuick;
    options.cauchy_scale = kCoarseScale;
    const std::vector<Vec2> coarse = settle(network, start, options).points;
    options.cauchy_scale = kFineScale;
    return settle(network, coarse, options).points;
}

/// The shape that the readings settle to from a first one, wrong readings counting little.
Shape adjusted_shape(const Network& network, std::span<const Vec2> placed) {
    const std::vector<Vec2> start = as_walked(network, placed);
    const Shape plain = costed(network, settle(network, start, kQuick).points);
    if (fits(network, plain)) {
        return plain;
    }
    const Shape robust = costed(network, robustly_settled(network, start));
    return robust.cost < plain.cost ? robust : plain;
}

void add_distinct(std::vector<Shape>& shapes, Shape shape) {
    for (Shape& known : shapes) {
        if (difference_between(known.points, shape.points).most_m < kSameShape_m) {
            if (shape.cost < known.cost) {
                known = std::move(shape);
            }
            return;
        }
    }
    shapes.push_back(std::move(shape));
}

bool is_same(const Shape& a, const Shape& b) {
    return difference_between(a.points, b.points).most_m < kSameShape_m;
}

/// Adds the shapes that come from one beginning; returns the best of them.
Shape add_from(const Network& network, const Placing& beginning, std::vector<Shape>& shapes) {
    const std::vector<PlacedShape> placed = placed_shapes(network, beginning);
    std::optional<Shape> best;
    for (std::size_t i = 0; i < std::min(placed.size(), kMostAdjusted); ++i) {
        if (placed[i].misfit <= placed.front().misfit + kPlacedWorse) {
            const Shape shape = adjusted_shape(network, placed[i].points);
            if (!best || shape.cost < best->cost) {
                best = shape;
            }
            add_distinct(shapes, shape);
        }
    }
    return *best;
}

void sort_by_cost(std::vector<Shape>& shapes) {
    std::stable_sort(shapes.begin(), shapes.end(),
                     [](const Shape& a, const Shape& b) { return a.cost < b.cost; });
}

/// The readings that disagree most with all others, the most first.
std::vector<int> doubtful_readings(const Network& network, std::span<const Vec2> points) {
    const std::optional<Screen> screen = screen_at(network, points);
    if (!screen) {
        return {};
    }
    std::vector<int> readings(network.observations.size());
    std::iota(readings.begin(), readings.end(), 0);
    std::stable_sort(readings.begin(), readings.end(), [&screen](int a, int b) {
        return std::abs(screen->standardised(a)) > std::abs(screen->standardised(b));
    });
    readings.resize(std::min(readings.size(), kMostDoubted));
    return readings;
}

/// Adds the shapes that come out when one of the doubtful readings is not heard.
void add_without_each(const Network& network, std::vector<Shape>& shapes) {
    for (int round = 0; round < kMostDoubtRounds; ++round) {
        const Shape best = shapes.front();
        for (const int reading : doubtful_readings(network, best.points)) {
            const Network rest = without(network, std::span(&reading, 1));
            add_distinct(shapes, costed(network, robustly_settled(rest, best.points)));
        }
        sort_by_cost(shapes);
        if (shapes.front().cost >= best.cost) {
            return;
        }
    }
}

} // namespace

double cost_of(double standardised) {
    const double size = std::abs(standardised);
    if (size <= kReadingError) {
        return size * size;
    }
    return kReadingError * kReadingError + kCostOfTenfold * std::log10(size / kReadingError);
}

double cost_of(const Network& network, std::span<const Vec2> points) {
    double cost = wrong_sides(network, points);
    for (const Observation& observation : network.observations) {
        const double misses = observation.value - modelled_value(observation, points);
        cost += cost_of(misses / observation.sigma);
    }
    return crosses_itself(outline_of(network, points)) ? cost + kCrossing : cost;
}

std::vector<int> missing_readings(const Network& network, std::span<const Vec2> points) {
    std::vector<int> missing;
    for (std::size_t i = 0; i < network.observations.size(); ++i) {
        const Observation& observation = network.observations[i];
        const double by = observation.value - modelled_value(observation, points);
        if (std::abs(by / observation.sigma) > kReadingError) {
            missing.push_back(static_cast<int>(i));
        }
    }
    return missing;
}

Difference difference_between(std::span<const Vec2> a, std::span<const Vec2> b) {
    Difference difference;
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (std::size_t j = i + 1; j < a.size(); ++j) {
            const double by_m = std::abs((a[i] - a[j]).norm() - (b[i] - b[j]).norm());
            if (by_m > difference.most_m) {
                difference = {by_m, {static_cast<int>(i), static_cast<int>(j)}};
            }
        }
    }
    return difference;
}

std::vector<Shape> first_shapes(const Network& network) {
    std::vector<Shape> shapes;
    std::vector<Placing> starts = beginnings(network);
    starts.resize(std::min(starts.size(), kMostBeginnings));
    for (const Placing& start : starts) {
        const std::optional<Shape> before =
            shapes.empty() ? std::nullopt : std::optional(shapes.front());
        const Shape found = add_from(network, start, shapes);
        sort_by_cost(shapes);
        if (fits(network, shapes.front())) {
            return shapes;
        }
        if (before && is_same(found, *before) && is_same(shapes.front(), *before)) {
            break;
        }
    }
    add_without_each(network, shapes);
    return shapes;
}

} // namespace throwline::survey
