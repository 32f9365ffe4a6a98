#pragma once

#include "survey/network.h"

namespace throwline::survey {

/// A shape that the readings allow, and how far it is from what they say.
struct Shape {
    /// In the datum.
    std::vector<Vec2> points;
    /// What the misfits of all readings cost together, see `cost_of`.
    double cost = 0.0;
};

/// Cost of one misfit, in standard errors: its square when it is an error of reading; beyond, it
/// rises as the logarithm, since a reading may be wrong by much, though less likely by more.
double cost_of(double standardised);
/// Cost of all misfits, and what a shape pays that no room has: an outline that crosses itself,
/// points inside that should be outside or the other way round.
double cost_of(const Network& network, std::span<const Vec2> points);

/// The shapes that fit, best first, each different from those before; at least one, whatever the
/// readings. The points are placed one after the other where two readings put them, on either side,
/// by several orders; those that fit are then adjusted so that single wrong readings hardly count.
std::vector<Shape> first_shapes(const Network& network);

/// The readings that miss a shape by more than an error of reading.
std::vector<int> missing_readings(const Network& network, std::span<const Vec2> points);

/// Greatest difference of the distance between two points in both shapes, and the pair that has it.
struct Difference {
    double most_m = 0.0;
    std::pair<int, int> pair;
};
Difference difference_between(std::span<const Vec2> a, std::span<const Vec2> b);

} // namespace throwline::survey
