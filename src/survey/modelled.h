#pragma once

#include "survey/network.h"

#include <Eigen/Core>
#include <array>

namespace throwline::survey {

/// What an observation would read between given points, and how that changes when they move.
struct Modelled {
    double value = 0.0;
    /// The points it depends on, and its slope with each: per metre moved.
    std::array<int, 3> point{};
    std::array<Vec2, 3> slope{Vec2::Zero(), Vec2::Zero(), Vec2::Zero()};
    int count = 0;
};

/// Of a corner the side on which it opens is not read: the value has the sign of the observed one.
Modelled modelled(const Observation& observation, std::span<const Vec2> points);
double modelled_value(const Observation& observation, std::span<const Vec2> points);

// The datum: point 0 at the origin and point 1 on +x, which leaves 2 points - 3 unknowns.

int unknowns_of(const Network& network);
/// Place of a coordinate (0 = x, 1 = y) among the unknowns; -1 for the three that are held.
int unknown_index(int point, int axis);
/// Moved and turned, not mirrored, so that the datum holds.
std::vector<Vec2> in_datum(std::span<const Vec2> points);
/// One row an observation, one column an unknown.
Eigen::MatrixXd design_matrix(const Network& network, std::span<const Vec2> points);
/// observed - modelled
Eigen::VectorXd misclosures(const Network& network, std::span<const Vec2> points);
Eigen::VectorXd sigmas_of(const Network& network);
/// The same network without some of its observations (their numbers, in any order).
Network without(const Network& network, std::span<const int> left_out);

} // namespace throwline::survey
