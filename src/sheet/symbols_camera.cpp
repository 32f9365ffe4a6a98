#include "sheet/symbols.h"

#include "base/length_text.h"
#include "sheet/coverage_fan.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::sheet {

namespace {

/// Drawn size of a camera without its lens (common practice, no source).
constexpr double kBodyLong_m = 0.34;
constexpr double kBodyWide_m = 0.17;
constexpr double kStub_m = 0.16;
constexpr double kSamePlace_m = 0.05;
constexpr double kSameTurn_rad = 0.01;
/// Least drawn length of a body, so that it can still be seen on small scales.
constexpr double kLeastBody_mm = 4.5;

/// One place of a camera with all shots taken from there.
struct CameraStand {
    const plan::Camera* camera = nullptr;
    const stage::PlacedCamera* placed = nullptr;
    std::vector<const checks::ShotScene*> shots;
};

Vec2 place_of(const stage::PlacedCamera& placed) {
    return floor_of(placed.pose.lens);
}

const stage::PlacedCamera* placed_in(const checks::ShotScene& scene) {
    return scene.view ? scene.stage.camera(scene.shot->camera) : nullptr;
}

/// A shot over several beats is shown once, at its first.
bool is_new(const std::vector<const checks::ShotScene*>& shots, const checks::ShotScene& scene) {
    return std::none_of(shots.begin(), shots.end(),
                        [&](const checks::ShotScene* other) { return other->shot == scene.shot; });
}

std::vector<CameraStand> stands_of(const plan::Camera& camera, const Selection& selection) {
    std::vector<CameraStand> stands;
    for (const checks::ShotScene* scene : selection.shots) {
        const stage::PlacedCamera* placed = placed_in(*scene);
        if (placed == nullptr || scene->shot->camera != camera.id) {
            continue;
        }
        const auto known =
            std::find_if(stands.begin(), stands.end(), [&](const CameraStand& stand) {
                return (stand.shots.front()->shot->at - scene->shot->at).norm() < kSamePlace_m;
            });
        if (known == stands.end()) {
            stands.push_back({&camera, placed, {scene}});
        } else if (is_new(known->shots, *scene)) {
            known->shots.push_back(scene);
        }
    }
    if (stands.empty() && camera.home && !selection.beats.empty()) {
        if (const auto* placed = selection.beats.front()->stage.camera(camera.id)) {
            stands.push_back({&camera, placed, {}});
        }
    }
    return stands;
}

/// The lens widens with its angle: a wide lens looks wide.
void draw_stub(Board& board, const ThingFrame& thing, double unit_m, double half_angle_rad) {
    const double back_m = 0.28 * kBodyWide_m * unit_m;
    const double front_m =
        back_m + kStub_m * unit_m * std::min(1.0, std::tan(half_angle_rad)) * 0.9;
    board.add(PlanLayer::cameras,
              outline({thing.at(-kStub_m * unit_m, back_m), thing.at(0.0, front_m),
                       thing.at(0.0, -front_m), thing.at(-kStub_m * unit_m, -back_m)},
                      pen(Ink::camera, kStanding_mm), solid(Ink::paper)),
              Crowd::never);
}

double half_angle_of(const checks::ShotScene& scene) {
    return scene.view->angle.horizontal.rad() / 2.0;
}

void draw_body(Board& board, const CameraStand& stand) {
    const stage::PlacedCamera& placed = *stand.placed;
    const double unit_m = std::max(1.0, kLeastBody_mm / board.frame.mm(kBodyLong_m));
    if (placed.support_outline.size() > 2) {
        board.add(
            PlanLayer::cameras,
            outline(board.frame.at(placed.support_outline), pen(Ink::camera, kConstruction_mm)),
            Crowd::firm);
    }
    const ThingFrame thing{board.frame, place_of(placed), placed.pose.pan.rad()};
    const double rear_m = -(kStub_m + kBodyLong_m) * unit_m;
    const double half_m = kBodyWide_m / 2.0 * unit_m;
    const std::vector<Vec2> body = thing.box(rear_m, -half_m, -kStub_m * unit_m, half_m);
    board.add(PlanLayer::cameras, outline(body, no_pen(), solid(Ink::paper)));
    board.add(PlanLayer::cameras,
              outline(body, pen(Ink::camera, kStanding_mm), solid(Ink::camera, 0.30)),
              Crowd::never);
    std::vector<double> drawn;
    for (const checks::ShotScene* scene : stand.shots) {
        const double pan_rad = scene->view->pose.pan.rad();
        if (std::none_of(drawn.begin(), drawn.end(), [&](double other) {
                return std::abs(wrapped(other - pan_rad)) < kSameTurn_rad;
            })) {
            const Vec2 pivot = thing.place - unit_at(placed.pose.pan.rad()) * (kStub_m * unit_m);
            draw_stub(board, {board.frame, pivot + unit_at(pan_rad) * (kStub_m * unit_m), pan_rad},
                      unit_m, half_angle_of(*scene));
            drawn.push_back(pan_rad);
        }
    }
    if (stand.shots.empty()) {
        draw_stub(board, thing, unit_m, 0.35);
    }
}

/// More shots than this on a sheet, or on a square decimetre of its room, and what they take in is
/// drawn more sparingly.
constexpr std::size_t kManyShots = 8;
constexpr double kManyOnASquareDecimetre = 8.0;

std::vector<const checks::ShotScene*> shots_once(const Selection& selection) {
    std::vector<const checks::ShotScene*> shots;
    for (const checks::ShotScene* scene : selection.shots) {
        if (scene->view && is_new(shots, *scene)) {
            shots.push_back(scene);
        }
    }
    return shots;
}

bool are_many(const Board& board, const plan::Plan& plan, std::size_t shots) {
    const double side_dm = board.frame.mm(1.0) / 100.0;
    const double room_dm2 = area(plan.room.outline) * side_dm * side_dm;
    return shots > kManyShots || static_cast<double>(shots) > kManyOnASquareDecimetre * room_dm2;
}

/// Focal lengths, each with the shots that share it: "28", "1A 2A".
using ShotsByFocal = std::vector<std::pair<std::string, std::string>>;

ShotsByFocal shots_by_focal(const CameraStand& stand) {
    ShotsByFocal by_focal;
    for (const checks::ShotScene* scene : stand.shots) {
        const std::string focal = fmt::format("{:.0f}", scene->view->focal.mm());
        const auto known = std::find_if(by_focal.begin(), by_focal.end(),
                                        [&](const auto& entry) { return entry.first == focal; });
        if (known == by_focal.end()) {
            by_focal.emplace_back(focal, scene->shot->id.name);
        } else {
            known->second += fmt::format(" {}", scene->shot->id.name);
        }
    }
    return by_focal;
}

/// "1A 2A, 28 mm" a line.
std::vector<LabelLine> shot_lines(const CameraStand& stand) {
    std::vector<LabelLine> lines;
    for (const auto& [focal, shots] : shots_by_focal(stand)) {
        lines.push_back({fmt::format("{}, {} mm", shots, focal)});
    }
    return lines;
}

/// "1A 28, 2A 35 mm" in one line.
LabelLine shots_run_together(const CameraStand& stand) {
    std::string text;
    for (const auto& [focal, shots] : shots_by_focal(stand)) {
        text += fmt::format("{}{} {}", text.empty() ? "" : ", ", shots, focal);
    }
    return {text + " mm"};
}

void label_stand(Board& board, const CameraStand& stand, UnitSystem units, bool many) {
    LabelRequest label;
    label.anchor =
        board.frame.at(place_of(*stand.placed)
                       - unit_at(stand.placed->pose.pan.rad()) * (kStub_m + kBodyLong_m / 2.0));
    label.half_mm =
        Vec2::Constant(std::max(kLeastBody_mm / 2.0, board.frame.mm(kBodyLong_m / 2.0)));
    label.ink = Ink::camera;
    const LabelLine name{stand.camera->id.name, true};
    label.lines = {
        name,
        {fmt::format("lens {} up", shown(Length::metres(stand.placed->pose.lens.z()), units))}};
    if (many && !stand.shots.empty()) {
        label.lines.push_back(shots_run_together(stand));
    } else {
        const std::vector<LabelLine> shots = shot_lines(stand);
        label.lines.insert(label.lines.end(), shots.begin(), shots.end());
    }
    if (!stand.shots.empty()) {
        label.shorter.push_back({name, shots_run_together(stand)});
    }
    label.shorter.push_back({name});
    board.labels.push_back(label);
}

/// The way of the camera during a shot, as a track of two rails.
void draw_moves(Board& board, const checks::ShotScene& scene) {
    Vec2 from = scene.shot->at;
    for (const Vec2& to : scene.shot->moves) {
        const Vec2 a = board.frame.at(from);
        const Vec2 b = board.frame.at(to);
        const double length_mm = (b - a).norm();
        if (length_mm > 0.0) {
            const Vec2 beside = turned_left(Vec2{(b - a) / length_mm}) * 0.5;
            for (const double side : {-1.0, 1.0}) {
                board.add(PlanLayer::cameras,
                          line(a + beside * side, b + beside * side,
                               pen(Ink::camera, kConstruction_mm, LinePattern::dash)),
                          Crowd::firm);
            }
        }
        from = to;
    }
}

} // namespace

