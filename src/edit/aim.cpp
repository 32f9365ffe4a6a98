#include "edit/aim.h"

#include "edit/moves.h"
#include "plan/places.h"
#include "stage/framing.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::edit {

namespace {

/// A camera tilted further than this has no bearing on the plan any more.
constexpr double kSteepest_rad = 85.0 * std::numbers::pi / 180.0;
/// Aims nearer than this to the lens would swing with the least move of it.
constexpr double kNearestAim_m = 0.3;

/// The camera that the question is about: the only thing chosen.
const plan::Camera* camera_asked_about(const Context& context, std::span<const Thing> chosen) {
    if (chosen.size() != 1 || chosen.front().kind != Kind::camera) {
        return nullptr;
    }
    return plan::find(context.plan, plan::Id<plan::Camera>{chosen.front().name});
}

plan::Id<plan::Shot> shot_of(const Context& context, const plan::Camera& camera) {
    const plan::Shot* now = plan::find(context.plan, context.now.shot);
    if (now != nullptr && now->camera == camera.id) {
        return now->id;
    }
    const auto place = plan::camera_place(context.plan, camera, context.now.beat, context.now.shot);
    return place ? place->shot : plan::Id<plan::Shot>{};
}

plan::Id<plan::Shot> first_of_beat(const Context& context) {
    for (const plan::Shot& shot : context.plan.shots) {
        if (std::find(shot.beats.begin(), shot.beats.end(), context.now.beat) != shot.beats.end()) {
            return shot.id;
        }
    }
    return {};
}

/// The shot, for changing it; nothing and why not in `reason`.
plan::Shot* shot_to_change(plan::Plan& plan, const plan::Id<plan::Shot>& id) {
    const auto at = std::find_if(plan.shots.begin(), plan.shots.end(),
                                 [&](const plan::Shot& shot) { return shot.id == id; });
    return at == plan.shots.end() ? nullptr : &*at;
}

/// Why a shot cannot be changed; empty when it can.
std::string refusal(const plan::Plan& plan, const plan::Id<plan::Shot>& id) {
    const plan::Shot* shot = plan::find(plan, id);
    if (shot == nullptr) {
        return fmt::format("there is no shot {}", id.name);
    }
    if (is_locked(plan, {Kind::camera, shot->camera.name, 0})) {
        return fmt::format("{} is locked; unlock it first", shot->camera.name);
    }
    return {};
}

} // namespace

plan::Id<plan::Shot> shot_looked_at(const Context& context, std::span<const Thing> chosen) {
    if (const plan::Camera* camera = camera_asked_about(context, chosen)) {
        return shot_of(context, *camera);
    }
    return plan::find(context.plan, context.now.shot) != nullptr ? context.now.shot
                                                                 : first_of_beat(context);
}

plan::Id<plan::Camera> camera_without_shot(const Context& context, std::span<const Thing> chosen) {
    const plan::Camera* camera = camera_asked_about(context, chosen);
    return camera != nullptr && shot_of(context, *camera).empty() ? camera->id
                                                                  : plan::Id<plan::Camera>{};
}

HeldAim held_aim(const plan::Plan& plan, const stage::ShotView& view) {
    HeldAim held{view.shot, view, view.focus_distance.m()};
    const plan::Shot* shot = plan::find(plan, view.shot);
    if (const auto* place = shot == nullptr ? nullptr : std::get_if<Vec3>(&shot->aim)) {
        held.distance_m = (*place - view.pose.lens).norm();
    }
    held.distance_m = std::max(held.distance_m, kNearestAim_m);
    return held;
}

Result<Step> aimed_towards(const Context& context, const HeldAim& held, const Vec3& direction) {
    if (std::string reason = refusal(context.plan, held.shot); !reason.empty()) {
        return failure(std::move(reason));
    }
    if (floor_of(direction).norm() <= std::cos(kSteepest_rad) * direction.norm() * 0.999) {
        return failure("a camera cannot be aimed straight up or down");
    }
    Step step{{}, context.plan, {}};
    plan::Shot& shot = *shot_to_change(step.plan, held.shot);
    shot.aim = Vec3{held.view.pose.lens + direction.normalized() * held.distance_m};
    step.name = fmt::format("Aim {} in shot {}", shot.camera.name, shot.id.name);
    return step;
}

Result<Step> aimed_off(const Context& context, const HeldAim& held, Angle left, Angle up) {
    const double pan_rad = held.view.pose.pan.rad() + left.rad();
    const double tilt_rad =
        std::clamp(held.view.pose.tilt.rad() + up.rad(), -kSteepest_rad, kSteepest_rad);
    const double level = std::cos(tilt_rad);
    return aimed_towards(
        context, held, {level * std::cos(pan_rad), level * std::sin(pan_rad), std::sin(tilt_rad)});
}

Vec3 direction_for_drag(const stage::ShotView& view, const Vec2& from, const Vec2& to) {
    // Angles off the axis across and up the picture; for a level camera exactly pan and tilt.
    const auto across = [&](double u) { return std::atan(u * view.frame.tan_half_h()); };
    const auto upwards = [&](double v) { return std::atan(v * view.frame.tan_half_v()); };
    const double pan_rad = view.pose.pan.rad() + across(to.x()) - across(from.x());
    const double tilt_rad = std::clamp(view.pose.tilt.rad() + upwards(from.y()) - upwards(to.y()),
                                       -kSteepest_rad, kSteepest_rad);
    const double level = std::cos(tilt_rad);
    return {level * std::cos(pan_rad), level * std::sin(pan_rad), std::sin(tilt_rad)};
}

Result<Step> zoomed(const Context& context, const HeldAim& held, double factor) {
    if (std::string reason = refusal(context.plan, held.shot); !reason.empty()) {
        return failure(std::move(reason));
    }
    Step step{{}, context.plan, {}};
    plan::Shot& shot = *shot_to_change(step.plan, held.shot);
    const stage::LensReach reach =
        stage::reach_of(*held.view.sensor, *held.view.lens, shot.extender);
    if (reach.focal_max <= reach.focal_min) {
        return failure(fmt::format("the lens of {} is {:g} mm and no other; give the camera a zoom",
                                   shot.camera.name, reach.focal_max.mm()));
    }
    const double wanted_mm = std::round(held.view.focal.mm() * factor * 10.0) / 10.0;
    const Length focal =
        std::clamp(Length::millimetres(wanted_mm), reach.focal_min, reach.focal_max);
    if (focal == held.view.focal) {
        return failure(fmt::format("the lens of {} ends at {:g} mm", shot.camera.name, focal.mm()));
    }
    shot.focal = focal;
    step.name = fmt::format("Set shot {} to {:g} mm", shot.id.name, focal.mm());
    return step;
}

} // namespace throwline::edit
