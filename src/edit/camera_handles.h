#pragma once

#include "edit/handles.h"
#include "stage/framing.h"

#include <optional>

/// Handles of cameras and lamps, which need their view and beam; handles.cpp is the way in.
namespace throwline::edit {

/// A camera's shot now, framed, without a stage.
struct FramedShot {
    plan::Id<plan::Shot> shot;
    stage::LensReach reach;
    stage::Framing framing;
    /// Where it is aimed: the aim of the shot, else what is in the middle of the picture at its
    /// subject.
    Vec3 target = Vec3::Zero();
    /// From the lens to its first subject, else to its aim, on the floor, metres.
    double away_m = 1.0;
};
/// Nothing for a camera without a shot now, or one that looks at nobody.
std::optional<FramedShot> framed_now(const Context& context, const plan::Id<plan::Camera>& camera);

std::vector<Handle> camera_handles(const Context& context, const Thing& thing);
Result<Step> drag_camera(const Context& context, const Handle& handle, const Vec2& to,
                         const std::optional<Thing>& onto);
/// Sets the focal length, within the lens.
Result<Step> focal_set(const Context& context, const plan::Id<plan::Camera>& camera, Length focal);

/// Where a lamp is aimed, and how wide its beam is there.
struct AimedLamp {
    Vec3 point = Vec3::Zero();
    Vec3 target = Vec3::Zero();
    /// Of the beam to half its peak, at the target.
    double radius_m = 0.0;
    /// At spot and at flood.
    double least_radius_m = 0.0;
    double most_radius_m = 0.0;
    bool has_range = false;
};
std::optional<AimedLamp> aimed_now(const Context& context, const plan::Lamp& lamp);

std::vector<Handle> lamp_handles(const Context& context, const Thing& thing);
Result<Step> drag_lamp(const Context& context, const Handle& handle, const Vec2& to,
                       const std::optional<Thing>& onto);

/// An aim at a thing that can be aimed at, or at a place at a height.
plan::Aim aim_at(const Vec2& to, double height_m, const std::optional<Thing>& onto,
                 const std::string& self);

} // namespace throwline::edit
