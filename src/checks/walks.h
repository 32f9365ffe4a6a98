#pragma once

#include "plan/plan.h"

#include <vector>

/// How people come from mark to mark: for the check, and for the lists that show the same.
namespace throwline::checks {

struct Walk {
    plan::Id<plan::Person> person;
    /// From the mark before, when there was one, over the path to the new mark.
    std::vector<Vec2> points;
    double stature_m = 0.0;
};

/// Along the points; 0 for somebody who comes from nowhere straight to the mark.
double length_m(const Walk& walk);

/// Whoever is marked in beat number `beat`, counted from 0: from where they stood before, when they
/// did, over the path to the new mark.
std::vector<Walk> walks_into(const plan::Plan& plan, std::size_t beat);

} // namespace throwline::checks
