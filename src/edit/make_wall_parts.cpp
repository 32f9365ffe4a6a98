#include "edit/make.h"
#include "edit/moves.h"
#include "edit/new_names.h"
#include "edit/on_paper.h"
#include "edit/placing.h"
#include "plan/arrangement.h"
#include "plan/names.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace throwline::edit {

namespace {

/// A corner nearer to another than this is that corner.
constexpr double kSameCorner_m = 0.01;

/// An opening as there mostly is, no higher than any wall. On no wall yet, so that it is in
/// nobody's way while a place is sought. Sizes: common practice, no source.
plan::Opening usual_opening(plan::OpeningKind kind, const plan::Room& room) {
    plan::Opening opening;
    opening.kind = kind;
    opening.wall = -1;
    opening.head = Length::metres(2.0);
    for (const plan::Wall& wall : room.walls) {
        opening.head = std::min(opening.head, wall.height);
    }
    switch (kind) {
    case plan::OpeningKind::door:
        opening.swing = plan::Swing{};
        break;
    case plan::OpeningKind::window:
        opening.sill = std::min(Length::metres(0.9), opening.head / 2.0);
        opening.transmission = 0.9;
        break;
    case plan::OpeningKind::opening:
        break;
    }
    return opening;
}

/// What is said of walls after one that was parted goes on being said of them.
void renumber_walls(plan::Arrangement& arrangement, int parted, int walls) {
    std::map<std::string, std::string> names;
    for (int wall = parted + 1; wall < walls; ++wall) {
        names.emplace(plan::name_on_floor(wall), plan::name_on_floor(wall + 1));
    }
    plan::rename_held(arrangement, names);
}

/// Openings of a parted wall stay where they are. Errors: one is where the corner is.
Result<void> part_openings(plan::Room& room, int parted, Length corner) {
    for (plan::Opening& opening : room.openings) {
        if (opening.wall > parted) {
            ++opening.wall;
        } else if (opening.wall == parted && opening.from_start >= corner) {
            ++opening.wall;
            opening.from_start = opening.from_start - corner;
        } else if (opening.wall == parted && opening.from_start + opening.width > corner) {
            return failure(fmt::format("{} is there", opening.id.name));
        }
    }
    return {};
}

void part_lamps(std::vector<plan::Lamp>& lamps, int parted, Length corner) {
    for (plan::Lamp& lamp : lamps) {
        auto* mount = std::get_if<plan::WallMount>(&lamp.mount);
        if (mount != nullptr && mount->wall > parted) {
            ++mount->wall;
        } else if (mount != nullptr && mount->wall == parted && mount->along > corner) {
            ++mount->wall;
            mount->along = mount->along - corner;
        }
    }
}

} // namespace

Result<Step> corner_added(const Context& context, int wall, double along_m) {
    const plan::Room& old = context.plan.room;
    const auto index = static_cast<std::size_t>(wall);
    if (wall < 0 || index >= old.outline.size()) {
        return failure("there is no such wall");
    }
    const Vec2 from = old.outline[index];
    const Vec2 to = old.outline[(index + 1) % old.outline.size()];
    const double length_m = (to - from).norm();
    if (!(along_m > kSameCorner_m && along_m < length_m - kSameCorner_m)) {
        return failure("a corner is there already");
    }
    if (is_locked(context.plan, {Kind::wall, {}, wall})) {
        return failure(
            fmt::format("wall {} is locked; unlock it first", plan::number_of_wall(wall)));
    }
    Step step{fmt::format("New corner in wall {}", plan::number_of_wall(wall)), context.plan, {}};
    plan::Room& room = step.plan.room;
    const auto at = static_cast<std::ptrdiff_t>(index) + 1;
    room.outline.insert(room.outline.begin() + at, from + (to - from) * (along_m / length_m));
    room.walls.insert(room.walls.begin() + at, old.walls[index]);
    renumber_walls(step.plan.arrangement, wall, static_cast<int>(old.outline.size()));
    const Length corner = Length::metres(along_m);
    if (const auto parted = part_openings(room, wall, corner); !parted) {
        return tl::unexpected{parted.error()};
    }
    part_lamps(step.plan.lamps, wall, corner);
    return step;
}

Result<Step> opening_added(const Context& context, plan::OpeningKind kind, const Vec2& at,
                           Length width) {
    if (context.plan.room.outline.empty()) {
        return failure("draw the room first: doors and windows are in its walls");
    }
    if (!is_on_paper(at)) {
        return failure(std::string{kOffPaper});
    }
    if (!is_a_size(width)) {
        return failure(fmt::format("a {} has a width above 0", plan::name_of(kind)));
    }
    Step step{{}, context.plan, {}};
    plan::Opening opening = usual_opening(kind, context.plan.room);
    opening.width = width;
    opening.id.name = new_name(context.plan, std::string{plan::name_of(kind)});
    step.name = fmt::format("New {}", opening.id.name);
    step.made = {{Kind::opening, opening.id.name, 0}};
    step.plan.room.openings.push_back(opening);
    if (const auto done = put_opening(step.plan, opening.id.name, at); !done) {
        return tl::unexpected{done.error()};
    }
    return step;
}

} // namespace throwline::edit
