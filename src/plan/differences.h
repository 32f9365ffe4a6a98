#pragma once

#include "base/working.h"
#include "plan/plan.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What is different between two states of a production, in sentences that a crew can act on.
namespace throwline::plan {

enum class Change { added, removed, renamed, moved, turned, changed };

/// What something in a plan is; in the order in which a crew wants to hear of it.
enum class ThingKind {
    room,
    wall,
    opening,
    grid,
    pipe,
    scenery,
    person,
    beat,
    mark,
    camera,
    shot,
    boom,
    lamp,
    circuit,
    production,
    site,
    survey,
    underlay,
    kit_item,
    targets,
    acceptance
};

struct ChangedThing {
    ThingKind kind = ThingKind::production;
    /// As the newer plan calls it, the older one for what was removed: "4", "wall 3", "Ana in beat
    /// 2"; empty where there is only one of its kind.
    std::string name;
    /// Corners or ends of what it takes up on the plan, metres, in the older and in the newer plan;
    /// one point for what is drawn as a symbol; empty where it has no place.
    std::vector<Vec2> before;
    std::vector<Vec2> now;
    /// Of a mark: its beat.
    std::string beat = {};
};

/// Whether a difference is about one thing, about all that moved by the same shift, or about all
/// that hardly moved.
enum class Gathering { one, together, slight };

struct Difference {
    Change change = Change::changed;
    Gathering gathering = Gathering::one;
    std::vector<ChangedThing> things;
    /// In the units of the newer plan: "Camera 2 in shot 2A moved 40 cm to the left."
    std::string sentence;
    /// Where the sentence tells a distance.
    std::optional<Working> working;
};

/// Moves and turns below these are told in one sentence together: no tape finds them again.
inline constexpr Length kSlightMove = Length::millimetres(1.0);
inline constexpr Angle kSlightTurn = Angle::degrees(0.05);
/// From how many on, things that moved alike are told in one sentence.
inline constexpr std::size_t kFewestTogether = 3;

/// Everything that differs, most important first: what moved together, then by kind of thing, and
/// there what was added, removed or moved furthest first. Empty exactly when the plans are equal.
/// Directions are those of the sheet: left and right, up and down it. What has only another name is
/// told as renamed, and what refers to it by name does not count as changed.
std::vector<Difference> differences(const Plan& old, const Plan& now);

std::string_view name_of(Change change);
/// "lamp", "mark", "kit item"
std::string_view name_of(ThingKind kind);

} // namespace throwline::plan
