#include "survey/modelled.h"

#include <algorithm>
#include <cmath>

namespace throwline::survey {
namespace {

// Points closer than this are kept apart when dividing by their distance: no tape reads less.
constexpr double kLeastDistance_m = 1e-4;

std::size_t at(int index) {
    return static_cast<std::size_t>(index);
}

double kept_apart(double distance_m) {
    return std::max(distance_m, kLeastDistance_m);
}

/// Of a line from one point to another.
struct Line {
    Vec2 from;
    double length_m;
    Vec2 along;
    Vec2 left;
};

Line line(std::span<const Vec2> points, int from, int to) {
    const Vec2 span = points[at(to)] - points[at(from)];
    const double length_m = kept_apart(span.norm());
    const Vec2 along = span / length_m;
    return {points[at(from)], length_m, along, turned_left(along)};
}

struct Evaluation {
    std::span<const Vec2> points;
    double observed;

    Modelled operator()(const Distance& sight) const {
        const Line tape = line(points, sight.from, sight.to);
        return {(points[at(sight.to)] - tape.from).norm(),
                {sight.from, sight.to, 0},
                {-tape.along, tape.along, Vec2::Zero()},
                2};
    }

    // With e1, e2 the arms: d angle / d e = left(e) / |e|², taken from the first to the second.
    Modelled operator()(const Corner& sight) const {
        const Vec2 first = points[at(sight.before)] - points[at(sight.corner)];
        const Vec2 second = points[at(sight.after)] - points[at(sight.corner)];
        const double angle_rad = std::atan2(cross(first, second), first.dot(second));
        const double side = (angle_rad < 0.0) == (observed < 0.0) ? 1.0 : -1.0;
        const auto slope = [side](const Vec2& arm) -> Vec2 {
            return side * turned_left(arm) / std::pow(kept_apart(arm.norm()), 2);
        };
        const Vec2 g1 = slope(first);
        const Vec2 g2 = slope(second);
        return {side * angle_rad,
                {sight.before, sight.corner, sight.after},
                {Vec2(-g1), Vec2(g1 - g2), g2},
                3};
    }

    Modelled operator()(const Along& sight) const {
        const Line wall = line(points, sight.from, sight.to);
        const Vec2 from_start = points[at(sight.point)] - wall.from;
        const Vec2 end = from_start.dot(wall.left) / wall.length_m * wall.left;
        return {from_start.dot(wall.along),
                {sight.point, sight.from, sight.to},
                {wall.along, Vec2(-wall.along - end), end},
                3};
    }

    Modelled operator()(const Offset& sight) const {
        const Line wall = line(points, sight.from, sight.to);
        const Vec2 from_start = points[at(sight.point)] - wall.from;
        const Vec2 end = -from_start.dot(wall.along) / wall.length_m * wall.left;
        return {from_start.dot(wall.left),
                {sight.point, sight.from, sight.to},
                {wall.left, Vec2(-wall.left - end), end},
                3};
    }
};

} // namespace

Modelled modelled(const Observation& observation, std::span<const Vec2> points) {
    return std::visit(Evaluation{points, observation.value}, observation.sight);
}

double modelled_value(const Observation& observation, std::span<const Vec2> points) {
    return modelled(observation, points).value;
}

int unknowns_of(const Network& network) {
    return 2 * network.points - 3;
}

int unknown_index(int point, int axis) {
    if (point == 0) {
        return -1;
    }
    if (point == 1) {
        return axis == 0 ? 0 : -1;
    }
    return 2 * point - 3 + axis;
}

std::vector<Vec2> in_datum(std::span<const Vec2> points) {
    const Vec2 origin = points[0];
    const double turn_rad = -angle_of(points[1] - origin);
    std::vector<Vec2> moved;
    for (const Vec2& point : points) {
        moved.push_back(rotated(point - origin, turn_rad));
    }
    moved[0] = Vec2::Zero();
    moved[1].y() = 0.0;
    return moved;
}

Eigen::MatrixXd design_matrix(const Network& network, std::span<const Vec2> points) {
    const auto rows = static_cast<Eigen::Index>(network.observations.size());
    Eigen::MatrixXd design = Eigen::MatrixXd::Zero(rows, unknowns_of(network));
    for (Eigen::Index row = 0; row < rows; ++row) {
        const Modelled model =
            modelled(network.observations[static_cast<std::size_t>(row)], points);
        for (int k = 0; k < model.count; ++k) {
            for (int axis = 0; axis < 2; ++axis) {
                const int column = unknown_index(model.point[at(k)], axis);
                if (column >= 0) {
                    design(row, column) += model.slope[at(k)][axis];
                }
            }
        }
    }
    return design;
}

Eigen::VectorXd misclosures(const Network& network, std::span<const Vec2> points) {
    Eigen::VectorXd closures(static_cast<Eigen::Index>(network.observations.size()));
    for (Eigen::Index row = 0; row < closures.size(); ++row) {
        const Observation& observation = network.observations[static_cast<std::size_t>(row)];
        closures[row] = observation.value - modelled_value(observation, points);
    }
    return closures;
}

Eigen::VectorXd sigmas_of(const Network& network) {
    Eigen::VectorXd sigmas(static_cast<Eigen::Index>(network.observations.size()));
    for (Eigen::Index row = 0; row < sigmas.size(); ++row) {
        sigmas[row] = network.observations[static_cast<std::size_t>(row)].sigma;
    }
    return sigmas;
}

Network without(const Network& network, std::span<const int> left_out) {
    Network rest = network;
    rest.observations.clear();
    for (std::size_t i = 0; i < network.observations.size(); ++i) {
        if (std::find(left_out.begin(), left_out.end(), static_cast<int>(i)) == left_out.end()) {
            rest.observations.push_back(network.observations[i]);
        }
    }
    return rest;
}

} // namespace throwline::survey
