#pragma once

#include "base/result.h"
#include "edit/thing.h"
#include "stage/shot_view.h"

#include <span>

/// Pointing a camera and setting its lens from what its picture shows.
namespace throwline::edit {

/// The shot whose picture answers "what does this camera see": of one chosen camera the shot it is
/// in now; else the shot of now; else the first of the beat. Empty when there is none.
plan::Id<plan::Shot> shot_looked_at(const Context& context, std::span<const Thing> chosen);
/// The camera that was asked about and has no shot now; empty otherwise.
plan::Id<plan::Camera> camera_without_shot(const Context& context, std::span<const Thing> chosen);

/// How a shot is aimed before a drag of its picture begins.
struct HeldAim {
    plan::Id<plan::Shot> shot;
    stage::ShotView view;
    /// From the lens to what is in the middle of the picture, metres: the aim, else the focus.
    double distance_m = 1.0;
};
HeldAim held_aim(const plan::Plan& plan, const stage::ShotView& view);

/// The shot aimed at a direction from its lens, at the old distance. `direction` need not be of
/// unit length. Errors: a locked camera, a direction of no length, straight up or down.
Result<Step> aimed_towards(const Context& context, const HeldAim& held, const Vec3& direction);
/// The shot panned to the left and tilted up from how it was held. Tilts stop short of straight up
/// and down.
Result<Step> aimed_off(const Context& context, const HeldAim& held, Angle left, Angle up);
/// The direction that brings what is seen at one point of the frame (u right, v up, -1..1) to
/// another: what was taken hold of follows the pointer.
Vec3 direction_for_drag(const stage::ShotView& view, const Vec2& from, const Vec2& to);

/// The focal length times a factor (> 0), to whole tenths of a millimetre, within what the lens
/// with its extender does. Errors: a locked camera, a lens with one focal length, a zoom at its
/// end.
Result<Step> zoomed(const Context& context, const HeldAim& held, double factor);

} // namespace throwline::edit
