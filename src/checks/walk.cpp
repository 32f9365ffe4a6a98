#include "base/length_text.h"
#include "base/polygon.h"
#include "checks/floor_checks.h"
#include "checks/occupants.h"
#include "checks/walks.h"
#include "checks/wording.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// Half the width that somebody walking takes: across the shoulders, .284 of stature (ANSUR II mean
/// over men and women).
constexpr double kHalfShoulders = 0.142;

double half_breadth_m(const Walk& walk) {
    return kHalfShoulders * walk.stature_m;
}

/// A strip as wide as the walker along one leg of the walk.
Polygon strip(const Vec2& from, const Vec2& to, double half_width_m) {
    const Vec2 leg = to - from;
    return rectangle((from + to) / 2.0, leg.norm(), 2.0 * half_width_m, angle_of(leg));
}

/// What hangs this high is over everybody's head (common practice, no source).
constexpr double kHeadroom_m = 1.9;
/// What is within this distance of a mark may be touched there: the edge of the table one stands at
/// (common practice, no source).
constexpr double kOnTheMark_m = 0.3;
/// Less of a piece than this is brushed past (common practice, no source).
constexpr double kBrush_m2 = 0.005;
/// A walk shorter than this is a turn on the spot.
constexpr double kNoLeg_m = 0.05;

bool in_the_way(const Occupant& piece, const Walk& walk) {
    const bool low = piece.takes == Takes::platform || piece.top_z_m < 0.2;
    const bool overhead = piece.bottom_z_m > std::max(kHeadroom_m, walk.stature_m);
    return !low && !overhead;
}

/// Whether somebody gets up from a piece or ends up on it.
bool is_left_or_reached(const Occupant& piece, const Vec2& mark) {
    const bool seat_at_hand = piece.takes == Takes::seat
                              && distance_between(piece.outline, circle(mark, kOnTheMark_m)) <= 0.0;
    return seat_at_hand || contains(piece.outline, mark);
}

/// What is left of some outlines away from a mark.
std::vector<Polygon> away_from(const std::vector<Polygon>& parts, const Vec2& mark) {
    std::vector<Polygon> left;
    for (const Polygon& part : parts) {
        for (Polygon& outside : parts_outside(part, circle(mark, kOnTheMark_m))) {
            left.push_back(std::move(outside));
        }
    }
    return left;
}

/// What the walk takes of a piece, leg by leg, but for what lies at its ends.
std::vector<Polygon> walked_through(const Walk& walk, const Occupant& piece) {
    std::vector<Polygon> all;
    for (std::size_t i = 0; i + 1 < walk.points.size(); ++i) {
        const Vec2& from = walk.points[i];
        const Vec2& to = walk.points[i + 1];
        if ((to - from).norm() < kNoLeg_m) {
            continue;
        }
        const Polygon path = strip(from, to, half_breadth_m(walk));
        for (Polygon& part :
             away_from(away_from(parts_shared(path, piece.outline), walk.points.front()),
                       walk.points.back())) {
            all.push_back(std::move(part));
        }
    }
    return all;
}

Finding bump(const CheckInput& input, const plan::Beat& beat, const Walk& walk,
             const Occupant& piece, const std::vector<Polygon>& where) {
    Finding finding;
    finding.check = "walk";
    finding.severity = Severity::caution;
    finding.beat = beat.id;
    finding.things = {walk.person.name, piece.name};
    finding.at = centroid(where.front());
    finding.weight = total_area(where);
    finding.message = capitalised(fmt::format("{} walks through {} on the way into beat {}.",
                                              walk.person.name, piece.name, beat.id.name));
    finding.working = {
        "the strip that a walker's shoulders take along the path meets the outline",
        {{"", "width of the strip",
          shown(Length::metres(2.0 * half_breadth_m(walk)), input.plan.units)}},
        area_text(finding.weight, input.plan.units) + " shared",
        "shoulder breadth .284 of stature: ANSUR II (NATICK/TR-15/007), mean of men and women"};
    return finding;
}

void follow(std::vector<Finding>& findings, const CheckInput& input, const plan::Beat& beat,
            const Walk& walk, const std::vector<Occupant>& scenery) {
    for (const Occupant& piece : scenery) {
        if (walk.points.size() < 2 || !in_the_way(piece, walk)
            || is_left_or_reached(piece, walk.points.front())
            || is_left_or_reached(piece, walk.points.back())) {
            continue;
        }
        const std::vector<Polygon> parts = walked_through(walk, piece);
        if (total_area(parts) > kBrush_m2) {
            findings.push_back(bump(input, beat, walk, piece, parts));
        }
    }
}

} // namespace

std::vector<Finding> walk(const CheckInput& input, const std::stop_token& stop) {
    std::vector<Finding> findings;
    for (std::size_t beat = 1; beat < input.beats.size() && !stop.stop_requested(); ++beat) {
        const std::vector<Occupant> scenery =
            scenery_occupants(input.beats[beat].stage, input.plan, input.catalogue);
        for (const Walk& path : walks_into(input.plan, beat)) {
            follow(findings, input, *input.beats[beat].beat, path, scenery);
        }
    }
    return findings;
}

} // namespace throwline::checks