void draw_lens_axis(Board& board, const checks::ShotScene& scene, UnitSystem units) {
    constexpr double kTick_mm = 0.9;
    constexpr double kBar_mm = 1.8;
    constexpr double kLongest_m = 60.0;
    const double every_m = units == UnitSystem::metric ? 1.0 : 0.9144;
    const Vec2 lens = floor_of(scene.view->pose.lens);
    const double pan_rad = scene.view->pose.pan.rad();
    const double level = std::cos(scene.view->pose.tilt.rad());
    const double reach_m = std::min(kLongest_m, scene.view->focus_distance.m() * level);
    if (!(reach_m > 0.0)) {
        return;
    }
    const Pen fine = pen(Ink::camera, kConstruction_mm);
    const Vec2 across = paper_direction(pan_rad + std::numbers::pi / 2.0);
    const auto tick = [&](double at_m, double half_mm) {
        const Vec2 at = board.frame.at(lens + unit_at(pan_rad) * at_m);
        board.add(PlanLayer::coverage, line(at - across * half_mm, at + across * half_mm, fine));
    };
    board.add(PlanLayer::coverage,
              line(board.frame.at(lens), board.frame.at(lens + unit_at(pan_rad) * reach_m), fine),
              Crowd::light);
    for (double at_m = every_m; at_m < reach_m; at_m += every_m) {
        tick(at_m, kTick_mm);
    }
    tick(reach_m, kBar_mm);
}

