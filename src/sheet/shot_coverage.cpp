#include "sheet/shot_coverage.h"

#include "base/length_text.h"
#include "lists/place_text.h"
#include "sheet/coverage_fan.h"
#include "sheet/symbols.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::sheet {

namespace {

constexpr double kFanWash = 0.07;
constexpr double kSharpWash = 0.09;
/// Farther than any room.
constexpr double kLongest_m = 100.0;

/// Outlines on the floor of everything that reaches past the height of the lens.
std::vector<Polygon> higher_than_lens(const checks::ShotScene& scene) {
    const double lens_m = scene.view->pose.lens.z();
    std::vector<Polygon> outlines;
    for (const stage::PlacedScenery& piece : scene.stage.scenery) {
        if (piece.outline.size() > 2 && piece.bottom_z_m < lens_m && piece.top_z_m > lens_m) {
            outlines.push_back(piece.outline);
        }
    }
    return outlines;
}

/// A shot's fan in its own measure: along the axis and across it.
struct Fan {
    Polygon outline;
    Vec2 lens = Vec2::Zero();
    double pan_rad = 0.0;
    double half_rad = 0.0;
    /// Metres on the plan to a metre along the axis.
    double level = 1.0;

    /// The point at a distance along the lens axis, `side` times as far out as the edge.
    Vec2 at(double depth_m, double side) const {
        const Vec2 ahead = unit_at(pan_rad) * (depth_m * level);
        return lens + ahead
               + turned_left(unit_at(pan_rad)) * (side * depth_m * level * std::tan(half_rad));
    }
};

Fan fan_of(const plan::Plan& plan, const checks::ShotScene& scene) {
    Fan fan;
    fan.lens = floor_of(scene.view->pose.lens);
    fan.pan_rad = scene.view->pose.pan.rad();
    fan.half_rad = scene.view->angle.horizontal.rad() / 2.0;
    fan.level = std::cos(scene.view->pose.tilt.rad());
    fan.outline = coverage_fan_among(plan.room.outline, higher_than_lens(scene), fan.lens,
                                     fan.pan_rad - fan.half_rad, fan.pan_rad + fan.half_rad);
    return fan;
}

/// The parts of the fan between two distances from the lens.
std::vector<Polygon> stretch_of(const Fan& fan, double near_m, double far_m) {
    const Polygon stretch{fan.at(near_m, 1.2), fan.at(near_m, -1.2), fan.at(far_m, -1.2),
                          fan.at(far_m, 1.2)};
    return parts_shared(fan.outline, stretch);
}

void draw_edges(Board& board, const Fan& fan) {
    const Pen edge = pen(Ink::camera, kConstruction_mm);
    for (const Vec2& far : {fan.outline[1], fan.outline.back()}) {
        board.add(PlanLayer::coverage, line(board.frame.at(fan.lens), board.frame.at(far), edge),
                  Crowd::light);
    }
}

/// A line across the fan at a limit of sharpness, as far as the fan is open there, lettered at its
/// end.
void draw_limit(Board& board, const Fan& fan, double depth_m, const std::string& words) {
    constexpr double kThin_m = 0.002;
    const Pen fine = pen(Ink::camera, kFine_mm, LinePattern::dash);
    const Vec2 ahead = unit_at(fan.pan_rad);
    const Vec2 across = turned_left(ahead);
    std::optional<Vec2> end;
    for (const Polygon& part : stretch_of(fan, depth_m - kThin_m, depth_m + kThin_m)) {
        double low = kLongest_m;
        double high = -kLongest_m;
        for (const Vec2& corner : part) {
            low = std::min(low, (corner - fan.lens).dot(across));
            high = std::max(high, (corner - fan.lens).dot(across));
        }
        const Vec2 middle = fan.lens + ahead * (depth_m * fan.level);
        board.add(PlanLayer::coverage,
                  line(board.frame.at(middle + across * low),
                       board.frame.at(middle + across * high), fine),
                  Crowd::firm);
        end = middle + across * low;
    }
    if (end) {
        LabelRequest label;
        label.anchor = board.frame.at(*end);
        label.half_mm = Vec2::Constant(0.5);
        label.ink = Ink::camera;
        label.lines = {{words}};
        board.labels.push_back(label);
    }
}

void draw_sharpness(Board& board, const Fan& fan, const checks::ShotFigures& figures,
                    UnitSystem units) {
    if (!figures.sharp) {
        return;
    }
    const double near_m = figures.sharp->near_limit.m();
    const double far_m = figures.sharp->far_limit ? figures.sharp->far_limit->m() : kLongest_m;
    for (const Polygon& part : stretch_of(fan, near_m, std::min(far_m, kLongest_m))) {
        board.add(PlanLayer::coverage,
                  outline(board.frame.at(part), no_pen(), solid(Ink::camera, kSharpWash)));
    }
    draw_limit(board, fan, near_m,
               fmt::format("sharp from {}", shown(figures.sharp->near_limit, units)));
    if (figures.sharp->far_limit) {
        draw_limit(board, fan, far_m,
                   fmt::format("sharp to {}", shown(*figures.sharp->far_limit, units)));
    }
}

/// A tape from the lens square to a wall, with its length.
void draw_tape(Board& board, const plan::Room& room, const Vec2& lens, const lists::FromWall& wall,
               UnitSystem units) {
    const auto index = static_cast<std::size_t>(wall.wall);
    const Vec2& start = room.outline[index];
    const Vec2 along = (room.outline[(index + 1) % room.outline.size()] - start).normalized();
    const Vec2 foot = start + along * (lens - start).dot(along);
    const Vec2 from = board.frame.at(lens);
    const Vec2 to = board.frame.at(foot);
    if (!board.shows(to) || (to - from).norm() < 1.0) {
        return;
    }
    constexpr double kTick_mm = 1.2;
    const Vec2 slant = rotated(Vec2{(to - from).normalized()}, std::numbers::pi / 4.0) * kTick_mm;
    board.add(PlanLayer::lettering, line(from, to, pen(Ink::dimension, kConstruction_mm)),
              Crowd::firm);
    board.add(PlanLayer::lettering, line(to - slant, to + slant, pen(Ink::dimension, kFine_mm)),
              Crowd::firm);
    LabelRequest label;
    label.anchor = (from + to) / 2.0;
    label.half_mm = Vec2::Constant(0.3);
    label.ink = Ink::dimension;
    label.lines = {{shown(Length::metres(wall.distance_m), units)}};
    board.labels.push_back(label);
}

void draw_tapes(Board& board, const plan::Plan& plan, const Vec2& lens) {
    const auto from = lists::from_walls(plan.room, lens);
    if (!from) {
        return;
    }
    draw_tape(board, plan.room, lens, from->first, plan.units);
    if (from->second) {
        draw_tape(board, plan.room, lens, *from->second, plan.units);
    }
}

} // namespace

void draw_shot_coverage(Board& board, const plan::Plan& plan, const checks::ShotScene& scene,
                        const checks::ShotFigures& figures) {
    const Fan fan = fan_of(plan, scene);
    if (fan.outline.size() > 2) {
        board.add(PlanLayer::coverage,
                  outline(board.frame.at(fan.outline), no_pen(), solid(Ink::camera, kFanWash)));
        draw_sharpness(board, fan, figures, plan.units);
        draw_edges(board, fan);
        board.used.insert(LegendEntry::coverage);
    }
    draw_lens_axis(board, scene, plan.units);
    draw_tapes(board, plan, fan.lens);
}

} // namespace throwline::sheet
