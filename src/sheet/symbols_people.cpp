#include "sheet/symbols.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::sheet {

namespace {

using stage::Figure;

/// Drawn breadths as shares of stature (common practice, no source); checks use the real body.
constexpr double kShoulders = 0.26;
constexpr double kChest = 0.13;
constexpr double kHead = 0.055;
constexpr double kThigh = 0.24;
constexpr double kLegBreadth = 0.09;
/// Marks nearer than this, with the same facing, are one.
constexpr double kSamePlace_m = 0.02;
constexpr double kSameTurn_rad = 0.02;

/// A person in one place, and the beats in which they are there.
struct Stand {
    const Figure* figure = nullptr;
    std::vector<std::string> beats;
};

bool same_stand(const Figure& a, const Figure& b) {
    return (a.base - b.base).norm() < kSamePlace_m
           && std::abs(wrapped(a.facing.rad() - b.facing.rad())) < kSameTurn_rad
           && a.pose == b.pose;
}

std::vector<Stand> stands_of(const plan::Person& person, const Selection& selection) {
    std::vector<Stand> stands;
    for (const checks::BeatScene* scene : selection.beats) {
        const Figure* figure = scene->stage.figure(person.id);
        if (figure == nullptr) {
            continue;
        }
        const auto known = std::find_if(stands.begin(), stands.end(), [&](const Stand& stand) {
            return same_stand(*stand.figure, *figure);
        });
        if (known != stands.end()) {
            known->beats.push_back(scene->beat->id.name);
        } else {
            stands.push_back({figure, {scene->beat->id.name}});
        }
    }
    return stands;
}

std::vector<Vec2> ellipse(const ThingFrame& thing, double x_m, double half_x_m, double half_y_m) {
    constexpr int kSides = 32;
    std::vector<Vec2> points;
    for (int i = 0; i < kSides; ++i) {
        const double turn = 2.0 * std::numbers::pi * i / kSides;
        points.push_back(thing.at(x_m + half_x_m * std::cos(turn), half_y_m * std::sin(turn)));
    }
    return points;
}

/// Drawn in axes with x along the facing.
void draw_limbs(Board& board, const Figure& figure, const ThingFrame& thing) {
    const double tall_m = figure.stature.m();
    const Pen fine = pen(Ink::people, kConstruction_mm);
    const double leg_m = kLegBreadth * tall_m;
    switch (figure.pose) {
    case plan::Pose::stand:
        return;
    case plan::Pose::crouch:
    case plan::Pose::sit: {
        const double knee_m =
            (figure.pose == plan::Pose::sit ? kThigh : 0.7 * kThigh) * tall_m + 0.05;
        for (const double side : {-1.0, 1.0}) {
            const double low_m = side > 0.0 ? 0.01 : -leg_m - 0.01;
            board.add(PlanLayer::people,
                      outline(thing.box(0.0, low_m, knee_m, low_m + leg_m), fine,
                              solid(Ink::people, 0.12)),
                      Crowd::firm);
        }
        return;
    }
    case plan::Pose::lie:
        return;
    }
}

void draw_upright(Board& board, const Figure& figure) {
    const double tall_m = figure.stature.m();
    const ThingFrame body{board.frame, floor_of(figure.base), figure.facing.rad()};
    draw_limbs(board, figure, body);
    const Pen edge = pen(Ink::people, kStanding_mm);
    const Fill wash = figure.kind == plan::PersonKind::cast ? solid(Ink::people, 0.22)
                                                            : hatched(Ink::people, Hatch::diagonal);
    board.add(
        PlanLayer::people,
        outline(ellipse(body, 0.0, kChest / 2.0 * tall_m, kShoulders / 2.0 * tall_m), edge, wash),
        Crowd::never);
    const ThingFrame head{board.frame, floor_of(figure.crown), figure.facing.rad()};
    const double head_m = kHead * tall_m;
    board.add(PlanLayer::people,
              Circle{head.at(0.0, 0.0), board.frame.mm(head_m), edge, solid(Ink::paper)},
              Crowd::never);
    // The nose: which way they face.
    board.add(PlanLayer::people,
              outline({head.at(0.85 * head_m, 0.45 * head_m), head.at(1.9 * head_m, 0.0),
                       head.at(0.85 * head_m, -0.45 * head_m)},
                      edge, solid(Ink::people)),
              Crowd::never);
}

void draw_lying(Board& board, const Figure& figure) {
    const double tall_m = figure.stature.m();
    const Vec2 towards_crown = floor_of(figure.crown) - floor_of(figure.base);
    const ThingFrame body{board.frame, floor_of(figure.base), angle_of(towards_crown)};
    const double half_m = std::max(towards_crown.norm(), 0.3 * tall_m);
    const double head_m = kHead * tall_m;
    const double shoulder_m = kShoulders / 2.0 * tall_m;
    const Pen edge = pen(Ink::people, kStanding_mm);
    board.add(
        PlanLayer::people,
        outline({body.at(half_m - 2.2 * head_m, shoulder_m), body.at(0.0, 0.7 * shoulder_m),
                 body.at(-half_m, 0.4 * shoulder_m), body.at(-half_m, -0.4 * shoulder_m),
                 body.at(0.0, -0.7 * shoulder_m), body.at(half_m - 2.2 * head_m, -shoulder_m)},
                edge, solid(Ink::people, 0.22)),
        Crowd::never);
    board.add(
        PlanLayer::people,
        Circle{body.at(half_m - head_m, 0.0), board.frame.mm(head_m), edge, solid(Ink::paper)},
        Crowd::never);
}

std::string joined(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) {
        text += text.empty() ? name : fmt::format(" {}", name);
    }
    return text;
}

