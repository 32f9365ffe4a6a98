#pragma once

#include "survey/network.h"

namespace throwline::survey {

/// A circle, or a line of which `direction` is a unit vector, that one reading confines a point to.
struct Locus {
    enum class Kind { circle, line } kind = Kind::circle;
    Vec2 at = Vec2::Zero();
    Vec2 direction = Vec2::Zero();
    double radius_m = 0.0;
};

double distance_from(const Locus& locus, const Vec2& point);
/// Up to two points on both; where they miss each other, the point midway where they come nearest.
/// Parallel lines and circles with one centre have none.
std::vector<Vec2> meetings(const Locus& a, const Locus& b);
/// Up to `count` points spread over a locus.
std::vector<Vec2> spread_over(const Locus& locus, int count);

/// Where an observation puts `point` once the other points it names are `placed`; nothing when it
/// does not name it, or others are missing, or it gives no simple curve.
std::optional<Locus> locus_of(const Observation& observation, int point,
                              std::span<const Vec2> points, std::span<const char> placed);

/// Readings that follow from others: the straight distance from a feature to the ends of the wall
/// that it is measured along and off.
std::vector<Observation> implied_distances(const Network& network);

} // namespace throwline::survey
