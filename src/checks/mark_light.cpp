#include "checks/mark_light.h"

#include "checks/framing.h"
#include "photometry/exposure.h"
#include "photometry/ratio.h"

#include <algorithm>
#include <cmath>

namespace throwline::checks {

namespace {

using photometry::ConeFootprint;

std::optional<ConeFootprint> footprint_on(const stage::PlacedLamp& lamp, double plane_z_m,
                                          Angle full_angle) {
    const double height_m = lamp.face.z() - plane_z_m;
    if (height_m <= 0.0 || full_angle.deg() >= 180.0) {
        return std::nullopt;
    }
    const Angle tilt = Angle::radians(std::acos(std::clamp(-lamp.axis.z(), -1.0, 1.0)));
    return photometry::cone_footprint(Length::metres(height_m), tilt, full_angle / 2.0);
}

LampAtMark lamp_at_mark(const stage::Stage& stage, const stage::Figure& figure, const Vec3& lens,
                        const Vec3& facing, stage::LampLight light) {
    const stage::PlacedLamp& lamp = stage.lamps[static_cast<std::size_t>(light.lamp)];
    LampAtMark at;
    at.lamp = light.lamp;
    const bool passed = light.intensity_cd > 0.0 && light.passed_share > 0.0;
    at.in_beam = passed && light.off_axis <= lamp.beam.beam / 2.0;
    at.in_field = passed && light.off_axis <= lamp.beam.field / 2.0;
    at.direction = photometry::lamp_direction(figure.eyes, lens, lamp.face);
    at.horizontal_lx = light.level_lx(Vec3::UnitZ());
    at.open_facing_lx = light.open_level_lx(facing);
    at.facing_lx = light.level_lx(facing);
    at.beam_on_floor = footprint_on(lamp, 0.0, lamp.beam.beam);
    at.field_on_floor = footprint_on(lamp, 0.0, lamp.beam.field);
    at.beam_at_face = footprint_on(lamp, figure.face.z(), lamp.beam.beam);
    at.field_at_face = footprint_on(lamp, figure.face.z(), lamp.beam.field);
    at.light = std::move(light);
    return at;
}

void sum_up(MarkLight& mark, const stage::Stage& stage) {
    photometry::KeyAndFill by_role;
    for (const LampAtMark& at : mark.lamps) {
        mark.horizontal_lx += at.horizontal_lx;
        mark.facing_lx += at.facing_lx;
        const plan::LampRole role = stage.lamps[static_cast<std::size_t>(at.lamp)].role;
        by_role.key_lx += role == plan::LampRole::key ? at.facing_lx : 0.0;
        by_role.fill_lx += role == plan::LampRole::fill ? at.facing_lx : 0.0;
    }
    mark.ratio = photometry::lighting_ratio(by_role);
}

photometry::ExposureSetting setting_of(const plan::Plan& plan, const plan::Shot& shot) {
    const plan::Camera* camera = plan::find(plan, shot.camera);
    return {camera->iso, camera->exposure_s, plan.targets.meter_constant};
}

} // namespace

double needed_level_lx(const plan::Plan& plan, const plan::Shot& shot,
                       const stage::ShotView& view) {
    return photometry::illuminance_for_stop_lx(setting_of(plan, shot), view.stop);
}

std::vector<MarkLight> light_at_marks(const CheckInput& input, const ShotScene& scene) {
    std::vector<MarkLight> marks;
    if (!scene.view) {
        return marks;
    }
    const Vec3& lens = scene.view->pose.lens;
    for (const stage::Figure* figure : subjects_on_floor(scene)) {
        MarkLight& mark = marks.emplace_back();
        mark.shot = scene.shot->id;
        mark.beat = scene.beat->id;
        mark.person = figure->person;
        mark.face = figure->face;
        const Vec3 facing = (lens - figure->face).normalized();
        for (stage::LampLight& light : stage::light_at(scene.stage, figure->face, figure->owner)) {
            mark.lamps.push_back(
                lamp_at_mark(scene.stage, *figure, lens, facing, std::move(light)));
        }
        sum_up(mark, scene.stage);
        mark.needed_lx = needed_level_lx(input.plan, *scene.shot, *scene.view);
        mark.stops_over = photometry::stops_over(setting_of(input.plan, *scene.shot),
                                                 scene.view->stop, mark.facing_lx);
    }
    return marks;
}

double facing_level_lx(const stage::Stage& stage, const Vec3& point, const Vec3& normal,
                       int person) {
    double level = 0.0;
    for (const stage::LampLight& light : stage::light_at(stage, point, person)) {
        level += light.level_lx(normal);
    }
    return level;
}

} // namespace throwline::checks
