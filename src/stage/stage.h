#pragma once

#include "catalogue/catalogue.h"
#include "optics/camera_pose.h"
#include "photometry/beam_model.h"
#include "plan/places.h"
#include "plan/plan.h"
#include "stage/figure.h"
#include "stage/rays.h"

#include <memory>

/// The plan at one beat raised to solids. Read this first; the checks ask it everything.
namespace throwline::stage {

/// Whose a solid is; one entry a thing, in the order of the plan.
struct Owner {
    OwnerKind kind = OwnerKind::scenery;
    std::string name;
    bool operator==(const Owner&) const = default;
};

struct PlacedCamera {
    plan::Id<plan::Camera> camera;
    int owner = -1;
    optics::CameraPose pose;
    /// The shot whose place this is; empty at home.
    plan::Id<plan::Shot> shot;
    /// Floor taken by the support, and with the operator.
    Polygon support_outline;
    Polygon operator_outline;
};

struct PlacedLamp {
    plan::Id<plan::Lamp> lamp;
    int owner = -1;
    const catalogue::Instrument* instrument = nullptr;
    /// Turning point, and the middle of the bright face.
    Vec3 point = Vec3::Zero();
    Vec3 face = Vec3::Zero();
    /// Unit vectors: out of the face along the beam; across to the right and up, seen from behind
    /// the lamp looking along the beam.
    Vec3 axis = -Vec3::UnitZ();
    Vec3 right = Vec3::UnitX();
    Vec3 up = Vec3::UnitY();
    /// Where it is aimed; nothing for straight down.
    std::optional<Vec3> target;
    /// After focus, filters and dimmer; peak 0 in beats in which it does not burn.
    photometry::BeamModel beam;
    double colour_temperature_k = 3200.0;
    plan::LampRole role = plan::LampRole::effect;
    plan::BeamCut cut;
    /// Outline on the floor of stand or body when it stands; empty when hung.
    Polygon support_outline;
};

/// Whether a lamp sends its light all round from its middle: a bulb or a lantern (field angle of
/// half a turn or more, no soft face). Its `face` is then its `point`, and it has no face to look
/// at.
bool is_all_round(const PlacedLamp& lamp);

struct PlacedBoom {
    plan::Id<plan::Boom> boom;
    int owner = -1;
    /// Its lowest point.
    Vec3 microphone = Vec3::Zero();
    Vec3 hands = Vec3::Zero();
    Polygon operator_outline;
};

/// A piece of scenery with its outline on the floor and its span of heights.
struct PlacedScenery {
    plan::Id<plan::Scenery> scenery;
    int owner = -1;
    Polygon outline;
    double bottom_z_m = 0.0;
    double top_z_m = 0.0;
};

struct Stage {
    plan::Id<plan::Beat> beat;
    /// The shot for which cameras are placed; empty for none.
    plan::Id<plan::Shot> shot;
    std::vector<Owner> owners;
    std::vector<Solid> solids;
    std::vector<Figure> figures;
    std::vector<PlacedScenery> scenery;
    std::vector<PlacedCamera> cameras;
    std::vector<PlacedLamp> lamps;
    std::vector<PlacedBoom> booms;
    std::shared_ptr<const RayScene> rays;

    const Figure* figure(const plan::Id<plan::Person>& person) const;
    const PlacedCamera* camera(const plan::Id<plan::Camera>& camera) const;
    const PlacedLamp* lamp(const plan::Id<plan::Lamp>& lamp) const;
};

/// Name of the owner of the wall from corner `index` (from 0) of the outline on: "wall 2", counted
/// as a plan file counts.
std::string wall_name(int index);

/// Raises the plan at a beat, with cameras where `shot` has them. Room surfaces look inwards and
/// have holes where openings are; doors stand shut in theirs (a part of the opening's own owner),
/// while windows and bare openings hold nothing: a ray through them leaves the room and meets
/// nothing. The plan must be one the reader accepts; a name that nothing has is left out.
Stage raise(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
            const plan::Id<plan::Beat>& beat, const plan::Id<plan::Shot>& shot = {});
/// The same without `rays`, for who only draws: nothing may be asked of these.
Stage raise_without_rays(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                         const plan::Id<plan::Beat>& beat, const plan::Id<plan::Shot>& shot = {});

/// Where a named thing is looked at: a person's face, the middle of anything else.
std::optional<Vec3> look_point(const Stage& stage, const std::string& name);

} // namespace throwline::stage
