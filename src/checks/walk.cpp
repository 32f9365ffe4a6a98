#include "base/length_text.h"
#include "base/polygon.h"
#include "checks/floor_checks.h"
#include "checks/occupants.h"
#include "checks/wording.h"

#include <fmt/format.h>
#include <set>

namespace throwline::checks {

namespace {

/// Half the width that somebody walking takes: across the shoulders, .284 of stature (ANSUR II mean
/// over men and women).
constexpr double kHalfShoulders = 0.142;

struct Walk {
    plan::Id<plan::Person> person;
    std::vector<Vec2> points;
    double half_width_m = 0.24;
};

/// Whoever is marked in `beat` and stood somewhere before: from there over the path to the new
/// mark.
std::vector<Walk> walks_into(const plan::Plan& plan, std::size_t beat) {
    std::vector<Walk> walks;
    const auto before = plan::marks_at(plan, plan.beats[beat - 1].id);
    for (const auto& [person_id, what] : plan.beats[beat].marks) {
        const auto* mark = std::get_if<plan::Mark>(&what);
        const auto start = before.find(person_id);
        const plan::Person* person = plan::find(plan, person_id);
        if (mark == nullptr || person == nullptr) {
            continue;
        }
        Walk walk{person_id, {}, kHalfShoulders * person->stature.m()};
        if (start != before.end()) {
            walk.points.push_back(start->second.at);
        }
        walk.points.insert(walk.points.end(), mark->path.begin(), mark->path.end());
        walk.points.push_back(mark->at);
        walks.push_back(std::move(walk));
    }
    return walks;
}

/// A strip as wide as the walker along one leg of the walk.
Polygon strip(const Vec2& from, const Vec2& to, double half_width_m) {
    const Vec2 leg = to - from;
    return rectangle((from + to) / 2.0, leg.norm(), 2.0 * half_width_m, angle_of(leg));
}

bool in_the_way(const Occupant& piece, const Vec2& from, const Vec2& to) {
    constexpr double kOnTheMark_m = 0.3;
    // What somebody comes from or goes to may be touched there: the chair one rises from.
    const bool at_an_end = distance_between(piece.outline, circle(from, kOnTheMark_m)) <= 0.0
                           || distance_between(piece.outline, circle(to, kOnTheMark_m)) <= 0.0;
    const bool low = piece.takes == Takes::platform || piece.top_z_m < 0.2;
    const bool overhead = piece.bottom_z_m > 1.9;
    return !at_an_end && !low && !overhead;
}

Finding bump(const CheckInput& input, const plan::Beat& beat, const Walk& walk,
             const Occupant& piece, const Polygon& where) {
    Finding finding;
    finding.check = "walk";
    finding.severity = Severity::caution;
    finding.beat = beat.id;
    finding.things = {walk.person.name, piece.name};
    finding.at = centroid(where);
    finding.weight = area(where);
    finding.message = capitalised(fmt::format("{} walks through {} on the way into beat {}.",
                                              walk.person.name, piece.name, beat.id.name));
    finding.working = {
        "the strip that a walker's shoulders take along the path meets the outline",
        {{"", "width of the strip",
          shown(Length::metres(2.0 * walk.half_width_m), input.plan.units)}},
        fixed(area(where), 2) + " m² shared",
        "shoulder breadth .284 of stature: ANSUR II (NATICK/TR-15/007), mean of men and women"};
    return finding;
}

void follow(std::vector<Finding>& findings, const CheckInput& input, const plan::Beat& beat,
            const Walk& walk, const std::vector<Occupant>& scenery) {
    std::set<std::string> met;
    for (std::size_t i = 0; i + 1 < walk.points.size(); ++i) {
        const Vec2& from = walk.points[i];
        const Vec2& to = walk.points[i + 1];
        if ((to - from).norm() < 0.05) {
            continue;
        }
        const Polygon path = strip(from, to, walk.half_width_m);
        for (const Occupant& piece : scenery) {
            if (!in_the_way(piece, from, to)) {
                continue;
            }
            const std::vector<Polygon> shared = parts_shared(path, piece.outline);
            if (!shared.empty() && area(shared.front()) > 0.005 && met.insert(piece.name).second) {
                findings.push_back(bump(input, beat, walk, piece, shared.front()));
            }
        }
    }
}

} // namespace

std::vector<Finding> walk(const CheckInput& input, std::stop_token stop) {
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