void label_stand(Board& board, const Stand& stand, bool all_beats) {
    LabelRequest label;
    label.anchor = board.frame.at(floor_of(stand.figure->base));
    label.half_mm = Vec2::Constant(board.frame.mm(kShoulders / 2.0 * stand.figure->stature.m()));
    label.ink = Ink::people;
    label.lines = {{stand.figure->person.name, true}};
    if (!all_beats) {
        label.lines.push_back(
            {fmt::format("beat{} {}", stand.beats.size() > 1 ? "s" : "", joined(stand.beats))});
    }
    board.labels.push_back(label);
}

/// Chevrons along a walk, and one at its end.
void draw_direction_ticks(Board& board, const std::vector<Vec2>& walk) {
    constexpr double kEvery_mm = 14.0;
    constexpr double kTick_mm = 1.5;
    const Pen tick = pen(Ink::people, kFine_mm);
    double since_mm = kEvery_mm / 2.0;
    for (std::size_t i = 0; i + 1 < walk.size(); ++i) {
        const double length_mm = (walk[i + 1] - walk[i]).norm();
        if (length_mm <= 0.0) {
            continue;
        }
        const Vec2 along = (walk[i + 1] - walk[i]) / length_mm;
        double at_mm = kEvery_mm - since_mm;
        for (; at_mm < length_mm; at_mm += kEvery_mm) {
            const Vec2 tip = walk[i] + along * at_mm;
            board.add(PlanLayer::people,
                      open_path({tip + rotated(along, 2.6) * kTick_mm, tip,
                                 tip + rotated(along, -2.6) * kTick_mm},
                                tick),
                      Crowd::firm);
        }
        since_mm = length_mm - (at_mm - kEvery_mm);
    }
}

void draw_walks(Board& board, const plan::Person& person, const Selection& selection) {
    const Figure* before = nullptr;
    for (const checks::BeatScene* scene : selection.beats) {
        const Figure* figure = scene->stage.figure(person.id);
        const auto moved = scene->beat->marks.find(person.id);
        if (figure != nullptr && moved != scene->beat->marks.end()) {
            std::vector<Vec2> walk;
            if (before != nullptr) {
                walk.push_back(board.frame.at(floor_of(before->base)));
            }
            if (const auto* mark = std::get_if<plan::Mark>(&moved->second)) {
                for (const Vec2& point : mark->path) {
                    walk.push_back(board.frame.at(point));
                }
            }
            walk.push_back(board.frame.at(floor_of(figure->base)));
            if (walk.size() > 1 && (walk.front() - walk.back()).norm() > 1.0) {
                board.add(PlanLayer::people,
                          open_path(walk, pen(Ink::people, kStanding_mm, LinePattern::dot)),
                          Crowd::firm);
                draw_direction_ticks(board, walk);
                board.used.insert(LegendEntry::walk);
            }
        }
        before = figure;
    }
}

} // namespace

void draw_people(Board& board, const plan::Plan& plan, const Selection& selection) {
    for (const plan::Person& person : plan.people) {
        draw_walks(board, person, selection);
    }
    for (const plan::Person& person : plan.people) {
        const std::vector<Stand> stands = stands_of(person, selection);
        for (const Stand& stand : stands) {
            if (stand.figure->pose == plan::Pose::lie) {
                draw_lying(board, *stand.figure);
            } else {
                draw_upright(board, *stand.figure);
            }
            label_stand(board, stand,
                        stands.size() == 1 && stand.beats.size() == selection.beats.size());
            board.used.insert(LegendEntry::person);
        }
    }
}

} // namespace throwline::sheet
