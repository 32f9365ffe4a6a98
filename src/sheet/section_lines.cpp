#include "sheet/section_lines.h"

#include "base/length_text.h"
#include "base/words.h"
#include "sheet/wall_side.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::sheet {

namespace {

/// Beams at more than this to the cut would be drawn with edges that lie over each other.
constexpr double kShowEdges_deg = 50.0;
constexpr double kFar_m = 1e4;
constexpr double kAngleMark_mm = 22.0;

/// How far a line in the plane of the cut goes until it meets floor, ceiling or the cut's walls.
double reach_in_cut(const SectionCut& cut, const plan::Room& room, const Vec2& from,
                    const Vec2& direction) {
    double reach = kFar_m;
    if (direction.y() < 0.0) {
        reach = std::min(reach, -from.y() / direction.y());
    } else if (direction.y() > 0.0) {
        reach = std::min(reach, (room.height.m() - from.y()) / direction.y());
    }
    const double low_m = cut.inside.front().from_m;
    const double high_m = cut.inside.back().to_m;
    double wall_m = direction.x() > 0.0 ? high_m : low_m;
    for (const CutStretch& stretch : cut.inside) {
        if (from.x() >= stretch.from_m && from.x() <= stretch.to_m) {
            wall_m = direction.x() > 0.0 ? stretch.to_m : stretch.from_m;
        }
    }
    if (direction.x() != 0.0) {
        const double to_wall = (wall_m - from.x()) / direction.x();
        reach = to_wall > 0.0 ? std::min(reach, to_wall) : reach;
    }
    return std::max(0.0, reach);
}

/// How far a ray in the room goes until it meets floor, ceiling or a wall.
double reach_in_room(const plan::Room& room, const Vec3& from, const Vec3& direction) {
    double reach = kFar_m;
    if (direction.z() < 0.0) {
        reach = std::min(reach, -from.z() / direction.z());
    } else if (direction.z() > 0.0) {
        reach = std::min(reach, (room.height.m() - from.z()) / direction.z());
    }
    const Vec2 start = floor_of(from);
    const Vec2 end = start + floor_of(direction) * kFar_m;
    for (std::size_t i = 0; i < room.outline.size(); ++i) {
        const WallSide side = side_of(room, i);
        const double share = crossing_share(start, end, side.from, side.to);
        if (share > 1e-9) {
            reach = std::min(reach, share * kFar_m);
        }
    }
    return std::max(0.0, reach);
}

Vec2 direction_at(Angle elevation, bool to_the_right) {
    return {std::cos(elevation.rad()) * (to_the_right ? 1.0 : -1.0), std::sin(elevation.rad())};
}

std::string tilt_text(Angle tilt) {
    constexpr double kLevel_deg = 0.05;
    if (std::abs(tilt.deg()) < kLevel_deg) {
        return "level";
    }
    return fmt::format("{} {}", degrees_text(Angle::radians(std::abs(tilt.rad()))),
                       tilt.rad() > 0.0 ? "up" : "down");
}

void label_view(Board& board, const SideView& view, const checks::ShotScene& scene) {
    const Vec2 lens = board.frame.at(view.lens);
    const double axis_rad =
        view.to_the_right ? view.axis.rad() : std::numbers::pi - view.axis.rad();
    LabelRequest label;
    label.anchor = lens + paper_direction(axis_rad) * kAngleMark_mm;
    label.half_mm = {1.0, 3.0};
    label.ink = Ink::camera;
    label.lines = {{fmt::format("{}, {}", with_kind("shot", scene.shot->id.name),
                                focal_text(scene.view->focal)),
                    true},
                   {fmt::format("takes in {}", degrees_text(view.upper - view.lower))},
                   {fmt::format("axis {}", tilt_text(view.axis))}};
    board.labels.push_back(label);
}

} // namespace

std::string beam_text(const SideBeam& beam, UnitSystem units) {
    const std::string way = beam.elevation.deg() > 89.5
                                ? std::string{"straight up"}
                                : fmt::format("{:.0f}° {}", std::abs(beam.elevation.deg()),
                                              beam.elevation.rad() < 0.0 ? "down" : "up");
    return fmt::format("{}, throw {}", way, shown(beam.distance, units));
}

namespace {

void label_lamp(Board& board, const SectionCut& cut, const stage::PlacedLamp& lamp,
                const std::optional<SideBeam>& beam, UnitSystem units) {
    LabelRequest label;
    label.anchor = board.frame.at(cut.at(lamp.point));
    label.half_mm = Vec2::Constant(std::max(1.5, board.frame.mm(0.22)));
    label.ink = Ink::lamp;
    label.lines = {{lamp.lamp.name, true}};
    if (beam) {
        label.lines.push_back({beam_text(*beam, units)});
        label.shorter = {{{lamp.lamp.name, true}}};
    }
    board.labels.push_back(label);
}

} // namespace

std::optional<SideView> side_view(const SectionCut& cut) {
    if (cut.shot == nullptr || !cut.shot->view) {
        return std::nullopt;
    }
    const stage::ShotView& shot = *cut.shot->view;
    const double off_rad = wrapped(shot.pose.pan.rad() - angle_of(cut.along));
    const double half_rad = std::atan(shot.frame.tan_half_v());
    SideView view;
    view.lens = cut.at(shot.pose.lens);
    view.axis = shot.pose.tilt;
    view.upper = shot.pose.tilt + Angle::radians(half_rad);
    view.lower = shot.pose.tilt - Angle::radians(half_rad);
    view.to_the_right = std::abs(off_rad) <= std::numbers::pi / 2.0;
    view.turned = Angle::radians(view.to_the_right ? off_rad : wrapped(off_rad - std::numbers::pi));
    return view;
}

