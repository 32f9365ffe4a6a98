#pragma once

#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <compare>
#include <string>

/// Changes to a plan as pure functions: what can be taken hold of on the floor, and what can be
/// done to it. Read this first.
namespace throwline::edit {

/// What can be taken hold of on the floor.
enum class Kind { wall, opening, pipe, scenery, person, camera, lamp, boom, outlet };

/// One thing on the floor. `name` is its id in the plan: of an outlet that of its circuit, of a
/// wall nothing. `index`, from 0, tells walls and the outlets of one circuit apart; else 0.
struct Thing {
    Kind kind = Kind::scenery;
    std::string name;
    int index = 0;

    auto operator<=>(const Thing&) const = default;
};

/// When on the floor: people stand where they are in the beat, cameras where they are while the
/// shot is taken. Either may be empty: before the first beat, between shots.
struct Now {
    plan::Id<plan::Beat> beat;
    plan::Id<plan::Shot> shot;

    bool operator==(const Now&) const = default;
};

/// What every edit works on. Lives no longer than what it refers to.
struct Context {
    const plan::Plan& plan;
    const catalogue::Catalogue& catalogue;
    Now now;
};

/// A change that can be taken: the plan it leads to, and what it is called, so that undo can name
/// it: "Move camera 2". What it made, for choosing it afterwards; empty otherwise.
struct Step {
    std::string name;
    plan::Plan plan;
    std::vector<Thing> made{};
};

/// "camera 2", "wall 3", "Ana", "outlet 1 of C1": what a crew calls it.
std::string name_of(const Thing& thing);
/// "camera", "wall", "person", ...
std::string_view name_of(Kind kind);

/// Everything of a plan that is on the floor now, in the order of the plan, rooms before what
/// stands in them; also what is hidden or locked.
std::vector<Thing> things_on_floor(const Context& context);
/// Whether a thing is still there.
bool exists(const plan::Plan& plan, const Thing& thing);

} // namespace throwline::edit
