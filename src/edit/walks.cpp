#include "edit/order.h"
#include "edit/placing.h"
#include "plan/places.h"

#include <algorithm>

namespace throwline::edit {

namespace {

/// Less than this nobody calls a walk.
constexpr double kStep_m = 0.01;

double length_of(const std::vector<Vec2>& points) {
    double length_m = 0.0;
    for (std::size_t i = 1; i < points.size(); ++i) {
        length_m += (points[i] - points[i - 1]).norm();
    }
    return length_m;
}

struct OnPath {
    Vec2 at = Vec2::Zero();
    Vec2 heading = Vec2::UnitX();
};

/// The place after a share of a path's length, and which way the walker goes there.
OnPath along(const Walk& walk, double share) {
    double left_m = share * walk.length_m;
    OnPath place{walk.points.front(), walk.points.back() - walk.points.front()};
    for (std::size_t i = 1; i < walk.points.size(); ++i) {
        const Vec2 leg = walk.points[i] - walk.points[i - 1];
        const double leg_m = leg.norm();
        if (leg_m <= 0.0) {
            continue;
        }
        place.heading = leg;
        if (left_m <= leg_m) {
            place.at = walk.points[i - 1] + leg * (left_m / leg_m);
            return place;
        }
        left_m -= leg_m;
        place.at = walk.points[i];
    }
    return place;
}

} // namespace

std::vector<Walk> walks_into(const plan::Plan& plan, const plan::Id<plan::Beat>& beat) {
    std::vector<Walk> walks;
    const auto at = std::find_if(plan.beats.begin(), plan.beats.end(),
                                 [&](const plan::Beat& other) { return other.id == beat; });
    if (at == plan.beats.end() || at == plan.beats.begin()) {
        return walks;
    }
    const auto before = plan::marks_at(plan, (at - 1)->id);
    for (const auto& [person, change] : at->marks) {
        const auto* mark = std::get_if<plan::Mark>(&change);
        const auto from = before.find(person);
        if (mark == nullptr || from == before.end()) {
            continue;
        }
        Walk walk{person, {from->second.at}, 0.0};
        walk.points.insert(walk.points.end(), mark->path.begin(), mark->path.end());
        walk.points.push_back(mark->at);
        walk.length_m = length_of(walk.points);
        if (walk.length_m >= kStep_m) {
            walks.push_back(std::move(walk));
        }
    }
    return walks;
}

plan::Plan on_the_way(const plan::Plan& plan, const plan::Id<plan::Beat>& beat, double share) {
    plan::Plan moving = plan;
    plan::Beat* into = find(moving, beat);
    if (into == nullptr || share >= 1.0) {
        return moving;
    }
    for (const Walk& walk : walks_into(plan, beat)) {
        auto& mark = std::get<plan::Mark>(into->marks.at(walk.person));
        const OnPath place = along(walk, std::max(share, 0.0));
        mark.at = place.at;
        mark.faces = Angle::radians(angle_of(place.heading));
        mark.pose = plan::Pose::stand;
        mark.seat_height.reset();
        mark.elevation.reset();
        mark.path.clear();
    }
    return moving;
}

} // namespace throwline::edit
