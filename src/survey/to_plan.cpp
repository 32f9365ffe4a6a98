#include "survey/to_plan.h"

#include "plan/arrangement.h"
#include "plan/usual_values.h"
#include "survey/placed_parts.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::survey {

namespace {

/// Outlets nearer than this are one.
constexpr double kSamePlace_m = 0.001;

bool has(const std::vector<std::string>& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

/// The frame in which a recce lies on the room that is there. A room that is walked the other way
/// round goes on from the same corner along its last wall.
RecceFrame frame_of(const plan::Room& room, bool clockwise) {
    if (room.outline.size() < 3) {
        return {};
    }
    const bool same_way = (signed_area(room.outline) < 0.0) == clockwise;
    const Vec2& next = same_way ? room.outline[1] : room.outline.back();
    return {room.outline[0], angle_of(next - room.outline[0])};
}

/// Puts new things in the place of those of the same name, takes out those that an earlier survey
/// gave and this one does not, and adds the rest behind. `renew` brings an old thing up to date.
template <class Thing, class Renew>
void replace(std::vector<Thing>& things, std::vector<Thing> now,
             const std::vector<std::string>& earlier, const Renew& renew) {
    std::vector<std::string> names;
    for (const Thing& thing : now) {
        names.push_back(thing.id.name);
    }
    std::erase_if(things, [&](const Thing& thing) {
        return has(earlier, thing.id.name) && !has(names, thing.id.name);
    });
    for (Thing& thing : now) {
        const auto old = std::find_if(things.begin(), things.end(),
                                      [&](const Thing& one) { return one.id == thing.id; });
        if (old == things.end()) {
            things.push_back(std::move(thing));
        } else {
            renew(*old, thing);
        }
    }
}

void renew_opening(plan::Opening& old, const plan::Opening& now) {
    plan::Opening opening = now;
    opening.swing = now.kind == plan::OpeningKind::opening ? std::nullopt : old.swing;
    opening.way_out = old.way_out;
    opening.transmission = old.transmission;
    opening.extra = old.extra;
    old = std::move(opening);
}

void renew_scenery(plan::Scenery& old, const plan::Scenery& now) {
    old.shape = now.shape;
    old.elevation = now.elevation;
}

bool is_among(const std::vector<Vec2>& places, const Vec2& place) {
    return std::any_of(places.begin(), places.end(),
                       [&](const Vec2& one) { return (one - place).norm() < kSamePlace_m; });
}

void replace_outlets(std::vector<plan::Circuit>& circuits, const std::vector<plan::Circuit>& now,
                     const std::vector<plan::Circuit>& earlier) {
    for (plan::Circuit& circuit : circuits) {
        for (const plan::Circuit& old : earlier) {
            if (old.id == circuit.id) {
                std::erase_if(circuit.outlets,
                              [&](const Vec2& at) { return is_among(old.outlets, at); });
            }
        }
    }
    for (const plan::Circuit& circuit : now) {
        const auto old = std::find_if(circuits.begin(), circuits.end(),
                                      [&](const auto& one) { return one.id == circuit.id; });
        if (old == circuits.end()) {
            circuits.push_back(circuit);
            continue;
        }
        for (const Vec2& at : circuit.outlets) {
            if (!is_among(old->outlets, at)) {
                old->outlets.push_back(at);
            }
        }
    }
}

void replace_notes(std::vector<std::string>& notes, const std::vector<std::string>& now,
                   const std::vector<std::string>& earlier) {
    std::erase_if(notes, [&](const std::string& note) { return has(earlier, note); });
    for (const std::string& note : now) {
        if (!has(notes, note)) {
            notes.push_back(note);
        }
    }
}

/// Walls keep what the tape does not tell as long as there are as many.
void renew_walls(plan::Room& room, Length old_height, std::vector<std::string>& remarks) {
    if (room.walls.size() == room.outline.size()) {
        for (plan::Wall& wall : room.walls) {
            wall.height = wall.height == old_height ? room.height : wall.height;
        }
        return;
    }
    if (!room.walls.empty()) {
        remarks.push_back(fmt::format("The room had {} walls and has {} now; thickness and finish "
                                      "of each wall are as usual.",
                                      room.walls.size(), room.outline.size()));
    }
    plan::Wall usual;
    usual.height = room.height;
    usual.thickness = plan::kUsualWallThickness;
    room.walls.assign(room.outline.size(), usual);
}

Errors errors_of(const std::vector<std::string>& faults) {
    Errors errors;
    for (const std::string& fault : faults) {
        errors.push_back({fault, {}});
    }
    return errors;
}

/// What the plan's earlier survey gave, as far as it can still be told.
PlacedParts earlier_parts(const plan::Plan& plan, const RecceFrame& frame) {
    if (!plan.survey) {
        return {};
    }
    const auto earlier = surveyed(*plan.survey);
    return earlier ? placed_parts(*earlier, frame, plan.room.height, plan.units) : PlacedParts{};
}

} // namespace

Checked<RecceInPlan> plan_of(const RecceResult& result, const std::string& title,
                             UnitSystem units) {
    plan::Plan plan;
    plan.title = title;
    plan.units = units;
    return put_into(std::move(plan), result);
}

Checked<RecceInPlan> put_into(plan::Plan plan, const RecceResult& result) {
    const Length old_height = plan.room.height;
    const Length read = result.ceiling ? result.ceiling->height : old_height;
    // As fine as the tape reads.
    const Length height = Length::metres(std::round(read.m() * 1e4) / 1e4);
    if (height <= Length{}) {
        return tl::unexpected{Errors{
            {"the height of the ceiling was not read; add a line such as \"height 2.4m\"", {}}}};
    }
    const bool earlier_clockwise = plan.survey && plan.survey->clockwise;
    const PlacedParts earlier = earlier_parts(plan, frame_of(plan.room, earlier_clockwise));
    const RecceFrame frame = frame_of(plan.room, result.survey.clockwise);
    PlacedParts parts = placed_parts(result, frame, height, plan.units);
    if (!parts.faults.empty()) {
        return tl::unexpected{errors_of(parts.faults)};
    }
    const plan::Survey before = plan.survey.value_or(plan::Survey{});
    plan.room.outline = std::move(parts.outline);
    plan.room.height = height;
    renew_walls(plan.room, old_height, parts.remarks);
    replace(plan.room.openings, std::move(parts.openings), opening_names(before), renew_opening);
    replace(plan.scenery, std::move(parts.scenery), scenery_names(before), renew_scenery);
    replace_outlets(plan.circuits, parts.circuits, earlier.circuits);
    replace_notes(plan.site.notes, parts.notes, earlier.notes);
    plan.site.north = parts.north.value_or(plan.site.north);
    plan.survey = result.survey;
    plan::forget_gone(plan);
    return RecceInPlan{std::move(plan), std::move(parts.remarks)};
}

} // namespace throwline::survey
