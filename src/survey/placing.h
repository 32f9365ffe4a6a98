#pragma once

#include "survey/network.h"

namespace throwline::survey {

/// Points put down one after the other, each where two readings put it, on either side: many shapes
/// at once, of which those that miss most are dropped.
struct Placing {
    /// Two points to begin with and what the tape says between them.
    int first = 0;
    int second = 1;
    double apart_m = 1.0;
};

struct PlacedShape {
    std::vector<Vec2> points;
    /// Logarithmic measure of the misfits, without unit; only for ranking.
    double misfit = 0.0;
};

/// Shapes from one beginning, best first.
std::vector<PlacedShape> placed_shapes(const Network& network, const Placing& beginning);
/// Beginnings worth trying, best first: pairs with a reading between them whose ends have many
/// others, each pair of points once.
std::vector<Placing> beginnings(const Network& network);

} // namespace throwline::survey
