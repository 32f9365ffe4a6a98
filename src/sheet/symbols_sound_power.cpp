#include "sheet/symbols.h"

#include "base/length_text.h"

#include <algorithm>
#include <fmt/format.h>
#include <numbers>

namespace throwline::sheet {

namespace {

/// The operator as two feet that look along the pole.
void draw_feet(Board& board, const ThingFrame& thing) {
    constexpr double kFootLong_m = 0.28;
    constexpr double kFootWide_m = 0.10;
    for (const double side : {-1.0, 1.0}) {
        std::vector<Vec2> sole;
        constexpr int kSides = 20;
        for (int i = 0; i < kSides; ++i) {
            const double turn = 2.0 * std::numbers::pi * i / kSides;
            sole.push_back(thing.at(kFootLong_m / 2.0 * std::cos(turn),
                                    side * 0.13 + kFootWide_m / 2.0 * std::sin(turn)));
        }
        board.add(PlanLayer::sound,
                  outline(sole, pen(Ink::sound, kFine_mm), solid(Ink::sound, 0.4)), Crowd::never);
    }
}

void draw_boom(Board& board, const plan::Boom& boom, UnitSystem units) {
    constexpr double kMicrophone_mm = 1.6;
    const Vec2 hands = board.frame.at(boom.operator_at);
    const Vec2 microphone = board.frame.at(boom.microphone);
    const double turn_rad = angle_of(boom.microphone - boom.operator_at);
    board.add(PlanLayer::sound,
              line(hands, microphone, pen(Ink::sound, kStanding_mm, LinePattern::dash_dot)),
              Crowd::firm);
    const Vec2 across = paper_direction(turn_rad + std::numbers::pi / 2.0) * kMicrophone_mm;
    board.add(PlanLayer::sound,
              line(microphone - across, microphone + across, pen(Ink::sound, 1.0)), Crowd::never);
    draw_feet(board, {board.frame, boom.operator_at, turn_rad});
    LabelRequest label;
    label.anchor = hands;
    label.half_mm = Vec2::Constant(std::max(2.0, board.frame.mm(0.2)));
    label.ink = Ink::sound;
    label.lines = {{boom.id.name, true},
                   {fmt::format("microphone {} up", shown(boom.height, units))}};
    board.labels.push_back(label);
    board.used.insert(LegendEntry::boom);
}

bool is_on(const plan::Boom& boom, const Selection& selection) {
    return boom.beats.empty()
           || std::any_of(
               selection.beats.begin(), selection.beats.end(), [&](const checks::BeatScene* scene) {
                   return std::find(boom.beats.begin(), boom.beats.end(), scene->beat->id)
                          != boom.beats.end();
               });
}

} // namespace

void draw_booms(Board& board, const plan::Plan& plan, const Selection& selection) {
    for (const plan::Boom& boom : plan.booms) {
        if (is_on(boom, selection)) {
            draw_boom(board, boom, plan.units);
        }
    }
}

void draw_outlets(Board& board, const plan::Plan& plan) {
    constexpr double kHalf_mm = 1.3;
    for (const plan::Circuit& circuit : plan.circuits) {
        for (const Vec2& outlet : circuit.outlets) {
            const Vec2 at = board.frame.at(outlet);
            board.add(PlanLayer::power,
                      outline({at + Vec2{-kHalf_mm, -kHalf_mm}, at + Vec2{kHalf_mm, -kHalf_mm},
                               at + Vec2{kHalf_mm, kHalf_mm}, at + Vec2{-kHalf_mm, kHalf_mm}},
                              pen(Ink::power, kStanding_mm), solid(Ink::paper)),
                      Crowd::never);
            LabelRequest label;
            label.anchor = at;
            label.half_mm = Vec2::Constant(kHalf_mm + 0.2);
            label.ink = Ink::power;
            label.lines = {{circuit.id.name}};
            board.labels.push_back(label);
            board.used.insert(LegendEntry::outlet);
        }
    }
}

} // namespace throwline::sheet
