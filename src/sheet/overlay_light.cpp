#include "base/length_text.h"
#include "checks/circuit_sum.h"
#include "checks/light_text.h"
#include "plan/places.h"
#include "sheet/floor_parts.h"
#include "sheet/level_picture.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::sheet {

namespace {

constexpr double kLongestBeam_m = 60.0;
/// A double line whose halves lie this far from its middle.
constexpr double kCableHalf_mm = 0.45;
/// A contour shorter than this on paper carries no value.
constexpr double kLeastLettered_mm = 25.0;
/// Shorter ones are shadows of legs and stands, and hide what matters.
constexpr double kLeastContour_mm = 12.0;
constexpr double kLegendWide_mm = 34.0;
constexpr double kLegendHigh_mm = 4.0;

void draw_cable(Board& board, const Vec2& from, const Vec2& to) {
    const double length_mm = (to - from).norm();
    if (length_mm <= 0.0) {
        return;
    }
    const Vec2 beside = turned_left(Vec2{(to - from) / length_mm}) * kCableHalf_mm;
    for (const double side : {-1.0, 1.0}) {
        board.add(PlanLayer::power,
                  line(from + beside * side, to + beside * side, pen(Ink::power, kConstruction_mm)),
                  Crowd::light);
    }
}

const Vec2& nearest(const std::vector<Vec2>& outlets, const Vec2& at) {
    return *std::min_element(outlets.begin(), outlets.end(), [&](const Vec2& a, const Vec2& b) {
        return (a - at).squaredNorm() < (b - at).squaredNorm();
    });
}

void letter_circuit(Board& board, const plan::Circuit& circuit, const checks::CircuitSum& sum) {
    const double allowed_a = checks::allowed_a(circuit);
    LabelRequest label;
    label.anchor = board.frame.at(circuit.outlets.front());
    label.half_mm = Vec2::Constant(1.8);
    label.ink = sum.current_a > allowed_a + checks::kCurrentRounding_a ? Ink::error : Ink::power;
    label.lines = {{circuit.id.name, true},
                   {fmt::format("{} of {} A", fixed(sum.current_a, 1), fixed(allowed_a, 1))}};
    board.labels.push_back(label);
}

} // namespace

void draw_beams(Board& board, const FloorScene& scene) {
    for (const stage::PlacedLamp& lamp : scene.stage.lamps) {
        const Vec2 axis = floor_of(lamp.axis);
        if (lamp.beam.peak_cd <= 0.0 || !lamp.target || stage::is_all_round(lamp)
            || axis.norm() < 0.05) {
            continue;
        }
        const double throw_m = std::min((*lamp.target - lamp.face).norm(), kLongestBeam_m);
        const double half_rad = std::min(lamp.beam.field.rad() / 2.0, 1.4);
        const Vec2 from = board.frame.at(floor_of(lamp.face));
        for (const double side : {-1.0, 1.0}) {
            const Vec3 ray =
                lamp.axis * std::cos(half_rad) + lamp.right * (side * std::sin(half_rad));
            board.add(
                PlanLayer::pools,
                line(from,
                     board.frame.at(floor_of(lamp.face + ray * (throw_m / std::cos(half_rad)))),
                     pen(Ink::lamp, kConstruction_mm, LinePattern::long_dash)),
                Crowd::light);
        }
        LabelRequest label;
        label.anchor = board.frame.at(floor_of((lamp.face + *lamp.target) / 2.0));
        label.half_mm = Vec2::Constant(0.5);
        label.ink = Ink::lamp;
        label.lines = {{shown(Length::metres(throw_m), scene.question.plan.units)}};
        label.may_drop = true;
        board.labels.push_back(label);
    }
}

void draw_circuits(Board& board, const FloorScene& scene) {
    const plan::Plan& plan = scene.question.plan;
    for (const plan::Circuit& circuit : plan.circuits) {
        if (circuit.outlets.empty()) {
            continue;
        }
        const checks::CircuitSum sum = checks::sum_of(circuit, plan, scene.question.catalogue);
        for (const plan::Lamp* lamp : sum.lamps) {
            if (const auto point = plan::lamp_point(plan, *lamp)) {
                draw_cable(board, board.frame.at(floor_of(*point)),
                           board.frame.at(nearest(circuit.outlets, floor_of(*point))));
            }
        }
        letter_circuit(board, circuit, sum);
    }
}

namespace {

/// Steps of tone with the highest level.
void draw_level_legend(Board& board, const LevelPicture& levels, UnitSystem units) {
    constexpr int kTones = 16;
    // In the lower left corner of the map, so that it goes where the map goes.
    const Vec2 corner = board.frame.at(levels.low) + Vec2{3.0, -kLegendHigh_mm - 3.0};
    auto pixels = std::make_shared<Pixels>();
    pixels->width = kTones;
    pixels->height = 1;
    for (int i = 0; i < kTones; ++i) {
        const auto colour = level_colour(i / (kTones - 1.0));
        pixels->rgb.insert(pixels->rgb.end(), colour.begin(), colour.end());
    }
    Marks& marks = board.layers[static_cast<std::size_t>(PlanLayer::frame)];
    marks.push_back(Picture{pixels, corner, {kLegendWide_mm, 0.0}, {0.0, kLegendHigh_mm}, 1.0});
    Text none{"0", corner - Vec2{0.0, 1.2}};
    Text highest{checks::level_text(levels.highest_lx, units), corner + Vec2{kLegendWide_mm, -1.2}};
    highest.anchor = TextAnchor::end;
    marks.push_back(none);
    marks.push_back(highest);
    board.field.take(
        {corner.x() - 1.0, corner.y() - 6.0, kLegendWide_mm + 2.0, kLegendHigh_mm + 7.0});
}

double length_of(const std::vector<Vec2>& line) {
    double length = 0.0;
    for (std::size_t i = 1; i < line.size(); ++i) {
        length += (line[i] - line[i - 1]).norm();
    }
    return length;
}

} // namespace

void draw_levels(Board& board, const FloorScene& scene) {
    const LevelPicture& levels = *scene.question.levels;
    const UnitSystem units = scene.question.plan.units;
    if (levels.pixels == nullptr) {
        return;
    }
    const Vec2 corner = board.frame.at(Vec2{levels.low.x(), levels.high.y()});
    const Vec2 opposite = board.frame.at(Vec2{levels.high.x(), levels.low.y()});
    board.layers[static_cast<std::size_t>(PlanLayer::ground)].push_back(
        Picture{levels.pixels,
                corner,
                {opposite.x() - corner.x(), 0.0},
                {0.0, opposite.y() - corner.y()},
                0.72});
    for (const Contour& contour : levels.contours) {
        for (const std::vector<Vec2>& line_m : contour.lines) {
            const std::vector<Vec2> drawn = board.frame.at(line_m);
            if (length_of(drawn) < kLeastContour_mm) {
                continue;
            }
            board.add(PlanLayer::ground, open_path(drawn, pen(Ink::paper, kStanding_mm)));
            board.add(PlanLayer::ground, open_path(drawn, pen(Ink::lettering, kHair_mm)));
            if (length_of(drawn) < kLeastLettered_mm) {
                continue;
            }
            LabelRequest label;
            label.anchor = drawn[drawn.size() / 2];
            label.half_mm = Vec2::Constant(0.5);
            label.lines = {{checks::level_text(contour.level_lx, units)}};
            label.may_drop = true;
            board.labels.push_back(label);
        }
    }
    draw_level_legend(board, levels, units);
}

} // namespace throwline::sheet
