#include "base/length_text.h"
#include "checks/shot_figures.h"
#include "sheet/coverage_fan.h"
#include "sheet/floor_parts.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::sheet {

namespace {

/// Farther than any floor: what is sharp to infinity ends there.
constexpr double kFar_m = 200.0;
constexpr double kCross_mm = 1.6;
constexpr int kArcSides = 24;

/// Points at a distance along the axis across the fan, from its right edge to its left one.
std::vector<Vec2> across(const Vec2& lens, double pan_rad, double half_rad, double depth_m) {
    std::vector<Vec2> points;
    for (int i = 0; i <= kArcSides; ++i) {
        const double off_rad = half_rad * (2.0 * i / kArcSides - 1.0);
        points.push_back(lens + unit_at(pan_rad + off_rad) * (depth_m / std::cos(off_rad)));
    }
    return points;
}

void letter_distance(Board& board, const Vec2& at, double distance_m, UnitSystem units) {
    LabelRequest label;
    label.anchor = board.frame.at(at);
    label.half_mm = Vec2::Constant(0.5);
    label.ink = Ink::camera;
    label.lines = {{shown(Length::metres(distance_m), units)}};
    label.may_drop = true;
    board.labels.push_back(label);
}

void draw_limit(Board& board, const std::vector<Vec2>& line_m) {
    board.add(PlanLayer::coverage,
              open_path(board.frame.at(line_m), pen(Ink::camera, kFine_mm, LinePattern::dash)),
              Crowd::light);
}

/// Of the shot of now, else the first.
const checks::ShotScene* shot_of(const FloorScene& scene) {
    return scene.shots.empty() || !scene.shots.front().view ? nullptr : &scene.shots.front();
}

} // namespace

void draw_focus_band(Board& board, const FloorScene& scene) {
    const checks::ShotScene* shot = shot_of(scene);
    const auto sharp = shot == nullptr ? std::nullopt : checks::sharp_range(*shot->view);
    if (!sharp) {
        return;
    }
    const UnitSystem units = scene.question.plan.units;
    const Vec2 lens = floor_of(shot->view->pose.lens);
    const double level = std::cos(shot->view->pose.tilt.rad());
    const double pan_rad = shot->view->pose.pan.rad();
    const double half_rad = std::min(shot->view->angle.horizontal.rad() / 2.0, 1.4);
    const double near_m = std::min(sharp->near_limit.m() * level, kFar_m);
    const double far_m =
        sharp->far_limit ? std::min(sharp->far_limit->m() * level, kFar_m) : kFar_m;
    const std::vector<Vec2> near_line = across(lens, pan_rad, half_rad, near_m);
    std::vector<Vec2> band = across(lens, pan_rad, half_rad, far_m);
    const std::vector<Vec2> far_line = band;
    band.insert(band.end(), near_line.rbegin(), near_line.rend());
    const Polygon& room = scene.question.plan.room.outline;
    const std::vector<Polygon> parts =
        room.size() < 3 ? std::vector<Polygon>{band} : parts_shared(band, room);
    for (const Polygon& part : parts) {
        board.add(PlanLayer::coverage,
                  outline(board.frame.at(part), no_pen(), solid(Ink::camera, 0.16)));
    }
    draw_limit(board, near_line);
    letter_distance(board, near_line.front(), sharp->near_limit.m(), units);
    if (sharp->far_limit && far_m < kFar_m) {
        draw_limit(board, far_line);
        letter_distance(board, far_line.front(), sharp->far_limit->m(), units);
    }
}

void draw_sight_lines(Board& board, const FloorScene& scene) {
    const FloorQuestion& question = scene.question;
    const checks::ShotScene* shot = shot_of(scene);
    if (shot == nullptr) {
        return;
    }
    const stage::Stage stage =
        stage::raise(question.plan, question.catalogue, question.beat, shot->shot->id);
    const stage::PlacedCamera* camera = stage.camera(shot->shot->camera);
    for (const plan::Id<plan::Person>& subject : shot->shot->subjects) {
        const stage::Figure* figure = stage.figure(subject);
        if (figure == nullptr || camera == nullptr) {
            continue;
        }
        const Vec3 lens = camera->pose.lens;
        const auto hit =
            stage.rays->first_between({lens, figure->eyes}, {camera->owner, figure->owner});
        const Vec2 from = board.frame.at(floor_of(lens));
        const Vec2 to = board.frame.at(floor_of(figure->eyes));
        if (!hit) {
            board.add(PlanLayer::coverage, line(from, to, pen(Ink::people, kFine_mm)),
                      Crowd::light);
            continue;
        }
        const Vec3 met = lens + (figure->eyes - lens).normalized() * hit->distance_m;
        const Vec2 at = board.frame.at(floor_of(met));
        const Pen cross = pen(Ink::error, kStanding_mm);
        board.add(PlanLayer::coverage, line(from, at, pen(Ink::people, kFine_mm)), Crowd::light);
        board.add(PlanLayer::coverage, line(at, to, pen(Ink::error, kFine_mm, LinePattern::dot)));
        board.add(PlanLayer::findings,
                  line(at - Vec2{kCross_mm, kCross_mm}, at + Vec2{kCross_mm, kCross_mm}, cross));
        board.add(PlanLayer::findings,
                  line(at - Vec2{kCross_mm, -kCross_mm}, at + Vec2{kCross_mm, -kCross_mm}, cross));
        LabelRequest label;
        label.anchor = at;
        label.half_mm = Vec2::Constant(kCross_mm);
        label.ink = Ink::error;
        label.lines = {{fmt::format(
            "{} hides {}", stage.owners[static_cast<std::size_t>(hit->owner)].name, subject.name)}};
        board.labels.push_back(label);
    }
}

} // namespace throwline::sheet
