#include "edit/camera_handles.h"

#include "edit/floor_handles.h"
#include "edit/placing.h"
#include "optics/angle_of_view.h"
#include "optics/coverage.h"
#include "plan/places.h"
#include "stage/moment.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// A handle stays at least this far from the lens, so that it can be taken hold of.
constexpr double kLeastAway_m = 0.3;
/// Focal lengths are set to this part of a millimetre.
constexpr double kFocalStep_mm = 0.5;

const plan::Shot* shot_now(const Context& context, const plan::Id<plan::Camera>& id) {
    const plan::Camera* camera = plan::find(context.plan, id);
    if (camera == nullptr) {
        return nullptr;
    }
    const auto place =
        plan::camera_place(context.plan, *camera, context.now.beat, context.now.shot);
    return place ? plan::find(context.plan, place->shot) : nullptr;
}

std::vector<stage::Figure> figures_of(const stage::Moment& moment, const plan::Shot& shot) {
    std::vector<stage::Figure> figures;
    const auto marks = plan::marks_at(moment.plan, moment.beat);
    for (const plan::Id<plan::Person>& subject : shot.subjects) {
        const plan::Person* person = plan::find(moment.plan, subject);
        const auto mark = marks.find(subject);
        if (person != nullptr && mark != marks.end()) {
            figures.push_back(stage::body_on_mark(moment, *person, mark->second).figure);
        }
    }
    return figures;
}

Angle half_angle(const FramedShot& framed) {
    return optics::angle_of_view(framed.reach.area, framed.framing.focal).horizontal / 2.0;
}

/// The focal length whose picture ends at a place, in whole steps.
Length focal_through(const FramedShot& framed, const Vec2& to) {
    const Vec2 way = to - floor_of(framed.framing.pose.lens);
    const double off_rad = std::abs(wrapped(angle_of(way) - framed.framing.pose.pan.rad()));
    // Beyond a right angle, or none at all, is no lens.
    const double half_rad = std::clamp(off_rad, 0.005, 1.4);
    const Length away = Length::metres(framed.away_m);
    const Length exact =
        optics::focal_for_width(framed.reach.area, away * (2.0 * std::tan(half_rad)), away);
    return Length::millimetres(std::round(exact.mm() / kFocalStep_mm) * kFocalStep_mm);
}

/// `first` is where the first subject is, else the aim.
FramedShot with_target(FramedShot framed, const Vec3& first, const std::optional<Vec3>& aim) {
    const Vec3& lens = framed.framing.pose.lens;
    framed.away_m = std::max((floor_of(first) - floor_of(lens)).norm(), kLeastAway_m);
    const Vec2 at = floor_of(lens) + framed.away_m * unit_at(framed.framing.pose.pan.rad());
    const double rise_m = framed.away_m * std::tan(framed.framing.pose.tilt.rad());
    framed.target = aim.value_or(raised(at, lens.z() + rise_m));
    return framed;
}

} // namespace

plan::Aim aim_at(const Vec2& to, double height_m, const std::optional<Thing>& onto,
                 const std::string& self) {
    const bool can_be = onto && can_be_followed(*onto) && onto->name != self;
    return can_be ? plan::Aim{plan::ThingName{onto->name}} : plan::Aim{raised(to, height_m)};
}

std::optional<FramedShot> framed_now(const Context& context, const plan::Id<plan::Camera>& camera) {
    const plan::Shot* shot = shot_now(context, camera);
    if (shot == nullptr) {
        return std::nullopt;
    }
    const plan::Camera& by = *plan::find(context.plan, camera);
    const stage::Moment moment{context.plan, context.catalogue, context.now.beat, shot->id};
    const catalogue::SensorMode* sensor = context.catalogue.sensor(by.sensor);
    const catalogue::Lens* lens = context.catalogue.lens(by.lens);
    const std::optional<Vec3> eye = stage::lens_point(moment, by);
    if (sensor == nullptr || lens == nullptr || !eye) {
        return std::nullopt;
    }
    const std::vector<stage::Figure> figures = figures_of(moment, *shot);
    std::vector<const stage::Figure*> subjects;
    for (const stage::Figure& figure : figures) {
        subjects.push_back(&figure);
    }
    const stage::LensReach reach = stage::reach_of(*sensor, *lens, shot->extender);
    const std::optional<Vec3> aim = stage::aim_point(moment, shot->aim);
    const auto framing = stage::framed(*shot, reach, *eye, subjects, aim);
    if (!framing) {
        return std::nullopt;
    }
    // Without an aim there is a subject, else it would not be framed.
    const Vec3 first = subjects.empty() ? *aim : subjects.front()->face;
    return with_target({shot->id, reach, *framing, {}, 1.0}, first, aim);
}

std::vector<Handle> camera_handles(const Context& context, const Thing& thing) {
    std::vector<Handle> handles;
    const auto framed = framed_now(context, {thing.name});
    if (!framed) {
        return handles;
    }
    const Vec2 lens = floor_of(framed->framing.pose.lens);
    const double pan_rad = framed->framing.pose.pan.rad();
    const double half_rad = half_angle(*framed).rad();
    const double edge_m = framed->away_m / std::max(std::cos(half_rad), 0.1);
    handles.push_back({thing, HandleKind::aim, 0, floor_of(framed->target)});
    if (framed->reach.focal_max > framed->reach.focal_min) {
        handles.push_back(
            {thing, HandleKind::coverage_left, 0, lens + edge_m * unit_at(pan_rad + half_rad)});
        handles.push_back(
            {thing, HandleKind::coverage_right, 0, lens + edge_m * unit_at(pan_rad - half_rad)});
    }
    const plan::Shot& shot = *plan::find(context.plan, framed->shot);
    for (std::size_t i = 0; i < shot.moves.size(); ++i) {
        handles.push_back({thing, HandleKind::path, static_cast<int>(i), shot.moves[i]});
    }
    return handles;
}

Result<Step> focal_set(const Context& context, const plan::Id<plan::Camera>& camera, Length focal) {
    const auto framed = framed_now(context, camera);
    if (!framed) {
        return failure(fmt::format("{} has no shot now", camera.name));
    }
    Step step{fmt::format("Set focal length of {}", camera.name), context.plan, {}};
    find(step.plan, framed->shot)->focal =
        std::clamp(focal, framed->reach.focal_min, framed->reach.focal_max);
    return step;
}

Result<Step> drag_camera(const Context& context, const Handle& handle, const Vec2& to,
                         const std::optional<Thing>& onto) {
    const auto framed = framed_now(context, {handle.thing.name});
    if (!framed) {
        return failure(fmt::format("{} has no shot now", handle.thing.name));
    }
    const Vec2 lens = floor_of(framed->framing.pose.lens);
    if ((to - lens).norm() < 0.01) {
        return failure("that is where the camera stands");
    }
    Step step{fmt::format("Aim {}", handle.thing.name), context.plan, {}};
    plan::Shot& shot = *find(step.plan, framed->shot);
    if (handle.kind == HandleKind::aim) {
        shot.aim = aim_at(to, framed->target.z(), onto, handle.thing.name);
        return step;
    }
    if (handle.kind == HandleKind::path) {
        const auto index = static_cast<std::size_t>(handle.index);
        if (handle.index < 0 || index >= shot.moves.size()) {
            return failure("that place of the move is not there any more");
        }
        shot.moves[index] = to;
        step.name = fmt::format("Change the move of {}", handle.thing.name);
        return step;
    }
    return focal_set(context, {handle.thing.name}, focal_through(*framed, to));
}

} // namespace throwline::edit
