#include "stage/framing.h"
#include "stage/raising.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace throwline::stage {

namespace {

/// Body of a camera behind its lens, viewfinder and battery included (common practice, no source).
constexpr double kBodyLength_m = 0.30;
constexpr double kBodyWidth_m = 0.14;
constexpr double kBodyHeight_m = 0.20;
/// Where the catalogue does not know the lens.
constexpr double kUsualBarrel_m = 0.20;
constexpr double kUsualBarrelRadius_m = 0.05;
/// The barrel begins this far behind the entrance pupil, so that nothing of it is in front.
constexpr double kBehindPupil_m = 0.005;
/// Breadth of the room that an operator takes (common practice, no source).
constexpr double kOperatorBreadth_m = 0.60;

/// What is known of a camera that stands somewhere.
struct CameraParts {
    const plan::Camera& camera;
    const catalogue::SensorMode* sensor = nullptr;
    const catalogue::Lens* lens = nullptr;
    const catalogue::Support* support = nullptr;
};

CameraParts parts_of(const Moment& moment, const plan::Camera& camera) {
    const catalogue::Catalogue& catalogue = moment.catalogue;
    return {camera, catalogue.sensor(camera.sensor), catalogue.lens(camera.lens),
            catalogue.support(camera.support)};
}

/// Without anything to look at: level, towards the middle of the room.
optics::CameraPose idle_pose(const plan::Room& room, const Vec3& lens) {
    optics::CameraPose pose;
    pose.lens = lens;
    if (room.outline.size() >= 3) {
        pose.pan = Angle::radians(angle_of(centroid(room.outline) - floor_of(lens)));
    }
    return pose;
}

optics::CameraPose pose_of(const Raising& raising, const CameraParts& parts,
                           const plan::Id<plan::Shot>& shot_id, const Vec3& lens) {
    const Moment& moment = raising.moment;
    const plan::Shot* shot = plan::find(moment.plan, shot_id);
    if (shot != nullptr && parts.sensor != nullptr && parts.lens != nullptr) {
        const auto subjects = subjects_of(raising.stage, *shot);
        const LensReach reach = reach_of(*parts.sensor, *parts.lens, shot->extender);
        const auto framing = framed(*shot, reach, lens, subjects, aim_point(moment, shot->aim));
        if (framing) {
            return framing->pose;
        }
    }
    return idle_pose(moment.plan.room, lens);
}

/// The floor plan of a camera: forward, and where its support stands under the lens mount.
struct Standing {
    Vec2 forward = Vec2::UnitX();
    Vec2 at = Vec2::Zero();
    double floor_m = 0.0;
    double barrel_m = kUsualBarrel_m;
};

Standing standing_of(const Moment& moment, const CameraParts& parts,
                     const optics::CameraPose& pose) {
    Standing standing;
    standing.forward = unit_at(pose.pan.rad());
    standing.barrel_m = parts.lens != nullptr ? parts.lens->length.m() : kUsualBarrel_m;
    const double back_m = standing.barrel_m * std::cos(pose.tilt.rad());
    standing.at = floor_of(pose.lens) - standing.forward * back_m;
    standing.floor_m =
        plan::floor_height_at(moment.plan, moment.catalogue, floor_of(pose.lens)).m();
    return standing;
}

void raise_body(Raising& raising, int owner, const CameraParts& parts,
                const optics::CameraPose& pose, const Standing& standing) {
    const optics::CameraAxes axes = optics::axes_of(pose);
    const double radius_m =
        parts.lens != nullptr ? parts.lens->front_diameter.m() / 2.0 : kUsualBarrelRadius_m;
    const Vec3 front = pose.lens - axes.forward * kBehindPupil_m;
    const Vec3 mount = pose.lens - axes.forward * std::max(standing.barrel_m, 2 * kBehindPupil_m);
    const Surface black{kEquipmentReflectance, false};
    raising.add(owner, Part::lens_barrel, rod(mount, front, radius_m, radius_m, 12), black);
    raising.add(owner, Part::camera_body,
                box(mount - axes.forward * (kBodyLength_m / 2.0),
                    axes.forward * (kBodyLength_m / 2.0), -axes.right * (kBodyWidth_m / 2.0),
                    -axes.down * (kBodyHeight_m / 2.0)),
                black);
}

void raise_support(Raising& raising, PlacedCamera& placed, const CameraParts& parts,
                   const Standing& standing) {
    if (parts.support == nullptr) {
        return;
    }
    placed.support_outline = circle(standing.at, parts.support->footprint_radius.m());
    const double top_m = placed.pose.lens.z() - kBodyHeight_m / 2.0;
    if (top_m > standing.floor_m) {
        raising.add(placed.owner, Part::support,
                    cylinder(raised(standing.at, standing.floor_m),
                             parts.support->column_radius.m(), top_m - standing.floor_m),
                    {kEquipmentReflectance, false});
    }
}

/// Behind the column, in the middle of the room that the operator needs.
void raise_operator(Raising& raising, PlacedCamera& placed, const CameraParts& parts,
                    const Standing& standing) {
    if (parts.support == nullptr || parts.support->operator_room <= Length{}) {
        return;
    }
    const double room_m = parts.support->operator_room.m();
    const double behind_m = parts.support->footprint_radius.m() + room_m / 2.0;
    const Vec2 at = standing.at - standing.forward * behind_m;
    placed.operator_outline = rectangle(at, room_m, kOperatorBreadth_m, placed.pose.pan.rad());
    Body body = standing_crew(raising.moment, at, placed.pose.pan);
    for (FigurePart& part : body.parts) {
        raising.add(placed.owner, Part::camera_operator, std::move(part.mesh),
                    {kPersonReflectance, false});
    }
}

void raise_camera(Raising& raising, const plan::Camera& camera) {
    const Moment& moment = raising.moment;
    const auto place = plan::camera_place(moment.plan, camera, moment.beat, moment.shot);
    const std::optional<Vec3> lens = lens_point(moment, camera);
    if (!place || !lens) {
        return;
    }
    const CameraParts parts = parts_of(moment, camera);
    PlacedCamera placed;
    placed.camera = camera.id;
    placed.shot = place->shot;
    placed.owner = raising.owner(OwnerKind::camera, camera.id.name);
    placed.pose = pose_of(raising, parts, place->shot, *lens);
    const Standing standing = standing_of(moment, parts, placed.pose);
    raise_body(raising, placed.owner, parts, placed.pose, standing);
    raise_support(raising, placed, parts, standing);
    raise_operator(raising, placed, parts, standing);
    raising.stage.cameras.push_back(std::move(placed));
}

} // namespace

void raise_cameras(Raising& raising) {
    for (const plan::Camera& camera : raising.moment.plan.cameras) {
        raise_camera(raising, camera);
    }
}

} // namespace throwline::stage
