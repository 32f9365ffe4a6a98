#include "checks/wording.h"
#include "command/figures_output.h"

namespace throwline::command {

namespace {

JsonValue degrees(const std::optional<Angle>& angle) {
    return angle ? JsonValue{angle->deg()} : JsonValue{nullptr};
}

/// Null when there is no end to what is sharp.
JsonValue far_json(const std::optional<optics::DepthOfField>& sharp) {
    return sharp && sharp->far_limit ? JsonValue{sharp->far_limit->m()} : JsonValue{nullptr};
}

JsonValue pool_json(const std::optional<photometry::ConeFootprint>& pool) {
    if (!pool) {
        return nullptr;
    }
    return JsonValue::Object{{"length_m", pool->length().m()},
                             {"width_m", pool->width().m()},
                             {"near_m", pool->near_edge.m()},
                             {"far_m", pool->far_edge.m()}};
}

JsonValue blockers_json(const checks::LampAtMark& at, const stage::Stage& stage) {
    JsonValue::Array blockers;
    for (const stage::LightBlocker& blocker : at.light.blockers) {
        const stage::Owner& owner = stage.owners[static_cast<std::size_t>(blocker.owner)];
        blockers.emplace_back(JsonValue::Object{{"thing", owner.name}, {"share", blocker.share}});
    }
    return blockers;
}

JsonValue lamp_json(const checks::LampAtMark& at, const stage::Stage& stage) {
    const stage::PlacedLamp& lamp = stage.lamps[static_cast<std::size_t>(at.lamp)];
    const auto& direction = at.direction;
    return JsonValue::Object{
        {"lamp", lamp.lamp.name},
        {"role", photometry::name_of(lamp.role)},
        {"throw_m", at.light.throw_m},
        {"off_axis_deg", at.light.off_axis.deg()},
        {"azimuth_deg", degrees(direction ? std::optional{direction->azimuth} : std::nullopt)},
        {"elevation_deg", degrees(direction ? std::optional{direction->elevation} : std::nullopt)},
        {"in_beam", at.in_beam},
        {"in_field", at.in_field},
        {"facing_lux", at.facing_lx},
        {"horizontal_lux", at.horizontal_lx},
        {"open_facing_lux", at.open_facing_lx},
        {"seen_share", at.light.seen_share},
        {"blockers", blockers_json(at, stage)},
        {"beam_on_floor", pool_json(at.beam_on_floor)},
        {"field_on_floor", pool_json(at.field_on_floor)},
        {"beam_at_face", pool_json(at.beam_at_face)},
        {"field_at_face", pool_json(at.field_at_face)}};
}

JsonValue light_json(const checks::MarkLight& mark, const stage::Stage& stage) {
    JsonValue::Array lamps;
    for (const checks::LampAtMark& at : mark.lamps) {
        lamps.emplace_back(lamp_json(at, stage));
    }
    return JsonValue::Object{{"facing_lux", mark.facing_lx}, {"horizontal_lux", mark.horizontal_lx},
                             {"needed_lux", mark.needed_lx}, {"stops_over", mark.stops_over},
                             {"lighting_ratio", mark.ratio}, {"lamps", std::move(lamps)}};
}

JsonValue subject_json(const checks::SubjectFigures& subject, const checks::MarkLight& mark,
                       const stage::Stage& stage) {
    const auto& frame = subject.frame;
    const auto& sight = subject.sight;
    const bool has_face = sight && sight->face;
    return JsonValue::Object{
        {"person", subject.person.name},
        {"distance_m", subject.depth_m},
        {"width_m", subject.coverage.width.m()},
        {"height_m", subject.coverage.height.m()},
        {"frame_bottom_m", frame ? std::optional{frame->bottom_z_m} : std::nullopt},
        {"frame_top_m", frame ? std::optional{frame->top_z_m} : std::nullopt},
        {"shot_size", frame ? JsonValue{optics::name_of(frame->size)} : JsonValue{nullptr}},
        {"sharp", subject.sharp},
        {"body_seen_share", sight ? std::optional{sight->body.share} : std::nullopt},
        {"face_seen_share", has_face ? std::optional{sight->face->share} : std::nullopt},
        {"light", light_json(mark, stage)}};
}

JsonValue shot_json(const ShotRow& row) {
    const checks::ShotFigures& figures = row.figures;
    const stage::ShotView& view = figures.view;
    const auto& sharp = figures.sharp;
    JsonValue::Array subjects;
    for (std::size_t i = 0; i < figures.subjects.size(); ++i) {
        subjects.emplace_back(subject_json(figures.subjects[i], row.marks[i], *row.stage));
    }
    return JsonValue::Object{
        {"shot", figures.shot.name},
        {"beat", figures.beat.name},
        {"camera", figures.camera.name},
        {"focal_mm", view.focal.mm()},
        {"stop", view.stop},
        {"horizontal_angle_deg", view.angle.horizontal.deg()},
        {"vertical_angle_deg", view.angle.vertical.deg()},
        {"lens_height_m", view.pose.lens.z()},
        {"tilt_deg", view.pose.tilt.deg()},
        {"focus_m", view.focus_distance.m()},
        {"near_m", sharp ? std::optional{sharp->near_limit.m()} : std::nullopt},
        {"far_m", far_json(sharp)},
        {"hyperfocal_m", sharp ? std::optional{sharp->hyperfocal.m()} : std::nullopt},
        {"close_focus_m", figures.close_focus.m()},
        {"wanted_size",
         figures.wanted ? JsonValue{optics::name_of(*figures.wanted)} : JsonValue{nullptr}},
        {"wanted_focal_mm",
         view.wanted_focal ? std::optional{view.wanted_focal->mm()} : std::nullopt},
        {"subjects", std::move(subjects)}};
}

} // namespace

JsonValue::Object figures_json(const std::vector<ShotRow>& rows) {
    JsonValue::Array shots;
    for (const ShotRow& row : rows) {
        shots.emplace_back(shot_json(row));
    }
    return {{"shots", std::move(shots)}};
}

} // namespace throwline::command
