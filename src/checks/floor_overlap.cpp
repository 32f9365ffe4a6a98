#include "base/length_text.h"
#include "checks/floor_checks.h"
#include "checks/occupants.h"
#include "checks/wording.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>

namespace throwline::checks {

namespace {

/// Touching within this much is touching, not overlapping: a tape reads no finer.
constexpr double kTouch_m = 0.01;

/// A thing that is found again within this distance has not been moved: a pedestal only turned.
constexpr double kSamePlace_m = 0.1;

/// Where and when something was looked at, and what has been told already: an overlap that lasts
/// over several beats or shots is one finding, at the first of them.
struct Search {
    const CheckInput& input;
    std::vector<Finding> findings;
    /// By who it is about: where.
    std::map<std::string, std::vector<Vec2>> told;
    plan::Id<plan::Shot> shot;
    plan::Id<plan::Beat> beat;
};

/// Whether this is new; from then on it is told.
bool is_news(Search& search, const std::string& who, const Vec2& at) {
    std::vector<Vec2>& told = search.told[who];
    const bool known = std::any_of(told.begin(), told.end(), [&](const Vec2& before) {
        return (before - at).norm() < kSamePlace_m;
    });
    if (!known) {
        told.push_back(at);
    }
    return !known;
}

std::string called(const Occupant& a) {
    switch (a.takes) {
    case Takes::camera_support:
        return "the support of " + with_kind("camera", a.name);
    case Takes::camera_operator:
        return "the operator of " + with_kind("camera", a.name);
    case Takes::lamp_stand:
        return "the stand of " + with_kind("lamp", a.name);
    case Takes::boom_operator:
        return "the operator of " + with_kind("boom", a.name);
    case Takes::flat:
    case Takes::drape:
    case Takes::platform:
    case Takes::seat:
    case Takes::table:
    case Takes::furniture:
    case Takes::standing_person:
    case Takes::seated_person:
    case Takes::lying_person:
        return a.name;
    }
    return a.name;
}

/// An operator can lean; what stands cannot.
Severity severity_of(const Occupant& a, const Occupant& b) {
    const bool leans = a.takes == Takes::camera_operator || b.takes == Takes::camera_operator;
    return leans ? Severity::caution : Severity::error;
}

Working overlap_working(const std::string& what, double shared_m2, UnitSystem units) {
    return {"shared floor = area of the two outlines' intersection, where their heights meet",
            {{"", "outlines", what}},
            area_text(shared_m2, units),
            "plain geometry"};
}

void compare(Search& search, const Occupant& a, const Occupant& b) {
    if (!may_meet(a, b)) {
        return;
    }
    const std::vector<Polygon> shared = parts_shared(a.outline, b.outline);
    const double shared_m2 = total_area(shared);
    const double side_m = std::sqrt(std::min(area(a.outline), area(b.outline)));
    if (shared_m2 <= kTouch_m * side_m || may_share(a, b, shared_m2)
        || !is_news(search, called(a) + " and " + called(b),
                    (centroid(a.outline) + centroid(b.outline)) / 2.0)) {
        return;
    }
    const UnitSystem units = search.input.plan.units;
    Finding& finding = search.findings.emplace_back();
    finding.check = "floor-overlap";
    finding.severity = severity_of(a, b);
    finding.shot = search.shot;
    finding.beat = search.beat;
    finding.things = {a.name, b.name};
    finding.at = centroid(shared.front());
    finding.weight = shared_m2;
    finding.message =
        capitalised(fmt::format("{} and {} are in the same place: they share {} of floor.",
                                called(a), called(b), area_text(shared_m2, units)));
    finding.working = overlap_working(called(a) + ", " + called(b), shared_m2, units);
}

void stay_in_room(Search& search, const Occupant& a) {
    double outside_m2 = 0.0;
    Vec2 at = Vec2::Zero();
    for (const Polygon& part : parts_outside(a.outline, search.input.plan.room.outline)) {
        if (area(part) > outside_m2) {
            at = centroid(part);
        }
        outside_m2 += area(part);
    }
    if (outside_m2 <= kTouch_m * std::sqrt(area(a.outline))
        || !is_news(search, called(a), centroid(a.outline))) {
        return;
    }
    Finding& finding = search.findings.emplace_back();
    finding.check = "floor-overlap";
    finding.severity = a.takes == Takes::camera_operator ? Severity::caution : Severity::error;
    finding.shot = search.shot;
    finding.beat = search.beat;
    finding.things = {a.name};
    finding.at = at;
    finding.weight = outside_m2;
    const double share = outside_m2 / area(a.outline);
    finding.message = capitalised(
        fmt::format("{} of {} is outside the room or in its walls.", share_text(share), called(a)));
    finding.working = {"outside = area of the outline beyond the walls / area of the outline",
                       {{"", "outline of", called(a)},
                        {"", "beyond the walls", area_text(outside_m2, search.input.plan.units)}},
                       share_text(share),
                       "plain geometry"};
}

void fixed_scenery(Search& search, const std::vector<Occupant>& scenery) {
    for (std::size_t i = 0; i < scenery.size(); ++i) {
        stay_in_room(search, scenery[i]);
        for (std::size_t j = i + 1; j < scenery.size(); ++j) {
            compare(search, scenery[i], scenery[j]);
        }
    }
}

void moving_things(Search& search, const stage::Stage& stage,
                   const std::vector<Occupant>& scenery) {
    const std::vector<Occupant> moving =
        moving_occupants(stage, search.input.plan, search.input.catalogue);
    for (std::size_t i = 0; i < moving.size(); ++i) {
        stay_in_room(search, moving[i]);
        for (const Occupant& piece : scenery) {
            compare(search, moving[i], piece);
        }
        for (std::size_t j = i + 1; j < moving.size(); ++j) {
            compare(search, moving[i], moving[j]);
        }
    }
}

const stage::Stage* any_stage(const CheckInput& input) {
    return !input.beats.empty()   ? &input.beats.front().stage
           : !input.shots.empty() ? &input.shots.front().stage
                                  : nullptr;
}

} // namespace

std::vector<Finding> floor_overlap(const CheckInput& input, const std::stop_token& stop) {
    Search search{input, {}, {}, {}, {}};
    const stage::Stage* first = any_stage(input);
    if (first == nullptr) {
        return {};
    }
    const std::vector<Occupant> scenery = scenery_occupants(*first, input.plan, input.catalogue);
    fixed_scenery(search, scenery);
    for (const BeatScene& beat : input.beats) {
        if (stop.stop_requested()) {
            return {};
        }
        search.beat = beat.beat->id;
        moving_things(search, beat.stage, scenery);
    }
    for (const ShotScene& shot : input.shots) {
        if (stop.stop_requested()) {
            return {};
        }
        search.shot = shot.shot->id;
        search.beat = shot.beat->id;
        moving_things(search, shot.stage, scenery);
    }
    return std::move(search.findings);
}

} // namespace throwline::checks
