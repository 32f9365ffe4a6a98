#pragma once

#include "catalogue/catalogue.h"
#include "plan/places.h"
#include "plan/plan.h"
#include "stage/figure.h"

#include <map>
#include <optional>
#include <string>

/// Where named things are at a beat, asked before there is a stage.
namespace throwline::stage {

/// A plan at a beat while a shot is taken (empty for none).
struct Moment {
    const plan::Plan& plan;
    const catalogue::Catalogue& catalogue;
    plan::Id<plan::Beat> beat;
    plan::Id<plan::Shot> shot;
};

/// Where everybody on the floor stands.
using Marks = std::map<plan::Id<plan::Person>, plan::Mark>;

/// Lens of a camera; nothing when the camera is not on the floor.
std::optional<Vec3> lens_point(const Moment& moment, const plan::Camera& camera);

/// Whether a boom is used in a beat.
bool is_on_floor(const plan::Boom& boom, const plan::Id<plan::Beat>& beat);

/// Where a thing of any kind stands on the floor; nothing when nothing is called so, or it is not
/// on the floor.
std::optional<Vec2> floor_place(const Moment& moment, const std::string& name);

/// Where a thing is looked at: a person's face, a lens, the turning point of a lamp, a microphone,
/// the middle of scenery or of an opening.
std::optional<Vec3> look_place(const Moment& moment, const std::string& name);

/// An aim resolved; nothing when it is empty or names what is not there.
std::optional<Vec3> aim_point(const Moment& moment, const plan::Aim& aim);

/// Where a lamp is aimed, at the beat in which it is set: the named one, else the first in which
/// its aim is there. Nothing for straight down.
std::optional<Vec3> lamp_target(const Moment& moment, const plan::Lamp& lamp);

/// What a mark faces, resolved; 0 for somebody who faces what is not there or their own place.
Angle facing_of(const Moment& moment, const plan::Mark& mark);
/// The same when the marks of everybody at the moment (plan::marks_at) are known, for many people.
Angle facing_of(const Moment& moment, const Marks& marks, const plan::Mark& mark);

/// A person on their mark, standing, sitting or lying on what is there.
Body body_on_mark(const Moment& moment, const plan::Person& person, const plan::Mark& mark);

} // namespace throwline::stage