namespace {

/// How what a shot takes in is drawn.
struct FanStyle {
    double wash = 0.07;
    /// Edges are drawn as far as what is in focus, and dotted beyond.
    bool is_one_of_many = false;
};

void draw_edge(Board& board, const Vec2& lens, const Vec2& far, double sharp_m,
               const FanStyle& style) {
    const double length_m = (far - lens).norm();
    const double share =
        style.is_one_of_many ? std::min(1.0, sharp_m / std::max(length_m, 1e-9)) : 1.0;
    const Vec2 turn = lens + (far - lens) * share;
    board.add(PlanLayer::coverage,
              line(board.frame.at(lens), board.frame.at(turn), pen(Ink::camera, kConstruction_mm)),
              Crowd::light);
    if (share < 1.0) {
        board.add(PlanLayer::coverage, line(board.frame.at(turn), board.frame.at(far),
                                            pen(Ink::camera, kHair_mm, LinePattern::dot)));
    }
}

/// The far end of a fan with the shot's name, which wants to stand there.
struct FanEnd {
    Vec2 at = Vec2::Zero();
    std::string shots;
};

std::optional<FanEnd> draw_fan(Board& board, const plan::Plan& plan, const checks::ShotScene& scene,
                               const FanStyle& style) {
    const Vec2 lens = floor_of(scene.view->pose.lens);
    const double pan_rad = scene.view->pose.pan.rad();
    const double half_rad = half_angle_of(scene);
    const Polygon fan =
        coverage_fan(plan.room.outline, lens, pan_rad - half_rad, pan_rad + half_rad);
    if (fan.size() < 3) {
        return std::nullopt;
    }
    if (!style.is_one_of_many) {
        board.add(PlanLayer::coverage,
                  outline(board.frame.at(fan), no_pen(), solid(Ink::camera, style.wash)));
    }
    const double sharp_m = scene.view->focus_distance.m() * std::cos(scene.view->pose.tilt.rad());
    for (const Vec2& far : {fan[1], fan.back()}) {
        draw_edge(board, lens, far, sharp_m, style);
    }
    board.used.insert(LegendEntry::coverage);
    const Vec2 end = board.frame.at(fan.back());
    const Vec2 start = board.frame.at(lens);
    // A little inside the far end, clear of the wall.
    return FanEnd{end + (start - end) * std::min(0.4, 5.0 / std::max(1.0, (start - end).norm())),
                  scene.shot->id.name};
}

/// Names the far ends; those that lie close together in one.
void label_ends(Board& board, const std::vector<FanEnd>& ends) {
    constexpr double kClose_mm = 5.0;
    std::vector<FanEnd> gathered;
    for (const FanEnd& end : ends) {
        const auto known = std::find_if(gathered.begin(), gathered.end(), [&](const FanEnd& other) {
            return (other.at - end.at).norm() < kClose_mm;
        });
        if (known == gathered.end()) {
            gathered.push_back(end);
        } else {
            known->shots += " " + end.shots;
        }
    }
    for (const FanEnd& end : gathered) {
        LabelRequest label;
        label.anchor = end.at;
        label.half_mm = Vec2::Constant(0.5);
        label.ink = Ink::camera;
        label.lines = {{end.shots}};
        board.labels.push_back(label);
    }
}

} // namespace