void draw_side_view(Board& board, const SectionCut& cut, const plan::Room& room) {
    const std::optional<SideView> view = side_view(cut);
    if (!view) {
        return;
    }
    const Vec2 lens = board.frame.at(view->lens);
    const auto draw = [&](Angle elevation, const Pen& with, Crowd crowd) {
        const Vec2 direction = direction_at(elevation, view->to_the_right);
        const double reach_m = reach_in_cut(cut, room, view->lens, direction);
        board.add(PlanLayer::cameras,
                  line(lens, board.frame.at(Vec2{view->lens + direction * reach_m}), with), crowd);
    };
    draw(view->upper, pen(Ink::camera, kFine_mm), Crowd::light);
    draw(view->lower, pen(Ink::camera, kFine_mm), Crowd::light);
    draw(view->axis, pen(Ink::camera, kConstruction_mm, LinePattern::dash_dot), Crowd::light);
    const auto page_rad = [&](Angle elevation) {
        return view->to_the_right ? elevation.rad() : std::numbers::pi - elevation.rad();
    };
    board.add(PlanLayer::cameras, open_path(arc_points(lens, kAngleMark_mm, page_rad(view->lower),
                                                       page_rad(view->upper)),
                                            pen(Ink::camera, kConstruction_mm)));
    label_view(board, *view, *cut.shot);
}

std::optional<SideBeam> side_beam(const SectionCut& cut, const plan::Room& room,
                                  const stage::PlacedLamp& lamp) {
    if (lamp.beam.peak_cd <= 0.0 || stage::is_all_round(lamp)) {
        return std::nullopt;
    }
    const double to_room_m = reach_in_room(room, lamp.face, lamp.axis);
    const double to_target_m = lamp.target ? (*lamp.target - lamp.face).norm() : to_room_m;
    const double half_rad = lamp.beam.beam.rad() / 2.0;
    // The edges as they are seen: beside the axis on paper, upwards first.
    Vec3 aside = raised(cut.ahead, 0.0).cross(lamp.axis);
    constexpr double kEndOn = 1e-6;
    aside = aside.norm() < kEndOn ? lamp.up : Vec3{aside.normalized()};
    if (aside.z() < 0.0) {
        aside = -aside;
    }
    const auto edge_end = [&](double side) {
        const Vec3 direction = lamp.axis * std::cos(half_rad) + aside * (side * std::sin(half_rad));
        return cut.at(lamp.face + direction * reach_in_room(room, lamp.face, direction));
    };
    SideBeam beam;
    beam.face = cut.at(lamp.face);
    beam.aim = cut.at(lamp.face + lamp.axis * to_target_m);
    beam.upper = edge_end(1.0);
    beam.lower = edge_end(-1.0);
    beam.elevation = Angle::radians(std::asin(std::clamp(-lamp.axis.z(), -1.0, 1.0)));
    beam.distance = Length::metres(to_target_m);
    const Vec2 way = floor_of(lamp.axis);
    constexpr double kPlumb = 1e-6;
    beam.off_the_cut =
        way.norm() < kPlumb
            ? Angle{}
            : Angle::radians(std::acos(std::min(1.0, std::abs(way.normalized().dot(cut.along)))));
    return beam;
}

bool is_shown(const SectionCut& cut, const stage::PlacedLamp& lamp) {
    constexpr double kBody_m = 0.15;
    const double ahead_m = cut.ahead_m(floor_of(lamp.point));
    return ahead_m > -kBody_m && ahead_m <= cut.depth_m + kBody_m;
}

void draw_beams(Board& board, const SectionCut& cut, const plan::Plan& plan) {
    for (const stage::PlacedLamp& lamp : cut.stage->lamps) {
        if (!is_shown(cut, lamp)) {
            continue;
        }
        const auto beam = side_beam(cut, plan.room, lamp);
        label_lamp(board, cut, lamp, beam, plan.units);
        if (!beam) {
            continue;
        }
        const Vec2 face = board.frame.at(beam->face);
        const Vec2 aim = board.frame.at(beam->aim);
        const Pen edge = pen(Ink::lamp, kConstruction_mm, LinePattern::long_dash);
        if (beam->off_the_cut.deg() < kShowEdges_deg) {
            board.add(PlanLayer::lamps,
                      outline({face, board.frame.at(beam->upper), board.frame.at(beam->lower)},
                              no_pen(), solid(Ink::lamp, 0.06)));
            board.add(PlanLayer::lamps, line(face, board.frame.at(beam->upper), edge),
                      Crowd::light);
            board.add(PlanLayer::lamps, line(face, board.frame.at(beam->lower), edge),
                      Crowd::light);
        }
        board.add(PlanLayer::lamps, line(face, aim, pen(Ink::lamp, kConstruction_mm)),
                  Crowd::light);
        constexpr double kCross_mm = 1.0;
        for (const Vec2& arm : {Vec2{kCross_mm, kCross_mm}, Vec2{kCross_mm, -kCross_mm}}) {
            board.add(PlanLayer::lamps, line(aim - arm, aim + arm, pen(Ink::lamp, kFine_mm)));
        }
    }
}

} // namespace throwline::sheet