void draw_cameras(Board& board, const plan::Plan& plan, const Selection& selection) {
    const bool many = are_many(board, plan, shots_once(selection).size());
    for (const plan::Camera& camera : plan.cameras) {
        for (const CameraStand& stand : stands_of(camera, selection)) {
            for (const checks::ShotScene* scene : stand.shots) {
                draw_moves(board, *scene);
            }
            draw_body(board, stand);
            label_stand(board, stand, plan.units, many);
            board.used.insert(LegendEntry::camera);
        }
    }
}

void draw_coverage(Board& board, const plan::Plan& plan, const Selection& selection) {
    // Overlapping washes add up, so many of them are paler.
    constexpr double kWashOfAll = 0.22;
    constexpr double kMostWash = 0.07;
    const std::vector<const checks::ShotScene*> shots = shots_once(selection);
    FanStyle style;
    style.wash = std::min(kMostWash, kWashOfAll / std::max(1.0, static_cast<double>(shots.size())));
    style.is_one_of_many = are_many(board, plan, shots.size());
    std::vector<FanEnd> ends;
    for (const checks::ShotScene* scene : shots) {
        if (const auto end = draw_fan(board, plan, *scene, style)) {
            ends.push_back(*end);
        }
        if (!style.is_one_of_many) {
            draw_lens_axis(board, *scene, plan.units);
        }
    }
    label_ends(board, ends);
}

} // namespace throwline::sheet
